"""How do twelve monthly means become a year of hours?

Clouds drift over hours and days and dim a clear sky until each month has its irradiance; the sun behind them warms
the day, so that bright days swing more; air masses last for days; wind follows both a little. Then each month is
brought to exactly its mean. The year is synthetic: its months are those asked for, its days are one throw of many.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

import numpy as np

from estimator.climate import weather_noise as noise
from estimator.climate.check import place_faults
from estimator.climate.clean import checked_year
from estimator.climate.monthly_means import CLEAREST, SPREAD, Filled, Law, MonthlyMeans, clear_sky, filled_means
from estimator.climate.raw import RawYear, Stamps
from estimator.climate.solar import HOURS, Sun, station_pressure, sun_position
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault
from estimator.units import MONTH_DAYS, Array

# Of the first twenty throws the one whose heat saved, in a hundred random homes, lies nearest the middle of the twenty
# on three of the UK tables (UK average, Thames valley, East Scotland). The rule looks at no real year, but it was made
# after the first throw had turned out the worst of twenty at Greensboro: the error there is best read over all twenty.
DRAW = 12
FROST = -3.0  # °C outdoors, about where a plate exchanger begins to freeze; common practice, no source
FROST_DRAWS = 20
FROST_SPREADS = (0.75, 1.0, 1.25)  # of the spread of daily means; assumed

# All assumed, of the order of the real years in pvlib's package, which differ among themselves even in sign.
CLOUD_EDGE = 1.6  # how sharply the sky turns from clear to grey
DARKEST = 0.08  # share of clear-sky irradiance
CLOUD_WARMS = (0.3, -0.4)  # correlation of cloud with warmth, in the coldest and the warmest month
WIND_WITH_CLOUD = 0.35  # correlation
WIND_WITH_WARMTH = (0.3, -0.15)  # correlation with a mild air mass, in the coldest and the warmest month
WIND_BY_DAY = 0.15  # more by day than by night
GROUND_LAG = 4.0  # h, puts the warmest hour about three hours after noon
NIGHT_COOLING = 0.12  # of 1,000 W/m²: what a clear sky takes, day and night
FULL_SUN = 1e3  # W/m²
_ROUNDS = 40
_WIDEST = 6.0  # times the asked spread or swing: beyond it a month is not forced further


def monthly_year(means: MonthlyMeans, *, draw: int = DRAW, law: Law = SPREAD) -> ClimateYear:
    """A synthetic checked year whose months have exactly the means given; ClimateFault for what cannot be.

    The same draw gives the same year. `repairs` says which quantities were not given and what stands for them.
    """
    raw, inferred = raw_monthly(means, draw=draw, law=law)
    year = checked_year(raw)
    return replace(year, repairs=(*year.repairs, *inferred))


def raw_monthly(means: MonthlyMeans, *, draw: int, law: Law = SPREAD) -> tuple[RawYear, tuple[str, ...]]:
    """The hours before any check, and in words what was inferred."""
    sun = _sun(means)
    filled = filled_means(means, sun, law=law)
    day = np.concatenate([np.arange(1, days + 1) for days in MONTH_DAYS]).repeat(24)
    stamps = Stamps(month=noise.MONTHS + 1, day=day, hour=np.arange(HOURS) % 24, row=np.arange(1, HOURS + 1))
    columns = synthetic_columns(filled, sun, draw=draw)
    columns["pressure"] = np.full(HOURS, station_pressure(means.place.altitude))
    return RawYear(place=means.place, stamps=stamps, columns=columns), filled.inferred


def synthetic_columns(filled: Filled, sun: Sun, *, draw: int) -> dict[str, Array]:
    """Hourly temperature, wind, irradiance and humidity, each (8760,), by the names of `ClimateYear`."""
    chance = noise.noise_of(draw)
    warmth = _warmth(filled.temp_air)
    light = _light(filled.ghi, chance.cloud, sun)
    with_cloud = _between(CLOUD_WARMS, warmth)
    air = with_cloud * chance.slow_cloud + np.sqrt(1.0 - np.square(with_cloud)) * chance.air_mass
    temp = _temperature(filled, air, light["ghi"], _clearness(chance.cloud, np.zeros(HOURS)))
    wind = _wind(filled.wind_speed, chance, air, warmth, sun)
    # FAO Irrigation and Drainage Paper 56, ch. 3: where humidity is not known, dew point is the day's lowest.
    dew = noise.running_mean(noise.running_least(temp, 24), 24)
    humidity = 100.0 * np.exp(np.minimum(noise.magnus(dew) - noise.magnus(temp), 0.0))
    return {"temp_air": temp, "wind_speed": wind, **light, "relative_humidity": humidity}


def frost_hours(
    means: MonthlyMeans,
    *,
    below: float = FROST,
    draws: Iterable[int] = range(FROST_DRAWS),
    spreads: Iterable[float] = FROST_SPREADS,
    law: Law = SPREAD,
) -> Array:
    """Hours a year colder than `below` [°C], one row for each factor on the spread, one column for each draw.

    From monthly means frost can be told only as a range: least and greatest of these.
    """
    sun, chosen = _sun(means), list(draws)
    filled = filled_means(means, sun, law=law)
    return np.array(
        [
            [float((synthetic_columns(wider, sun, draw=draw)["temp_air"] < below).sum()) for draw in chosen]
            for wider in (replace(filled, daily_spread=factor * filled.daily_spread) for factor in spreads)
        ]
    )


def _sun(means: MonthlyMeans) -> Sun:
    place = means.place
    faults = place_faults(place)
    if faults:
        raise ClimateFault(*faults)
    return sun_position(
        latitude=place.latitude,
        longitude=place.longitude,
        altitude=place.altitude,
        utc_offset=place.utc_offset,
    )


def _warmth(temp: Array) -> Array:
    """Hourly course between the coldest month (0) and the warmest (1)."""
    width = float(np.ptp(temp))
    return noise.through_months((temp - temp.min()) / width) if width > 0.0 else np.full(HOURS, 0.5)


def _between(ends: tuple[float, float], warmth: Array) -> Array:
    cold, warm = ends
    return np.asarray(cold + (warm - cold) * warmth, dtype=float)


def _sky(cloud: Array, brightness: Array) -> Array:
    """Share of clear-sky irradiance under a cloud, in months brighter or duller than even."""
    return DARKEST + (CLEAREST - DARKEST) / (1.0 + np.exp(CLOUD_EDGE * cloud - brightness))


def _light(ghi: Array, cloud: Array, sun: Sun) -> dict[str, Array]:
    """Global, direct and diffuse irradiance whose monthly means are those asked for."""
    from pvlib import irradiance

    clear = clear_sky(sun)
    low, high = np.full(12, -12.0), np.full(12, 12.0)
    for _ in range(_ROUNDS):
        middle = (low + high) / 2.0
        dim = noise.monthly_mean(_sky(cloud, middle[noise.MONTHS]) * clear) < ghi
        low, high = np.where(dim, middle, low), np.where(dim, high, middle)
    light = _exact(_sky(cloud, middle[noise.MONTHS]) * clear, ghi)
    parts = irradiance.erbs(light, sun.zenith, np.arange(HOURS) // 24 + 1)
    return {"ghi": light, "dni": np.asarray(parts["dni"]), "dhi": np.asarray(parts["dhi"])}


def _temperature(filled: Filled, air: Array, ghi: Array, clearness: Array) -> Array:
    """Season, air mass and day together, each month with its mean, spread of daily means and daily swing."""
    ground = noise.lagged(ghi / FULL_SUN - NIGHT_COOLING * clearness, GROUND_LAG)
    of_day = ground - noise.running_mean(ground, 24)
    level, spread = filled.temp_air, filled.daily_spread
    swing = filled.daily_swing / np.maximum(noise.mean_daily_swing(of_day), 1e-9)
    swing_most, spread_most = _WIDEST * swing, _WIDEST * filled.daily_spread
    for _ in range(_ROUNDS):
        temp = noise.through_months(level) + noise.through_months(spread) * air + noise.through_months(swing) * of_day
        level = level + filled.temp_air - noise.monthly_mean(temp)
        spread = np.minimum(spread * _towards(filled.daily_spread, noise.daily_mean_spread(temp)), spread_most)
        swing = np.minimum(swing * _towards(filled.daily_swing, noise.mean_daily_swing(temp)), swing_most)
    return np.asarray(temp + (filled.temp_air - noise.monthly_mean(temp))[noise.MONTHS], dtype=float)


def _towards(asked: Array, found: Array) -> Array:
    return np.divide(asked, found, out=np.ones(asked.shape), where=found > 0.0)


def _wind(means: Array, chance: noise.Noise, air: Array, warmth: Array, sun: Sun) -> Array:
    with_air = _between(WIND_WITH_WARMTH, warmth)
    rest = np.sqrt(1.0 - WIND_WITH_CLOUD**2 - np.square(with_air))
    latent = WIND_WITH_CLOUD * chance.slow_cloud + with_air * air + rest * chance.gust
    shape = noise.weibull(latent) * (1.0 + WIND_BY_DAY * sun.height)
    return _exact(shape, means)


def _exact(values: Array, means: Array) -> Array:
    """Values scaled month by month to their mean."""
    found = noise.monthly_mean(values)
    scale = np.divide(means, found, out=np.zeros(means.shape), where=found > 0.0)
    return np.asarray(values * scale[noise.MONTHS], dtype=float)


def _clearness(cloud: Array, brightness: Array) -> Array:
    return np.asarray(1.0 / (1.0 + np.exp(CLOUD_EDGE * cloud - brightness)), dtype=float)
