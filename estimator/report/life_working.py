"""How is each figure of worth worked out, from which heat, in which years, and from which entries?"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from estimator.compare import Comparison
from estimator.money import worth
from estimator.report import cash
from estimator.report.figures import MINUS, UNKNOWN, carbon, energy, fixed, joined, number, years
from estimator.report.fresh_air import FreshAir
from estimator.report.life import Life, payback_said
from estimator.report.life_worth import cost, price_said, rate_said, return_said, returns, simple_said
from estimator.report.rows import Rows
from estimator.survey.fill import Origin

_ENTRIES = (
    "worth.life", "worth.horizon", "worth.discount", "worth.terms", "prices.electricity", "prices.electricity_growth",
    "prices.fuel", "prices.fuel_growth", "prices.electricity_carbon", "prices.fuel_carbon", "prices.carbon_path",
)  # fmt: skip


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
            f"each year's money over (1 + {rate_said(rate)}) to the power of the year, summed",
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
            f"{energy(float(worth.net_present_value(saved, rate=rate)))} = "
            f"{price_said(float(cost(plan)[0]), currency)}",
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
