"""How much heat does a home need by the simple hourly method of ISO 13790:2008?

Five resistances, one capacity (clause 7.2.2 and annex C), written from the standard's equations and apart
from the estimator, as the reference for its degree-hours: it takes nothing from the estimate, and the estimate
cannot take from it. Heating only: without cooling, rooms float above the set point.

Choices of the standard that matter when the estimator is held against it:

* Heat leaves the air through a surface node: 3.45 W/(m² K) over 4.5 times the floor area stands in series
  with *all* fabric. Fabric of 1 W/K per m² of floor, air to air, here loses 1/(1/15.525 + 1/1) = 0.94.
* Half of the internal gains fall on the air; the other half and all of the sun on surfaces and mass.
* A part H_window/(9.1 A_t) of the gains on surfaces leaves through the windows at once (equation C.3).
* Fabric splits in two: windows lose heat from the surface node at once, opaque parts through the mass. At
  the same sum, more window means less memory. The caller must choose the split; the total does not tell it.
* Mass is one node with the area and capacity of five classes (table 12).
* The set point is that of the *air*; heating power has no limit; no setback unless given by the hour.
* Recovered heat may enter as a lower ventilation coefficient (clause 9.3: then it follows the real air
  temperature, also where rooms float above the set point) or as a warmer supply temperature.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from estimator.units import HOURS_PER_DAY, MONTH_DAYS, SECONDS_PER_HOUR, Array, to_kwh

# Clause 7.2.2.2: heat transfer between air and surfaces, between surfaces and mass [W/(m² K)]
AIR_TO_SURFACE = 3.45
SURFACE_TO_MASS = 9.1
# Clause 7.2.2.2: area of all surfaces facing the rooms over floor area
SURFACES_PER_FLOOR = 4.5
# Table 12, very light to very heavy: effective mass area over floor area, and capacity [J/(K m² floor)]
MASS_AREA_PER_FLOOR = np.array([2.5, 2.5, 2.5, 3.0, 3.5])
CAPACITY_PER_FLOOR = np.array([80e3, 110e3, 165e3, 260e3, 370e3])

HOURS_PER_MONTH = (HOURS_PER_DAY * np.array(MONTH_DAYS)).astype(int)
HOURS_PER_WEEK = 168
RUN_IN_WEEKS = 8  # the last weeks of the year, lived through once before it starts


@dataclass(frozen=True, kw_only=True)
class Homes:
    """Homes in columns: arrays of shape (homes,)."""

    floor_area: Array  # m²
    opaque: Array  # W/K, heat transfer coefficient of walls, roof, floor, thermal bridges
    window: Array  # W/K, of windows and doors
    mass_class: NDArray[np.intp]  # 0 very light ... 4 very heavy

    @property
    def mass_area(self) -> Array:
        """m², of what warms and cools with the rooms."""
        return MASS_AREA_PER_FLOOR[self.mass_class] * self.floor_area

    @property
    def surface_area(self) -> Array:
        """m², of all surfaces facing the rooms."""
        return SURFACES_PER_FLOOR * self.floor_area

    @property
    def capacity(self) -> Array:
        """Wh/K."""
        return CAPACITY_PER_FLOOR[self.mass_class] * self.floor_area / SECONDS_PER_HOUR

    @property
    def air_to_surface(self) -> Array:
        """W/K, between them."""
        return AIR_TO_SURFACE * self.surface_area

    @property
    def surface_to_mass(self) -> Array:
        """W/K, between them."""
        return SURFACE_TO_MASS * self.mass_area

    @property
    def mass_to_outside(self) -> Array:
        """What is left of the opaque fabric beyond the resistance from surface to mass; equation 63."""
        return np.asarray(1.0 / (1.0 / self.opaque - 1.0 / self.surface_to_mass))


@dataclass(frozen=True, kw_only=True)
class Hourly:
    """What happened, hour by hour; shape (homes, hours)."""

    heat: Array  # W
    air: Array  # °C, as held through the hour
    surface: Array  # °C, as held through the hour
    mass: Array  # °C, at the end of the hour
    mass_at_start: Array  # °C, shape (homes,)

    @property
    def annual_need(self) -> Array:
        """kWh, shape (homes,)."""
        return np.asarray(to_kwh(np.sum(self.heat, axis=-1)))

    @property
    def monthly_need(self) -> Array:
        """kWh, shape (homes, 12)."""
        starts = np.concatenate(([0], np.cumsum(HOURS_PER_MONTH)[:-1]))
        return np.asarray(to_kwh(np.add.reduceat(self.heat, starts, axis=-1)))


def _by_hour(values: Any, homes: int, hours: int) -> Array:
    """Shape (hours, homes), a row an hour; a number, (hours,), (homes, 1) or (homes, hours) given."""
    return np.ascontiguousarray(np.broadcast_to(np.asarray(values, dtype=float), (homes, hours)).T)


def _only(values: Array) -> Any:
    """The one number of an array: plain numbers are worked ten times as fast as arrays of one."""
    return float(values[0])


class _Network:
    """The five resistances and one capacity, entered once an hour with everything but the heating power."""

    def __init__(self, homes: Homes) -> None:
        take = _only if len(homes.floor_area) == 1 else np.asarray
        self.h_is, self.h_ms = take(homes.air_to_surface), take(homes.surface_to_mass)
        self.h_em, self.h_w, self.c_m = take(homes.mass_to_outside), take(homes.window), take(homes.capacity)
        self.to_mass = take(homes.mass_area / homes.surface_area)  # equation C.2
        self.to_surface = 1.0 - self.to_mass - self.h_w / take(SURFACE_TO_MASS * homes.surface_area)  # C.3

    def enter(self, theta_m: Array, theta_e: Array, theta_sup: Array, h_ve: Array, inner: Array, solar: Array) -> None:
        """Mass at the hour's start, outdoors, supply [°C], ventilation [W/K], gains [W]."""
        on_air = 0.5 * inner  # equation C.1
        on_rest = on_air + solar
        # equations C.6 to C.8; C.6 times its bracket in C.5 is written so that it survives no ventilation
        self.share = self.h_is / (self.h_is + h_ve)
        h_2 = self.share * h_ve + self.h_w
        self.pull = self.h_ms / (h_2 + self.h_ms)  # H_tr,3 over H_tr,2
        exchange = 0.5 * (h_2 * self.pull + self.h_em)
        # equations C.4 and C.5, C.10, C.11: what does not depend on the heating power
        self.on_air = on_air + h_ve * theta_sup
        self.driven = self.to_surface * on_rest + self.h_w * theta_e + self.share * self.on_air
        self.kept = theta_m * (self.c_m - exchange) + self.to_mass * on_rest + self.h_em * theta_e
        self.inertia = self.c_m + exchange
        self.at_surface = self.h_ms + h_2
        self.at_air = self.h_is + h_ve
        self.theta_m = theta_m

    def nodes(self, power: Array) -> tuple[Array, Array, Array]:
        """Air, surface and (end of hour) mass [°C] with this heating power [W]."""
        driven = self.driven + self.share * power
        mass_at_end = (self.kept + self.pull * driven) / self.inertia  # equation C.4
        mass = 0.5 * (mass_at_end + self.theta_m)  # equation C.9
        surface = (self.h_ms * mass + driven) / self.at_surface  # equation C.10
        return (self.h_is * surface + self.on_air + power) / self.at_air, surface, mass_at_end  # C.11


def simulate(
    homes: Homes,
    *,
    temp_out: Any,
    temp_set: Any,
    ventilation: Any,
    internal_gains: Any,
    solar_gains: Any,
    temp_supply: Any = None,
    run_in_weeks: int = RUN_IN_WEEKS,
) -> Hourly:
    """The year of homes hour by hour.

    temp_out, temp_set: outdoor air, heating set point [°C]; ventilation: heat transfer coefficient of all
    outdoor air [W/K]; temp_supply: temperature at which it enters [°C], outdoors unless given; internal_gains
    and solar_gains [W]. Each a number, (hours,), (homes, 1) or (homes, hours); one must have all hours.
    """
    count = len(homes.floor_area)
    hours = max(np.shape(x)[-1] for x in (temp_out, ventilation, solar_gains) if np.ndim(x))
    outside, setting, flow, inner, solar = (
        _by_hour(x, count, hours) for x in (temp_out, temp_set, ventilation, internal_gains, solar_gains)
    )
    supply = outside if temp_supply is None else _by_hour(temp_supply, count, hours)

    heat, air, surface, mass = (np.empty((hours, count)) for _ in range(4))
    trial: Any = 10.0 * homes.floor_area  # clause C.4.2: ten watts per m², to find how the air answers
    positive: Any = np.maximum
    if count == 1:
        outside, setting, flow, inner, solar, supply = (
            values[:, 0].tolist() for values in (outside, setting, flow, inner, solar, supply)
        )
        trial, positive = _only(trial), max
    mass_now = setting[-1]  # °C; the run-in makes it forgotten
    mass_at_start = mass_now
    network = _Network(homes)
    for hour in range(-run_in_weeks * HOURS_PER_WEEK, hours):
        if hour == 0:
            mass_at_start = mass_now
        network.enter(mass_now, outside[hour], supply[hour], flow[hour], inner[hour], solar[hour])
        # the air answers in proportion, so two trials give the power exactly
        cold = network.nodes(0.0 * trial)[0]
        warm = network.nodes(trial)[0]
        power = positive(0.0, trial * (setting[hour] - cold) / (warm - cold))
        air_now, surface_now, mass_now = network.nodes(power)
        if hour >= 0:
            heat[hour], air[hour], surface[hour], mass[hour] = power, air_now, surface_now, mass_now
    return Hourly(
        heat=heat.T, air=air.T, surface=surface.T, mass=mass.T, mass_at_start=np.reshape(mass_at_start, count)
    )


def heating_need(homes: Homes, **hourly: Any) -> Array:
    """Heating need of the year [kWh] per home, shape (homes,); arguments of `simulate`."""
    return simulate(homes, **hourly).annual_need
