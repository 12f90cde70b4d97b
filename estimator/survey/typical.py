"""What is a home taken to be where nobody has measured?

Each function returns, by dotted path, the values for entries left out. Numbers may be columns (n, 1) of homes; a choice
may be an array of words, one for each home.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from typing import Any

import numpy as np

from estimator.air import requirement
from estimator.inputs.case import AirNeed
from estimator.inputs.catalogue import Known, option_fact, option_row, table
from estimator.inputs.home import Home, Leakage
from estimator.inputs.option import Option
from estimator.inputs.pressure_tests import pressure_log
from estimator.inputs.quantity import Tag
from estimator.units import to_m3h

# A throttled supply keeps the exhaust, not the intake, from freezing.
THROTTLED_EXHAUST = Known(1.0, "assumed", "exhaust kept above freezing; common practice, no source")
# Parts of the cost that arise once, when an option is fitted.
_FITTING = ("kit", "ducts", "people", "days", "electrical", "commissioning", "making_good")


# Vapour given off in a home, between dry and moist occupation of BS 5250; from memory.
MOISTURE_PER_PERSON = 2.0  # kg a day


def by_word(values: Mapping[str, Any], word: Any) -> Any:
    """The value of a word, or of every word of an array."""
    if isinstance(word, str):
        return values[word]
    keys = list(values)
    column = np.asarray([values[key] for key in keys])
    places = {key: place for place, key in enumerate(keys)}
    index = np.vectorize(places.__getitem__, otypes=[np.intp])(word)
    return column[index]


def _chosen(columns: Mapping[str, Any], word: Any) -> Any:
    """From values of every word, each a number or a column, those of the word of each home."""
    if isinstance(word, str):
        return columns[word]
    return np.select([np.asarray(word) == key for key in columns], list(columns.values()))


def _typical(value: Any, how: str, tag: Tag = "typical") -> Known:
    return Known(value, tag, f"worked out from {how}")


def _ages() -> Mapping[str, Mapping[str, Any]]:
    ages: Mapping[str, Mapping[str, Any]] = table("homes")["age"]
    return ages


def _shares() -> Mapping[str, float]:
    shares: Mapping[str, float] = table("homes")["shares"]
    return shares


def storeys(home: Home) -> Any:
    """Heated storeys: as entered, else one for a flat and two for any other home."""
    if home.storeys is not None:
        return home.storeys
    return by_word({form: 1 if form == "flat" else 2 for form in table("homes")["form"]}, home.form)


def _plan(home: Home, height: Any) -> tuple[Any, Any]:
    """Footprint and outer wall area [m²] of a rectangle with the declared aspect."""
    floors = np.asarray(storeys(home))
    footprint = home.floor_area / floors
    aspect = _shares()["aspect"]
    perimeter = 2.0 * (aspect + 1.0) * np.sqrt(footprint / aspect)
    return footprint, perimeter * height * floors


def _exposed(home: Home) -> dict[str, Any]:
    """Shares of walls, roof and floor that lie out of doors."""
    form = table("homes")["form"]
    return {
        part: by_word({name: row[part] for name, row in form.items()}, home.form) for part in ("walls", "roof", "floor")
    }


def outdoor_surface(home: Home) -> Any:
    """Walls with their windows and roof or ceiling [m²], as far as they lie out of doors, from form and size."""
    footprint, walls = _plan(home, home.ceiling_height)
    exposed = _exposed(home)
    return walls * exposed["walls"] + footprint * exposed["roof"]


def fabric_loss(home: Home) -> Any:
    """Heat loss of the fabric [W/K] from age, construction, form and size."""
    footprint, walls = _plan(home, home.ceiling_height)
    exposed = _exposed(home)
    u = {
        part: by_word({age: row[part] for age, row in _ages().items()}, home.age)
        for part in ("roof", "floor", "window", "bridges")
    }
    by_construction = {
        wall: by_word({age: row["wall"][wall] for age, row in _ages().items()}, home.age)
        for wall in table("homes")["construction"]
    }
    windows = _shares()["openings"] * home.floor_area
    wall_area = np.maximum(walls * exposed["walls"] - windows, 0.0)
    roof_area, floor_area = footprint * exposed["roof"], footprint * exposed["floor"]
    bridges = u["bridges"] * (wall_area + windows + roof_area + floor_area)
    return (
        _chosen(by_construction, home.construction) * wall_area
        + u["window"] * windows
        + u["roof"] * roof_area
        + u["floor"] * floor_area
        + bridges
    )


def home_gaps(home: Home) -> dict[str, Known]:
    """Volume, envelope, rooms, people, fabric, mass, sun and gains of a home."""
    homes = table("homes")
    source = homes["source"]
    volume = home.floor_area * home.ceiling_height
    footprint, walls = _plan(home, home.ceiling_height)
    bedrooms = np.asarray(home.bedrooms)
    people = np.clip(bedrooms, 1, 5) * 1.0 if home.people is None else home.people
    mass = by_word(homes["construction"], home.construction) if home.mass is None else home.mass
    capacity = by_word(homes["mass"], mass) * home.floor_area / 3.6
    side = _shares()["aperture"] * home.floor_area / 4.0
    gains = _shares()["gain_per_person"] * people + _shares()["gain_per_area"] * home.floor_area
    gaps = {
        "storeys": _typical(storeys(home), "the form of the home", "assumed"),
        "volume": _typical(volume, "floor area and ceiling height"),
        "envelope_area": _typical(walls + 2.0 * footprint, "floor area, storeys and height, a plain rectangle"),
        "habitable_rooms": _typical(bedrooms + 1 + (bedrooms >= 4), "bedrooms", "assumed"),
        "people": _typical(people, "bedrooms", "assumed"),
        "fabric_loss": _typical(fabric_loss(home), f"age, construction, form and size; U-values {source}"),
        "mass": _typical(mass, "construction"),
        "heat_capacity": _typical(capacity, "floor area and mass class of ISO 13790:2008"),
        "moisture": Known(
            MOISTURE_PER_PERSON * people, "typical", "people; between dry and moist in BS 5250, from memory"
        ),
        "internal_gains": _typical(gains, "people and floor area", "assumed"),
    }
    for side_name in ("north", "east", "south", "west"):
        gaps[f"aperture_{side_name}"] = _typical(side, "floor area, windows on all four sides alike", "assumed")
    return {path: Known(_scalar(known.value), known.tag, known.source) for path, known in gaps.items()}


def _scalar(value: Any) -> Any:
    """A plain number where there is one home, so that a filled case can be written to a file."""
    return (
        value.item() if isinstance(value, np.generic) or (isinstance(value, np.ndarray) and value.ndim == 0) else value
    )


def leakage_range(home: Home) -> tuple[Any, Any, Any]:
    """Low, typical and high q50 [m³/(h m²)] of an untested home of this age."""
    low, middle, high = (
        by_word({age: row["leakage"][place] for age, row in _ages().items()}, home.age) for place in range(3)
    )
    return low, middle, high


def tested_leakage(leakage: Leakage) -> tuple[Leakage, dict[str, Known]]:
    """The leakage with its newest pressure test in place, where tests are listed and no other leakage is entered."""
    log = pressure_log(leakage.tests) if isinstance(leakage.tests, str) and leakage.tests else None
    if log is None or log.newest is None or leakage.value is not None or not np.all(leakage.measure == "estimate"):
        return leakage, {}
    found = {"measure": log.newest.measure, "value": log.newest.value, "basis": "measured"}
    known = {path: Known(value, "measured", log.source) for path, value in found.items()}
    return dataclasses.replace(leakage, **found), known  # type: ignore[arg-type]


def leakage_gaps(leakage: Leakage, home: Home) -> dict[str, Known]:
    """Leakage by age where no test was entered, and what a figure rests on."""
    estimated = leakage.measure == "estimate"
    basis: Tag = "typical" if estimated else "assumed"
    source = f"age; {table('homes')['source']}"
    gaps = {"basis": Known(basis, basis, "no test entered" if estimated else "a figure whose basis was not said")}
    if estimated:
        gaps["value"] = _typical(_scalar(leakage_range(home)[1]), source)
    return gaps


def hot_water(home: Home) -> Known:
    """Useful heat for hot water [kWh a year] from people."""
    shares = _shares()
    value = shares["hot_water_base"] + shares["hot_water_per_person"] * np.asarray(home.people)
    return _typical(_scalar(value), "people", "assumed")


def air_gaps(air: AirNeed, home: Home) -> dict[str, Known]:
    """The air the home needs [m³/h] by its rule set."""
    if air.rule not in requirement.RULES:
        return {}
    rate = requirement.RULES[air.rule](
        floor_area=home.floor_area,
        bedrooms=home.bedrooms,
        people=home.people,
        habitable_rooms=home.habitable_rooms,
    )
    return {"entered": _typical(_scalar(to_m3h(rate)), f"the rule set {air.rule}")}


def _given(entered: Any, otherwise: Any) -> Any:
    return np.asarray(otherwise if entered is None else entered, dtype=float)


def standing_already() -> dict[str, Known]:
    """Cost of fitting an option that stands in the house today: none, unless somebody entered one."""
    free = Known(0.0, "assumed", "in place already")
    return {f"cost.{part}": free for part in _FITTING}


def option_gaps(option: Option, home: Home, air: AirNeed) -> dict[str, Known]:
    """Flows, ventilators, reference flow and name of an option, from the home and the air it needs [m³/h]."""
    rates = requirement.CONTINUOUS_HIGH_EXTRACT
    need, how = air.entered, "the air the home needs"
    if option_fact(option.kind, "flow_from") == "intermittent rates":
        rates, how = (
            requirement.INTERMITTENT_EXTRACT,
            "the extract rates of fans in kitchen, bathroom, utility room, toilet",
        )
    wet = to_m3h(
        requirement.wet_room_extract(
            kitchens=1,
            bathrooms=home.bathrooms,
            utility_rooms=home.utility_rooms,
            toilets=home.toilets,
            rates=rates,
        )
    )
    ordinary = wet if rates is requirement.INTERMITTENT_EXTRACT else need
    supplies, extracts = option_fact(option.kind, "supplies"), option_fact(option.kind, "extracts")
    # Where a unit moves both and one is given, the other is meant to equal it, imbalance apart.
    supply = _given(option.flows.extract if extracts else None, ordinary) if supplies else 0.0
    extract = _given(option.flows.supply if supplies else None, ordinary) if extracts else 0.0
    duty = np.maximum(_given(option.flows.supply, supply), _given(option.flows.extract, extract))
    ventilators = option_row(option.kind)["flows.ventilator_area_per_room"]
    area = ventilators.value * np.asarray(home.habitable_rooms)
    # Two flows that are both given make their own imbalance.
    both_given = option.flows.supply is not None and option.flows.extract is not None
    own = {"flows.imbalance": _typical(0.0, "supply and extract, both given")} if both_given else {}
    if option.unit.frost == "throttle":
        own["unit.frost_set_point"] = THROTTLED_EXHAUST
    return {
        **own,
        "flows.supply": _typical(_scalar(np.asarray(supply)), how),
        "flows.extract": _typical(_scalar(np.asarray(extract)), how),
        "flows.boost_flow": _typical(_scalar(np.maximum(duty, wet)), "boost rates of the wet rooms, or duty if larger"),
        "unit.largest_flow": _typical(
            _scalar(np.maximum(_given(option.flows.boost_flow, wet), duty)), "the boost flow: ask for more", "assumed"
        ),
        "flows.ventilator_area": Known(_scalar(area), ventilators.tag, f"habitable rooms; {ventilators.source}"),
        "unit.reference_flow": _typical(_scalar(duty), "the ordinary flow: the certificate is read at duty", "assumed"),
    }
