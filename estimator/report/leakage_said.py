"""How is a leakage said: in the units that the reader asked for, with what it rests on?"""

from __future__ import annotations

from estimator import leak_span
from estimator.leak_span import LeakageSpan
from estimator.report.figures import converted, joined, number, unit_shown

LEAKAGE_UNIT = "m³/(h m²)"


def unit() -> str:
    """What a leakage is said in."""
    return unit_shown(LEAKAGE_UNIT)


def leakage(q50: float) -> str:
    """A leakage without its unit: to a tenth, finer than any test; a very small one, or in feet, to two figures."""
    return leak_span.said(q50) if unit() == LEAKAGE_UNIT else number(converted(q50, LEAKAGE_UNIT), figures=2)


def bound(q50: float) -> str:
    """An end of a scale, as round as it is."""
    return f"{q50:g}" if unit() == LEAKAGE_UNIT else leakage(q50)


def span_words(span: LeakageSpan) -> str:
    """The leakage of a house as a range, without what it rests on."""
    return joined(f"{leakage(span.low)} to {leakage(span.high)}", unit())


def stated(span: LeakageSpan) -> str:
    """The leakage as an entry: the figure of a test, or both ends of an estimate."""
    return joined(leakage(span.middle), unit()) if span.tested else f"estimated {span_words(span)}"


def words(span: LeakageSpan) -> str:
    """The span in one line, tested and guessed told apart."""
    ends = f"between {leakage(span.low)} and {leakage(span.high)}"
    return f"{joined(leakage(span.middle), unit())} at 50 Pa, {ends}: {span.known}"
