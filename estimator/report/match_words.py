"""What does a bill tell of the house, in words and with its working?"""

from __future__ import annotations

from estimator.inputs.case import Case
from estimator.inputs.catalogue import is_electric
from estimator.match_bill import Match, Unknown
from estimator.report.figures import energy, number, quantity
from estimator.report.rows import Rows

UNKNOWNS: dict[str, Unknown] = {
    "Fabric heat loss": "home.fabric_loss",
    "Indoor temperature": "home.indoor_temperature",
}
"""What a bill can be asked for, in plain words."""

FABRIC = "The fabric is walls, windows, roof and floor together; ventilation and leaks are not in it."

_UNITS: dict[Unknown, str] = {"home.fabric_loss": "W/K", "home.indoor_temperature": "°C"}
_NAMES: dict[Unknown, str] = {
    "home.fabric_loss": "heat loss of the fabric",
    "home.indoor_temperature": "indoor temperature",
}
_CLOSE = 0.02  # of the bill: nobody's meter and winter are known better

EXPLAINED = (
    "A bill tells what the whole house takes. What it tells of one entry is worked out with all others as they stand, "
    "so it counts as {tag}, never as measured."
)


def sentence(found: Match) -> str:
    """The proposal in one sentence, with its range."""
    name, unit = _NAMES[found.unknown], _UNITS[found.unknown]
    near = f"{number(found.low)} and {quantity(found.high, unit)}"
    return (
        f"The bill fits a {name} of {quantity(found.value, unit)}, between {near} with all else that is uncertain; "
        f"the case has {quantity(found.now, unit)}."
    )


def bought(case: Case) -> str:
    """What the bill is of."""
    return "electricity" if is_electric(case.heating.fuel) else case.heating.fuel


def held_against(found: Match) -> str:
    """The estimate as it stands against the meter."""
    total, now = found.metered.total, found.estimated_now
    if abs(now - total) <= _CLOSE * total:
        return f"The case as it stands would have taken {energy(now)} where the meter counted {energy(total)}: it fits."
    more = "more" if now > total else "less"
    return (
        f"The case as it stands would have taken {energy(now)} where the meter counted {energy(total)}: "
        f"{energy(abs(now - total))} {more}."
    )


def working(found: Match, case: Case) -> Rows:
    """From the meter to the heat that the estimate must reproduce, line by line."""
    counted = found.metered
    weather = (
        f"× {number(counted.weather)}, for a winter of {number(counted.degree_days)} degree-days"
        if counted.weather_known
        else "× 1: the winter of the bill is not known, which widens the range"
    )
    rows = [
        ("Counted by the meter in a year", energy(counted.total)),
        ("Less hot water", energy(counted.hot_water)),
        ("Less cooking", energy(counted.cooking)),
    ]
    if is_electric(case.heating.fuel):
        rows.append(("Less the household's other electricity", energy(counted.other_electricity)))
    rows += [
        ("Left for heating in that winter", energy(counted.left)),
        (f"In the winter of the estimate, {weather}", energy(counted.for_heating)),
    ]
    if counted.other_heat > 0.0:
        rows.append(("Heat from anything else, in the rooms", energy(counted.other_heat)))
    return Rows(caption="From the meter to the heating", head=("Step", "Energy"), rows=tuple(rows))


def causes(found: Match) -> Rows:
    """What widens the range, widest first."""
    unit = _UNITS[found.unknown]
    return Rows(
        caption="What widens it",
        head=("Uncertain", "At its low end", "At its high end"),
        rows=tuple(
            (f"{cause.words[:1].upper()}{cause.words[1:]}", quantity(cause.at_low, unit), quantity(cause.at_high, unit))
            for cause in found.causes
        ),
        note="Each alone; a tenth of all cases lie beyond either end. Together they add up as independent causes do.",
    )


def done(found: Match) -> str:
    """What taking the proposal does, for the button and for undoing."""
    return f"{_NAMES[found.unknown][:1].upper()}{_NAMES[found.unknown][1:]} from the bill"
