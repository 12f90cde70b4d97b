"""What does the weather mean for heat recovery, said in sentences that can stand above its pictures?"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.report import figures
from estimator.report.figures import GAP, fixed, number, share
from estimator.report.rows import Rows
from estimator.report.weather import BASES, Weather
from estimator.units import MONTH_NAMES, Array

QUESTION = "What is the weather here?"
HARDLY = 50.0  # h a year below which a pre-heater hardly matters; assumed
_ALIKE = 0.02  # a difference that is not worth a sentence
_WIND, _SUN = "m/s of wind", "kWh/m²"
_LONG_NAMES = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


def answer(here: Weather, other: Weather) -> str:
    """The first line: what a frost heater would do here, and how much cold there is to work on."""
    return f"{_heater(here)} {_cold(here, other)}"


def _heater(here: Weather) -> str:
    if here.preheater is None:
        hours = hours_of(float(here.frost.sum()))
        return f"Outdoor air is below {figures.temperature(here.set_point)} for {hours} a year here."
    if here.preheater.hours < 0.5:
        return "A pre-heater against frost would never act here."
    rarely = "only " if here.preheater.hours < HARDLY else ""
    return f"A pre-heater against frost would act {rarely}{hours_of(here.preheater.hours)} a year here."


def _cold(here: Weather, other: Weather) -> str:
    if other.cold <= 0.0:
        return f"{other.name} has no cold to work on at this base."
    ratio = here.cold / other.cold - 1.0
    if abs(ratio) < _ALIKE:
        return f"Heat recovery has as much cold to work on as in {other.name}."
    return (
        f"Heat recovery has {share(abs(ratio))} {'more' if ratio > 0 else 'less'} cold to work on than in {other.name}."
    )


def then(here: Weather, other: Weather) -> str:
    """What follows: electricity of the heater, hours of frost, the same there."""
    told = []
    for one in (here, other):
        heater = one.preheater
        taken = f"; the pre-heater takes {figures.energy(heater.electricity)}" if heater else ""
        told.append(
            f"{one.name}: {hours_of(float(one.freezing.sum()))} of frost a year, "
            f"{hours_of(float(one.frost.sum()))} below {figures.temperature(one.set_point)}{taken}"
        )
    warmed = any(one.preheater and one.preheater.hours < float(one.frost.sum()) for one in (here, other))
    why = " The duct to the unit warms the air a little, so the heater acts less often than that." if warmed else ""
    return f"{'. '.join(f'{words[:1].upper()}{words[1:]}' for words in told)}.{why}"


def hours_of(value: float) -> str:
    """Hours, as people say them."""
    text = number(value)
    return f"{text}{GAP}hour{'' if text == '1' else 's'}"


def season(here: Weather) -> str:
    """From when to when the home is heated."""
    if here.season.all():
        return "The home is heated in every month of the year"
    if not here.season.any():
        return "The home needs no heating in this weather"
    first, last = _run(here.season)
    return f"The home is heated from {_LONG_NAMES[first]} to {_LONG_NAMES[last]}"


def _run(on: Array) -> tuple[int, int]:
    """First and last month of the longest run around the year."""
    count = len(on)
    best = (0, 0, 0)
    for start in range(count):
        length = next((step for step in range(count) if not on[(start + step) % count]), count)
        best = max(best, (length, -start, (start + length - 1) % count))
    return -best[1], best[2]


def cold(here: Weather, other: Weather) -> str:
    """Degree-hours of both years at the base."""
    return (
        f"Below {figures.temperature(here.base)} there are {number(figures.converted(here.cold, 'K h'))} degree-hours "
        f"here, {number(figures.converted(other.cold, 'K h'))} in {other.name}"
    )


def bases(here: Weather) -> str:
    """How much the base decides."""
    lower, full = np.interp([here.base - 1.0, here.base], BASES, here.over_bases)
    if full <= 0.0:
        return "There is no cold at any of these bases"
    return f"A home that needs heat only from one degree colder meets {share(1.0 - lower / full)} less cold"


def bases_in_words(here: Weather, other: Weather) -> str:
    """Degree-hours over the base told in full."""
    told = [
        f"{one.name}: "
        + ", ".join(
            f"{figures.temperature(base)} {number(figures.converted(float(value), 'K h'))}"
            for base, value in zip(BASES[::4], one.over_bases[::4], strict=True)
        )
        for one in (here, other)
    ]
    return f"Degree-hours of the year below a base, {figures.unit_shown('K h')}. {'. '.join(told)}."


def frost(here: Weather, other: Weather) -> str:
    """Hours below the pre-heater's set point."""
    return (
        f"It is colder than {figures.temperature(here.set_point)} for {hours_of(float(here.frost.sum()))} here, "
        f"{hours_of(float(other.frost.sum()))} in {other.name}"
    )


def wind(here: Weather, other: Weather) -> str:
    """Mean wind of both years in the heating season, when leaks cost heat."""
    means = [
        figures.quantity(float(np.mean(one.wind[one.season])) if one.season.any() else float(np.mean(one.wind)), _WIND,
                         figures=2)
        for one in (here, other)
    ]  # fmt: skip
    return f"Wind that drives leaks: {means[0]} in the heating season here, {means[1]} in {other.name}"


def sun(here: Weather) -> str:
    """Which façade has most of the sun that helps to heat."""
    winter = here.sun[:, here.season].sum(axis=-1)
    names = list(here.sunny)
    if winter.sum() <= 0.0:
        winter = here.sun.sum(axis=-1)
    best, least = int(np.argmax(winter)), int(np.argmin(winter))
    times = winter[best] / max(float(winter[least]), 1e-9)
    ratio = number(times, figures=2)
    return f"In the heating season a {names[best]} wall gets {ratio} times the sun of a {names[least]} one"


def months(one: Weather) -> Rows:
    """Every figure of one year, month by month."""
    degrees = figures.unit_shown("°C")

    def said(unit: str, decimals: int, *values: Any) -> tuple[str, ...]:
        return tuple(fixed(float(figures.converted(float(each), unit)), decimals=decimals) for each in values)

    rows = [
        (name, *said("°C", 1, one.temp[at], one.coldest[at], one.warmest[at]),
         *said("K h", 0, one.degree_hours[at]), *said("h", 0, one.freezing[at], one.frost[at]),
         *said(_WIND, 1, one.wind[at]), *said(_SUN, 0, *one.sun[:, at]), "yes" if one.season[at] else "no")
        for at, name in enumerate(MONTH_NAMES)
    ]  # fmt: skip
    rows.append(
        ("Year", *said("°C", 1, np.mean(one.temp), one.coldest.min(), one.warmest.max()), *said("K h", 0, one.cold),
         *said("h", 0, one.freezing.sum(), one.frost.sum()), *said(_WIND, 1, np.mean(one.wind)),
         *said(_SUN, 0, *one.sunny.values()), "")
    )  # fmt: skip
    return Rows(
        caption=one.name,
        note=f"{'Invented. ' if one.invented else ''}{one.source}. Means of the year are means of its months.",
        head=("Month", f"Mean {degrees}", f"Coldest {degrees}", f"Warmest {degrees}",
              f"{figures.unit_shown('K h')} below {figures.temperature(one.base)}",
              f"Hours below {figures.temperature(0.0)}",
              f"Hours below {figures.temperature(one.set_point)}", f"Wind {figures.unit_shown(_WIND)}",
              *(f"Sun {name} {figures.unit_shown(_SUN)}" for name in one.sunny), "Heated"),
        rows=tuple(rows),
    )  # fmt: skip


def in_words(what: str, unit: str, here: Weather, other: Weather, *, field: str) -> str:
    """A chart of one monthly quantity told in full."""
    told = [
        f"{one.name}: "
        + ", ".join(
            f"{name} {number(float(value))}"
            for name, value in zip(MONTH_NAMES, figures.converted(getattr(one, field), unit), strict=True)
        )
        for one in (here, other)
    ]
    return f"{what}, {figures.unit_shown(unit)}, month by month. {'. '.join(told)}."


def sun_in_words(here: Weather, other: Weather) -> str:
    """The sun by façade told in full."""
    told = [
        f"{one.name}: " + ", ".join(f"{n} {number(figures.converted(v, _SUN))}" for n, v in one.sunny.items())
        for one in (here, other)
    ]
    return f"Sun on walls by the way they face, {figures.unit_shown(_SUN)} a year. {'. '.join(told)}."
