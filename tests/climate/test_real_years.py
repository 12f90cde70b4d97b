"""Are the real years inside pvlib's package read as their formats mean them?"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np
import pandas as pd
import pvlib
import pytest

from estimator.climate.sources import load_year
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault
from tests.climate.conftest import PVLIB_DATA

Included = Callable[[str], ClimateYear]

# [P] Arithmetic pins: sums over the printed values of the two files, no outside source.
PINS = [
    # name, mean °C, degree-hours base 15.5, degree-hours base 20, hours below 15.5
    ("Greensboro", 14.422, 40_657, 63_133, 4_240),
    ("Sand Point", 4.421, 97_147, 136_475, 8_668),
]


@pytest.mark.parametrize(("name", "mean", "base_15", "base_20", "hours"), PINS)
def test_mean_and_degree_hours_are_those_of_the_file(
    included: Included, name: str, mean: float, base_15: float, base_20: float, hours: int
) -> None:
    temp = included(name).temp_air
    assert temp.mean() == pytest.approx(mean, abs=0.0005)
    assert np.maximum(0.0, 15.5 - temp).sum() == pytest.approx(base_15, abs=0.6)
    assert np.maximum(0.0, 20.0 - temp).sum() == pytest.approx(base_20, abs=0.6)
    assert int((temp < 15.5).sum()) == hours


def test_tmy3_stamps_mark_the_end_of_the_hour(included: Included, tmy3_frame: pd.DataFrame) -> None:
    """User's Manual for TMY3 (Wilcox and Marion 2008): the first stamp is 01:00 and covers 00:00 to 01:00."""
    assert (tmy3_frame.index[0].hour, tmy3_frame.index[0].day) == (1, 1)
    np.testing.assert_array_equal(included("Greensboro").temp_air, tmy3_frame["temp_air"].to_numpy())
    moved = pd.DatetimeIndex(tmy3_frame.index) - pd.Timedelta(hours=1)
    assert list(moved.hour) == list(range(24)) * 365


def ended_by_nil(lines: list[str], *, moved: bool) -> str:
    """The text of a TMY3 file with 00:00 for 24:00, under the date of the day that begins or of the one that ends."""
    rows = []
    for line in lines[2:]:
        date, hour, rest = line.split(",", 2)
        if hour == "24:00":
            new = pd.to_datetime(date) + pd.Timedelta(days=1)
            date, hour = f"{new:%m/%d/%Y}" if moved else date, "00:00"
        rows.append(f"{date},{hour},{rest}")
    return "\n".join([*lines[:2], *rows])


@pytest.mark.parametrize("moved", [True, False], ids=["the new day's date", "the old day's date"])
def test_a_day_may_end_at_nil_instead_of_24(included: Included, tmp_path: Path, moved: bool) -> None:
    """24:00 of one day is 00:00 of the next (ISO 8601:2004, 4.2.3); pandas counts the dates on."""
    lines = (PVLIB_DATA / "723170TYA.CSV").read_text("utf-8").splitlines()
    path = tmp_path / "year.csv"
    path.write_text(ended_by_nil(lines, moved=moved), encoding="utf-8")
    year = load_year(str(path))
    np.testing.assert_array_equal(year.temp_air, included("Greensboro").temp_air)
    np.testing.assert_array_equal(year.ghi, included("Greensboro").ghi)


def test_stamps_that_may_be_beginnings_are_refused_with_what_to_do(tmp_path: Path) -> None:
    text = ended_by_nil((PVLIB_DATA / "723170TYA.CSV").read_text("utf-8").splitlines(), moved=True)
    first, names, *rows = text.splitlines()
    path = tmp_path / "year.csv"
    path.write_text("\n".join([first, names, rows[-1], *rows[:-1]]), encoding="utf-8")
    with pytest.raises(ClimateFault, match="does not follow 23:00") as refused:
        load_year(str(path))
    (fault,) = refused.value.faults
    assert fault.where == "row 3"
    assert "plain table" in fault.what


def test_an_hour_left_unmoved_would_be_seen_by_the_sun(
    included: Included, best_shift: Callable[[ClimateYear], float]
) -> None:
    year = included("Greensboro")
    unmoved = replace(year, ghi=np.roll(year.ghi, 1))
    assert best_shift(unmoved) == -1.0


def test_tmy2_has_tenths(included: Included) -> None:
    """The first row of the file reads 200 and 67 in tenths (Marion and Urban 1995), 1017 mbar and 73 %."""
    year = included("Miami")
    assert year.temp_air[0] == 20.0
    assert year.wind_speed[0] == 6.7
    assert year.pressure[0] == pytest.approx(101_700.0)
    assert year.relative_humidity[0] == 73.0


def test_miami_is_as_warm_as_its_climate(included: Included) -> None:
    """Published normal of the station: about 24 to 25 °C, no frost (from memory)."""
    assert 23.5 < included("Miami").temp_air.mean() < 25.5
    assert included("Miami").temp_air.min() > 0.0


def test_position_agrees_with_pvlib(included: Included) -> None:
    """pvlib's own header reader is the other witness of degrees and minutes."""
    _, meta = pvlib.iotools.read_tmy3(included_path("703165TY.csv"))
    year = included("Sand Point")
    assert (year.latitude, year.longitude, year.utc_offset) == (meta["latitude"], meta["longitude"], meta["TZ"])
    miami = included("Miami")
    assert miami.latitude == pytest.approx(25.8)
    assert miami.longitude == pytest.approx(-80.2667, abs=1e-4)
    assert (miami.altitude, miami.utc_offset) == (2.0, -5.0)


def included_path(name: str) -> str:
    return f"{pvlib.__path__[0]}/data/{name}"


def test_pressure_is_the_stations(included: Included) -> None:
    """Greensboro lies at 273 m: about 98.1 kPa in the standard atmosphere (ICAO), weather moves it by 1 %."""
    assert included("Greensboro").pressure.mean() == pytest.approx(98_100.0, rel=0.01)


def test_real_years_need_no_repair(included: Included) -> None:
    assert [included(name).repairs for name in ("Greensboro", "Sand Point", "Miami")] == [(), (), ()]
