"""What does an option pay or cost over its years, said from one plan and from all cases tried?

The best guess is the estimate itself, on every hour of the year; ranges come from the cases tried with stated ranges.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, isfinite
from typing import Any

import numpy as np

from estimator.compare import Comparison
from estimator.inputs.case import Case
from estimator.inputs.cost import Cost
from estimator.plan import Plan
from estimator.report import cash
from estimator.report.figures import share, years
from estimator.report.sure_words import Against, Tried
from estimator.sure import Spread, spread
from estimator.units import Array, to_hundredths

_LOW, _MIDDLE, _HIGH = 0.1, 0.5, 0.9
BEYOND = 100.0  # years; nobody can use a longer figure
_ROUNDING = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Life:
    """One option against one baseline over the years of its case. cases: in all cases tried, one a row."""

    words: str  # what the baseline is called
    label: str  # of the option
    comparison: Comparison
    against: Against
    case: Case  # filled

    @property
    def plan(self) -> Plan:
        """At the best guess, on every hour of the year."""
        return self.comparison.plan

    @property
    def cases(self) -> Plan:
        """In all cases tried, one a row."""
        return self.against.sure.cases.plan

    @property
    def currency(self) -> str:
        """Of every sum."""
        return self.case.prices.currency


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Path:
    """Something that adds up over the years, today first: at the best guess, and where tenths of the cases lie."""

    years: Array
    best: Array
    low: Array
    high: Array


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """Something that is paid in a later year [money at today's price], by the option or in the baseline."""

    year: int
    words: str
    amount: float
    of_option: bool


MONEY_NOTE = (
    "Each year's saving less what is laid out in it, added up, not discounted. The line is the best guess; in any one "
    "year eight of ten cases lie within the band."
)


def lives(found: Tried, comparisons: dict[str, Comparison]) -> tuple[Life, ...]:
    """The option of `found` against every baseline it was tried against. comparisons: by name of the baseline."""
    return tuple(
        Life(
            words=against.words,
            label=found.label,
            comparison=comparisons[against.sure.baseline],
            against=against,
            case=found.place.case,
        )
        for against in found.against
    )


def money_path(life: Life) -> Path:
    """Money saved less what was laid out, up to the end of each year, not discounted."""
    return _path(life.plan.cumulative, life.cases.cumulative)


def carbon_path(life: Life) -> Path:
    """Carbon saved up to the end of each year [kg], embodied carbon against it."""
    return _path(life.plan.carbon_cumulative, life.cases.carbon_cumulative)


def _path(best: Array, cases: Array) -> Path:
    low, high = np.quantile(cases, (_LOW, _HIGH), axis=0, method="inverted_cdf")
    return Path(years=np.arange(float(best.shape[-1])), best=np.ravel(best), low=low, high=high)


def events(life: Life) -> tuple[Event, ...]:
    """Renewals of kit and fans before the last year, in order."""
    case, horizon = life.case, life.plan.years
    names = ((life.comparison.option, True), (life.comparison.baseline, False))
    found = [event for name, own in names for event in _renewals(case.options[name].cost, horizon, own=own)]
    return tuple(sorted(found, key=lambda event: (event.year, not event.of_option)))


def _renewals(cost: Cost, horizon: int, *, own: bool) -> Iterator[Event]:
    for words, amount, first, each in (
        ("fans replaced", cost.fans, cost.fans_year, cost.fans_year),
        ("kit renewed", cost.renewal, cost.renewal_year, cost.kit_life),
    ):
        due = float(first or 0.0)
        while amount and each and due < horizon - _ROUNDING:
            yield Event(year=ceil(due - _ROUNDING), words=words, amount=float(amount), of_option=own)
            due += float(each)


def over_life(life: Life) -> Spread:
    """Money over all years, not discounted: where a tenth, half and nine tenths of the cases lie below."""
    return spread(life.cases.cumulative[:, -1])


def answer(life: Life) -> str:
    """The first line: what it pays over the years counted, everything paid, with its range and its baseline."""
    ends = over_life(life)
    low, high = cash.rounded_range(ends.low, ends.high)
    span = years(float(life.plan.years))
    against, option = f"than {life.words}", f"{life.label[:1].upper()}{life.label[1:]}"
    if low >= 0.0 < high:
        said = f"leaves {cash.money_range(ends.low, ends.high, life.currency)} more in hand {against}"
    elif high <= 0.0 > low:
        said = f"costs {cash.money_range(-ends.high, -ends.low, life.currency)} more {against}"
    else:
        more, less = cash.money(-low, life.currency), cash.money(high, life.currency)
        said = f"may cost about {more} more or leave about {less} more in hand {against}"
    return f"Over {span} {option[:1].lower()}{option[1:]} {said}, fitting, upkeep and renewals counted."


def returned(life: Life) -> str:
    """In how many cases everything laid out has come back by the last year."""
    part = float(np.mean(np.isfinite(life.cases.lasting_payback)))
    count, span = life.against.sure.count, years(float(life.plan.years))
    if part == 0.0:
        often = f"in none of {count:,} cases"
    elif part == 1.0:
        often = f"in all {count:,} cases"
    else:
        often = f"in {share(part)} of {count:,} cases"
    return f"All that is laid out has come back within {span} {often} tried with these ranges."


def money_title(life: Life) -> str:
    """What the picture of the money shows."""
    end = float(life.plan.cumulative[-1])
    span, lasting = years(float(life.plan.years)), float(life.plan.lasting_payback)
    if isfinite(lasting) and lasting > 0.0:
        return f"Against {life.words}, the money is back after about {years(lasting)}"
    if lasting == 0.0:
        return f"Against {life.words}, it is ahead from the first day"
    return f"Against {life.words}, {cash.money(abs(end), life.currency)} would still be missing after {span}"


def money_in_words(life: Life) -> str:
    """The picture told to those who do not see it."""
    path, currency = money_path(life), life.currency
    told = "; ".join(
        f"year {year}: {cash.exact_money(float(path.best[year]), currency)} "
        f"({cash.exact_money(float(path.low[year]), currency)} to {cash.exact_money(float(path.high[year]), currency)})"
        for year in _some(life.plan.years)
    )
    what = "Money saved less what was laid out, not discounted; eight of ten cases in brackets"
    said = f"{money_title(life)}. {what}: {told}."
    paid = "; ".join(event_said(event, life) for event in events(life))
    return f"{said} Later costs: {paid}." if paid else said


def event_said(event: Event, life: Life) -> str:
    """A later cost in words."""
    who = life.label if event.of_option else life.words
    return f"{who}: {event.words} in year {event.year} for {cash.money(event.amount, life.currency)}"


def later_costs(life: Life) -> tuple[str, ...]:
    """What is paid in later years, and what is credited in the last, in one line; none where nothing is."""
    paid = "; ".join(event_said(event, life) for event in events(life))
    return (f"Later costs: {paid}. What the kit is worth in the last year is credited.",) if paid else ()


def _some(last: int) -> tuple[int, ...]:
    """Today, every fifth year, and the last."""
    return tuple(sorted({*range(0, last, 5), last}))


def price_of_saved_heat(life: Life) -> float:
    """What a kWh of heat costs as it is bought, over the useful heat saved [hundredths]; nan where none is saved."""
    saved = life.comparison.heat_saved
    return float(to_hundredths(life.comparison.heat_bill_saving / saved)) if saved > 0.0 else float("nan")


def payback_said(span: Any) -> str:
    """Years until it has paid back, or never."""
    value = float(span)
    if not isfinite(value):
        return "never"
    if value <= 0.0:
        return "at once"
    return years(value) if value <= BEYOND else f"more than {years(BEYOND)}"
