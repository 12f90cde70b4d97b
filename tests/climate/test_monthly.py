"""Is a year made of monthly means exact in its months, repeatable, and weather in its days?"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from estimator.climate.monthly import frost_hours, monthly_year
from estimator.climate.monthly_means import MonthlyMeans, filled_means
from estimator.climate.raw import Place
from estimator.climate.solar import sun_position
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault
from estimator.units import Array
from tests.accuracy.monthly import months_of, spread_of_days, swing_of_days

PLACE = Place(
    name="Fernby",
    latitude=52.0,
    longitude=-1.5,
    altitude=120.0,
    utc_offset=0.0,
    source="figures made up for a test",
    licence="none",
)
MEANS = MonthlyMeans(
    place=PLACE,
    temp_air=(4.1, 4.4, 6.3, 8.6, 11.6, 14.5, 16.7, 16.5, 14.0, 10.5, 6.9, 4.4),
    wind_speed=(4.8, 4.7, 4.5, 4.2, 4.0, 3.7, 3.6, 3.5, 3.7, 4.0, 4.2, 4.4),
    ghi=(28.0, 54.0, 97.0, 152.0, 191.0, 205.0, 192.0, 161.0, 119.0, 69.0, 35.0, 22.0),
    daily_swing=(5.7, 6.3, 7.2, 8.6, 9.0, 8.8, 8.8, 8.4, 7.8, 6.6, 5.9, 5.7),
    daily_spread=(3.9, 3.5, 3.0, 2.6, 2.6, 2.3, 2.2, 2.0, 2.1, 2.6, 3.3, 3.8),
)


@pytest.fixture(scope="module")
def year() -> ClimateYear:
    return monthly_year(MEANS)


def days(values: Array) -> Array:
    return np.asarray(values.reshape(365, 24).mean(axis=1))


@pytest.mark.parametrize("column", ["temp_air", "wind_speed", "ghi"])
@pytest.mark.parametrize("draw", [1, 2, 3])
def test_months_have_exactly_the_means_asked_for(column: str, draw: int) -> None:
    made = monthly_year(MEANS, draw=draw)
    np.testing.assert_allclose(months_of(getattr(made, column)), getattr(MEANS, column), rtol=0.0, atol=1e-9)


def test_months_have_the_spread_and_the_swing_asked_for(year: ClimateYear) -> None:
    np.testing.assert_allclose(spread_of_days(year.temp_air), MEANS.daily_spread or (), atol=0.02)
    np.testing.assert_allclose(swing_of_days(year.temp_air), MEANS.daily_swing or (), atol=0.05)


def test_the_same_draw_gives_the_same_year_and_another_another(year: ClimateYear) -> None:
    again, other = monthly_year(MEANS), monthly_year(MEANS, draw=99)
    for column in ("temp_air", "wind_speed", "ghi", "dni", "dhi", "relative_humidity", "facades"):
        assert np.array_equal(getattr(year, column), getattr(again, column))
        assert not np.array_equal(getattr(year, column), getattr(other, column))


@pytest.mark.parametrize("draw", [1, 5, 9])
def test_weather_lasts_for_days(draw: int) -> None:
    """Day-to-day correlation of daily means about their month: real years in pvlib's package have 0.61 to 0.74."""
    mean = days(monthly_year(MEANS, draw=draw).temp_air)
    departure = mean - np.convolve(np.concatenate([mean[-15:], mean, mean[:15]]), np.ones(31) / 31.0, "valid")
    assert 0.5 < np.corrcoef(departure, np.roll(departure, 1))[0, 1] < 0.85


@pytest.mark.parametrize("draw", [1, 5, 9])
def test_bright_days_swing_more_and_afternoons_are_warmest(draw: int) -> None:
    """Common practice, no source: warmest two to four hours after noon, coldest about sunrise."""
    made = monthly_year(MEANS, draw=draw)
    hours = made.temp_air.reshape(365, 24)
    summer = slice(120, 270)
    assert np.corrcoef(np.ptp(hours, axis=1)[summer], days(made.ghi)[summer])[0, 1] > 0.5
    july = hours[181:212].mean(axis=0)
    assert 13 <= july.argmax() <= 16
    assert 3 <= july.argmin() <= 6


@pytest.mark.parametrize("draw", [1, 5, 9])
def test_wind_is_not_independent_of_temperature(draw: int) -> None:
    """Westerlies: mild winter days are windy ones. Wind itself is spread like a Weibull distribution of shape 2.

    That has a standard deviation of 0.52 of its mean; the real years in pvlib's package have 0.49 to 0.66.
    """
    made = monthly_year(MEANS, draw=draw)
    winter = np.r_[0:59, 334:365]
    assert 0.1 < np.corrcoef(days(made.wind_speed)[winter], days(made.temp_air)[winter])[0, 1] < 0.6
    assert 0.45 < made.wind_speed.std() / made.wind_speed.mean() < 0.66


def test_light_adds_up(year: ClimateYear) -> None:
    """Global is diffuse and the level part of direct; pvlib's sun stands at mid-hour."""
    sun = sun_position(latitude=52.0, longitude=-1.5, altitude=120.0, utc_offset=0.0)
    high = sun.zenith < 80.0
    np.testing.assert_allclose(year.ghi[high], (year.dhi + year.dni * sun.height)[high], atol=0.5)


def test_what_was_not_given_is_told(year: ClimateYear) -> None:
    assert not any("not given" in repair for repair in year.repairs)
    bare = monthly_year(MonthlyMeans(place=PLACE, temp_air=MEANS.temp_air))
    told = " ".join(bare.repairs)
    assert all(word in told for word in ("wind: not given", "irradiance: not given", "daily swing", "spread"))


def test_irradiance_from_the_daily_swing_as_in_fao_56_example_15() -> None:
    """Allen et al. 1998, example 15 (Lyon, July): swing 26.6 - 14.8 °C, outside 40.6, irradiance 22.3 MJ/(m² d)."""
    means = replace(MEANS, temp_air=(0.0,) * 6 + (25.0,) * 6, ghi=None, daily_swing=(26.6 - 14.8,) * 12)
    sun = sun_position(latitude=45.7, longitude=4.8, altitude=200.0, utc_offset=1.0)
    outside = (sun.normal_extra * sun.height).reshape(365, 24).mean()
    filled = filled_means(means, sun)
    assert np.mean(filled.ghi) / outside == pytest.approx(22.3 / 40.6, rel=0.01)


def test_frost_is_a_range_that_widens_with_the_spread() -> None:
    hours = frost_hours(MEANS, draws=range(5))
    assert hours.shape == (3, 5)
    narrow, usual, wide = hours.mean(axis=1)
    assert narrow < usual < wide


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"temp_air": (40.0, *MEANS.temp_air[1:11], 99.0)}, "temp_air, Dec: 99 °C.*Fahrenheit"),
        ({"temp_air": MEANS.temp_air[:11]}, "11 values"),
        ({"wind_speed": (float("nan"),) * 12}, "wind_speed, Jan"),
        ({"ghi": (400.0,) * 12}, "ghi, Jan: 400.*cloudless"),
        ({"daily_spread": (-1.0,) * 12}, "daily_spread, Jan"),
        ({"place": replace(PLACE, latitude=95.0)}, "latitude"),
    ],
)
def test_what_cannot_be_is_refused_in_words(change: dict[str, object], said: str) -> None:
    with pytest.raises(ClimateFault, match=said):
        monthly_year(replace(MEANS, **change))  # type: ignore[arg-type]


@pytest.mark.parametrize("latitude", [-35.0, 0.0, 69.0, -85.0])
def test_any_latitude_gives_a_year(latitude: float) -> None:
    """Half a year apart in the south, no season at the equator, polar night: from temperatures alone."""
    temp = tuple(np.roll(MEANS.temp_air, 6).tolist()) if latitude < 0.0 else MEANS.temp_air
    temp = (25.0,) * 12 if latitude == 0.0 else temp
    made = monthly_year(MonthlyMeans(place=replace(PLACE, latitude=latitude), temp_air=temp))
    np.testing.assert_allclose(months_of(made.temp_air), temp, atol=1e-9)
    assert np.isfinite(made.facades).all()
