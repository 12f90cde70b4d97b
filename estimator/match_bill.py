"""Which heat loss of the fabric, or which indoor temperature, makes the estimate of the house as aired today its bill?

The bill is held against the very estimate of the option in place: same weather, air, gains and heating. A bill tells
what the whole house takes, so that whatever else is uncertain (leakage, habits, hot water) widens what it tells of one
entry. The outcome is a proposal; it never rests on more than its own range allows.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable
from dataclasses import dataclass
from math import sqrt
from typing import Literal, cast

import numpy as np

from estimator.climate.year import ClimateYear
from estimator.errors import Fault, InputFaults
from estimator.inputs.case import Case
from estimator.inputs.catalogue import is_electric, table
from estimator.inputs.places import value_at, with_value, with_values
from estimator.inputs.quantity import Tag
from estimator.leak_range import leakage_span
from estimator.metered import Bill, Metered, metered, on_this_meter, today_year
from estimator.survey.fill import Filled, filled
from estimator.survey.ranges import SCALES, Range, ranges, rows
from estimator.survey.typical import fabric_loss
from estimator.sweep import root
from estimator.tries import place_of_rank

Unknown = Literal["home.fabric_loss", "home.indoor_temperature"]

# Where in its range an input lies that a tenth of all cases lie beyond, as everywhere.
_AT_ENDS = float(place_of_rank(0.90))
_PLACES = (-_AT_ENDS, _AT_ENDS)
# Indoor temperatures a lived-in home may have on average, all rooms and hours [°C]; common practice, no source.
_COOLEST, _WARMEST = 12.0, 25.0
# Hot water asked of the household, or worked out from people; common practice, no source.
_HOT_WATER = {"measured": (0.9, 1.1), "typical": (0.75, 1.3), "assumed": (0.7, 1.4)}
# Heating of one winter against a typical one, where the bill's own year is not known; common practice, no source.
_ANY_YEAR = (0.9, 1.1)
# Inputs whose range also blurs what a bill tells; prices, costs and the other options do not.
_BLURRING = ("leakage", "indoor_temperature", "internal_gains", "sun", "fabric", "efficiency")
_ROUNDING = 1e-9


class Implausible(InputFaults):
    """No plausible value gives the bill; short: even the lowest takes more than the meter left for heating."""

    def __init__(self, fault: Fault, *, short: bool) -> None:
        super().__init__([fault])
        self.short = short


@dataclass(frozen=True, slots=True, kw_only=True)
class Cause:
    """One thing that widens the answer: what the unknown would be with it alone at its low and at its high end."""

    words: str
    at_low: float
    at_high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Match:
    """The value of the unknown at which the estimate of the house as aired today takes what the meter counted.

    low, high: all causes together, each taken as independent of the others. tag: what an entry of this value may be
    said to rest on.
    """

    unknown: Unknown
    now: float
    value: float
    low: float
    high: float
    tag: Tag
    metered: Metered
    estimated_now: float  # kWh the meter would have counted by the case as it stands, in the winter of the bill
    causes: tuple[Cause, ...]  # widest first


def match(
    case: Case,
    year: ClimateYear,
    bill: Bill,
    *,
    unknown: Unknown = "home.fabric_loss",
    own_year: ClimateYear | None = None,
) -> Match:
    """The unknown from a bill; InputFaults, with the reason, where no plausible value gives it.

    own_year: weather of the very year of the bill, in place of a correction by degree-days.
    """
    survey = filled(case)
    counted = metered(survey.case, year, bill, own_year=own_year)
    weather = own_year or year
    found = _solved(survey.case, weather, counted, unknown)
    causes = tuple(_causes(survey, weather, counted, unknown))
    low, high = _together(found, causes, within=plausible(survey.case, unknown))
    return Match(
        unknown=unknown,
        now=float(value_at(survey.case, unknown)),
        value=found,
        low=low,
        high=high,
        tag=_tag(unknown, found, low, high),
        metered=counted,
        estimated_now=counted.total + _surplus(survey.case, weather, counted) / counted.weather,
        causes=causes,
    )


def plausible(case: Case, unknown: Unknown) -> tuple[float, float]:
    """Lowest and highest value that any house of this form and size might have; the case filled.

    For fabric: from the best-insulated to the oldest row of the table of homes, widened as a guess is.
    """
    if unknown == "home.indoor_temperature":
        return _COOLEST, _WARMEST
    homes = table("homes")
    losses = [
        float(fabric_loss(dataclasses.replace(case.home, age=age, construction=construction)))
        for age in homes["age"]
        for construction in homes["construction"]
    ]
    row = next(each for each in rows() if each.name == "fabric")
    below, above = row.ends["assumed"]
    return min(losses) * below, max(losses) * above


def _solved(case: Case, year: ClimateYear, counted: Metered, unknown: Unknown) -> float:
    """The root; InputFaults where the bill lies outside of what is plausible."""

    def surplus(value: float) -> float:
        return _surplus(with_value(case, unknown, value), year, counted)

    low, high = plausible(case, unknown)
    at_low, at_high = surplus(low), surplus(high)
    if at_low > _ROUNDING:
        raise _refusal(case, unknown, counted, limit=low, short=True)
    if at_high < -_ROUNDING:
        raise _refusal(case, unknown, counted, limit=high, short=False)
    return root(surplus, low=low, high=high, at_low=at_low, at_high=at_high)


def _surplus(case: Case, year: ClimateYear, counted: Metered) -> float:
    """By how much the estimate of the house as aired today takes more for heating than the meter left for it [kWh]."""
    option = today_year(case, year)
    needed = on_this_meter(case, option)
    if counted.other_heat > 0.0 and option.heating_demand > 0.0:
        # Heat from elsewhere is heat that this fuel was not bought for.
        needed *= max(1.0 - counted.other_heat / option.heating_demand, 0.0)
    fans = option.electricity if is_electric(case.heating.fuel) else 0.0
    return needed + fans * counted.weather - counted.for_heating


def _causes(survey: Filled, year: ClimateYear, counted: Metered, unknown: Unknown) -> list[Cause]:
    """Whatever else is uncertain, one at a time, widest first."""
    case, span = survey.case, leakage_span(survey.case)
    inputs = ranges(survey, leakage=(span.low / span.middle, span.high / span.middle))
    found = [
        _cause(item.words, [(_moved(case, item, place), counted) for place in _PLACES], year, unknown)
        for item in inputs
        if item.name in _BLURRING and unknown not in item.ends
    ]
    factors = [("hot water", _HOT_WATER[survey.origins["prices.hot_water"].tag], counted.with_hot_water)]
    if not counted.weather_known:
        factors.append(("the winter of the bill, which is not known", _ANY_YEAR, counted.with_weather))
    for words, (least, most), changed in factors:
        ends = np.interp(_PLACES, (-1.0, 0.0, 1.0), (least, 1.0, most))
        found.append(_cause(words, [(case, changed(float(factor))) for factor in ends], year, unknown))
    return sorted(found, key=lambda each: -abs(each.at_high - each.at_low))


def _cause(words: str, ends: list[tuple[Case, Metered]], year: ClimateYear, unknown: Unknown) -> Cause:
    at_low, at_high = (_within(case, year, counted, unknown) for case, counted in ends)
    return Cause(words=words, at_low=at_low, at_high=at_high)


def _within(case: Case, year: ClimateYear, counted: Metered, unknown: Unknown) -> float:
    """The root, or the end of what is plausible that lies nearest to it."""
    low, high = plausible(case, unknown)
    try:
        return _solved(case, year, counted, unknown)
    except Implausible as error:
        return low if error.short else high


def _moved(case: Case, item: Range, place: float) -> Case:
    """The case with one input at a place of its range, between -1 and 1."""
    where = np.asarray(place)
    return cast(
        Case, with_values(case, {path: float(item.drawn(path, value_at(case, path), where)) for path in item.ends})
    )


def _together(found: float, causes: Iterable[Cause], *, within: tuple[float, float]) -> tuple[float, float]:
    """Lowest and highest with all causes at once: independent of each other, so that their squares add up.

    Never beyond what is plausible, where the causes themselves end.
    """
    below, above = 0.0, 0.0
    for cause in causes:
        below += max(found - min(cause.at_low, cause.at_high), 0.0) ** 2
        above += max(max(cause.at_low, cause.at_high) - found, 0.0) ** 2
    return max(found - sqrt(below), within[0]), min(found + sqrt(above), within[1])


def _tag(unknown: Unknown, found: float, low: float, high: float) -> Tag:
    """What the value may be said to rest on: never a measurement, since no bill measures one entry of a house.

    Typical, where the range that is tried for a typical entry is as wide as the bill's own; assumed otherwise.
    """
    row = next(each for each in rows() if unknown in each.paths)
    ends = [float(SCALES[row.scale](found, *row.ends["typical"], np.asarray(where))) for where in _PLACES]
    return "typical" if ends[0] <= low and high <= ends[1] else "assumed"


def _refusal(case: Case, unknown: Unknown, counted: Metered, *, limit: float, short: bool) -> Implausible:
    heat = f"{counted.for_heating:,.0f} kWh for heating"
    if unknown == "home.indoor_temperature":
        what = f"{heat} would mean {'less' if short else 'more'} than {limit:.0f} °C indoors on average"
    else:
        size = f"a {case.home.form} house of {case.home.floor_area:,.0f} m²"
        what = (
            f"{heat} is less than {size} takes even with the best walls and windows, {limit:,.0f} W/K"
            if short
            else f"{heat} is more than {size} takes even with the poorest walls and windows, {limit:,.0f} W/K"
        )
    check = (
        "rooms left cold, heat from a stove, leakage taken too high, or a bill of less than a year"
        if short
        else "a warmer home, an older boiler, leakage taken too low, or something else on this meter"
    )
    return Implausible(Fault("bill", f"{what}. Nothing was changed. What may be otherwise: {check}."), short=short)
