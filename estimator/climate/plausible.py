"""What was read, what was missing or mended, and does any of it look unlike weather?

What no weather can be is refused in `check`. Here stand doubts: signs of a wrong unit or clock in a year that could
still be true.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from estimator.climate.check import LIMITS
from estimator.climate.raw import IRRADIANCES, TITLES
from estimator.climate.solar import Sun, sun_lag, sun_position
from estimator.climate.year import ClimateYear
from estimator.units import HOURS_PER_DAY, to_kwh

# Warmest yearly means by latitude, drawn above Dallol, Death Valley, Lisbon and Bergen (from memory, in °C).
WARMEST_LATITUDES, WARMEST_MEANS = (0.0, 30.0, 60.0, 90.0), (35.0, 32.0, 13.0, 3.0)
EVEN_LATITUDE, EVEN_RANGE = 25.0, 10.0  # beyond this latitude no year has so small a range [K]
WINDIEST_MEAN, CALMEST_MEAN = 10.0, 0.3  # m/s; few inhabited places are windier than 9 (assumed)
WHOLE_NUMBER_MEAN = 6.0  # m/s; whole numbers with a higher mean are rather knots, km/h or miles an hour (assumed)
DRIEST_MEAN = 15.0  # %, below the mean of the driest deserts (assumed)
LIGHT = (400.0, 2800.0)  # kWh/m² a year on the flat: less than the poles have, more than the Atacama (from memory)
MOST_APART = 0.2  # share by which global and its parts may differ over the year (assumed)
_WHOLE = 100.0  # from here on no decimals are shown
DOUBTFUL_LAG = 0.6  # h; clouds that prefer one half of the day move the light by less
WARM_HOURS = (10, 20)  # between these clock hours the mean day is warmest anywhere (common practice, no source)
# Columns that a note on something "not in the file" speaks of, by how it begins.
_NAMED = {title: (name,) for name, title in TITLES.items()} | {
    "irradiance": IRRADIANCES,
    "direct and diffuse irradiance": ("dni", "dhi"),
}


@dataclass(frozen=True, slots=True)
class ReadReport:
    """What became of a weather file, in sentences."""

    read: tuple[str, ...]
    missing: tuple[str, ...]  # not in the file, and what stands in
    repaired: tuple[str, ...]
    implausible: tuple[str, ...]  # doubts, each with what to look at


def read_report(year: ClimateYear, labels: Mapping[str, str] | None = None) -> ReadReport:
    """What was read into a year, from columns that the file calls by `labels`."""
    missing = tuple(repair for repair in year.repairs if ": not in the file" in repair)
    absent = {name for repair in missing for name in _NAMED[repair.partition(":")[0]]}
    read = []
    for name, title in TITLES.items():
        if name not in absent:
            values, unit = getattr(year, name), LIMITS[name][2]
            label = f" (column “{labels[name]}”)" if labels and name in labels else ""
            low, high, mean = (_shown(float(value)) for value in (values.min(), values.max(), values.mean()))
            read.append(f"{title}{label}: {low} to {high} {unit}, mean {mean}")
    repaired = tuple(repair for repair in year.repairs if repair not in missing)
    return ReadReport(tuple(read), missing, repaired, tuple(_doubts(year, absent)))


def _shown(value: float) -> str:
    return f"{value:,.0f}" if abs(value) >= _WHOLE else f"{value:.3g}"


def _doubts(year: ClimateYear, absent: set[str]) -> list[str]:
    doubts = _temperature_doubts(year)
    if "wind_speed" not in absent:
        doubts += _wind_doubts(year)
    if "relative_humidity" not in absent:
        doubts += _humidity_doubts(year)
    if not absent.issuperset(IRRADIANCES):
        sun = sun_position(
            latitude=year.latitude,
            longitude=year.longitude,
            altitude=year.altitude,
            utc_offset=year.utc_offset,
            moment=year.sun_moment,
        )
        doubts += _light_doubts(year, sun)
    return doubts


def _temperature_doubts(year: ClimateYear) -> list[str]:
    doubts = []
    mean = float(year.temp_air.mean())
    warmest = float(np.interp(abs(year.latitude), WARMEST_LATITUDES, WARMEST_MEANS))
    if mean > warmest:
        doubts.append(
            f"air temperature: a yearly mean of {mean:.1f} °C is more than any place at this latitude has "
            f"(about {warmest:.0f}). Is the column in Fahrenheit?"
        )
    span = float(np.ptp(year.temp_air))
    if span < EVEN_RANGE and abs(year.latitude) > EVEN_LATITUDE:
        doubts.append(
            f"air temperature: the whole year lies within {span:.1f} K. "
            "Is the column in tens of degrees, or not hourly?"
        )
    by_hour = year.temp_air.reshape(-1, int(HOURS_PER_DAY)).mean(axis=0)
    warm = int(by_hour.argmax())
    if not WARM_HOURS[0] <= warm <= WARM_HOURS[1] and np.ptp(by_hour) > 1.0:
        doubts.append(
            f"clock: the mean day is warmest at {warm}:00. "
            "Is the table in another time zone, such as UTC, or out of order?"
        )
    return doubts


def _wind_doubts(year: ClimateYear) -> list[str]:
    mean = float(year.wind_speed.mean())
    if mean > WINDIEST_MEAN:
        return [f"wind speed: a yearly mean of {mean:.1f} m/s is a storm. Is it in knots, km/h or tenths of m/s?"]
    if mean > WHOLE_NUMBER_MEAN and not np.mod(year.wind_speed, 1.0).any():
        return [f"wind speed: whole numbers with a mean of {mean:.1f}. Is it in knots or miles an hour, not m/s?"]
    if mean < CALMEST_MEAN:
        return [f"wind speed: a yearly mean of {mean:.2f} m/s is calmer than any place. Is it the right column?"]
    return []


def _humidity_doubts(year: ClimateYear) -> list[str]:
    if year.relative_humidity.max() <= 1.0:
        return ["relative humidity: never more than 1. Is it a fraction instead of per cent?"]
    if year.relative_humidity.mean() < DRIEST_MEAN:
        mean = year.relative_humidity.mean()
        return [f"relative humidity: a yearly mean of {mean:.0f} % is drier than any desert. Is it the right column?"]
    return []


def _light_doubts(year: ClimateYear, sun: Sun) -> list[str]:
    doubts = []
    total = float(to_kwh(year.ghi.sum()))
    if not LIGHT[0] <= total <= LIGHT[1]:
        doubts.append(
            f"global irradiance: {total:,.0f} kWh/m² a year is not within {LIGHT[0]:,.0f} to {LIGHT[1]:,.0f}. "
            "Is it in W/m², or in kJ/m² or J/cm² an hour?"
        )
    parts = float(to_kwh((year.dni * sun.height + year.dhi).sum()))
    if total > 0.0 and abs(parts / total - 1.0) > MOST_APART:
        doubts.append(
            f"irradiance: direct and diffuse make {parts:,.0f} kWh/m² a year on the flat, "
            f"where global says {total:,.0f}. Is one of them another column, or direct on the flat, not facing the sun?"
        )
    lag = sun_lag(sun, year.ghi)
    if abs(lag) > DOUBTFUL_LAG:
        side = "behind" if lag > 0.0 else "ahead of"
        doubts.append(
            f"clock: the light runs {abs(lag):.1f} h {side} the sun. "
            "Is the clock set to summer time or to another zone, or are rows stamped at the other end of the hour?"
        )
    return doubts
