"""Does every source keep the same promises: included, fetched, uploaded, and made of monthly means?"""

from __future__ import annotations

from collections.abc import Callable, Iterator

import numpy as np
import pandas as pd
import pytest

from estimator.climate.sources import SOURCES, names
from estimator.climate.year import FACADES, ClimateYear
from tests.climate.every import BROKEN, EVERY, MADE, Broken, by_calendar, loader, means_told
from tests.climate.replay import Row, replaying

Load = tuple[str, Callable[[], ClimateYear]]
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


@pytest.fixture(scope="module", params=EVERY)
def load(
    request: pytest.FixtureRequest,
    tmp_path_factory: pytest.TempPathFactory,
    tmy3_frame: pd.DataFrame,
    epw_lines: list[str],
    good_answer: bytes,
) -> Iterator[Load]:
    """Reads one source from its beginning each time it is called."""
    with replaying() as server:
        server.body = good_answer
        folder = tmp_path_factory.mktemp("every")
        yield request.param, loader(request.param, folder=folder, tmy3=tmy3_frame, epw=epw_lines, server=server)


@pytest.fixture(scope="module")
def year(load: Load) -> ClimateYear:
    return load[1]()


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


def test_place_source_and_licence_are_told(year: ClimateYear, load: Load) -> None:
    assert year.name.strip()
    assert load[0] in MADE or year.name == load[0]
    assert -60.0 < year.latitude < 70.0
    assert abs(year.longitude - 15.0 * year.utc_offset) < 30.0
    assert len(year.source) > 20
    assert year.licence
    assert year.invented == ("invented" in year.source)


def test_reading_again_gives_the_same_year(year: ClimateYear, load: Load) -> None:
    again = load[1]()
    assert all(np.array_equal(getattr(year, column), getattr(again, column)) for column in (*HOURLY, "facades"))


def test_the_months_have_the_means_that_the_source_states(
    year: ClimateYear, load: Load, tmy3_frame: pd.DataFrame
) -> None:
    """Within a tenth of a degree: a clock that is turned moves a few hours from one month to the next."""
    np.testing.assert_allclose(by_calendar(year.temp_air), means_told(load[0], tmy3_frame), atol=0.1)


@pytest.mark.parametrize("broken", BROKEN, ids=lambda way: way.__name__)
def test_a_leap_day_is_left_out_and_a_missing_code_is_bridged_and_told(
    broken: Broken, tmy3_frame: pd.DataFrame, epw_lines: list[str], answered_rows: list[Row]
) -> None:
    """The same year comes back from a file with 29 February in it and one hour without a temperature."""
    year = broken(tmy3_frame, list(epw_lines), [dict(row) for row in answered_rows])
    assert year.temp_air.shape == (8760,)
    assert any("29 February" in repair for repair in year.repairs)
    assert any("air temperature: 1 missing hour" in repair for repair in year.repairs)
    np.testing.assert_allclose(by_calendar(year.temp_air), means_told(MADE[0], tmy3_frame), atol=0.1)


def test_repairs_are_told_in_words(year: ClimateYear) -> None:
    assert all(": " in repair for repair in year.repairs)


def test_names_are_of_included_sources_and_differ() -> None:
    assert len({name.casefold() for name in names()}) == len(names())
    assert {"Mild coast", "Inland vale", "Upland", "Cold plain", "Greensboro", "Sand Point", "Miami"} <= set(names())
    assert all(source.title and callable(source.year) for source in SOURCES)
