"""Is this house tight enough, on which side of the borders does it stand, and how sure is that?"""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

import numpy as np

from estimator.air import leakage as air_leakage
from estimator.at_leakage import Difference, Ground, OptionAt, areas_of, difference, option_at
from estimator.inputs.case import Case
from estimator.leak_range import with_q50
from estimator.leak_span import LeakageSpan
from estimator.report import cash
from estimator.report.answer import TODAY
from estimator.report.figures import joined, number
from estimator.report.leakage_said import LEAKAGE_UNIT, bound, leakage, span_words, unit
from estimator.routes import Routes, route_leakages, routes_over
from estimator.sweep import HIGHEST, LOWEST, Side, Sweep, Threshold, sweep
from estimator.units import Array, to_m3h

_RESTS = {"measured": "as tested", "typical": "not tested", "assumed": "not tested"}
_LEAKS = {"measured": "leaks", "typical": "leaks an estimated", "assumed": "leaks, around the figure entered,"}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Against:
    """One option against one baseline: over all leakages, and for the house at both ends and the middle of its own.

    here: arrays (3,), low, middle and high leakage; routes: from the baseline's ventilation, at the same three.
    """

    words: str
    sweep: Sweep
    here: Difference
    routes: tuple[Routes, Routes, Routes]

    @property
    def saving_side(self) -> Side:
        """On which side of "no net saving" the house stands as far as its leakage is known."""
        return _side(self.sweep.saving, self.here.net_saving, self.here.q50)

    @property
    def payback_side(self) -> Side:
        """On which side of "payback equals life" the house stands as far as its leakage is known."""
        yearly = max(self.here.net_capital, 0.0) / self.here.life
        return _side(self.sweep.payback, self.here.net_saving - yearly, self.here.q50)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Tightness:
    """The leaky-house question of one case: both comparisons, and what is known of the leakage.

    ends: the place with the house at the low, the middle and the high end of its leakage.
    """

    place: Ground
    ends: tuple[Ground, ...]
    span: LeakageSpan
    option: str
    option_label: str
    baseline: Against
    today: Against

    @property
    def case(self) -> Case:
        """The filled case."""
        return self.place.case

    @property
    def currency(self) -> str:
        """What money is counted in."""
        return self.case.prices.currency


@dataclass(frozen=True, slots=True)
class Verdict:
    """The answer in one sentence, what it earns, and the same against the house as it is aired today."""

    sentence: str
    then: str
    today: str


def explained() -> str:
    """What a leakage is, in the units that it is said in."""
    volume, time, area = ("metres", "an hour", "metre") if unit() == LEAKAGE_UNIT else ("feet", "a minute", "foot")
    return (
        f"Leakage is said here in {unit()} at 50 Pa: cubic {volume} of air that a test fan presses in {time} through "
        f"each square {area} of outer wall, roof and floor. The trade calls it air permeability, q50."
    )


def sweeps(place: Ground, *, option: str) -> Mapping[str, Sweep]:
    """Both sweeps of an option by the name of their baseline; they do not depend on the house's own leakage."""
    return {
        baseline: sweep(place, option=option, baseline=baseline) for baseline in (place.case.baseline, place.case.today)
    }


def sealed(place: Ground, *, option: str) -> Mapping[str, OptionAt]:
    """An option and both its baselines at the leakage sealed to, which does not depend on the house's own either."""
    target = np.array([place.case.sealing.target])
    return {name: option_at(place, name, target) for name in {option, place.case.baseline, place.case.today}}


def tightness(
    place: Ground,
    span: LeakageSpan,
    *,
    option: str,
    swept: Mapping[str, Sweep],
    known: Mapping[str, OptionAt] = MappingProxyType({}),
) -> Tightness:
    """Everything that the page says, from a place and its sweeps; known: what somebody has of `sealed`."""
    case, points = place.case, np.array([span.low, span.middle, span.high])
    leakages = route_leakages(case, points)
    names = {option, case.baseline, case.today}
    years = {name: option_at(place, name, leakages, known=known.get(name)) for name in names}
    here = {name: year.at(slice(len(points))) for name, year in years.items()}

    def against(baseline: str, words: str) -> Against:
        low, middle, high = routes_over(place, points, years=years, option=option, start=baseline)
        apart = difference(place, points, ours=here[option], theirs=here[baseline], option=option, baseline=baseline)
        return Against(words=words, sweep=swept[baseline], here=apart, routes=(low, middle, high))

    return Tightness(
        place=place,
        ends=tuple(dataclasses.replace(place, case=with_q50(case, float(q50))) for q50 in points),
        span=span,
        option=option,
        option_label=_label(case, option),
        baseline=against(case.baseline, _label(case, case.baseline)),
        today=against(case.today, TODAY),
    )


def verdict(found: Tightness) -> Verdict:
    """Which side the house is on, how far from the border, how sure."""
    first, option = found.baseline, found.option_label
    sentence = (
        f"{_head(first, found.span)}: against {first.words}, {option} saves money here "
        f"{reach(first.sweep.saving)}, and this house, {_RESTS[found.span.tag]}, {_LEAKS[found.span.tag]} "
        f"{span_words(found.span)}{_apart(first.sweep.saving, found.span)}."
    )
    other = found.today
    today = f"Against {other.words}, it saves money {reach(other.sweep.saving)}. {earns(other, found.currency)}"
    return Verdict(sentence=sentence, then=earns(first, found.currency), today=today)


def earns(against: Against, currency: str) -> str:
    """What the house saves in a year, and whether that returns the cost within the life."""
    here = against.here
    yearly = cash.saving(float(here.net_saving.min()), float(here.net_saving.max()), currency)
    if here.net_capital <= 0.0:
        back = "It costs no more to fit, so that any saving pays at once."
    else:
        side = {
            "pays": "this house stands within that border",
            "does not pay": "this house does not",
            "on both sides": "whether this house does cannot be told",
        }[against.payback_side]
        also = "" if not against.sweep.payback.crossings and against.payback_side == "does not pay" else f"; {side}"
        back = (
            f"Its extra cost of {cash.money(here.net_capital, currency)} comes back within a life of "
            f"{number(here.life)} years {reach(against.sweep.payback)}{also}."
        )
    lead = "what it is worth here" if yearly.startswith("cannot") else "here it"
    return f"By leakage alone, all else at its best guess, {lead} {yearly}. {back}"


def reach(threshold: Threshold) -> str:
    """Over which leakages a condition holds, in the one form of the four that it takes."""
    if threshold.form == "already":
        return f"at no leakage from {bound(LOWEST)} to {joined(bound(HIGHEST), unit())}"
    if threshold.form == "not before":
        return f"at every leakage from {bound(LOWEST)} to {joined(bound(HIGHEST), unit())}"
    edges = [LOWEST, *threshold.crossings, HIGHEST]
    first = 0 if threshold.holds_at_lowest else 1
    held = [(edges[i], edges[i + 1]) for i in range(first, len(edges) - 1, 2)]
    return f"only {' and '.join(_stretch(low, high) for low, high in held)}"


def stated(case: Case, q50: float) -> Mapping[str, float]:
    """A leakage as each kind of test would state it, by the name of its measure."""
    area = float(areas_of(np.array([q50]), case)[0, 0])

    def flow(pressure: float) -> float:
        return float(to_m3h(air_leakage.leakage_flow(area, pressure=pressure, exponent=case.leakage.exponent)))

    envelope, volume = float(case.home.envelope_area or np.nan), float(case.home.volume or np.nan)
    return {
        "q50": q50,
        "n50": flow(air_leakage.TEST_PRESSURE) / volume,
        "q4": flow(air_leakage.REFERENCE_PRESSURE) / envelope,
    }


def _head(against: Against, span: LeakageSpan) -> str:
    saving, back = against.saving_side, against.payback_side
    if saving == "on both sides":
        return "On the border" if span.tested else "It cannot be told without a pressure test"
    if saving == "does not pay":
        return "No tightness would be enough" if against.sweep.saving.form == "already" else _lost(against, span)
    if back == "pays":
        return "Yes, tight enough"
    if back == "does not pay":
        return "Tight enough to save money at the best guess of all else, but not to earn back its cost"
    return "Tight enough to save money at the best guess of all else; whether it earns back its cost cannot be told"


def _lost(against: Against, span: LeakageSpan) -> str:
    """Nearly always the house is too leaky; where a saving begins only with leakage, it is not."""
    return "No, too leaky" if any(border <= span.low for border in against.sweep.saving.crossings) else "No"


def _apart(threshold: Threshold, span: LeakageSpan) -> str:
    """How far the nearest border is from both ends of what is known, nothing where it lies between them."""
    inside = any(span.low < border < span.high for border in threshold.crossings)
    if inside or not threshold.crossings:
        return ""
    near = min(threshold.crossings, key=lambda border: min(abs(border - span.low), abs(border - span.high)))
    gaps = sorted((abs(span.low - near), abs(span.high - near)))
    return f": {leakage(gaps[0])} to {leakage(gaps[1])} {'leakier' if span.low >= near else 'tighter'} than that border"


def _stretch(low: float, high: float) -> str:
    if low == LOWEST:
        return f"up to {joined(leakage(high), unit())}"
    if high == HIGHEST:
        return f"above {joined(leakage(low), unit())}"
    return f"from {leakage(low)} to {joined(leakage(high), unit())}"


def _side(threshold: Threshold, margin: Array, points: Array) -> Side:
    """From the house's own figures, since it may leak more than the sweep reaches."""
    inside = any(points[0] < border < points[-1] for border in threshold.crossings)
    holds = (margin > 0.0).tolist()
    if inside or len(set(holds)) > 1:
        return "on both sides"
    return "pays" if holds[0] else "does not pay"


def _label(case: Case, name: str) -> str:
    return case.options[name].label or case.options[name].kind
