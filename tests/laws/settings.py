"""Which homes, options and years are the laws tried on?"""

from __future__ import annotations

import dataclasses
from functools import cache
from typing import Any

import numpy as np
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st

from estimator import Case, ClimateYear, load_year
from estimator.air.leakage import leakage_area
from estimator.corridor import air_year, heat_demand, home_year
from estimator.survey.fill import filled
from estimator.survey.numbers import HomeNumbers, OptionNumbers, home_numbers, option_numbers
from estimator.units import Array, from_m3h, to_kwh

WINTERS = ("Greensboro", "Sand Point")
KINDS = ("today", "extract", "recovery")

# The same draws every time, few of them: each is a whole year.
FEW = settings(max_examples=12, deadline=None, derandomize=True, database=None, suppress_health_check=list(HealthCheck))
MANY = settings(
    max_examples=60, deadline=None, derandomize=True, database=None, suppress_health_check=list(HealthCheck)
)


@cache
def year_of(name: str) -> ClimateYear:
    """A weather year, loaded once for all laws."""
    return load_year(name)


@cache
def default_home() -> HomeNumbers:
    """The home that the estimator opens on."""
    return home_numbers(filled(Case()).case)


@cache
def default_option(kind: str) -> OptionNumbers:
    """An option of the case that the estimator opens on."""
    return option_numbers(filled(Case()).case.options[kind])


def home_with(*, n50: float, **changes: Any) -> HomeNumbers:
    """The default home at another leakage [1/h at 50 Pa] and with other numbers."""
    home = dataclasses.replace(default_home(), **changes)
    return dataclasses.replace(home, leakage_area=leakage_area(from_m3h(n50 * home.volume), pressure=50.0))


def demand(home: HomeNumbers, option: OptionNumbers, year: ClimateYear, *, top_up: bool = True) -> Array:
    """Yearly heat [kWh], shape (…, 1)."""
    shared = home_year(home, year)
    return np.asarray(to_kwh(heat_demand(home, option, shared, step=year.weight, top_up=top_up)))


def ventilation_load(home: HomeNumbers, option: OptionNumbers, year: ClimateYear) -> tuple[Any, Any, Array]:
    """Home year, air year without windows, and the heat that the air asks for [W], before any gain."""
    shared = home_year(home, year)
    air = air_year(home, option, shared, top_up=False)
    return shared, air, shared.heat_capacity * air.delivered * shared.temp_difference - air.recovered


@st.composite
def homes(draw: st.DrawFn) -> HomeNumbers:
    """Homes from the very tight to the very leaky, light to heavy, poor to well insulated."""

    def between(low: float, high: float) -> float:
        return draw(st.floats(low, high, allow_nan=False))

    area = between(45.0, 220.0)
    return home_with(
        n50=between(0.3, 15.0),
        volume=area * 2.4,
        fabric_loss=area * between(0.5, 3.0),
        heat_capacity=area * between(22.0, 103.0),  # Wh/(m² K), ISO 13790:2008, very light to very heavy
        internal_gains=area * between(1.5, 6.0),
        apertures=tuple(area * between(0.005, 0.035) for _ in range(4)),
        temp_in=between(17.0, 22.0),
    )
