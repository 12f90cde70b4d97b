"""What does each picture of tightness show, in a sentence above it and told to those who do not see it?"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from estimator.report import cash, figures
from estimator.report.tight import LEAKAGE_UNIT, Tightness

_SAID_AT = (0.5, 1.0, 2.0, 5.0, 10.0, 20.0)  # m³/(h m²)


def saving_title(found: Tightness) -> str:
    """What the picture of the saving shows."""
    tight, leaky = (float(found.baseline.sweep.figures.net_saving[end]) for end in (0, -1))
    currency = found.currency
    if tight > leaky:
        return (
            f"Against {found.baseline.words}, the tightest home {cash.change(tight, currency)}, the leakiest "
            f"{cash.change(leaky, currency)}"
        )
    return f"Against {found.baseline.words}, a tighter home would not save more"


def share_title(found: Tightness) -> str:
    """What the picture of the share shows."""
    share = found.baseline.sweep.figures.through_exchanger
    return (
        f"{figures.share(float(share[0]))} of the fresh air passes the exchanger in the tightest home, "
        f"{figures.share(float(share[-1]))} in the leakiest"
    )


def heat_title(found: Tightness) -> str:
    """What the picture of the heat shows."""
    saved = found.baseline.sweep.figures.heat_saved
    if saved[0] <= 0.0:
        return f"Against {found.baseline.words} no heat is saved in the tightest home"
    kept = figures.energy(float(saved[0]))
    last = figures.energy(abs(float(saved[-1])))
    leaky = f"the leakiest saves {last}" if saved[-1] > 0.0 else f"the leakiest needs {last} more"
    return f"The tightest home saves {kept} of heat a year, {leaky}"


def saving_in_words(found: Tightness) -> str:
    """The picture of the saving told to those who do not see it."""
    return _told(found, "net_saving", lambda value: cash.money(value, found.currency), "Net saving a year")


def share_in_words(found: Tightness) -> str:
    """The picture of the share told."""
    return _told(found, "through_exchanger", figures.share, "Share of fresh air through the exchanger")


def heat_in_words(found: Tightness) -> str:
    """The picture of the heat told."""
    return _told(found, "heat_saved", figures.energy, "Heat saved a year")


def _told(found: Tightness, what: str, said: Callable[[float], str], words: str) -> str:
    parts = []
    for against in (found.baseline, found.today):
        curve = against.sweep.figures
        points = "; ".join(
            f"{tick:g}: {said(float(np.interp(tick, curve.q50, getattr(curve, what))))}" for tick in _SAID_AT
        )
        parts.append(f"against {against.words} {points}")
    return f"{words} at each leakage in {LEAKAGE_UNIT} at 50 Pa, {'. '.join(parts)}."


def both_in_words(found: Tightness) -> str:
    """Share and heat told one after the other."""
    return f"{share_in_words(found)} {heat_in_words(found)}"
