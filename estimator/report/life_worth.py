"""What is it worth: each figure of worth with its range, in words where a number would mislead, and its working?"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from math import isfinite, isinf, isnan
from typing import Any

import numpy as np

from estimator.compare import Comparison
from estimator.money import worth
from estimator.plan import Plan
from estimator.report import cash
from estimator.report.figures import MINUS, UNKNOWN, carbon, energy, fixed, joined, number, years
from estimator.report.fresh_air import FreshAir
from estimator.report.life import BEYOND, Life, payback_said, price_of_saved_heat
from estimator.report.rows import Rows
from estimator.sure import spread
from estimator.survey.fill import Origin
from estimator.units import Array, to_hundredths, to_percent

_HEAD = ("Figure", "Best guess", "A tenth of the cases below", "Half below", "Nine tenths below")
_ENTRIES = (
    "worth.life", "worth.horizon", "worth.discount", "worth.terms", "prices.electricity", "prices.electricity_growth",
    "prices.fuel", "prices.fuel_growth", "prices.electricity_carbon", "prices.fuel_carbon", "prices.carbon_path",
)  # fmt: skip

Said = Callable[[float], str]


def figures(life: Life) -> Rows:
    """Every figure of worth against one baseline: the best guess, and between which values the cases lie."""
    found, cases, plan = life.comparison, life.against.sure.cases, life.plan
    discount, currency = _rate(float(plan.discount)), life.currency

    def money(value: float) -> str:
        return cash.exact_money(value, currency)

    def row(words: str, best: Any, values: Array, said: Said) -> tuple[str, ...]:
        ends = spread(np.asarray(values))
        return (words, *(said(float(np.squeeze(value))) for value in (best, ends.low, ends.middle, ends.high)))

    def carbon_back(span: float) -> str:
        return payback_said(span) if span != 0.0 else "at once" if counts_making(life) else "making it is not counted"

    term = years(float(plan.years))
    return Rows(
        caption=f"Against {life.words}, over {term}",
        head=_HEAD,
        rows=(
            row("Extra cost of fitting", found.net_capital, cases.net_capital, money),
            row("Net saving in the first year", found.net_saving, cases.net_saving, money),
            row("Simple payback", found.simple_payback, cases.payback, lambda span: simple_said(span, found.life)),
            row("Payback, later costs counted", plan.lasting_payback, life.cases.lasting_payback, payback_said),
            row(
                f"Payback, discounted at {discount}",
                plan.discounted_payback,
                life.cases.discounted_payback,
                payback_said,
            ),
            row(f"Worth today, discounted at {discount}", plan.net_present_value, life.cases.net_present_value, money),
            row("Yearly rate of return", returns(plan), returns(life.cases), return_said),
            row("Cost of each kWh of heat saved", _cost(plan), _cost(life.cases), lambda cost: _price(cost, currency)),
            row(f"Carbon saved over {term}", plan.carbon_lifetime, life.cases.carbon_lifetime, carbon),
            row("Carbon payback", plan.carbon_payback, life.cases.carbon_payback, carbon_back),
        ),
        note=_note(life),
        words=frozenset({0}),
    )


def counts_making(life: Life) -> bool:
    """Whether carbon of making the kit was entered."""
    return bool(life.case.options[life.comparison.option].cost.embodied)


def simple_said(span: float, life: float) -> str:
    """Simple payback as a figure where it is one, and as words where it is none."""
    if isinf(span):
        return "never"
    said = payback_said(span)
    return f"{said}, beyond its life" if life < span <= BEYOND else said


def returns(plan: Plan) -> Array:
    """Yearly rate of return [%]; minus infinity where hardly anything comes back, infinity where nothing is paid."""
    found = plan.internal_rate
    rate, count, total = (
        np.atleast_1d(np.asarray(part)) for part in (found.rate, found.count, plan.cumulative[..., -1])
    )
    nothing = np.where(total > 0.0, np.inf, -np.inf)
    return np.asarray(np.where(count == 1, to_percent(rate), np.where(count == 0, nothing, np.nan)))


def return_said(percent: float) -> str:
    """The rate, or why there is none."""
    if isnan(percent):
        return "more than one"
    if percent < 0.0:
        return "below 0%"
    if isinf(percent):
        return "nothing to return"
    return joined(number(percent, figures=2), "%")


def _cost(plan: Plan) -> Array:
    return np.atleast_1d(np.asarray(to_hundredths(plan.cost_per_kwh)))


def _price(hundredths: float, currency: str) -> str:
    return cash.unit_price(hundredths, currency) if isfinite(hundredths) else "no heat saved"


def _note(life: Life) -> str:
    price = price_of_saved_heat(life)
    bought = (
        f"A kWh of the heat it saves is bought at {cash.unit_price(price, life.currency)}. " if isfinite(price) else ""
    )
    terms = "today's money, inflation left out" if life.case.worth.terms == "real" else "money of each year"
    return (
        f"{bought}All in {terms}. A rate below 0%: less comes back than is laid out. What the kit is still worth in "
        "the last year is counted, straight line over its life."
    )


def workings(life: Life) -> Rows:
    """How each figure at the best guess is worked out, with its numbers."""
    found, plan, currency = life.comparison, life.plan, life.currency
    option, base = found.option_label, found.baseline_label

    def money(value: float) -> str:
        return cash.exact_money(value, currency)

    flows, rate = np.ravel(plan.flows), float(plan.discount)
    laid = np.ravel(plan.outlays)
    saved = np.ravel(plan.heat_saved)
    first, second, last = (money(float(flows[year])) for year in (0, 1, -1))
    today = f"{first} today, {second} in year 1, … {last} in year {plan.years}"
    rows = (
        (
            "Extra cost of fitting",
            f"fitting {option}, less fitting {base}",
            money(found.net_capital),
        ),
        (
            "Net saving in the first year",
            "heat bill saved, less more for ventilation's electricity, less more for filters and service",
            f"{money(found.heat_bill_saving)} {MINUS} {money(found.extra_ventilation_bill)} {MINUS} "
            f"{money(found.extra_upkeep)} = {money(found.net_saving)}",
        ),
        (
            "Simple payback",
            "extra cost over net saving in the first year",
            f"{money(found.net_capital)} / {money(found.net_saving)} = {simple_said(found.simple_payback, found.life)}",
        ),
        (
            "Payback, later costs counted",
            "the year from which the running sum of all years is never below nil again",
            f"{today}: {payback_said(plan.lasting_payback)}",
        ),
        (
            "Worth today",
            f"each year's money over (1 + {_rate(rate)}) to the power of the year, summed",
            f"{today}; sum {money(float(plan.net_present_value))}",
        ),
        (
            "Yearly rate of return",
            "the discount at which that sum is nil",
            return_said(float(returns(plan)[0])),
        ),
        (
            "Cost of each kWh of heat saved",
            "what is laid out beyond the baseline, ventilation's electricity with it, over heat saved, both discounted",
            f"{money(float(worth.net_present_value(laid, rate=rate)))} / "
            f"{energy(float(worth.net_present_value(saved, rate=rate)))} = {_price(float(_cost(plan)[0]), currency)}",
        ),
        (
            f"Carbon saved over {years(float(plan.years))}",
            "energy saved in each year by that year's factor, less carbon of making the kit",
            f"{carbon(float(plan.carbon_saved[1]))} in year 1, … {carbon(float(plan.carbon_saved[-1]))} in year "
            f"{plan.years}; sum {carbon(float(plan.carbon_lifetime))}",
        ),
    )
    return Rows(
        caption=f"Against {life.words}: how each is worked out",
        head=("Figure", "In words", "With these numbers"),
        rows=rows,
        words=frozenset({0, 1, 2}),
    )


def from_heat(air: FreshAir, found: Comparison, currency: str) -> Rows:
    """From the heat that the fresh air takes to the net saving of a year."""

    def money(value: float) -> str:
        return cash.exact_money(value, currency)

    return Rows(
        caption=f"From heat lost to net saving, a year, against {found.baseline_label}",
        head=("Step", "Heat", "Money"),
        rows=(
            ("Heat that the fresh air takes in heated hours", energy(air.total), ""),
            ("Of it past the exchanger, through leaks and windows", energy(air.past), ""),
            ("Of it through the exchanger and lost there", energy(air.lost), ""),
            ("Kept by the exchanger", energy(air.kept), ""),
            (f"Heat saved against {found.baseline_label}", energy(found.heat_saved), money(found.heat_bill_saving)),
            (
                "Less more for ventilation's electricity",
                energy(found.extra_electricity),
                money(found.extra_ventilation_bill),
            ),
            ("Less more for filters and service", "", money(found.extra_upkeep)),
            ("Net saving", "", money(found.net_saving)),
        ),
        note="The heat kept is more than the heat saved where this option lets in more air than the other.",
    )


def by_year(life: Life) -> Rows:
    """The years themselves."""
    plan, currency = life.plan, life.currency
    total, gone = (
        np.ravel(plan.cumulative),
        np.cumsum(worth.discounted(np.ravel(plan.flows), rate=float(plan.discount))),
    )
    flows, kilograms, sums = (np.ravel(part) for part in (plan.flows, plan.carbon_saved, plan.carbon_cumulative))
    return Rows(
        caption=f"Against {life.words}, year by year at the best guess",
        head=("Year", "Money in it", "Money so far", "Discounted so far", "Carbon saved", "Carbon so far"),
        rows=tuple(
            (
                "today" if year == 0 else str(year),
                *(cash.exact_money(float(row[year]), currency) for row in (flows, total, gone)),
                *(joined(fixed(float(row[year]), decimals=0), "kg") for row in (kilograms, sums)),
            )
            for year in range(plan.years + 1)
        ),
    )


def entries(origins: Mapping[str, Origin], life: Life) -> Rows:
    """Which entries stand behind the figures, what they rest on, and where they come from."""
    costs = [
        path
        for name in (life.comparison.option, life.comparison.baseline)
        for path in origins
        if path.startswith(f"options.{name}.cost.")
    ]
    return Rows(
        caption=f"Entries behind the figures against {life.words}",
        head=("Entry", "Value", "Rests on", "Source"),
        rows=tuple(_entry(origins[path], life) for path in (*_ENTRIES, *costs) if path in origins),
        words=frozenset({0, 2, 3}),
    )


def _entry(origin: Origin, life: Life) -> tuple[str, ...]:
    value, unit = origin.value, cash.price_unit(origin.unit, life.currency)
    said = joined(number(value), unit) if isinstance(value, int | float) else UNKNOWN if value is None else str(value)
    whose = ""
    if origin.path.startswith("options."):
        name = origin.path.split(".")[1]
        whose = f"{life.case.options[name].label or name}: "
    return (f"{whose}{origin.meaning}", said, origin.tag, origin.source or "as it opens")


def _rate(fraction: float) -> str:
    return joined(number(to_percent(fraction)), "%")
