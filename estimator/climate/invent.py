"""How were the demo climates invented, and how are they written anew?

    python -m estimator.climate.invent

reads the recipe in each note of the demo folder and writes the table beside it again. No measured record
enters: the recipes are round figures for kinds of climate. What the recipe does not say, the sun and chance
do: clouds drift over days and hours, the sun behind them warms the day, weather lasts, wind comes with cloud.
"""

from __future__ import annotations

import math
import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from estimator.climate import weather_noise as noise
from estimator.climate.monthly_means import clear_sky
from estimator.climate.solar import HOURS, Sun, sun_position
from estimator.units import MONTH_DAYS, Array

# How long, in hours, weather remembers itself: invented, of the order of a passing low and of a cloud bank.
SLOW_CLOUD, FAST_CLOUD, WARMTH, GUST = 40.0, 4.0, 70.0, 18.0
SLOW_SHARE = 0.65  # of the variance of cloud
CLOUD_EDGE = 1.6  # how sharply the sky turns from clear to grey
DARKEST, CLEAREST = 0.10, 1.05  # clear-sky index
GROUND_LAG = 4.0  # h, puts the warmest hour about three hours after noon
NIGHT_COOLING = 0.12  # of 1,000 W/m²: what a clear sky takes, day and night
WIND_WITH_CLOUD = 0.55  # correlation
WIND_BY_DAY = 0.15  # more by day than by night
COLUMNS = ("month", "day", "hour", "temp_air", "wind_speed", "ghi", "dni", "dhi", "relative_humidity")


@dataclass(frozen=True, slots=True, kw_only=True)
class Recipe:
    """What is asked of an invented climate; lists have twelve months, pairs are mid-winter and mid-summer."""

    draw: int  # which weather, of all that the recipe allows
    temp_air: list[float]  # °C
    weather_spread: list[float]  # K, standard deviation from day to day
    cloud_warms: list[float]  # correlation of cloud with warmth
    daily_swing: float  # K, mean of June and July
    clear_sky_index: list[float]  # share of clear-sky irradiance
    wind_speed: list[float]  # m/s
    dew_depression: list[float]  # K, mean temperature of the day less dew point under a half-clear sky


def invented_columns(recipe: Recipe, sun: Sun) -> dict[str, Array]:
    """Hourly columns of a climate by recipe: temperature, wind, irradiance, humidity, each (8760,), rounded."""
    chance = np.random.default_rng(recipe.draw)
    memories = (SLOW_CLOUD, FAST_CLOUD, WARMTH, GUST)
    slow, fast, warmth, gust = (
        noise.standardised(noise.lagged(chance.standard_normal(HOURS), memory)) for memory in memories
    )
    cloud = math.sqrt(SLOW_SHARE) * slow + math.sqrt(1.0 - SLOW_SHARE) * fast
    light = _light(np.array(recipe.clear_sky_index), cloud, sun)
    clearness = 1.0 / (1.0 + np.exp(CLOUD_EDGE * cloud))
    temp = _temperature(recipe, slow, warmth, light["ghi"], clearness)
    wind = _wind(np.array(recipe.wind_speed), slow, gust, sun)
    depression = _seasonal(recipe.dew_depression) * (0.5 + clearness)
    dew = np.minimum(noise.running_mean(temp, 24) - depression, temp)
    humidity = 100.0 * np.exp(noise.magnus(dew) - noise.magnus(temp))
    return {
        "temp_air": np.round(temp, 1),
        "wind_speed": np.round(wind, 1),
        **{name: np.round(values) for name, values in light.items()},
        "relative_humidity": np.round(humidity),
    }


def _light(clear_sky_index: Array, cloud: Array, sun: Sun) -> dict[str, Array]:
    """Global, direct and diffuse irradiance whose monthly sums are the asked share of a clear sky's."""
    from pvlib import irradiance

    clear = clear_sky(sun)
    low, high = np.full(12, -9.0), np.full(12, 9.0)
    for _ in range(50):
        middle = (low + high) / 2.0
        index = DARKEST + (CLEAREST - DARKEST) / (1.0 + np.exp(CLOUD_EDGE * cloud - middle[noise.MONTHS]))
        dim = noise.monthly_mean(index * clear) < clear_sky_index * noise.monthly_mean(clear)
        low, high = np.where(dim, middle, low), np.where(dim, high, middle)
    ghi = index * clear
    parts = irradiance.erbs(ghi, sun.zenith, np.arange(HOURS) // 24 + 1)
    return {"ghi": ghi, "dni": np.asarray(parts["dni"]), "dhi": np.asarray(parts["dhi"])}


def _temperature(recipe: Recipe, slow: Array, warmth: Array, ghi: Array, clearness: Array) -> Array:
    with_cloud = _seasonal(recipe.cloud_warms)
    weather = _seasonal(recipe.weather_spread) * (with_cloud * slow + np.sqrt(1.0 - with_cloud**2) * warmth)
    ground = noise.lagged(ghi / 1000.0 - NIGHT_COOLING * clearness, GROUND_LAG)
    summer = np.ptp(ground.reshape(365, 24)[151:212], axis=1).mean()
    departure = weather + (ground - noise.running_mean(ground, 30 * 24)) * recipe.daily_swing / summer
    normal = np.array(recipe.temp_air)
    # a typical year has typical months: what chance moved a month's mean by is taken out again
    for _ in range(20):
        temp = noise.through_months(normal) + departure
        normal = normal + np.array(recipe.temp_air) - noise.monthly_mean(temp)
    return np.asarray(temp, dtype=float)


def _wind(means: Array, slow: Array, gust: Array, sun: Sun) -> Array:
    latent = WIND_WITH_CLOUD * slow + math.sqrt(1.0 - WIND_WITH_CLOUD**2) * gust
    shape = noise.weibull(latent) * (1.0 + WIND_BY_DAY * sun.height)
    return np.asarray(shape * (means / noise.monthly_mean(shape))[noise.MONTHS], dtype=float)


def _seasonal(winter_and_summer: list[float]) -> Array:
    """Hourly course from mid-January to mid-July and back."""
    winter, summer = winter_and_summer
    turn = 2.0 * np.pi * (np.arange(HOURS) / 24.0 - 15.0) / 365.0
    return np.asarray(winter + (summer - winter) * (1.0 - np.cos(turn)) / 2.0, dtype=float)


def invented_table(note: Path) -> str:
    """The table that a note's recipe makes, as text: one row an hour, named columns."""
    said: dict[str, Any] = tomllib.loads(note.read_text(encoding="utf-8"))
    place = {name: float(said[name]) for name in ("latitude", "longitude", "altitude", "utc_offset")}
    columns = invented_columns(Recipe(**said["recipe"]), sun_position(**place))
    day = np.concatenate([np.repeat(np.arange(1, days + 1), 24) for days in MONTH_DAYS])
    stamps = {"month": noise.MONTHS + 1, "day": day, "hour": np.arange(HOURS) % 24}
    rows = zip(*[(stamps | columns)[name].tolist() for name in COLUMNS], strict=True)
    return "\n".join([",".join(COLUMNS), *(",".join(f"{value:g}" for value in row) for row in rows), ""])


def main() -> None:
    """Write the table beside every note of the demo folder."""
    from estimator.climate.sources import demo_folder

    for note in sorted(demo_folder().glob("*.toml")):
        note.with_suffix(".csv").write_text(invented_table(note), encoding="utf-8", newline="\n")
        print(note.with_suffix(".csv").name)


if __name__ == "__main__":
    main()
