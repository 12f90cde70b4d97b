"""Is a hill colder, its air thinner and a town calmer, each by the published amount?"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from estimator.air.properties import density
from estimator.climate.site import TERRAINS, at_site, wind_share
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault, ExtrapolationWarning

Included = Callable[[str], ClimateYear]


@pytest.fixture(scope="module")
def year(included: Included) -> ClimateYear:
    return included("Upland")


@pytest.mark.parametrize(("altitude", "temp", "pressure"), [(500.0, 11.8, 95_461.0), (1000.0, 8.5, 89_875.0)])
def test_standard_atmosphere(year: ClimateYear, altitude: float, temp: float, pressure: float) -> None:
    """ASHRAE Handbook Fundamentals 2017, ch. 1, table 1 (from 15 °C and 101,325 Pa at the sea)."""
    sea = at_site(year, altitude=0.0)
    up = at_site(sea, altitude=altitude)
    np.testing.assert_allclose(15.0 + up.temp_air - sea.temp_air, temp, atol=0.06)
    np.testing.assert_allclose(101_325.0 * up.pressure / sea.pressure, pressure, rtol=1e-3)


def test_air_is_lighter_up_there(year: ClimateYear) -> None:
    """ASHRAE 2017 ch. 1, table 1: pressure at 1,000 m is 0.887 of that at the sea, and so is density at 20 °C."""
    low, high = (density(pressure=float(at_site(year, altitude=z).pressure.mean())) for z in (0.0, 1000.0))
    assert high / low == pytest.approx(89_875.0 / 101_325.0, rel=1e-3)


@pytest.mark.parametrize(("terrain", "share"), [("water", 1.30), ("suburb", 0.67), ("city", 0.47)])
def test_wind_of_a_terrain_is_near_another_published_table(terrain: str, share: float) -> None:
    """Sherman and Grimsrud 1980, terrain classes I, IV and V against II, at 10 m; from memory. Both are rough."""
    assert wind_share(terrain) == pytest.approx(share, rel=0.12)


def test_open_land_at_the_height_of_the_station_is_the_station() -> None:
    assert wind_share("open") == pytest.approx(1.0)


@pytest.mark.parametrize("terrain", TERRAINS)
def test_wind_grows_with_height(terrain: str) -> None:
    assert wind_share(terrain, height=5.0) < wind_share(terrain, height=10.0) < wind_share(terrain, height=30.0)


def test_a_year_at_its_own_altitude_is_itself(year: ClimateYear) -> None:
    same = at_site(year, altitude=year.altitude)
    for column in ("temp_air", "wind_speed", "pressure", "ghi", "facades", "relative_humidity"):
        np.testing.assert_array_equal(getattr(same, column), getattr(year, column))
    assert same.repairs == year.repairs


def test_there_and_back_is_the_same_and_the_first_is_untouched(year: ClimateYear) -> None:
    before = year.temp_air.copy()
    back = at_site(at_site(year, altitude=year.altitude + 700.0), altitude=year.altitude)
    np.testing.assert_allclose(back.temp_air, before, atol=1e-12)
    np.testing.assert_allclose(back.pressure, year.pressure, rtol=1e-12)
    np.testing.assert_array_equal(year.temp_air, before)


def test_what_was_changed_is_told(year: ClimateYear) -> None:
    told = at_site(year, altitude=year.altitude + 300.0, terrain="city").repairs
    assert any("colder all year at 6.5 K/km" in line for line in told)
    assert any("for city at 10 m" in line for line in told)


def test_far_above_the_station_is_warned_of(year: ClimateYear) -> None:
    with pytest.warns(ExtrapolationWarning, match="1500 m above"):
        at_site(year, altitude=year.altitude + 1500.0)


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"altitude": 12_000.0}, "altitude: 12000 m"),
        ({"altitude": float("nan")}, "altitude: nan"),
        ({"altitude": 100.0, "terrain": "moon"}, "terrain: “moon” is not one of water, open, suburb, city"),
        ({"altitude": 100.0, "height": 0.0}, "height"),
    ],
)
def test_what_cannot_be_is_refused(year: ClimateYear, change: dict[str, object], said: str) -> None:
    with pytest.raises(ClimateFault, match=said):
        at_site(year, **change)  # type: ignore[arg-type]
