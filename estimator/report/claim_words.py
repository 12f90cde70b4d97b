"""Where does a promised figure lie, and what would have to be true for it, in words that judge the number alone?"""

from __future__ import annotations

from math import isfinite

from estimator.claims import Judgement, Kind, Promise
from estimator.report import cash
from estimator.report.figures import number, share, years
from estimator.report.lever_words import said, values_said
from estimator.units import from_percent

KINDS: dict[str, Kind] = {
    "Money saved a year": "saving",
    "Years until it has paid back": "payback",
    "Heat recovered in use": "efficiency",
}
"""What people are promised, in their words."""

LIMITS: dict[Kind, tuple[float, float]] = {
    "saving": (1.0, 10000.0),
    "payback": (0.5, 100.0),
    "efficiency": (1.0, 100.0),
}
PRICES = (0.0, 200000.0)

_ONE = 0.005  # of all cases; less rounds to none of a hundred
_BEYOND = 100.0  # years; nobody can use a longer figure


def promised(promise: Promise, currency: str) -> str:
    """The promise itself, with its unit."""
    return _figure(promise.kind, promise.value, currency)


def verdict(found: Judgement, currency: str, *, baseline: str) -> str:
    """Where it lies in the range of the cases tried, in one sentence."""
    promise, often = found.promise, f"{number(round(100.0 * found.reached))} of 100 cases tried"
    what = f"{_begun(_NAMES[promise.kind])} of {promised(promise, currency)}, against {baseline},"
    between = f"eight of ten cases lie between {_range(found, currency)}"
    if found.position == "below the range":
        return (
            f"{what} is less than this estimate finds: {_all_or(often, found)} do at least as well as that; {between}."
        )
    if found.position == "within the range":
        return f"{what} lies within what this estimate finds: {often} do at least as well; {between}."
    if found.position == "beyond the range":
        few = f"only {often} do as well" if found.reached >= _ONE else "not 1 of 100 cases tried does as well"
        return f"{what} lies beyond the range: {few}; {between}."
    return f"{what} was reached in none of the cases tried; {between}."


def needs(found: Judgement, currency: str) -> tuple[str, ...]:
    """What would have to be true for it, one lever a line; or that nothing plausible of one entry gives it."""
    if found.met_at_best_guess:
        return ("At the best guess of every entry it is reached without changing anything.",)
    if not found.needed:
        return ("Nothing plausible of any one entry alone would give it, all else at its best guess.",)
    return tuple(
        f"{_begun(each.words)} would have to be {values_said(each, currency)}; it is taken to be "
        f"{said(each, each.now, currency)}."
        for each in found.needed
    )


def price_said(found: Judgement, currency: str) -> str:
    """What a promised saving means at the price it was offered at; "" where no price was said."""
    span, price = found.payback_of_saving, found.promise.price
    if span is None or price is None:
        return ""
    offered = f"At {cash.money(price, currency)} for all of it, less what the baseline would cost,"
    if span <= 0.0:
        return f"{offered} nothing more is laid out than for the baseline."
    if not isfinite(span) or span > _BEYOND:
        return f"{offered} even that saving would take more than {years(_BEYOND)}."
    return f"{offered} even that saving would take {years(span)} to return."


_NAMES: dict[Kind, str] = {
    "saving": "a saving",
    "payback": "a payback",
    "efficiency": "heat recovery in use",
}


def _figure(kind: Kind, value: float, currency: str) -> str:
    if kind == "saving":
        return f"{cash.money(value, currency)} a year"
    if kind == "efficiency":
        return share(from_percent(value))
    if not isfinite(value):
        return "never"
    return years(value) if value <= _BEYOND else f"more than {years(_BEYOND)}"


def _range(found: Judgement, currency: str) -> str:
    kind = found.promise.kind
    if kind == "saving":
        low, high = (_signed(end, currency) for end in cash.rounded_range(found.low, found.high))
        return f"{low} and {high} a year"
    return f"{_figure(kind, found.low, currency)} and {_figure(kind, found.high, currency)}"


def _signed(saving: float, currency: str) -> str:
    if saving == 0.0:
        return "saving nothing"
    verb, more = ("saving", "") if saving > 0.0 else ("costing", " more")
    return f"{verb} {cash.money(abs(saving), currency)}{more}"


def _all_or(often: str, found: Judgement) -> str:
    return "all cases tried" if found.reached == 1.0 else often


def _begun(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}"
