"""What heat does one plain home need, by the estimate and by the methods of ISO 13790?

A home in a few figures goes through the estimate's own functions and, apart from them, through a method of the
standard. Both get the same air hour by hour, the same sun and the same people.
"""

from __future__ import annotations

import dataclasses
from functools import cache
from typing import Any

import numpy as np

from estimator.air import leakage, requirement
from estimator.air.infiltration import Setting
from estimator.climate.sources import load_year
from estimator.climate.year import ClimateYear
from estimator.corridor import air_year, home_year
from estimator.evidence import monthly
from estimator.evidence.held import Held, HeldHomes, held, plain_option, ventilation_coefficient
from estimator.evidence.hourly import CAPACITY_PER_FLOOR, Homes
from estimator.inputs.case import Case
from estimator.survey.fill import filled
from estimator.survey.numbers import home_numbers
from estimator.units import SECONDS_PER_HOUR, air_changes, from_mm2

MASSES = ("very light", "light", "medium", "heavy", "very heavy")
STOREY_HEIGHT = 2.5  # m
INTERNAL_GAINS = 4.0  # W/m²
TEMP_IN = 20.0  # °C
BEDROOM_AREA = 30.0  # m² of the whole floor
VENTILATOR = 4000.0  # mm² of open ventilators for each habitable room with the extract fan
SHELTER, STOREYS = 3, 2
SIDES = (0.1, 0.25, 0.4, 0.25)  # of the glazing: north, east, south, west


@cache
def by_the_hour(*, climate: str, **figures: Any) -> dict[str, float]:
    """`demand` with an extract fan and heat `saved` by recovery, kWh a year, by the simple hourly method.

    climate: name of an included year; figures: as `plain_home` takes them.
    """
    found = _held(climate, **figures)
    return {"demand": float(found.extract_reference[0]), "saved": float(found.saved_reference[0])}


@cache
def by_the_month(*, climate: str, **figures: Any) -> dict[str, float]:
    """The same by the monthly method."""
    homes, year = plain_home(**figures), _year(climate)
    shared = home_year(homes.home, year)
    extract, recovery = (
        monthly.heating_need(
            temp_difference=shared.temp_difference,
            fabric=homes.home.fabric_loss,
            ventilation=ventilation_coefficient(
                homes, option, air_year(homes.home, option, shared, top_up=True), shared.heat_capacity
            ),
            gains=shared.gain,
            heat_capacity=homes.home.heat_capacity,
        )[0]
        for option in (homes.extract, homes.recovery)
    )
    return {"demand": float(extract), "saved": float(extract - recovery)}


@cache
def estimated(*, climate: str, **figures: Any) -> dict[str, float]:
    """The same by the estimate."""
    found = _held(climate, **figures)
    return {"demand": float(found.extract[0]), "saved": float(found.saved[0])}


def plain_home(
    *,
    floor_area: float,
    tested: float,
    fabric: float,
    window: float,
    glazing: float,
    mass: str,
    effectiveness: float,
) -> HeldHomes:
    """A home of two storeys in a column of one, with an extract fan and with heat recovery at the same flow.

    floor_area m²; tested: air changes an hour at 50 Pa; fabric W/K, of it window W/K; glazing m², shared among four
    sides; mass: one of `MASSES`; effectiveness 0 to 1.
    """
    bedrooms = max(1.0, round(floor_area / BEDROOM_AREA))
    volume = STOREY_HEIGHT * floor_area
    required = np.array(
        [[requirement.england_2021(floor_area=floor_area, bedrooms=bedrooms, people=0.0, habitable_rooms=bedrooms + 1)]]
    ).reshape(1, 1)
    heat_capacity = CAPACITY_PER_FLOOR[MASSES.index(mass)] * floor_area / SECONDS_PER_HOUR
    home = dataclasses.replace(
        home_numbers(filled(Case()).case),
        volume=volume,
        leakage_area=leakage.leakage_area(tested / air_changes(1.0, volume), pressure=leakage.TEST_PRESSURE),
        setting=Setting(storeys=STOREYS, shelter=SHELTER),
        infiltration_model="basic",
        fabric_loss=np.array([[fabric]]),
        heat_capacity=np.array([[heat_capacity]]),
        apertures=tuple(np.array([[glazing * side]]) for side in SIDES),  # type: ignore[arg-type]
        internal_gains=INTERNAL_GAINS * floor_area,
        temp_in=TEMP_IN,
        required=required,
        top_up=True,
        fixed_base=None,
    )
    ventilators = leakage.ventilator_leakage_area(from_mm2(VENTILATOR * (bedrooms + 1.0)))
    return HeldHomes(
        home=home,
        extract=plain_option(supply=0.0, extract=required, ventilators=ventilators),
        recovery=plain_option(supply=required, extract=required, effectiveness=effectiveness),
        reference=Homes(
            floor_area=np.array([floor_area]),
            opaque=np.array([fabric - window]),
            window=np.array([window]),
            mass_class=np.array([MASSES.index(mass)]),
        ),
    )


@cache
def _held(climate: str, **figures: Any) -> Held:
    return held(plain_home(**figures), _year(climate))


@cache
def _year(climate: str) -> ClimateYear:
    return load_year(climate)
