"""What does each picture of tightness show, in a sentence above it and told to those who do not see it?"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from types import MappingProxyType

from estimator.report import cash, figures
from estimator.report.leakage_said import bound, unit
from estimator.report.tight import Tightness, reach
from estimator.sweep import TOLD, told

NAMES: Mapping[str, str] = MappingProxyType(
    {
        "net_saving": "Net saving",
        "payback": "Payback",
        "heat_saved": "Heat saved",
        "through_exchanger": "Share of fresh air",
    }
)
"""What may be drawn over leakage, by the name of the figure in a sweep."""


def title(found: Tightness, what: str) -> str:
    """What the picture of one figure shows."""
    return _TITLES[what](found)


def in_words(found: Tightness, what: str) -> str:
    """The picture of one figure told to those who do not see it."""
    parts = []
    for against in (found.baseline, found.today):
        curve = against.sweep.figures
        values = getattr(curve, what)[told(curve)]
        figures_told = zip(TOLD, values.tolist(), strict=True)
        points = "; ".join(f"{bound(tick)}: {said(found, what, value)}" for tick, value in figures_told)
        parts.append(f"against {against.words} {points}")
    return f"{_WORDS[what]} at each leakage in {unit()} at 50 Pa, {'. '.join(parts)}."


def said(found: Tightness, what: str, value: float) -> str:
    """One figure of a sweep with its unit."""
    if what == "net_saving":
        return cash.money(value, found.currency)
    if what == "payback":
        return "never" if math.isinf(value) else "at once" if value <= 0.0 else figures.years(value)
    return figures.share(value) if what == "through_exchanger" else figures.energy(value)


def _saving(found: Tightness) -> str:
    tight, leaky = (float(found.baseline.sweep.figures.net_saving[end]) for end in (0, -1))
    currency = found.currency
    if tight > leaky:
        return (
            f"Against {found.baseline.words}, the tightest home {cash.change(tight, currency)}, the leakiest "
            f"{cash.change(leaky, currency)}"
        )
    return f"Against {found.baseline.words}, a tighter home would not save more"


def _payback(found: Tightness) -> str:
    life = figures.years(found.case.worth.life)
    return f"Against {found.baseline.words}, it pays back within {life} {reach(found.baseline.sweep.payback)}"


def _share(found: Tightness) -> str:
    share = found.baseline.sweep.figures.through_exchanger
    return (
        f"{figures.share(float(share[0]))} of the fresh air passes the exchanger in the tightest home, "
        f"{figures.share(float(share[-1]))} in the leakiest"
    )


def _heat(found: Tightness) -> str:
    saved = found.baseline.sweep.figures.heat_saved
    against = f"Against {found.baseline.words},"
    if saved[0] <= 0.0:
        return f"{against} no heat is saved in the tightest home"
    kept = figures.energy(float(saved[0]))
    last = figures.energy(abs(float(saved[-1])))
    leaky = f"the leakiest saves {last}" if saved[-1] > 0.0 else f"the leakiest needs {last} more"
    return f"{against} the tightest home saves {kept} of heat a year, {leaky}"


_TITLES: Mapping[str, Callable[[Tightness], str]] = MappingProxyType(
    {"net_saving": _saving, "payback": _payback, "heat_saved": _heat, "through_exchanger": _share}
)
_WORDS: Mapping[str, str] = MappingProxyType(
    {
        "net_saving": "Net saving a year",
        "payback": "Years until the extra cost is back",
        "heat_saved": "Heat saved a year",
        "through_exchanger": "Share of fresh air through the exchanger",
    }
)
