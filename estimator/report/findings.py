"""What does each chart show, said in one sentence that can stand above it, and told to those who do not see it?"""

from __future__ import annotations

import math

import numpy as np

from estimator.compare import Comparison
from estimator.report import cash, figures
from estimator.report.ledger import Carbon, MonthsSaved, Payback, Sums
from estimator.units import MONTH_NAMES

_MOST = 0.8  # of the year's heat saved counts as "most"
_LONG_NAMES = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


def saving(found: Sums, currency: str) -> str:
    """What becomes of the heat's worth."""
    heat, left = cash.money(abs(found.heat), currency), cash.money(abs(found.net), currency)
    if found.heat <= 0:
        return f"Heat alone would cost {heat} more a year"
    if found.net > 0:
        return f"Of {heat} saved on heat, {left} a year is left"
    return f"{heat} saved on heat does not cover fans and upkeep"


def carbon(base: Carbon, option: Carbon) -> str:
    """How much carbon goes up or down."""
    less = base.total - option.total
    if abs(less) < 1:
        return "Carbon stays the same"
    verb = "fall" if less > 0 else "rise"
    return f"Carbon would {verb} by {figures.carbon(abs(less))} a year against {base.label}"


def payback(comparison: Comparison, currency: str) -> str:
    """When the extra cost has come back."""
    cost = f"{cash.money(comparison.net_capital, currency)} over {comparison.baseline_label}"
    span, life = comparison.simple_payback, comparison.life
    if math.isinf(span):
        return f"The extra {cost} does not pay back"
    if span <= 0:
        return f"It costs no more to fit than {comparison.baseline_label}, and saves from the first day"
    if span > max(life, 100.0):
        return f"The extra {cost} would need more than 100 years"
    if span > life:
        return f"The extra {cost} would need about {figures.years(span)}, longer than the kit lasts"
    return f"The extra {cost} is back after about {figures.years(span)}"


def months(found: MonthsSaved) -> str:
    """In which run of months most of the heat is saved."""
    total = float(found.heat.sum())
    if total <= 0:
        return "Over the year no heat is saved"
    first, last = _shortest_run(np.maximum(found.heat, 0.0))
    return f"Most heat is saved from {_LONG_NAMES[first]} to {_LONG_NAMES[last]}"


def _shortest_run(heat: np.ndarray[tuple[int], np.dtype[np.float64]]) -> tuple[int, int]:
    """First and last month of the shortest run around the year with most of the heat."""
    twice, wanted, count = np.concatenate([heat, heat]), _MOST * float(heat.sum()), len(MONTH_NAMES)
    for length in range(1, count + 1):
        sums = [float(twice[start : start + length].sum()) for start in range(count)]
        best = int(np.argmax(sums))
        if sums[best] >= wanted:
            return best, (best + length - 1) % count
    return 0, count - 1


def months_in_words(found: MonthsSaved) -> str:
    """The months told in full."""
    told = [
        f"{name} {figures.energy(float(heat))} of heat, {figures.energy(float(more))} more electricity"
        for name, heat, more in zip(MONTH_NAMES, found.heat, found.electricity, strict=True)
    ]
    return f"{months(found)}. {'; '.join(told)}."


def payback_in_words(found: Payback, currency: str) -> str:
    """The path of the money told in full."""
    at_life = float(np.interp(found.life, found.years, found.middle))
    return (
        f"Money since the fitting, from {cash.money(-found.cost, currency)} on the first day "
        f"to {cash.money(at_life, currency)} at the end of its life after {figures.years(found.life)}."
    )


def saving_in_words(found: Sums, currency: str) -> str:
    """The sums told in full."""
    parts = ((found.heat, "saved on heat"), (-found.electricity, "electricity"), (-found.upkeep, "filters and service"))
    told = ", ".join(f"{words} {cash.money(value, currency)}" for value, words in parts)
    return f"{told}, which leaves {cash.money(found.net, currency)} a year."


def carbon_in_words(*options: Carbon) -> str:
    """Each option's carbon told in full."""
    return " ".join(
        f"{one.label}: {figures.carbon(one.heat)} a year from heat, {figures.carbon(one.electricity)} from electricity."
        for one in options
    )
