"""Is an EPW file read as its data dictionary means it, and mended only where a gap is short?

Fields, missing codes and the meaning of hour 1: EPW data dictionary (EnergyPlus, Auxiliary Programs). The
files are made from a typical year of pvlib's own package, since none comes with it.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

from estimator.climate.files import read_year
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault

Read = Callable[[list[str]], ClimateYear]
Put = Callable[[list[str], int, str, str], None]
Included = Callable[[str], ClimateYear]
FIRST_ROW = 9
NOON_JUNE_21 = FIRST_ROW + 171 * 24 + 12


def test_the_same_year_comes_back(epw: list[str], read_lines: Read, included: Included) -> None:
    year, tmy3 = read_lines(epw), included("Greensboro")
    for column in ("temp_air", "wind_speed", "ghi", "dni", "dhi", "relative_humidity"):
        np.testing.assert_array_equal(getattr(year, column), getattr(tmy3, column))
    np.testing.assert_allclose(year.pressure, tmy3.pressure)
    np.testing.assert_allclose(year.facades, tmy3.facades)
    assert (year.name, year.altitude, year.utc_offset) == ("Fernby, Nowhere", 273.0, -5.0)
    assert "Test data" in year.source


def test_hour_one_starts_at_midnight(
    epw: list[str], read_lines: Read, best_shift: Callable[[ClimateYear], float]
) -> None:
    assert epw[8].split(",")[3] == "1"
    assert best_shift(read_lines(epw)) == 0.0


def test_mixed_years_are_one_year(epw: list[str], read_lines: Read) -> None:
    assert len({line.split(",")[0] for line in epw[8:]}) > 3
    assert read_lines(epw).rows == 8760


MISSING = [
    ("temp_air", "99.9"),
    ("relative_humidity", "999"),
    ("pressure", "999999"),
    ("ghi", "9999"),
    ("dni", "9999"),
    ("dhi", "9999"),
    ("wind_speed", "999"),
    ("temp_air", ""),
    ("wind_speed", "NaN"),
]


@pytest.mark.parametrize(("column", "code"), MISSING)
def test_a_missing_code_is_bridged_and_told(
    epw: list[str], read_lines: Read, set_field: Put, column: str, code: str
) -> None:
    whole = read_lines(epw)
    set_field(epw, NOON_JUNE_21, column, code)
    year = read_lines(epw)
    before, found, after = getattr(year, column)[171 * 24 + 11 : 171 * 24 + 14]
    low, high = sorted((before, after))
    assert low * 0.9 <= found <= high * 1.1
    assert len(year.repairs) == 1
    assert "1 missing hour" in year.repairs[0]
    changed = getattr(whole, column) != getattr(year, column)
    assert changed.sum() <= 1


def test_six_hours_are_bridged_in_a_straight_line(epw: list[str], read_lines: Read, set_field: Put) -> None:
    for row, temp in enumerate(("10", *["99.9"] * 6, "17"), start=100):
        set_field(epw, row, "temp_air", temp)
    year = read_lines(epw)
    np.testing.assert_allclose(year.temp_air[91:99], [10, 11, 12, 13, 14, 15, 16, 17])
    assert year.repairs == ("air temperature: 6 missing hours bridged, the longest gap 6 h",)


def test_seven_hours_are_refused_with_row_column_and_reason(epw: list[str], read_lines: Read, set_field: Put) -> None:
    for row in range(100, 107):
        set_field(epw, row, "temp_air", "99.9")
    with pytest.raises(ClimateFault) as caught:
        read_lines(epw)
    (fault,) = caught.value.faults
    assert fault.where == "row 100, column temp_air"
    assert "7 hours are missing from 4 Jan 19:00 on" in fault.what
    assert "at most 6" in fault.what


def test_faults_of_all_columns_come_at_once(epw: list[str], read_lines: Read, set_field: Put) -> None:
    for row in range(100, 108):
        set_field(epw, row, "temp_air", "99.9")
        set_field(epw, row, "wind_speed", "999")
    set_field(epw, 300, "relative_humidity", "150")
    with pytest.raises(ClimateFault) as caught:
        read_lines(epw)
    assert {fault.where.split("column ")[1] for fault in caught.value.faults} == {
        "temp_air",
        "wind_speed",
        "relative_humidity",
    }


def test_a_gap_over_new_year_is_one_gap(epw: list[str], read_lines: Read, set_field: Put) -> None:
    for row in (FIRST_ROW, FIRST_ROW + 1, 8767, 8768):
        set_field(epw, row, "wind_speed", "999")
    assert read_lines(epw).repairs == ("wind speed: 4 missing hours bridged, the longest gap 4 h",)


def test_a_morning_without_irradiance_rises_with_the_sun(epw: list[str], read_lines: Read, set_field: Put) -> None:
    """The true hours are known here; a straight line over the gap would miss them by more."""
    whole = read_lines(epw)
    start = 171 * 24 + 9
    for row in range(FIRST_ROW + start, FIRST_ROW + start + 6):
        set_field(epw, row, "ghi", "9999")
    mended = read_lines(epw).ghi[start : start + 6]
    straight = np.linspace(whole.ghi[start - 1], whole.ghi[start + 6], 8)[1:-1]
    true = whole.ghi[start : start + 6]
    assert np.abs(mended - true).sum() < np.abs(straight - true).sum()


def test_leap_day_is_left_out(epw: list[str], read_lines: Read) -> None:
    at = 8 + 59 * 24
    march = [line.replace(line.split(",")[0], "2004", 1) for line in epw[at : at + 24]]
    leap = [",".join(["2004", "2", "29", *line.split(",")[3:]]) for line in march]
    year = read_lines([*epw[:at], *leap, *epw[at:]])
    assert year.rows == 8760
    assert year.repairs == ("29 February: 24 hours left out",)
    np.testing.assert_array_equal(year.temp_air, read_lines(epw).temp_air)


def test_a_year_may_begin_anywhere(epw: list[str], read_lines: Read) -> None:
    rolled = read_lines([*epw[:8], *epw[3000:], *epw[8:3000]])
    np.testing.assert_array_equal(rolled.temp_air, read_lines(epw).temp_air)


def test_pressure_comes_from_the_altitude_where_the_file_has_none(
    epw: list[str], read_lines: Read, set_field: Put
) -> None:
    """ICAO standard atmosphere at 273 m: 98.09 kPa."""
    for row in range(FIRST_ROW, 8769):
        set_field(epw, row, "pressure", "999999")
    year = read_lines(epw)
    np.testing.assert_allclose(year.pressure, 98_090.0, rtol=5e-4)
    assert year.repairs == ("air pressure: not in the file, taken from the altitude",)


def test_wet_and_dark_overshoots_are_set_to_the_limit_and_told(
    epw: list[str], read_lines: Read, set_field: Put
) -> None:
    set_field(epw, 20, "relative_humidity", "104")
    set_field(epw, FIRST_ROW, "ghi", "-2")
    year = read_lines(epw)
    assert year.relative_humidity.max() <= 100.0
    assert year.ghi.min() == 0.0
    assert len(year.repairs) == 2


def test_a_format_is_told_by_content(epw: list[str], tmp_path: Path) -> None:
    path = tmp_path / "weather.txt"
    path.write_text("\r\n".join(epw), encoding="utf-16")
    assert read_year(path).rows == 8760
