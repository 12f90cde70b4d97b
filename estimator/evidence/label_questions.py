"""What does the package's own arithmetic make of the EU energy label of a residential ventilation unit?

The label asks for one number per m² of dwelling: primary energy of the fans, less the heat that controlled ventilation
spares against open windows, plus protection from frost. Its conventions are put to the package's functions here.
Regulations (EU) 1253/2014 and 1254/2014, annex VIII; conventions from memory.
"""

from __future__ import annotations

import dataclasses
from types import MappingProxyType

import numpy as np

from estimator.air import recovery
from estimator.evidence.held import plain_option
from estimator.heat.demand import heat_at_fixed_base
from estimator.money.energy import fuel_energy
from estimator.running import fan_power
from estimator.survey.numbers import CONTROL_FACTORS, State
from estimator.units import HOURS_PER_YEAR, SECONDS_PER_HOUR, Array, from_m3h, to_kwh

NET, REFERENCE = from_m3h(1.3), from_m3h(2.2)  # m³/s per m²: with a unit, and with windows
DUCTED = 1.1  # how much more air a ducted unit moves than a perfect one
AIR = 0.344 * SECONDS_PER_HOUR  # J/(m³ K)
PRIMARY = 1.0 / 2.5  # electricity out of primary energy
HEATING = 0.75
FREE_HEAT = 3.0  # K that sun and people carry, already taken off the label's differences
TEMP_IN, FROST = 20.0, -4.0  # °C
SEASONS = MappingProxyType(
    {"cold": (6552, 14.5, 1003, 5.2), "average": (5112, 9.5, 168, 2.4), "warm": (4392, 5.0, 0, 0.0)}
)
"""Hours of heating, their mean difference [K], hours below -4 °C, and how far below [K]."""

CLASS_LIMITS = MappingProxyType({"A+": -42.0, "A": -34.0, "B": -26.0, "C": -23.0, "D": -20.0, "E": -10.0, "F": 0.0})
"""A unit is in a class where its number [kWh/m²] in the average climate lies below this; G lies above all."""

_NO_DUCTS = recovery.DuctShares(intake=1.0, exhaust=1.0, supply=1.0, extract=1.0)


def specific_energy_consumption(
    *, climate: str, fan: float, control: str, exponent: float, thermal: float = 0.0
) -> float:
    """The label's number [kWh/m²] of a ducted unit, below nil where it spares more than it takes.

    climate: of `SEASONS`; fan: W/(m³/s) of both fans together; control: of `CONTROL_FACTORS`, exponent: how fan power
    follows it; thermal: 0 for an extract fan, else a unit with recovery, frost protected by an electric heater.
    """
    hours, difference, frost_hours, frost_difference = SEASONS[climate]
    factor, flow = CONTROL_FACTORS[control], NET * DUCTED
    option = dataclasses.replace(
        plain_option(supply=flow, extract=flow, effectiveness=thermal), fan_power=fan, demand_exponent=exponent
    )
    state = State(share=1.0, supply=flow * factor, extract=flow * factor, demand=factor)
    electricity = to_kwh(fan_power(option, state) * HOURS_PER_YEAR)
    apart = np.full(hours, difference + FREE_HEAT)
    spared = _heat(AIR * REFERENCE * apart, apart) - _heat(_load(apart, AIR * flow * factor, thermal), apart)
    below = np.full(frost_hours, TEMP_IN - FROST + frost_difference)
    heater = to_kwh(np.sum(_recovered(below, AIR * NET, thermal, preheat_to=FROST).preheater)) if thermal else 0.0
    return float(fuel_energy(electricity + heater, efficiency=PRIMARY) - fuel_energy(spared, efficiency=HEATING))


def _load(apart: Array, capacity: float, thermal: float) -> Array:
    return np.asarray(capacity * apart - _recovered(apart, capacity, thermal).heat)


def _recovered(apart: Array, capacity: float, thermal: float, *, preheat_to: float | None = None) -> recovery.Recovered:
    return recovery.inside_envelope(
        apart,
        temp_in=TEMP_IN,
        effectiveness=thermal,
        ducts=_NO_DUCTS,
        capacity_supply=capacity,
        capacity_balanced=capacity,
        preheat_to=preheat_to,
    )


def _heat(load: Array, apart: Array) -> float:
    """kWh that the heating supplies for a load at the full difference, below the base of the label."""
    heat = heat_at_fixed_base(load, TEMP_IN - apart, temp_in=TEMP_IN, fabric=0.0, base=TEMP_IN - FREE_HEAT)
    return float(to_kwh(np.sum(heat)))
