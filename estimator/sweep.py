"""Up to which leakage does heat recovery pay in this home, and on which side does the house stand?"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

import numpy as np

from estimator.at_leakage import Difference, Ground, difference_at
from estimator.leak_span import LeakageSpan
from estimator.units import Array

LOWEST, HIGHEST = 0.5, 20.0  # m³/(h m²) at 50 Pa
TOLD = (0.5, 1.0, 2.0, 5.0, 10.0, 20.0)  # leakages at which the sweep is said in words and in a table
POINTS = 60
# Even ratios, since most thresholds lie among the tighter homes, and the round leakages among them.
LEAKAGES: Array = np.sort([*np.geomspace(LOWEST, HIGHEST, POINTS - len(TOLD) + 2), *TOLD[1:-1]])
ROOT_WIDTH = 1e-10  # m³/(h m²), far below what any test can tell
MOST_TRIES = 200

Form = Literal["one", "already", "not before", "several"]
Side = Literal["pays", "does not pay", "on both sides"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Threshold:
    """The leakages at which something stops or starts to hold.

    what: the condition in words; crossings: q50 [m³/(h m²)] in rising order; holds_at_lowest: whether it holds in the
    tightest home of the sweep. It changes at every crossing.
    """

    what: str
    crossings: tuple[float, ...]
    holds_at_lowest: bool

    @property
    def form(self) -> Form:
        """One leakage, lost already at the lowest, held up to the highest, or several."""
        if len(self.crossings) > 1:
            return "several"
        if self.crossings:
            return "one"
        return "not before" if self.holds_at_lowest else "already"

    def holds_at(self, q50: float) -> bool:
        """Whether the condition holds at a leakage [m³/(h m²)]."""
        passed = sum(crossing <= q50 for crossing in self.crossings)
        return self.holds_at_lowest == (passed % 2 == 0)

    def side_of(self, span: LeakageSpan) -> Side:
        """On which side a home stands as far as its leakage is known."""
        inside = [crossing for crossing in self.crossings if span.low < crossing < span.high]
        if inside:
            return "on both sides"
        return "pays" if self.holds_at(span.middle) else "does not pay"

    @property
    def words(self) -> str:
        """The threshold in one line."""
        unit = "m³/(h m²) at 50 Pa"
        if self.form == "not before":
            return f"{self.what} is not lost before {HIGHEST:g} {unit}"
        if self.form == "already":
            return f"{self.what} is lost already at {LOWEST:g} {unit}"
        at = " and ".join(f"{crossing:.1f}" for crossing in self.crossings)
        if self.form == "one":
            return f"{self.what} holds {'up to' if self.holds_at_lowest else 'only above'} {at} {unit}"
        return f"{self.what} changes at {at} {unit}, and {'holds' if self.holds_at_lowest else 'fails'} below the first"

    def sentence(self, span: LeakageSpan) -> str:
        """Which side the house is on, and how far."""
        end = {
            "pays": "this house stands on the paying side",
            "does not pay": "this house stands on the other side",
            "on both sides": "what is known of this house reaches across, so a pressure test comes first",
        }[self.side_of(span)]
        away = ""
        if self.crossings:
            near = min(self.crossings, key=lambda crossing: abs(crossing - span.middle))
            gap = span.middle - near
            away = f", {abs(gap):.1f} {'leakier' if gap > 0.0 else 'tighter'} than that"
        return f"{self.words}; at {span.words}{away}: {end}."


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Sweep:
    """An option against a baseline over all leakages, and both thresholds."""

    figures: Difference
    saving: Threshold
    payback: Threshold


def sweep(place: Ground, *, option: str, baseline: str) -> Sweep:
    """The sweep of a home: it does not depend on how leaky the home itself is, so that it can be kept."""
    figures = difference_at(place, LEAKAGES, option=option, baseline=baseline)
    # With nothing to pay back, the payback is at once wherever anything is saved.
    least = max(figures.net_capital, 0.0) / figures.life

    def saved(q50: float) -> float:
        return float(difference_at(place, np.array([q50]), option=option, baseline=baseline).net_saving[0])

    return Sweep(
        figures=figures,
        saving=threshold("a net saving", saved, over=LEAKAGES, known=figures.net_saving),
        payback=threshold(
            f"a payback within {figures.life:g} years",
            lambda q50: saved(q50) - least,
            over=LEAKAGES,
            known=figures.net_saving - least,
        ),
    )


def told(figures: Difference) -> list[int]:
    """Where in a sweep the leakages of `TOLD` stand."""
    return [int(place) for place in np.searchsorted(figures.q50, TOLD)]


def threshold(what: str, margin: Callable[[float], float], *, over: Array, known: Array) -> Threshold:
    """Where a margin changes its sign: scanned over the leakages `over`, at which it is `known`, then searched for.

    The condition holds where the margin is positive. Never more than one change is seen between two neighbours.
    """
    holds = known > 0.0
    changes = np.flatnonzero(holds[1:] != holds[:-1])
    crossings = tuple(
        root(margin, low=float(over[i]), high=float(over[i + 1]), at_low=float(known[i]), at_high=float(known[i + 1]))
        for i in changes
    )
    return Threshold(what=what, crossings=crossings, holds_at_lowest=bool(holds[0]))


def root(function: Callable[[float], float], *, low: float, high: float, at_low: float, at_high: float) -> float:
    """Where a continuous function is nil between two points of unlike sign.

    Regula falsi in the Illinois form (Dowell and Jarratt 1971, from memory): the value at an end that stays a second
    time is halved, so that neither end stays for good.
    """
    stayed = ""
    for _ in range(MOST_TRIES):
        if at_low == 0.0 or high - low < ROOT_WIDTH:
            return low
        if at_high == 0.0:
            return high
        middle = low - at_low * (high - low) / (at_high - at_low)
        at_middle = function(middle)
        if at_middle == 0.0 or min(middle - low, high - middle) < ROOT_WIDTH:
            return middle
        if (at_middle > 0.0) == (at_high > 0.0):
            high, at_high = middle, at_middle
            at_low, stayed = at_low / (2.0 if stayed == "low" else 1.0), "low"
        else:
            low, at_low = middle, at_middle
            at_high, stayed = at_high / (2.0 if stayed == "high" else 1.0), "high"
    raise ArithmeticError(f"no root found between {low} and {high}")
