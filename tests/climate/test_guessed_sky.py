"""Are wind and sky, where nobody knows them, those of the latitude and of the distance from the sea?

The laws rest on the UK regions of the package. They are held against each region with the law fitted on the others, and
against the real years in pvlib's package, which had no part in them.
"""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from estimator.climate.monthly_means import (
    CLEARNESS_AT_EQUATOR,
    CLEARNESS_FALL,
    WIND_AT_SEA,
    WIND_FALL,
    clearness_of,
    continentality,
    wind_of,
)
from estimator.climate.monthly_tables import uk_regions
from estimator.climate.solar import sun_position
from estimator.units import Array
from tests.accuracy.monthly import YEARS, means_of, months_of, real

REGIONS = {name: means for name, means in uk_regions().items() if name != "UK average"}


def clearness(ghi: Array, latitude: float, longitude: float, utc_offset: float) -> float:
    """Irradiance of the year per that outside the atmosphere."""
    sun = sun_position(latitude=latitude, longitude=longitude, altitude=0.0, utc_offset=utc_offset)
    outside = months_of(sun.normal_extra * sun.height)
    return float(ghi.sum() / outside.sum())


@cache
def region_clearness(name: str) -> float:
    means = REGIONS[name]
    place = means.place
    return clearness(np.array(means.ghi), place.latitude, place.longitude, place.utc_offset)


def line(x: list[float], y: list[float]) -> tuple[float, float]:
    """Slope and height at nil by NumPy's own least squares."""
    slope, height = np.polyfit(x, y, 1)
    return float(slope), float(height)


def test_the_laws_are_the_least_squares_of_the_regions() -> None:
    inland = [continentality(means) for means in REGIONS.values()]
    slope, height = line(inland, [math.log(np.mean(means.wind_speed or ())) for means in REGIONS.values()])
    assert (math.exp(height), -slope) == pytest.approx((WIND_AT_SEA, WIND_FALL), rel=0.01)
    north = [means.place.latitude for means in REGIONS.values()]
    slope, height = line(north, [region_clearness(name) for name in REGIONS])
    assert (height, -slope) == pytest.approx((CLEARNESS_AT_EQUATOR, CLEARNESS_FALL), rel=0.02)


@pytest.mark.parametrize("left_out", REGIONS)
def test_a_region_is_foretold_by_the_others(left_out: str) -> None:
    """Mean wind within a fifth (Northern Ireland is calmer than the rest say), sky within 0.03."""
    names = [name for name in REGIONS if name != left_out]
    others = [REGIONS[name] for name in names]
    means = REGIONS[left_out]
    slope, height = line([continentality(m) for m in others], [math.log(np.mean(m.wind_speed or ())) for m in others])
    wind = math.exp(height + slope * continentality(means))
    assert wind == pytest.approx(np.mean(means.wind_speed or ()), rel=0.2)
    slope, height = line([m.place.latitude for m in others], [region_clearness(name) for name in names])
    assert height + slope * means.place.latitude == pytest.approx(region_clearness(left_out), abs=0.03)


@pytest.mark.parametrize("name", YEARS)
def test_real_years_elsewhere_are_roughly_met(name: str) -> None:
    """A quarter of the wind, and 0.06 of the sky: they are guesses."""
    year, guessed = real(name), wind_of(means_of(name, "temperature alone"))
    assert guessed.mean() == pytest.approx(year.wind_speed.mean(), rel=0.25)
    sky = clearness(months_of(year.ghi), year.latitude, year.longitude, year.utc_offset)
    assert clearness_of(year.latitude) == pytest.approx(sky, abs=0.06)


def test_it_is_windier_by_the_sea_and_in_winter_and_cloudier_to_the_north() -> None:
    """Common practice, no source."""
    vale, isles = REGIONS["Thames valley"], REGIONS["Shetland"]
    assert wind_of(isles).mean() > wind_of(vale).mean()
    assert wind_of(vale)[0] > wind_of(vale)[6]
    assert clearness_of(60.0) < clearness_of(50.0) < clearness_of(30.0) == clearness_of(0.0)


def test_a_year_without_seasons_has_one_wind() -> None:
    even = replace(REGIONS["Shetland"], temp_air=(20.0,) * 12)
    assert np.ptp(wind_of(even)) == 0.0
