"""Are the invented climates labelled so, small, repeatable, and sensible as weather?"""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from io import StringIO

import numpy as np
import pytest

from estimator.climate.invent import invented_table
from estimator.climate.sources import DEMO_CLIMATES, demo_folder
from estimator.climate.year import ClimateYear
from estimator.units import MONTH_DAYS, Array

Included = Callable[[str], ClimateYear]
MONTHS = np.repeat(np.arange(12), np.array(MONTH_DAYS) * 24)


def daily(values: Array) -> Array:
    return values.reshape(365, 24)


@pytest.fixture(params=DEMO_CLIMATES)
def year(request: pytest.FixtureRequest, included: Included) -> ClimateYear:
    return included(request.param)


def test_each_is_called_invented_wherever_it_is_told(year: ClimateYear) -> None:
    assert year.invented
    assert "does not exist" in year.source
    note = (demo_folder() / DEMO_CLIMATES[year.name]).with_suffix(".toml").read_text(encoding="utf-8")
    assert note.startswith("# An invented climate")


def test_files_stay_small(year: ClimateYear) -> None:
    assert (demo_folder() / DEMO_CLIMATES[year.name]).stat().st_size < 350_000


def test_the_generator_writes_the_shipped_table(year: ClimateYear) -> None:
    """Within the last printed digit, since libraries may sum in another order."""
    table = demo_folder() / DEMO_CLIMATES[year.name]
    made = np.loadtxt(StringIO(invented_table(table.with_suffix(".toml"))), delimiter=",", skiprows=1)
    kept = np.loadtxt(table, delimiter=",", skiprows=1)
    np.testing.assert_allclose(made, kept, atol=1.01)
    np.testing.assert_allclose(made[:, 3:5], kept[:, 3:5], atol=0.101)


def test_months_are_as_warm_and_windy_as_asked(year: ClimateYear) -> None:
    note = (demo_folder() / DEMO_CLIMATES[year.name]).with_suffix(".toml").read_text(encoding="utf-8")
    recipe = tomllib.loads(note)["recipe"]
    for column in ("temp_air", "wind_speed"):
        means = np.bincount(MONTHS, getattr(year, column)) / np.bincount(MONTHS)
        np.testing.assert_allclose(means, recipe[column], atol=0.06)


def test_the_day_follows_the_sun(year: ClimateYear) -> None:
    """Common practice, no source: warmest two to four hours after noon, coldest about sunrise."""
    july = daily(year.temp_air)[181:212].mean(axis=0)
    assert 13 <= july.argmax() <= 16
    assert 3 <= july.argmin() <= 6
    swing = np.ptp(daily(year.temp_air), axis=1)
    sunny = daily(year.ghi).sum(axis=1)
    assert np.corrcoef(swing[120:270], sunny[120:270])[0, 1] > 0.4
    assert swing[151:243].mean() > swing[:59].mean()


def test_weather_lasts_as_it_does_on_real_years(year: ClimateYear, included: Included) -> None:
    """Correlation from one day to the next, the season taken out, lies with that of the real years."""

    def persistence(of: ClimateYear) -> float:
        mean = daily(of.temp_air).mean(axis=1)
        season = np.convolve(np.concatenate([mean[-15:], mean, mean[:15]]), np.ones(31) / 31, "valid")
        departure = mean - season
        return float(np.corrcoef(departure, np.roll(departure, 1))[0, 1])

    real = [persistence(included(name)) for name in ("Greensboro", "Sand Point", "Miami")]
    assert min(real) - 0.1 < persistence(year) < max(real) + 0.1


def test_winter_wind_brings_mild_air_and_summer_nights_dew(year: ClimateYear) -> None:
    winter = np.r_[0:59, 334:365]
    wind, temp = daily(year.wind_speed).mean(axis=1)[winter], daily(year.temp_air).mean(axis=1)[winter]
    assert np.corrcoef(wind, temp)[0, 1] > 0.0
    assert year.wind_speed[MONTHS == 0].mean() > year.wind_speed[MONTHS == 6].mean()
    humidity = daily(year.relative_humidity)[181:212].mean(axis=0)
    assert humidity[4] > humidity[14] + 10.0


def test_light_adds_up(year: ClimateYear) -> None:
    """Global is diffuse and the level part of direct, each rounded to 1 W/m²; at noon, height within the hour."""
    assert (year.dhi <= year.ghi + 1.0).all()
    assert (year.ghi <= year.dhi + year.dni + 1.0).all()


@pytest.mark.parametrize(
    ("name", "mean", "fewest_frost", "most_frost"),
    [
        ("Mild coast", 11.0, 0, 10),
        ("Inland vale", 9.8, 20, 200),
        ("Upland", 6.5, 100, 500),
        ("Cold plain", 5.0, 1500, 3500),
    ],
)
def test_each_is_the_kind_of_climate_it_says(
    included: Included, name: str, mean: float, fewest_frost: int, most_frost: int
) -> None:
    """Hours below -3 °C, about where a plate exchanger begins to freeze (common practice, no source)."""
    temp = included(name).temp_air
    assert temp.mean() == pytest.approx(mean, abs=0.3)
    assert fewest_frost <= int((temp < -3.0).sum()) <= most_frost


def test_a_preheater_is_hardly_needed_on_the_coast_and_wanted_on_the_plain(included: Included) -> None:
    """Common practice, no source. Degree-hours below -3 °C: what a pre-heater would have to lift."""

    def below(name: str) -> float:
        return float(np.maximum(0.0, -3.0 - included(name).temp_air).sum())

    assert below("Mild coast") < 10.0
    assert below("Cold plain") > 10_000.0
    assert below("Mild coast") < below("Inland vale") < below("Upland") < below("Cold plain")


def test_the_plain_is_continental(included: Included) -> None:
    temp = included("Cold plain").temp_air
    assert temp[MONTHS == 0].mean() == pytest.approx(-8.0, abs=0.5)
    assert (temp < -10.0).sum() > 500
    assert temp[MONTHS == 6].mean() > 18.0
