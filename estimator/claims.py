"""Where does a promised figure lie in our own range, and what would have to be true for it?

It is the number that is judged, never the firm.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from estimator.costs import option_capital
from estimator.drawn import Difference
from estimator.draws import Ground
from estimator.levers import Needed, best_guess, moved
from estimator.money import worth
from estimator.sure import Sure, spread
from estimator.units import Array, from_percent, to_percent

Kind = Literal["saving", "payback", "efficiency"]
Position = Literal["below the range", "within the range", "beyond the range", "beyond every case tried"]

QUESTIONS = (
    "What is it counted against: the house as it is aired now, or new plain extract that gives as much air?",
    "How leaky was the house taken to be, and was that tested?",
    "At which flow does the certificate give heat recovery and fan power, and what do these ducts leave of them?",
    "At which prices, and are fans, frost protection, filters and service taken off?",
    "Does the price include ducts, electrical supply, measured commissioning, making good and tax?",
)
"""To ask whoever made the promise."""

# Less than so many of all cases on one side is the end of the range, as everywhere.
_END = 0.10


@dataclass(frozen=True, slots=True, kw_only=True)
class Promise:
    """What was promised: net saving [money a year], simple payback [years] or heat recovery in use [%].

    price: what the whole installation is offered for [money], where that was said.
    """

    kind: Kind
    value: float
    price: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Judgement:
    """A promise held against an option's cases. Figures in the unit of the promise."""

    promise: Promise
    low: float
    middle: float
    high: float
    reached: float  # share of the cases that do at least as well, 0 to 1
    position: Position
    payback_of_saving: float | None  # years in which the promised saving returns the price, where both were said
    met_at_best_guess: bool
    needed: tuple[Needed, ...]  # one lever each; those that alone would do
    questions: tuple[str, ...] = QUESTIONS


def judgement(place: Ground, answer: Sure, promise: Promise) -> Judgement:
    """A promise held against the cases of `answer`, which were drawn for the same case and weather as `place`."""
    base = option_capital(place.case.options[answer.baseline].cost)
    figures = _figures(answer.cases, promise, base)
    better = figures <= promise.value if promise.kind == "payback" else figures >= promise.value
    reached, around = float(np.mean(better)), spread(figures)
    now = best_guess(place.case, place.year, option=answer.option, baseline=answer.baseline)

    def target(difference: Difference) -> Array:
        return _beyond(difference, promise, base)

    needed: tuple[Needed, ...] = ()
    met = bool(target(now)[0] >= 0.0)
    if not met:
        found = moved(place.case, place.year, option=answer.option, baseline=answer.baseline, target=target)
        needed = tuple(each for each in found if each.values)
    payback_of_saving = None
    if promise.kind == "saving" and promise.price is not None:
        payback_of_saving = float(worth.simple_payback(promise.price - base, net_saving=promise.value))
    return Judgement(
        promise=promise,
        low=around.low,
        middle=around.middle,
        high=around.high,
        reached=reached,
        position=_position(reached),
        payback_of_saving=payback_of_saving,
        met_at_best_guess=met,
        needed=needed,
    )


def _figures(cases: Difference, promise: Promise, base: float) -> Array:
    if promise.kind == "saving":
        return cases.net_saving
    if promise.kind == "efficiency":
        return np.asarray(to_percent(cases.efficiency))
    return np.asarray(worth.simple_payback(_capital(cases, promise, base), net_saving=cases.net_saving))


def _beyond(figures: Difference, promise: Promise, base: float) -> Array:
    if promise.kind == "saving":
        return figures.net_saving - promise.value
    if promise.kind == "efficiency":
        return np.asarray(figures.efficiency - from_percent(promise.value))
    return np.asarray(figures.net_saving * promise.value - np.maximum(_capital(figures, promise, base), 0.0))


def _capital(figures: Difference, promise: Promise, base: float) -> Array:
    """Net capital: as drawn, or the price offered less what the baseline would have cost."""
    if promise.price is None:
        return figures.net_capital
    return np.full_like(figures.net_capital, promise.price - base)


def _position(reached: float) -> Position:
    if reached == 0.0:
        return "beyond every case tried"
    if reached < _END:
        return "beyond the range"
    return "within the range" if reached <= 1.0 - _END else "below the range"
