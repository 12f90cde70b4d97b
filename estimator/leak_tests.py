"""What do several pressure tests over the years say about the house today?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from estimator.leak_span import TEST_UNCERTAINTY, LeakageSpan


@dataclass(frozen=True, slots=True, kw_only=True)
class PressureTest:
    """One test: when, as a year with its fraction, and what it found, q50 [m³/(h m²)]."""

    when: float
    q50: float


@dataclass(frozen=True, slots=True, kw_only=True)
class History:
    """Leakage today from all tests: the newest counts; drift [m³/(h m²) a year] widens what is known of it.

    drift is None where all tests fall into one moment.
    """

    span: LeakageSpan
    drift: float | None
    words: str


def history(tests: Sequence[PressureTest], *, today: float) -> History:
    """What the tests say of the house in the year `today`.

    The newest test is the middle; tests of the same moment are averaged. The span holds that middle and the straight
    line through all tests carried on to today, each with the uncertainty of a test. Work on the house between two tests
    makes the older one useless: leave it out. Raises ValueError without a test, or with one after today.
    """
    if not tests:
        raise ValueError("no pressure test given")
    when, q50 = np.array([test.when for test in tests]), np.array([test.q50 for test in tests])
    if np.any(when > today):
        raise ValueError(f"a pressure test is dated {when.max():g}, after {today:g}")
    newest = float(np.mean(q50[when == when.max()]))
    drift = None
    carried_on = newest
    if np.ptp(when) > 0.0:
        slope, level = np.polyfit(when - today, q50, 1)
        drift, carried_on = float(slope), max(float(level), 0.0)
    span = LeakageSpan(
        low=min(newest, carried_on) * (1.0 - TEST_UNCERTAINTY),
        middle=newest,
        high=max(newest, carried_on) * (1.0 + TEST_UNCERTAINTY),
        tag="measured",
        source=f"{len(tests)} pressure test{'s' if len(tests) > 1 else ''}, each uncertain by 10%; from memory",
    )
    return History(span=span, drift=drift, words=_words(len(tests), float(when.max()), drift, span))


def _words(count: int, newest: float, drift: float | None, span: LeakageSpan) -> str:
    if count == 1:
        return f"One test, of {int(newest)}: {span.words}."
    if drift is None:
        return f"{count} tests, all of {int(newest)}: {span.words}."
    course = "steady" if abs(drift) < 0.005 else f"{'leakier' if drift > 0.0 else 'tighter'} by {abs(drift):.2f} a year"
    return f"{count} tests, the newest of {int(newest)}, {course}: {span.words}."
