"""What stands in for a column that a table of hours does not have?

Temperature alone makes a year: the rest is judged from it as the FAO does where only a thermometer was read
(Allen and others, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56, 1998; equations from memory, held
to its worked examples in the tests). Each stand-in is told among the repairs of the year.
"""

from __future__ import annotations

from dataclasses import replace
from math import log
from typing import Literal, NamedTuple

import numpy as np

from estimator.climate.check import place_faults
from estimator.climate.raw import IRRADIANCES, RawYear
from estimator.climate.solar import HOURS, MID_HOUR, sun_position
from estimator.errors import ClimateFault
from estimator.units import HOURS_PER_DAY, MONTH_DAYS, Array

# FAO 56, chapter 3: mean of more than 2,000 stations, 2 m above grass.
WORLD_WIND, WORLD_WIND_HEIGHT = 2.0, 2.0  # m/s, m
STATION_HEIGHT = 10.0  # m
# FAO 56, equation 50: 0.16 inland and 0.19 on a coast; which of them is not asked.
SWING_TO_LIGHT = 0.175  # K^-0.5
# FAO 56, equation 37: share of the light outside the atmosphere on a clear day, at sea level and more by height.
CLEAR_SHARE, CLEAR_SHARE_PER_METRE = 0.75, 2e-5
# Magnus formula over water: WMO Guide to Instruments and Methods of Observation, annex on humidity.
MAGNUS_A, MAGNUS_B = 17.62, 243.12
_DAY_NUMBERS = np.concatenate([[0], np.cumsum(MONTH_DAYS)[:-1]])


class _Sky(NamedTuple):
    """The sun at each row of a table."""

    zenith: Array  # °
    height: Array  # cosine of the zenith, nil while the sun is down
    normal_extra: Array  # W/m² outside the atmosphere
    day: Array  # number of the day, 1 to 365


def completed(raw: RawYear) -> RawYear:
    """The year with every column that an estimate needs, those it lacks judged from those it has."""
    lost = [name for name in ("wind_speed", "relative_humidity", *IRRADIANCES) if name not in raw.columns]
    if not lost:
        return raw
    if faults := place_faults(raw.place):
        raise ClimateFault(*faults)
    columns, notes = dict(raw.columns), list(raw.notes)
    if "wind_speed" in lost:
        wind = WORLD_WIND / wind_share(WORLD_WIND_HEIGHT, STATION_HEIGHT)
        columns["wind_speed"] = np.full(raw.stamps.row.size, wind)
        notes.append(
            f"wind speed: not in the file, {wind:.1f} m/s in every hour, the mean of the world's stations; "
            "a windy or a sheltered place leaks quite differently"
        )
    if "relative_humidity" in lost:
        temp = columns["temp_air"]
        columns["relative_humidity"] = humidity_at(temp, dew_point=_by_day(raw, temp, "min"))
        notes.append("relative humidity: not in the file, from the coldest hour of each day as its dew point")
    if any(name in lost for name in IRRADIANCES):
        notes.append(_with_light(raw, columns))
    moment = MID_HOUR if "ghi" in lost else raw.moment
    return replace(raw, columns=columns, notes=tuple(notes), moment=moment)


def wind_share(height: float, reference: float) -> float:
    """Wind at a height [m] over that at a reference height, over short grass (FAO 56, equation 47)."""

    def log_height(metres: float) -> float:
        return log(67.8 * metres - 5.42)

    return log_height(height) / log_height(reference)


def light_share(swing: Array | float, *, altitude: float, factor: float = SWING_TO_LIGHT) -> Array:
    """Share of the light outside the atmosphere that a day receives, from its swing of temperature [K]."""
    clear = CLEAR_SHARE + CLEAR_SHARE_PER_METRE * altitude
    share: Array = np.minimum(factor * np.sqrt(np.asarray(swing, dtype=float)), clear)
    return share


def humidity_at(temp: Array, *, dew_point: Array) -> Array:
    """Relative humidity [%] of air at a temperature and a dew point [°C]."""
    exponent = MAGNUS_A * dew_point / (MAGNUS_B + dew_point) - MAGNUS_A * temp / (MAGNUS_B + temp)
    return np.asarray(100.0 * np.exp(np.minimum(exponent, 0.0)))


def _with_light(raw: RawYear, columns: dict[str, Array]) -> str:
    """Fill in irradiances that are lacking; returns in words from what."""
    from pvlib import irradiance

    sky = _sky(raw)
    has = {name for name in IRRADIANCES if name in columns}
    if "ghi" not in has and has == {"dni", "dhi"}:
        columns["ghi"] = columns["dni"] * sky.height + columns["dhi"]
        return "global irradiance: not in the file, from direct and diffuse"
    if "ghi" not in has:
        swing = _by_day(raw, raw.columns["temp_air"], "max") - _by_day(raw, raw.columns["temp_air"], "min")
        share = light_share(swing, altitude=raw.place.altitude)
        columns["ghi"] = share * sky.normal_extra * sky.height
        told = "irradiance: not in the file, from the daily swing of temperature"
    elif "dhi" in has:
        steep = np.maximum(sky.height, np.cos(np.radians(87.0)))  # lower, a small error becomes a great one
        direct = (columns["ghi"] - columns["dhi"]) / steep
        columns["dni"] = np.clip(np.where(sky.height > 0.0, direct, 0.0), 0.0, sky.normal_extra)
        return "direct irradiance: not in the file, from global and diffuse"
    elif "dni" in has:
        columns["dhi"] = np.maximum(columns["ghi"] - columns["dni"] * sky.height, 0.0)
        return "diffuse irradiance: not in the file, from global and direct"
    else:
        told = "direct and diffuse irradiance: not in the file, from global"
    parts = irradiance.erbs(columns["ghi"], sky.zenith, sky.day)
    columns["dni"], columns["dhi"] = np.asarray(parts["dni"]), np.asarray(parts["dhi"])
    return f"{told}, divided as Erbs and others (1982) found"


def _sky(raw: RawYear) -> _Sky:
    place, stamps = raw.place, raw.stamps
    sun = sun_position(
        latitude=place.latitude,
        longitude=place.longitude,
        altitude=place.altitude,
        utc_offset=place.utc_offset,
        moment=raw.moment if "ghi" in raw.columns else MID_HOUR,
    )
    day = _DAY_NUMBERS[stamps.month - 1] + np.minimum(stamps.day, np.array(MONTH_DAYS)[stamps.month - 1])
    slot = np.minimum((day - 1) * int(HOURS_PER_DAY) + stamps.hour, HOURS - 1)
    return _Sky(sun.zenith[slot], sun.height[slot], sun.normal_extra[slot], day)


def _by_day(raw: RawYear, values: Array, what: Literal["min", "max"]) -> Array:
    """Least or greatest value of each row's own day; NaN where the day has none."""
    import pandas as pd

    series = pd.Series(values)
    extreme: Array = series.groupby(raw.stamps.month * 100 + raw.stamps.day).transform(what).to_numpy(dtype=float)
    return extreme
