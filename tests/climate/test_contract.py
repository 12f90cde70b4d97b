"""Does every included source keep the same promises?"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from estimator.climate.sources import SOURCES, load_year, names
from estimator.climate.year import FACADES, ClimateYear

Included = Callable[[str], ClimateYear]
HOURLY = ("temp_air", "wind_speed", "ghi", "dni", "dhi", "relative_humidity", "pressure")
# Limits of the EPW data dictionary (EnergyPlus, Auxiliary Programs); the solar constant is 1,361 W/m²
# (Kopp and Lean 2011), which no direct irradiance can exceed by more than the earth's nearness to the sun.
RANGES = {
    "temp_air": (-70.0, 70.0),
    "wind_speed": (0.0, 40.0),
    "ghi": (0.0, 1410.0),
    "dni": (0.0, 1410.0),
    "dhi": (0.0, 1000.0),
    "relative_humidity": (0.0, 100.0),
    "pressure": (31_000.0, 120_000.0),
}


@pytest.fixture(params=names())
def year(request: pytest.FixtureRequest, included: Included) -> ClimateYear:
    return included(request.param)


def test_the_year_has_8760_rows_of_one_hour(year: ClimateYear) -> None:
    assert year.weight == 1.0
    assert all(getattr(year, column).shape == (8760,) for column in HOURLY)
    assert year.facades.shape == (len(FACADES), 8760)


def test_every_value_is_finite_and_within_its_range(year: ClimateYear) -> None:
    for column, (low, high) in RANGES.items():
        values = getattr(year, column)
        assert np.isfinite(values).all(), column
        assert values.min() >= low, column
        assert values.max() <= high, column
    assert np.isfinite(year.facades).all()
    assert year.facades.min() >= 0.0
    assert year.facades.max() <= 1410.0


def test_the_clock_agrees_with_the_sun(year: ClimateYear, best_shift: Callable[[ClimateYear], float]) -> None:
    assert best_shift(year) == 0.0


def test_east_and_west_receive_alike_and_the_equator_side_most(year: ClimateYear) -> None:
    """All included places lie north of the tropics; clouds alone set east and west apart."""
    north, east, south, west = year.facades.sum(axis=1)
    assert east == pytest.approx(west, rel=0.08)
    assert south > max(east, west)
    assert north < min(east, west)


def test_nights_are_dark(year: ClimateYear) -> None:
    """No place south of the polar circle has sun at the mean of local midnight."""
    by_hour = year.ghi.reshape(365, 24).mean(axis=0)
    assert by_hour[:3].max() < 0.01 * by_hour.max()


def test_place_source_and_licence_are_told(year: ClimateYear) -> None:
    assert year.name in names()
    assert -60.0 < year.latitude < 70.0
    assert abs(year.longitude - 15.0 * year.utc_offset) < 30.0
    assert len(year.source) > 20
    assert year.licence
    assert year.invented == ("invented" in year.source)


def test_reading_again_gives_the_same_year(year: ClimateYear) -> None:
    again = load_year(year.name)
    assert all(np.array_equal(getattr(year, column), getattr(again, column)) for column in (*HOURLY, "facades"))


def test_repairs_are_told_in_words(year: ClimateYear) -> None:
    assert all(": " in repair for repair in year.repairs)


def test_names_are_of_included_sources_and_differ() -> None:
    assert len({name.casefold() for name in names()}) == len(names())
    assert {"Mild coast", "Inland vale", "Upland", "Cold plain", "Greensboro", "Sand Point", "Miami"} <= set(names())
    assert all(source.title and callable(source.year) for source in SOURCES)
