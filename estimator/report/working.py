"""How was each headline figure worked out: the formula in words, the numbers put in, their sources, the result?

Every result here is worked out once more from the numbers shown, so that whoever checks it by hand comes to the same.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from math import inf, isclose

import numpy as np

from estimator.compare import Comparison
from estimator.estimate import Estimate, OptionYear
from estimator.report import cash, figures
from estimator.units import HOURS_PER_YEAR, from_hundredths, from_percent, to_hundredths, to_kwh, to_m3h

_FINE = 6  # significant figures: enough to work each result out again by hand
_SAME = 1e-9  # a price that explains a bill to this share is the price of the tariff


@dataclass(frozen=True, slots=True)
class Put:
    """A number put into a formula: what it is, the number as written, and where it comes from."""

    words: str
    number: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Working:
    """One figure's working. `value` is the formula applied to the unrounded numbers put in."""

    key: str
    title: str
    formula: str
    put: tuple[Put, ...]
    value: float
    result: str


def workings(done: Estimate, comparison: Comparison) -> tuple[Working, ...]:
    """The working of every headline figure of one comparison, from air to payback."""
    base, option = done.options[comparison.baseline], done.options[comparison.option]
    return (
        *(_air(done, each) for each in (base, option)),
        *(_heat_needed(done, each) for each in (base, option)),
        _heat_saved(comparison, base, option),
        _fuel_saved(done, comparison),
        _heat_bill(done, comparison),
        *(_electricity(done, each) for each in (base, option)),
        _ventilation_bill(done, comparison, base, option),
        _net_saving(comparison, done.case.prices.currency),
        _carbon(comparison, base, option),
        _payback(comparison, done.case.prices.currency),
    )


def _air(done: Estimate, option: OptionYear) -> Working:
    air = option.air
    parts = {
        "through leaks and ventilators, while the fans run": float(np.mean(to_m3h(air.envelope))),
        "in and out through the unit": float(np.mean(to_m3h(air.balanced))),
        "windows opened in thought, so that no hour is short": float(np.mean(to_m3h(air.windows))),
    }
    leak = done.origins["leakage.value"]
    alone = float(np.mean(to_m3h(air.infiltration)))
    sources = (f"leakage: {leak.tag}, {leak.source}; {figures.quantity(alone, 'm³/h')} if no fan ran",
               "flows of the fans, by the hour", f"air needed: {done.origins['air.entered'].source}")  # fmt: skip
    return Working(
        key=f"air_delivered:{option.name}",
        title=f"Outdoor air with {option.label}",
        formula="mean over all hours of the air through leaks, through the unit and through windows",
        put=tuple(
            Put(words, _exact(value, "m³/h"), source)
            for (words, value), source in zip(parts.items(), sources, strict=True)
        ),
        value=sum(parts.values()),
        result=_exact(sum(parts.values()), "m³/h"),
    )


def _heat_needed(done: Estimate, option: OptionYear) -> Working:
    heat, home = option.heat, done.home
    loss, degrees = float(np.squeeze(heat.loss_coefficient)), float(np.squeeze(heat.degree_hours))
    fabric = done.origins["home.fabric_loss"]
    needed = float(to_kwh(loss * degrees))
    share = float(np.squeeze(heat.effective_efficiency))
    kept = f"; of the unit's air {figures.share(share)} of the heat is kept" if share else ""
    how = (
        f"hours and degrees below the fixed base of {figures.temperature(float(home.fixed_base))}"
        if home.fixed_base is not None
        else "hour by hour: what is lost less sun and inside gains, above nil, with the heat the house stores"
    )
    if home.fixed_base is not None:
        needed = option.heating_demand
    balance = figures.temperature(float(np.squeeze(heat.balance_temperature)))
    return Working(
        key=f"heating_demand:{option.name}",
        title=f"Heat the rooms need with {option.label}",
        formula="heat lost per degree × degree-hours of heating",
        put=(
            Put("heat lost per degree, fabric and air together", _exact(loss, "W/K"),
                f"fabric {figures.quantity(float(home.fabric_loss), 'W/K')} ({fabric.tag}, {fabric.source}), the rest "
                f"is air{kept}"),
            Put("degree-hours", _exact(degrees, "K h"), f"{how}; heated below about {balance} outside"),
        ),
        value=needed,
        result=_exact(needed, "kWh"),
    )  # fmt: skip


def _heat_saved(comparison: Comparison, base: OptionYear, option: OptionYear) -> Working:
    value = base.heating_demand - option.heating_demand
    return Working(
        key="heat_saved",
        title=f"Heat saved against {comparison.baseline_label}",
        formula=f"heat needed with {base.label} − heat needed with {option.label}",
        put=tuple(Put(each.label, _exact(each.heating_demand, "kWh"), "worked out above") for each in (base, option)),
        value=value,
        result=_exact(value, "kWh"),
    )


def _fuel_saved(done: Estimate, comparison: Comparison) -> Working:
    origin = done.origins["heating.efficiency"]
    share = float(from_percent(origin.value))
    if comparison.fuel_saved and not isclose(comparison.heat_saved / share, comparison.fuel_saved, rel_tol=_SAME):
        share = comparison.heat_saved / comparison.fuel_saved
        source = "heat over energy bought in the hours in which heat is saved"
    else:
        source = f"{origin.tag}, {origin.source}"
    value = comparison.heat_saved / share
    return Working(
        key="fuel_saved",
        title="Energy not bought for heat",
        formula="heat saved ÷ efficiency of the heating",
        put=(
            Put("heat saved", _exact(comparison.heat_saved, "kWh"), "worked out above"),
            Put("efficiency of the heating", figures.share(share), source),
        ),
        value=value,
        result=_exact(value, "kWh"),
    )


def _heat_bill(done: Estimate, comparison: Comparison) -> Working:
    price, source = _price(done, "prices.fuel", comparison.heat_bill_saving, comparison.fuel_saved)
    value = comparison.fuel_saved * price
    currency = done.case.prices.currency
    return Working(
        key="heat_bill_saving",
        title="Saved on heat",
        formula="energy not bought × its price",
        put=(
            Put("energy not bought for heat", _exact(comparison.fuel_saved, "kWh"), "worked out above"),
            Put("price", cash.unit_price(float(to_hundredths(price)), currency), source),
        ),
        value=value,
        result=_sum(value, currency),
    )


def _electricity(done: Estimate, option: OptionYear) -> Working:
    fans = float(to_kwh(np.squeeze(option.air.fans) * HOURS_PER_YEAR))
    power = done.origins[f"options.{option.name}.unit.fan_power"]
    frost = done.origins[f"options.{option.name}.unit.frost"]
    return Working(
        key=f"electricity:{option.name}",
        title=f"Electricity of {option.label}",
        formula="mean power of fans and controls × 8,760 hours + heaters of the unit",
        put=(
            Put("mean power of fans and controls", _exact(float(np.squeeze(option.air.fans)), "W"),
                f"{figures.quantity(float(power.value), power.unit)} at the certificate's flow: {power.tag}, "
                f"{power.source}"),
            Put("heaters of the unit", _exact(option.frost_electricity, "kWh"),
                f"frost protection: {frost.value}; {frost.tag}, {frost.source}"),
        ),
        value=fans + option.frost_electricity,
        result=_exact(fans + option.frost_electricity, "kWh"),
    )  # fmt: skip


def _ventilation_bill(done: Estimate, comparison: Comparison, base: OptionYear, option: OptionYear) -> Working:
    more = option.electricity - base.electricity
    price, source = _price(done, "prices.electricity", comparison.extra_ventilation_bill, more)
    value, currency = more * price, done.case.prices.currency
    return Working(
        key="extra_ventilation_bill",
        title="More paid for ventilation's electricity",
        formula=f"(electricity of {option.label} − electricity of {base.label}) × its price",
        put=(
            *(Put(each.label, _exact(each.electricity, "kWh"), "worked out above") for each in (option, base)),
            Put("price", cash.unit_price(float(to_hundredths(price)), currency), source),
        ),
        value=value,
        result=_sum(value, currency),
    )


def _net_saving(comparison: Comparison, currency: str) -> Working:
    rest = comparison.bill_saving - comparison.heat_bill_saving + comparison.extra_ventilation_bill
    put = [
        Put("saved on heat", _sum(comparison.heat_bill_saving, currency), "worked out above"),
        Put("more for ventilation's electricity", _sum(comparison.extra_ventilation_bill, currency),
            "worked out above"),
        Put("more for filters and service", _sum(comparison.extra_upkeep, currency),
            "filter sets × price + service, of both"),
    ]  # fmt: skip
    if abs(rest) > _SAME * max(1.0, abs(comparison.bill_saving)):
        put.append(Put("what the two share on the household's bill", _sum(rest, currency), "whole yearly bills"))
    value = comparison.heat_bill_saving - comparison.extra_ventilation_bill + rest - comparison.extra_upkeep
    return Working(
        key="net_saving",
        title=f"Net saving a year against {comparison.baseline_label}",
        formula="saved on heat − more for electricity − more for filters and service",
        put=tuple(put),
        value=value,
        result=_sum(value, currency),
    )


def _carbon(comparison: Comparison, base: OptionYear, option: OptionYear) -> Working:
    parts: Iterable[tuple[str, Callable[[OptionYear], float]]] = (
        ("heat", lambda each: each.heat_carbon),
        ("ventilation's electricity", lambda each: each.ventilation_carbon),
    )
    return Working(
        key="carbon_saving",
        title=f"Carbon saved a year against {comparison.baseline_label}",
        formula="carbon of the baseline − carbon of the option, heat and electricity each at its own factor",
        put=tuple(
            Put(f"{words} with {each.label}", _exact(read(each), "kg"), "energy bought × kg per kWh")
            for words, read in parts
            for each in (base, option)
        ),
        value=base.household_carbon - option.household_carbon,
        result=_exact(base.household_carbon - option.household_carbon, "kg"),
    )


def _payback(comparison: Comparison, currency: str) -> Working:
    saving, cost = comparison.net_saving, comparison.net_capital
    value = 0.0 if cost <= 0.0 else cost / saving if saving > 0.0 else inf
    return Working(
        key="simple_payback",
        title="Simple payback",
        formula="cost of fitting beyond the baseline's ÷ net saving a year; never, where nothing is saved",
        put=(
            Put("cost beyond the baseline's", _sum(cost, currency), "parts, labour, tax and grant of both"),
            Put("net saving a year", _sum(saving, currency), "worked out above"),
        ),
        value=value,
        result=cash.payback(value, life=comparison.life),
    )


def _price(done: Estimate, path: str, sum_of_money: float, energy: float) -> tuple[float, str]:
    """Price of a kWh [money] that explains a sum, and its source: the tariff's own, or the mean of many hours."""
    origin = done.origins[path]
    price = float(from_hundredths(origin.value))
    if not energy or isclose(price * energy, sum_of_money, rel_tol=_SAME):
        return price, f"{origin.tag}, {origin.source}; {done.case.prices.dated}"
    return sum_of_money / energy, f"mean over the hours concerned, of whole yearly bills; {done.case.prices.dated}"


def _exact(value: float, unit: str) -> str:
    return figures.quantity(value, unit, figures=_FINE)


def _sum(value: float, currency: str) -> str:
    """A sum with its hundredths."""
    sign = figures.MINUS if value < 0 else ""
    return f"{sign}{cash.joined_money(figures.fixed(abs(value), decimals=2), currency)}"
