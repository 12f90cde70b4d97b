"""How do bills by month and carbon by year read, in a sentence above each picture and for those who do not see it?"""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite

import numpy as np

from estimator.compare import Result
from estimator.estimate import OptionYear
from estimator.inputs.prices import Prices
from estimator.monthly import months
from estimator.report import cash
from estimator.report.figures import carbon, energy, quantity, share, years
from estimator.report.life import Life, carbon_path
from estimator.report.rows import Rows
from estimator.units import MONTH_NAMES, Array

_NOTHING = 1.0  # kg


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Bills:
    """The household's bill of one option by month [money], the whole of it."""

    name: str
    label: str
    months: Array

    @property
    def year(self) -> float:
        """Of the whole year."""
        return float(np.sum(self.months))


def monthly_bills(result: Result) -> tuple[Bills, ...]:
    """Every option's bill by month."""
    done = result.estimate
    return tuple(
        Bills(name=name, label=option.label, months=np.asarray(months(done, option).bill))
        for name, option in done.options.items()
    )


def bills_title(bills: tuple[Bills, ...], currency: str) -> str:
    """What the picture of the bills shows."""
    least, most = min(bills, key=lambda bill: bill.year), max(bills, key=lambda bill: bill.year)
    apart = most.year - least.year
    if apart < 1.0:
        return "The whole bill is the same whichever way the house is aired"
    more = f"{cash.money(apart, currency)} a year higher {_with(most.label)}"
    return f"The whole bill is lowest {_with(least.label)} and {more}"


def _with(label: str) -> str:
    return label if label.startswith("as ") else f"with {label}"


def bills_in_words(bills: tuple[Bills, ...], currency: str) -> str:
    """The picture told to those who do not see it."""
    told = "; ".join(f"{bill.label} {cash.exact_money(bill.year, currency)}" for bill in bills)
    return f"{bills_title(bills, currency)}. Bills of a year, standing charges included: {told}. By month in the table."


def bills_table(bills: tuple[Bills, ...], currency: str) -> Rows:
    """Months by options."""
    return Rows(
        caption="The household's whole bill by month",
        head=("Month", *(bill.label for bill in bills)),
        rows=(
            *(
                (name, *(cash.exact_money(float(bill.months[place]), currency) for bill in bills))
                for place, name in enumerate(MONTH_NAMES)
            ),
            ("Year", *(cash.exact_money(bill.year, currency) for bill in bills)),
        ),
        note="Heating, hot water, ventilation and all other electricity, standing charges included.",
    )


def carbon_title(life: Life) -> str:
    """What the picture of the carbon shows."""
    total, span = float(np.round(life.plan.carbon_lifetime)), years(float(life.plan.years))
    if abs(total) < _NOTHING:
        return f"Against {life.words}, carbon stays the same over {span}"
    verb = "less" if total > 0.0 else "more"
    said = f"Against {life.words}, {carbon(abs(total))} {verb} carbon over {span}"
    crossing = float(life.plan.carbon_payback)
    if total > 0.0 and isfinite(crossing) and crossing > 0.0:
        return f"{said}; what making it took is back after {years(crossing)}"
    return said


def carbon_note(life: Life) -> str:
    """On which path the grid is taken to go, and whether the kit itself is counted."""
    cost = life.case.options[life.comparison.option].cost
    kit = (
        f"{carbon(cost.embodied)} for making and fitting {life.label} are counted."
        if cost.embodied
        else "Carbon of making the kit is not counted: no figure was entered."
    )
    return f"{path_said(life.case.prices)} {kit}"


def path_said(prices: Prices) -> str:
    """The grid path in words."""
    now = quantity(prices.electricity_carbon, "kg/kWh")
    if prices.carbon_path == "constant":
        return f"Electricity at {now} in every year: a later grid is not foreseen unless a path is entered."
    end = quantity(prices.carbon_end, "kg/kWh")
    return (
        f"Electricity at {now} in {prices.carbon_year}, falling straight to {end} in {prices.carbon_end_year}, and "
        "level from then on: a plan, no fact."
    )


def carbon_in_words(life: Life) -> str:
    """The picture told to those who do not see it."""
    path = carbon_path(life)
    told = "; ".join(
        f"year {year}: {carbon(float(path.best[year]))} ({carbon(float(path.low[year]))} to "
        f"{carbon(float(path.high[year]))})"
        for year in sorted({*range(0, life.plan.years, 5), life.plan.years})
    )
    return f"{carbon_title(life)}. Carbon saved so far, eight of ten cases in brackets: {told}. {carbon_note(life)}"


def roof_said(option: OptionYear) -> tuple[str, ...]:
    """What of an option's electricity the roof carries, as bought and as no longer sold; none without cells."""
    roof = option.bills.roof
    if roof is None:
        return ()
    parts = (("ventilation", roof.ventilation), ("heating", roof.heating))
    lines = [
        f"The cells give {energy(float(np.sum(roof.generated)))} a year. With {option.label}, "
        f"{energy(float(np.sum(roof.bought)))} are bought and {energy(float(np.sum(roof.sold)))} sold."
    ]
    for words, part in parts:
        bought, kept = float(np.sum(part.bought)), float(np.sum(part.not_sold))
        if bought + kept > 0.0:
            lines.append(
                f"Electricity for {words}: {energy(bought)} bought, {energy(kept)} from the roof and no longer sold "
                f"({share(kept / (bought + kept))})."
            )
    return tuple(lines)
