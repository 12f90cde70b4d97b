"""Which twelve figures describe a place, and what stands in for those nobody knows?"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from estimator.climate.raw import Place
from estimator.climate.solar import Sun
from estimator.climate.weather_noise import monthly_mean
from estimator.errors import ClimateFault, Fault
from estimator.units import MONTH_NAMES, Array


@dataclass(frozen=True, slots=True, kw_only=True)
class Law:
    """Spread of daily means about the season's course, per square root of the annual range of monthly means (K^½).

    At the coldest month and at the warmest; straight between the two with the monthly mean.
    """

    coldest: float
    warmest: float


# Least squares over the 36 months of the three real years in pvlib's package (Greensboro, Sand Point, Miami). Fitted
# without one of them: 1.11 to 1.25 and 0.26 to 0.34. The form, √range and straight between, was chosen among eight for
# the least error on the year left out; with three years to choose on, that is thin evidence.
SPREAD = Law(coldest=1.18, warmest=0.33)
# Allen et al. 1998, FAO Irrigation and Drainage Paper 56, eq. 50 (Hargreaves): irradiance over that outside the
# atmosphere = k √swing, with k near 0.16 inland and near 0.19 on coasts (K^-½).
SWING_INLAND, SWING_COAST = 0.16, 0.19
COAST_RANGE, INLAND_RANGE = 10.0, 20.0  # K, annual range of monthly means of a coast and of an inland place; assumed
# FAO 56, eq. 35 (Ångström) with half of the possible sunshine: 0.25 + 0.50 · 0.5. Towards the pole it is cloudier: the
# line is that of the yearly clearness of the 21 UK regions of `uk_monthly_normals` over latitude, by least squares
# (residual 0.01), which meets the FAO's figure at 36°; no real year is in it. Beyond the regions the end one stands.
CLEARNESS = 0.50
CLEARNESS_AT_EQUATOR, CLEARNESS_FALL = 0.667, 0.00469  # -, per degree of latitude
NORTHERNMOST = 60.2  # °
CLEAREST = 1.08  # most that a month can have of clear-sky irradiance; assumed
TWILIGHT = 10.0  # W/m², within which low sun, for which clear skies are least known, is let pass
# Mean wind at 10 m over the 21 UK regions of `uk_monthly_normals` against continentality, by least squares on its
# logarithm (residual 6%), and its course through the year, ± by warmth. No real year is in either; beyond the regions'
# own continentality the nearest of them stands.
WIND_AT_SEA, WIND_FALL = 7.88, 0.0686  # m/s at a continentality of nil; per unit of it
WIND_SEASON = 0.144  # of the mean: more in the coldest month, less in the warmest
CONTINENTALITY_SEEN = (1.7, 10.8)
LEAST_SWING = 1.0  # K; assumed

LIMITS: dict[str, tuple[float, float, str]] = {
    "temp_air": (-50.0, 45.0, "°C"),
    "wind_speed": (0.0, 25.0, "m/s"),
    "ghi": (0.0, 450.0, "W/m²"),
    "daily_swing": (0.0, 30.0, "K"),
    "daily_spread": (0.0, 20.0, "K"),
}
_HINTS = {
    "temp_air": " Is it in Fahrenheit or in tenths?",
    "wind_speed": " Is it in km/h or in knots?",
    "ghi": " Give the mean of all 24 hours in W/m²; kWh/m² a day are 41.7 times less.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthlyMeans:
    """A place with twelve figures, January first, for each quantity; None for what is not known."""

    place: Place
    temp_air: tuple[float, ...]  # °C, mean
    wind_speed: tuple[float, ...] | None = None  # m/s at 10 m, mean
    ghi: tuple[float, ...] | None = None  # W/m² on the horizontal, mean over day and night
    daily_swing: tuple[float, ...] | None = None  # K, mean of highest less lowest of the day
    daily_spread: tuple[float, ...] | None = None  # K, standard deviation of daily means within the month

    @property
    def annual_range(self) -> float:
        """Warmest less coldest monthly mean [K]."""
        return max(self.temp_air) - min(self.temp_air)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Filled:
    """Twelve figures for every quantity, and in words which of them nobody gave."""

    temp_air: Array
    wind_speed: Array
    ghi: Array
    daily_swing: Array
    daily_spread: Array
    inferred: tuple[str, ...]


def means_faults(means: MonthlyMeans) -> list[Fault]:
    """What cannot be monthly means: too few, no number, or no weather."""
    faults = []
    for name, (low, high, unit) in LIMITS.items():
        values = getattr(means, name)
        if values is None:
            continue
        if len(values) != len(MONTH_NAMES):
            faults.append(Fault(name, f"{len(values)} values were given; twelve are needed, January first."))
            continue
        for month, value in zip(MONTH_NAMES, values, strict=True):
            if not (math.isfinite(value) and low <= value <= high):
                what = f"{value:g} {unit} is not within {low:g} to {high:g}." + _HINTS.get(name, "")
                faults.append(Fault(f"{name}, {month}", what))
    return faults


def spread_of(means: MonthlyMeans, law: Law = SPREAD) -> Array:
    """Twelve standard deviations of daily means [K] from the annual range of the monthly means.

    Wide where summer and winter lie far apart, and widest in the cold months; in spring and autumn the season itself
    moves within the month, a straight rise r adding r²/12 to the variance. The form is our own.
    """
    temp, width = np.array(means.temp_air), means.annual_range
    warmth = (temp - temp.min()) / width if width > 0.0 else np.full(temp.shape, 0.5)
    about_season = math.sqrt(width) * (law.coldest + (law.warmest - law.coldest) * warmth)
    rise = (np.roll(temp, -1) - np.roll(temp, 1)) / 2.0
    return np.asarray(np.sqrt(np.square(about_season) + np.square(rise) / 12.0), dtype=float)


def root_of_swing(means: MonthlyMeans) -> float:
    """Clearness per square root of the daily swing (K^-½), from coast to inland by the annual range."""
    return float(np.interp(means.annual_range, [COAST_RANGE, INLAND_RANGE], [SWING_COAST, SWING_INLAND]))


def continentality(means: MonthlyMeans) -> float:
    """How far a place is from the sea in its temperature, about nil at sea and 100 in east Siberia.

    Conrad 1946: 1.7 A / sin(φ + 10°) - 14 with the annual range A [K] and latitude φ; from memory.
    """
    return 1.7 * means.annual_range / math.sin(math.radians(abs(means.place.latitude) + 10.0)) - 14.0


def wind_of(means: MonthlyMeans) -> Array:
    """Twelve mean winds [m/s] where none is known: windier by the sea, and in the cold months."""
    inland = min(max(continentality(means), CONTINENTALITY_SEEN[0]), CONTINENTALITY_SEEN[1])
    temp, width = np.array(means.temp_air), means.annual_range
    coldness = 1.0 - 2.0 * (temp - temp.min()) / width if width > 0.0 else np.zeros(temp.shape)
    return np.asarray(WIND_AT_SEA * math.exp(-WIND_FALL * inland) * (1.0 + WIND_SEASON * coldness), dtype=float)


def clearness_of(latitude: float) -> float:
    """Share of the irradiance outside the atmosphere in an average year, where nothing is known of the sky."""
    return min(CLEARNESS_AT_EQUATOR - CLEARNESS_FALL * min(abs(latitude), NORTHERNMOST), CLEARNESS)


def clear_sky(sun: Sun) -> Array:
    """Irradiance on the horizontal [W/m²] without clouds, shape (8760,): Haurwitz 1945, by pvlib."""
    import pandas as pd
    from pvlib import clearsky

    return np.asarray(clearsky.haurwitz(pd.Series(sun.zenith))["ghi"], dtype=float)


def filled_means(means: MonthlyMeans, sun: Sun, *, law: Law = SPREAD) -> Filled:
    """Every quantity, from what was given and from published relations; ClimateFault for what cannot be."""
    brightest = CLEAREST * monthly_mean(clear_sky(sun))
    faults = means_faults(means) or [
        Fault(
            f"ghi, {month}",
            f"{given:g} W/m² is more than a cloudless sky gives at this latitude ({most:.0f}).",
        )
        for month, given, most in zip(MONTH_NAMES, means.ghi or (), brightest, strict=False)
        if given > most + TWILIGHT
    ]
    if faults:
        raise ClimateFault(*faults)
    outside = monthly_mean(sun.normal_extra * sun.height)
    root, inferred = root_of_swing(means), []
    wind, ghi, swing, spread = (
        None if values is None else np.array(values, dtype=float)
        for values in (means.wind_speed, means.ghi, means.daily_swing, means.daily_spread)
    )
    if wind is None:
        wind = wind_of(means)
        inferred.append(f"wind: not given, {wind.mean():.1f} m/s by the year's range of temperature and the latitude")
    usual = clearness_of(means.place.latitude)
    if ghi is None:
        ghi = usual * outside if swing is None else np.minimum(root * np.sqrt(swing), 0.75) * outside
        ghi = np.minimum(ghi, brightest)
        inferred.append(
            "irradiance: not given, " + ("the usual sky of its latitude" if swing is None else "from daily swing")
        )
    if swing is None:
        clearness = np.divide(ghi, outside, out=np.full(12, usual), where=outside > 1.0)
        swing = np.maximum(np.square(np.minimum(clearness, 0.75) / root), LEAST_SWING)
        inferred.append("daily swing: not given, from irradiance")
    if spread is None:
        spread = spread_of(means, law)
        inferred.append("spread of daily means: not given, from the annual range")
    return Filled(
        temp_air=np.array(means.temp_air, dtype=float),
        wind_speed=wind,
        ghi=ghi,
        daily_swing=swing,
        daily_spread=spread,
        inferred=tuple(inferred),
    )
