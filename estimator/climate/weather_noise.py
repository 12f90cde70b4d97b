"""How do chance and memory make hours of weather out of figures for months?

Everything here takes the year as a ring, so that New Year is an hour like any other; arrays have shape (8760,)
or twelve months.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from estimator.climate.solar import HOURS
from estimator.units import DAYS_PER_YEAR, HOURS_PER_DAY, MONTH_DAYS, Array

MONTHS = np.repeat(np.arange(12), np.array(MONTH_DAYS) * int(HOURS_PER_DAY))
MONTH_OF_DAY = np.repeat(np.arange(12), np.array(MONTH_DAYS))
_MIDDLES = np.cumsum(MONTH_DAYS) - np.array(MONTH_DAYS) / 2.0  # day of the year
_FIRST_HOURS = int(HOURS_PER_DAY) * np.concatenate([[0], np.cumsum(MONTH_DAYS)[:-1]])


def _between_months() -> tuple[NDArray[np.intp], NDArray[np.intp], Array]:
    """For every hour the month whose middle was last, the one whose middle is next, and the share of way to it."""
    day = (np.arange(HOURS) + 0.5) / HOURS_PER_DAY
    after = np.searchsorted(_MIDDLES, day) % 12
    before = after - 1
    gone, way = (day - _MIDDLES[before]) % DAYS_PER_YEAR, (_MIDDLES[after] - _MIDDLES[before]) % DAYS_PER_YEAR
    return before, after, gone / way


_BETWEEN = _between_months()

# Hours after which weather has forgotten all but 1/e of itself: assumed, of the order of a passing low (air mass),
# of a cloud bank, and of the wind of a day. Departures of daily means then follow from day to day with a correlation
# near 0.7; the real years in pvlib's package have 0.61 to 0.74.
AIR_MASS, SLOW_CLOUD, FAST_CLOUD, GUST = 60.0, 40.0, 4.0, 18.0
AIR_MASS_EDGE = 6.0  # h, a front takes hours to pass; assumed
SLOW_SHARE = 0.65  # of the variance of cloud; assumed
# Over which a throw of chance is brought to what is usual; of 30 and 60 days, 30 erred less at Greensboro.
SEASON = 30 * 24  # h
WIND_SHAPE = 2.0  # of the Weibull distribution, usual for wind
# Magnus formula over water: WMO Guide to Instruments and Methods of Observation, annex on humidity.
MAGNUS_A, MAGNUS_B = 17.62, 243.12  # -, °C


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Noise:
    """Courses of chance with memory, independent of one another, mean nil and variance one in every season."""

    air_mass: Array
    slow_cloud: Array
    fast_cloud: Array
    gust: Array

    @property
    def cloud(self) -> Array:
        """Slow and fast cloud together, variance about one."""
        return math.sqrt(SLOW_SHARE) * self.slow_cloud + math.sqrt(1.0 - SLOW_SHARE) * self.fast_cloud


def noise_of(draw: int) -> Noise:
    """The weather of one draw; the same draw gives the same weather."""
    white = np.random.default_rng(draw).standard_normal((4, HOURS))
    slow_cloud, air_mass, gust, fast_cloud = _typical(
        lagged(white[0], SLOW_CLOUD),
        lagged(lagged(white[1], AIR_MASS), AIR_MASS_EDGE),
        lagged(white[2], GUST),
        lagged(white[3], FAST_CLOUD),
    )
    return Noise(air_mass=air_mass, slow_cloud=slow_cloud, fast_cloud=fast_cloud, gust=gust)


def _typical(*courses: Array) -> list[Array]:
    """The courses without what only this throw has: mean, variance and mutual correlation of a season.

    A typical year is to have typical seasons. Air masses last for days, so that a season holds some twenty of them,
    and by chance alone sun and warmth would agree in one throw and differ in the next.
    """
    done: list[Array] = []
    for course in courses:
        left = course - running_mean(course, SEASON)
        for other in done:
            left = left - running_mean(left * other, SEASON) / running_mean(np.square(other), SEASON) * other
        done.append(standardised(left / np.sqrt(running_mean(np.square(left), SEASON))))
    return done


def lagged(values: Array, lag: float) -> Array:
    """First-order response with a lag [h]: on white noise it makes an autoregression of first order."""
    keep = math.exp(-1.0 / lag)
    turn = np.exp(-2j * np.pi * np.fft.rfftfreq(HOURS))
    response = (1.0 - keep) / (1.0 - keep * turn)
    return np.asarray(np.fft.irfft(np.fft.rfft(values) * response, HOURS), dtype=float)


def standardised(values: Array) -> Array:
    """Values with their mean taken out, divided by their standard deviation."""
    return np.asarray((values - values.mean()) / values.std(), dtype=float)


def running_mean(values: Array, width: int) -> Array:
    """Mean over `width` hours, an even number, around each hour."""
    padded = np.concatenate([values[-(width // 2) :], values, values[: width // 2]])
    sums = np.concatenate([[0.0], np.cumsum(padded)])
    return np.asarray((sums[width : width + HOURS] - sums[:HOURS]) / width, dtype=float)


def running_least(values: Array, width: int) -> Array:
    """Least value over `width` hours, an even number, around each hour."""
    padded = np.concatenate([values[-(width // 2) :], values, values[: width // 2 - 1]])
    return np.asarray(np.lib.stride_tricks.sliding_window_view(padded, width).min(axis=-1), dtype=float)


def through_months(values: Array) -> Array:
    """Hourly course straight from the middle of one month to the middle of the next."""
    before, after, share = _BETWEEN
    return np.asarray(values[before] * (1.0 - share) + values[after] * share, dtype=float)


def monthly_mean(values: Array) -> Array:
    """Twelve means of hourly values."""
    return np.asarray(np.add.reduceat(values, _FIRST_HOURS) / (HOURS_PER_DAY * np.array(MONTH_DAYS)), dtype=float)


def daily(values: Array) -> Array:
    """Hourly values as (365, 24)."""
    return values.reshape(-1, int(HOURS_PER_DAY))


def mean_of_days(values: Array) -> Array:
    """Twelve means of a figure that each of 365 days has."""
    return np.asarray(np.bincount(MONTH_OF_DAY, weights=values) / np.array(MONTH_DAYS), dtype=float)


def daily_mean_spread(temp: Array) -> Array:
    """Twelve standard deviations of daily means [K] about the mean of their own month, n in the divisor."""
    means = daily(temp).mean(axis=1)
    return np.sqrt(mean_of_days(np.square(means - mean_of_days(means)[MONTH_OF_DAY])))


def mean_daily_swing(temp: Array) -> Array:
    """Twelve means of highest less lowest hour of the day [K]."""
    return mean_of_days(np.ptp(daily(temp), axis=1))


def weibull(latent: Array) -> Array:
    """Wind of unit scale from a latent course of mean nil and variance one: the Weibull distribution of shape 2."""
    calmer = np.array([0.5 * math.erfc(value / math.sqrt(2.0)) for value in latent])
    return np.asarray((-np.log(calmer)) ** (1.0 / WIND_SHAPE), dtype=float)


def magnus(temp: Array) -> Array:
    """Logarithm of the saturation pressure over water per that at 0 °C, by temperature [°C]."""
    return np.asarray(MAGNUS_A * temp / (MAGNUS_B + temp), dtype=float)
