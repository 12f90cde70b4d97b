"""What does the package's sun answer to the questions that solar handbooks ask?

Handbooks ask for one moment or one day; the package answers for all hours of a year. These functions put such a
question to the functions of `climate` and take the one answer out; they hold no solar geometry of their own.
"""

from __future__ import annotations

from functools import cache
from importlib import resources

import numpy as np

from estimator.climate.photovoltaics import yield_per_kw
from estimator.climate.solar import HOURS, Sun, plane_irradiance, sun_position
from estimator.climate.sources import real_year
from estimator.climate.year import FACADES, ClimateYear
from estimator.units import DAYS_PER_YEAR, HOURS_PER_DAY, to_kwh

_NOON = 12.0  # h
_DEGREES_PER_HOUR = 15.0
_BEAM = 1000.0  # W/m², of which the incidence takes its share
_HOURS_OF_DAY = int(HOURS_PER_DAY)


def position(
    *, latitude: float, longitude: float, altitude: float, utc_offset: float, day: int, clock: float
) -> dict[str, float]:
    """Zenith and azimuth of the sun [°] on a day of the year (1 January is 1) at a clock time [h] of standard time."""
    row, moment = _row(day, clock)
    sun = sun_position(latitude=latitude, longitude=longitude, altitude=altitude, utc_offset=utc_offset, moment=moment)
    return {"zenith": float(sun.zenith[row]), "azimuth": float(sun.azimuth[row])}


def position_by_sundial(*, latitude: float, day: int, hour: float) -> dict[str, float]:
    """Zenith and azimuth of the sun [°] at an hour of true solar time, as sundials and textbooks count it."""
    sun, row = _by_sundial(latitude, day, hour)
    return {"zenith": float(sun.zenith[row]), "azimuth": float(sun.azimuth[row])}


def incidence(
    *,
    latitude: float,
    longitude: float,
    altitude: float,
    utc_offset: float,
    day: int,
    clock: float,
    tilt: float,
    azimuth: float,
) -> float:
    """Angle [°] between a plane's normal and the sun, from the share of a beam that the plane receives."""
    row, moment = _row(day, clock)
    sun = sun_position(latitude=latitude, longitude=longitude, altitude=altitude, utc_offset=utc_offset, moment=moment)
    return _incidence(sun, row, tilt, azimuth)


def incidence_by_sundial(*, latitude: float, day: int, hour: float, tilt: float, azimuth: float) -> float:
    """The same angle [°] at an hour of true solar time."""
    sun, row = _by_sundial(latitude, day, hour)
    return _incidence(sun, row, tilt, azimuth)


def day_outside_the_air(*, latitude: float, day: int) -> float:
    """Irradiation [kWh/m²] of a day on a horizontal plane outside the atmosphere."""
    sun = sun_position(latitude=latitude, longitude=0.0, altitude=0.0, utc_offset=0.0)
    hours = slice((day - 1) * _HOURS_OF_DAY, day * _HOURS_OF_DAY)
    return float(to_kwh(np.sum((sun.normal_extra * sun.height)[hours])))


def ground_light(*, ghi: float, tilt: float) -> float:
    """What a plane receives [W/m²] where only the ground shines on it; ghi on the ground [W/m²]."""
    sun = sun_position(latitude=45.0, longitude=0.0, altitude=0.0, utc_offset=0.0)
    none, whole = np.zeros(HOURS), np.full(HOURS, ghi)
    return float(plane_irradiance(sun, ghi=whole, dni=none, dhi=none, tilt=tilt, azimuth=180.0).mean())


def mean_day(*, reference: str, tilt: float, azimuth: float) -> float:
    """Irradiation [kWh/m²] of a mean day of a real typical year on a plane; angles in °, azimuth from north by east."""
    year = real_year(reference)
    sun = sun_position(
        latitude=year.latitude,
        longitude=year.longitude,
        altitude=year.altitude,
        utc_offset=year.utc_offset,
        moment=year.sun_moment,
    )
    plane = plane_irradiance(sun, ghi=year.ghi, dni=year.dni, dhi=year.dhi, tilt=tilt, azimuth=azimuth)
    return float(to_kwh(plane.sum()) / DAYS_PER_YEAR)


def printed_year(*, tilt: float, azimuth: float) -> dict[str, float]:
    """`light` on a plane [kWh/m²] and `power` of a kW of cells on it [kWh] in the typical year of Golden, Colorado.

    Light and weather are those that a public model printed beside its own answers; angles as in `mean_day`.
    """
    year = _golden()
    sun = sun_position(
        latitude=year.latitude, longitude=year.longitude, altitude=year.altitude, utc_offset=year.utc_offset
    )
    plane = plane_irradiance(sun, ghi=year.ghi, dni=year.dni, dhi=year.dhi, tilt=tilt, azimuth=azimuth)
    power = yield_per_kw(year, tilt=tilt, azimuth=azimuth)
    return {"light": float(to_kwh(plane.sum())), "power": float(power.sum())}


@cache
def _golden() -> ClimateYear:
    text = resources.files("estimator.evidence").joinpath("golden_year.csv").read_text(encoding="utf-8")
    direct, diffuse, temp, wind = np.loadtxt(text.splitlines()[3:], delimiter=",", unpack=True)
    latitude, longitude, altitude, utc_offset = 39.73, -105.18, 1819.6, -7.0
    sun = sun_position(latitude=latitude, longitude=longitude, altitude=altitude, utc_offset=utc_offset)
    none = np.zeros(HOURS)
    return ClimateYear(
        name="Golden",
        latitude=latitude,
        longitude=longitude,
        altitude=altitude,
        utc_offset=utc_offset,
        source="PVWatts, NREL, as carried by pvlib",
        licence="public domain",
        invented=False,
        temp_air=temp,
        wind_speed=wind,
        ghi=direct * sun.height + diffuse,
        dni=direct,
        dhi=diffuse,
        relative_humidity=none,  # neither light nor cells ask for it, nor for pressure or walls
        pressure=none,
        facades=np.zeros((len(FACADES), HOURS)),
    )


def _row(day: int, clock: float) -> tuple[int, float]:
    return (day - 1) * _HOURS_OF_DAY + int(clock), clock - int(clock)


def _by_sundial(latitude: float, day: int, hour: float) -> tuple[Sun, int]:
    """The sun over a meridian chosen such that true solar time on that day is the clock's, and the row of the hour."""
    row, moment = _row(day, hour)
    first = sun_position(latitude=latitude, longitude=0.0, altitude=0.0, utc_offset=0.0, moment=moment)
    late = float(first.hour_angle[row]) - _DEGREES_PER_HOUR * (hour - _NOON)
    return sun_position(latitude=latitude, longitude=-late, altitude=0.0, utc_offset=0.0, moment=moment), row


def _incidence(sun: Sun, row: int, tilt: float, azimuth: float) -> float:
    none, beam = np.zeros(HOURS), np.full(HOURS, _BEAM)
    received = plane_irradiance(sun, ghi=none, dni=beam, dhi=none, tilt=tilt, azimuth=azimuth)[row]
    return float(np.degrees(np.arccos(received / _BEAM)))
