"""What is the weather here, month by month, and what does it ask of heat recovery?

Figures for the page of the weather; words about them are in `estimator.report.weather_words`.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from estimator.climate.year import FACADES, ClimateYear
from estimator.estimate import Estimate, OptionYear
from estimator.heat.degrees import degree_hours
from estimator.monthly import month_starts, month_sums
from estimator.units import HOURS_PER_YEAR, Array, to_kwh

FREEZING = 0.0  # °C
USUAL_SET_POINT = -3.0  # °C, pre-heaters of exchangers; common practice, no source
BASES = np.arange(8.0, 22.5, 0.5)  # °C, over which the degree-hours of the year are drawn
_SEASON = 0.02  # of the year's heat: a month with more belongs to the heating season


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PreHeater:
    """What the frost heater of an option does in this weather."""

    option: str
    set_point: float  # °C
    hours: float  # h
    electricity: float  # kWh


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Weather:
    """A year as the page shows it; twelve figures of each quantity, unless said otherwise."""

    name: str
    source: str
    invented: bool
    base: float  # °C, of the degree-hours
    temp: Array  # °C, mean
    coldest: Array  # °C
    warmest: Array  # °C
    degree_hours: Array  # K h below the base
    over_bases: Array  # K h of the year below each of `BASES`
    freezing: Array  # h below 0 °C
    frost: Array  # h below the set point of the pre-heater
    set_point: float  # °C
    wind: Array  # m/s at the station, mean
    sun: Array  # kWh/m² on vertical planes, shape (4, 12), order of `FACADES`
    heated: Array  # kWh that the home needs, with the option asked for
    preheater: PreHeater | None

    @property
    def season(self) -> Array:
        """Which months belong to the heating season."""
        return np.asarray(self.heated > _SEASON * max(float(self.heated.sum()), 1e-9))

    @property
    def cold(self) -> float:
        """Degree-hours of the year [K h]."""
        return float(self.degree_hours.sum())

    @property
    def sunny(self) -> dict[str, float]:
        """Sun of the year on each façade [kWh/m²]."""
        return dict(zip(FACADES, self.sun.sum(axis=-1).tolist(), strict=True))


def weather(done: Estimate, *, option: str, base: float) -> Weather:
    """The weather of an estimate, with what it means for one option of it.

    base: °C, below which cold counts; it does not change the estimate. The pre-heater is that of the option, or, where
    it has none, of the first option that has.
    """
    year = done.year
    found = next((heater for heater in map(_preheater, _first(done, option)) if heater), None)
    set_point = found.set_point if found else USUAL_SET_POINT
    return Weather(
        name=year.name,
        source=year.source,
        invented=year.invented,
        base=base,
        temp=_mean(year, year.temp_air),
        coldest=_extreme(np.minimum, year),
        warmest=_extreme(np.maximum, year),
        degree_hours=_by_month(year, np.maximum(base - year.temp_air, 0.0)),
        over_bases=np.asarray(degree_hours(year.temp_air, base=BASES[:, np.newaxis], step=year.weight)),
        freezing=_by_month(year, 1.0 * (year.temp_air < FREEZING)),
        frost=_by_month(year, 1.0 * (year.temp_air < set_point)),
        set_point=set_point,
        wind=_mean(year, year.wind_speed),
        sun=to_kwh(_by_month(year, year.facades)),
        heated=to_kwh(_by_month(year, np.squeeze(done.options[option].heat.heat))),
        preheater=found,
    )


def balance(done: Estimate, option: str) -> float:
    """Outdoor temperature [°C] below which the home needs heat with this option, to the half degree."""
    return round(2.0 * float(np.squeeze(done.options[option].heat.balance_temperature))) / 2.0


def _first(done: Estimate, option: str) -> list[OptionYear]:
    return [done.options[option], *(other for name, other in done.options.items() if name != option)]


def _preheater(option: OptionYear) -> PreHeater | None:
    numbers = option.numbers
    if numbers.preheat_to is None or numbers.post_heat_to is not None:  # a post-heater's share is not told apart
        return None
    power = np.squeeze(option.air.preheater)
    return PreHeater(
        option=option.label,
        set_point=float(np.squeeze(numbers.preheat_to)),
        hours=float(np.mean(power > 0.0) * HOURS_PER_YEAR),
        electricity=option.frost_electricity,
    )


def _by_month(year: ClimateYear, values: Any) -> Array:
    return np.asarray(month_sums(values, year.rows) * year.weight)


def _mean(year: ClimateYear, values: Array) -> Array:
    return np.asarray(month_sums(values, year.rows) / month_sums(np.ones(year.rows), year.rows))


def _extreme(which: np.ufunc, year: ClimateYear) -> Array:
    return np.asarray(which.reduceat(year.temp_air, month_starts(year.rows)))
