"""What is it worth: each figure of worth with its range, in words where a number would mislead, and its working?"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import isfinite, isinf, isnan
from typing import Any

import numpy as np

from estimator.plan import Plan
from estimator.report import cash
from estimator.report.figures import borne, fixed, joined, number, years
from estimator.report.life import BEYOND, Life, payback_said, price_of_saved_heat
from estimator.report.rows import Rows
from estimator.sure import spread
from estimator.units import Array, to_hundredths, to_percent

_HEAD = ("Figure", "Best guess", "Eight of ten cases")
_SPREAD = ("Figure", "A tenth of the cases below", "Half below", "Nine tenths below")
Said = Callable[[float], str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """One figure of worth: at the best guess, and where a tenth, half and nine tenths of the cases lie below."""

    name: str
    best: str
    low: str
    middle: str
    high: str

    @property
    def range(self) -> str:
        """Between which values eight of ten cases lie."""
        return self.low if self.low == self.high else f"{self.low} to {self.high}"


def figures(life: Life) -> Rows:
    """Every figure of worth against one baseline: the best guess, and between which values the cases lie."""
    return Rows(
        caption=f"Against {life.words}, over {years(float(life.plan.years))}",
        head=_HEAD,
        rows=tuple((each.name, each.best, each.range) for each in _figures(life)),
        note=_note(life),
        words=frozenset({0, 2}),  # a range may need two lines on a phone
    )


def spreads(life: Life) -> Rows:
    """The same figures in all cases tried."""
    return Rows(
        caption=f"Against {life.words}: all cases tried",
        head=_SPREAD,
        rows=tuple((each.name, each.low, each.middle, each.high) for each in _figures(life)),
    )


def _figures(life: Life) -> tuple[Figure, ...]:
    found, cases, plan = life.comparison, life.against.sure.cases, life.plan
    discount, currency = rate_said(float(plan.discount)), life.currency

    def money(value: float) -> str:
        return cash.exact_money(value, currency)

    def row(words: str, best: Any, values: Array, said: Said) -> Figure:
        ends = spread(np.asarray(values))
        every = (float(np.squeeze(best)), ends.low, ends.middle, ends.high)
        told = [said(borne(each, low=ends.low, high=ends.high)) for each in every]
        return Figure(name=words, best=told[0], low=told[1], middle=told[2], high=told[3])

    def carbon_back(span: float) -> str:
        return payback_said(span) if span != 0.0 else "at once" if counts_making(life) else "making it is not counted"

    term = years(float(plan.years))
    return (
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
        row("Cost of each kWh of heat saved", cost(plan), cost(life.cases), lambda price: price_said(price, currency)),
        row(f"Carbon saved over {term}", plan.carbon_lifetime, life.cases.carbon_lifetime, _kilograms),
        row("Carbon payback", plan.carbon_payback, life.cases.carbon_payback, carbon_back),
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


def _kilograms(mass: float) -> str:
    return joined(fixed(mass, decimals=0), "kg")


def cost(plan: Plan) -> Array:
    """Cost of each kWh of heat saved, discounted [hundredths/kWh], one for each case; infinite where none is."""
    return np.atleast_1d(np.asarray(to_hundredths(plan.cost_per_kwh)))


def price_said(hundredths: float, currency: str) -> str:
    """That cost as a price, or that there is none."""
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


def rate_said(fraction: float) -> str:
    """A yearly rate in per cent."""
    return joined(number(to_percent(fraction)), "%")
