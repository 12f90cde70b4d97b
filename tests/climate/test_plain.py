"""Is anybody's table of hours read, whatever its headers, units and clock, and are doubts about it spoken?

The year behind most tables is Greensboro, of pvlib's package: what was written in another way must read as the same.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pandas as pd
import pytest

from estimator.climate.columns import Layout
from estimator.climate.plain import headers, table_year
from estimator.climate.plausible import ReadReport, read_report
from estimator.climate.raw import Place
from estimator.climate.sources import load_year
from estimator.climate.standins import humidity_at, light_share, wind_share
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault
from estimator.units import Array

Included = Callable[[str], ClimateYear]
HOURS = pd.date_range("2019-01-01", periods=8760, freq="h")
COLUMNS = ("temp_air", "wind_speed", "ghi", "dni", "dhi", "relative_humidity", "pressure")


@pytest.fixture
def year(included: Included) -> ClimateYear:
    return included("Greensboro")


def layout_of(year: ClimateYear, **settings: Any) -> Layout:
    place = Place(
        name="Fernby",
        latitude=year.latitude,
        longitude=year.longitude,
        altitude=year.altitude,
        utc_offset=year.utc_offset,
        source="a station of a test",
        licence="none",
    )
    own = {name: name for name in ("time", *COLUMNS)}
    stated: dict[str, Any] = {"place": place, "columns": own}
    return Layout(**(stated | settings))


def table(year: ClimateYear, **columns: object) -> pd.DataFrame:
    own = {"time": HOURS.strftime("%Y-%m-%d %H:%M"), **{name: getattr(year, name) for name in COLUMNS}}
    return pd.DataFrame(own | columns)


def read(frame: pd.DataFrame, layout: Layout, **how: Any) -> tuple[ClimateYear, ReadReport]:
    return table_year(frame.to_csv(index=False, **how).encode(), layout, name="mine.csv")


def test_own_headers_units_commas_and_clock_are_read(year: ClimateYear) -> None:
    """1 knot is 1,852 m/h and °F is 1.8 °C + 32 by definition; 1 W/m² over an hour is 3.6 kJ/m²."""
    frame = pd.DataFrame(
        {
            "Zeit": (HOURS + pd.Timedelta(hours=6)).strftime("%d.%m.%Y %H:%M"),  # end of the hour, UTC
            "Luft, außen": year.temp_air * 1.8 + 32.0,
            "Wind": year.wind_speed * 3600.0 / 1852.0,
            "Global": year.ghi * 3.6,
            "Direkt": year.dni,
            "Diffus": year.dhi,
            "Feuchte": year.relative_humidity / 100.0,
            "Druck": year.pressure / 100.0,
            "Notiz": "",
        }
    )
    layout = layout_of(
        year,
        columns={"time": "Zeit"} | dict(zip(COLUMNS, ("Luft, außen", *frame.columns[2:8]), strict=True)),
        units={
            "temp_air": "°F",
            "wind_speed": "knots",
            "ghi": "kJ/m²",
            "relative_humidity": "fraction",
            "pressure": "hPa",
        },
        stamp="end",
        utc_offset=0.0,
    )
    again, report = read(frame, layout, sep=";", decimal=",")
    for name in (*COLUMNS, "facades"):
        np.testing.assert_allclose(getattr(again, name), getattr(year, name), rtol=1e-9, atol=1e-6, err_msg=name)
    assert len(report.read) == 7
    assert report.read[0].startswith("air temperature (column “Luft, außen”): ")
    assert (report.missing, report.repaired, report.implausible) == ((), (), ())


@pytest.mark.parametrize(
    ("times", "stamp"),
    [
        (HOURS.strftime("%m/%d/%Y %I:%M %p"), "start"),
        (HOURS.strftime("%d/%m/%y %H:%M:%S"), "start"),
        (HOURS.strftime("%Y%m%d:%H%M"), "start"),
        (HOURS.strftime("%Y-%m-%dT%H:%M:%SZ"), "start"),
        (HOURS + pd.Timedelta(hours=1), "end"),
        ([f"{when:%d.%m.%Y} {when.hour + 1}:00" for when in HOURS], "end"),
        ((HOURS + pd.Timedelta(minutes=59)).strftime("%Y-%m-%d %H:%M"), "end"),
    ],
    ids=["month first", "day first", "tight", "ISO", "end", "24:00", "59 minutes"],
)
def test_times_are_read_in_many_forms(year: ClimateYear, times: object, stamp: str) -> None:
    again, _ = read(table(year, time=times), layout_of(year, stamp=stamp))
    np.testing.assert_allclose(again.temp_air, year.temp_air)
    np.testing.assert_allclose(again.facades, year.facades, atol=1e-6)


def test_hours_counted_from_one_are_read(year: ClimateYear) -> None:
    frame = table(year).drop(columns="time").assign(m=HOURS.month, d=HOURS.day, h=HOURS.hour + 1)
    columns = {name: name for name in COLUMNS} | {"month": "m", "day": "d", "hour": "h"}
    again, _ = read(frame, layout_of(year, columns=columns, stamp="end"))
    np.testing.assert_allclose(again.temp_air, year.temp_air)


def test_a_leap_year_before_a_preamble_with_gaps_is_read_and_told(year: ClimateYear) -> None:
    leap = pd.date_range("2020-01-01", periods=8784, freq="h")
    kept = ~((leap.month == 2) & (leap.day == 29))
    temp = np.full(8784, 7.0)
    temp[kept] = year.temp_air
    text = [f"{when:%Y-%m-%d %H:%M},{value:.1f}" for when, value in zip(leap, temp, strict=True)]
    text[100], text[101], text[102] = "2020-01-05 04:00,", "2020-01-05 05:00,-999", "2020-01-05 06:00,NaN"
    content = "\n".join(["Station: Fernby", "", "time,temp_air", *text]).encode("utf-16")
    again, report = table_year(content, layout_of(year, columns={"time": "time", "temp_air": "temp_air"}), name="x.csv")
    np.testing.assert_allclose(again.temp_air[103:], year.temp_air[103:], atol=0.06)
    assert report.repaired == (
        "29 February: 24 hours left out",
        "air temperature: 3 missing hours bridged, the longest gap 3 h",
        "relative humidity: 3 missing hours bridged, the longest gap 3 h",  # judged from the temperature
    )
    assert [told.partition(":")[0] for told in report.missing] == [
        "wind speed",
        "relative humidity",
        "irradiance",
        "air pressure",
    ]


@pytest.mark.parametrize("name", ["Greensboro", "Sand Point", "Miami"])
def test_temperature_alone_makes_a_year_of_about_the_right_light(included: Included, name: str) -> None:
    """FAO 56 itself asks for no more than a rough figure; on these real years it is within a fifth."""
    year = included(name)
    again, report = read(table(year), layout_of(year, columns={"time": "time", "temp_air": "temp_air"}))
    assert again.ghi.sum() == pytest.approx(year.ghi.sum(), rel=0.2)
    assert again.relative_humidity.mean() == pytest.approx(year.relative_humidity.mean(), abs=16.0)
    assert len(report.read) == 1
    assert report.implausible == ()


@pytest.mark.parametrize("lost", [{"dni"}, {"dhi"}, {"ghi"}, {"dni", "dhi"}])
def test_one_irradiance_follows_from_the_others(year: ClimateYear, lost: set[str]) -> None:
    columns = {name: name for name in ("time", *COLUMNS) if name not in lost}
    again, report = read(table(year), layout_of(year, columns=columns))
    assert again.facades[2].sum() == pytest.approx(year.facades[2].sum(), rel=0.06)
    assert len(report.missing) == 1


def test_stand_ins_give_the_worked_examples_of_the_fao() -> None:
    """FAO 56 (from memory): example 14, 3.2 m/s at 10 m is 2.4 at 2 m; example 15, Lyon in July, 26.6 and 14.8 °C
    and 40.6 MJ/m² outside the atmosphere make 22.3 inland. Saturation pressure at 20 °C is 2.338 kPa and at 10 °C
    1.228 kPa (its annex 2), hence 52.5 %."""
    assert 3.2 * wind_share(2.0, 10.0) == pytest.approx(2.4, abs=0.05)
    assert 40.6 * light_share(26.6 - 14.8, altitude=200.0, factor=0.16) == pytest.approx(22.3, abs=0.1)
    assert float(light_share(100.0, altitude=0.0)) == 0.75
    assert humidity_at(np.array([20.0]), dew_point=np.array([10.0]))[0] == pytest.approx(52.5, abs=0.3)


def changed(year: ClimateYear, **columns: Array) -> ClimateYear:
    return replace(year, **columns)  # type: ignore[arg-type]


DOUBTS: list[tuple[str, str, Callable[[ClimateYear], dict[str, Array]], str]] = [
    ("Fahrenheit", "Sand Point", lambda y: {"temp_air": y.temp_air * 1.8 + 32.0}, "Fahrenheit"),
    ("tens", "Sand Point", lambda y: {"temp_air": y.temp_air / 10.0}, "tens of degrees"),
    ("knots", "Upland", lambda y: {"wind_speed": y.wind_speed / 0.5144}, "knots"),
    ("whole knots", "Miami", lambda y: {"wind_speed": np.round(y.wind_speed / 0.5144)}, "whole numbers"),
    ("no wind", "Miami", lambda y: {"wind_speed": y.wind_speed / 100.0}, "calmer"),
    ("fraction", "Miami", lambda y: {"relative_humidity": y.relative_humidity / 100.0}, "fraction"),
    ("dry", "Miami", lambda y: {"relative_humidity": y.relative_humidity / 10.0}, "drier"),
    ("J/cm²", "Miami", lambda y: {"ghi": y.ghi * 0.36}, "another column"),
    ("MJ", "Miami", lambda y: {n: getattr(y, n) * 0.0036 for n in ("ghi", "dni", "dhi")}, "kJ/m²"),
    ("summer time", "Miami", lambda y: {n: np.roll(getattr(y, n), 1) for n in ("ghi", "dni", "dhi")}, "summer time"),
    ("UTC", "Sand Point", lambda y: {"temp_air": np.roll(y.temp_air, 11)}, "warmest at"),
]


@pytest.mark.parametrize(("name", "harm", "says"), [row[1:] for row in DOUBTS], ids=[row[0] for row in DOUBTS])
def test_a_wrong_unit_or_clock_is_doubted(
    included: Included, name: str, harm: Callable[[ClimateYear], dict[str, Array]], says: str
) -> None:
    year = included(name)
    _, report = read(table(year, **harm(year)), layout_of(year))
    assert len(report.implausible) == 1
    assert says in report.implausible[0]


@pytest.mark.parametrize(
    "name", ["Mild coast", "Inland vale", "Upland", "Cold plain", "Greensboro", "Sand Point", "Miami"]
)
def test_weather_is_not_doubted(included: Included, name: str) -> None:
    assert read_report(included(name)).implausible == ()


def test_a_layout_is_refused_with_all_its_faults(year: ClimateYear) -> None:
    layout = layout_of(
        year,
        columns={"hour": "h", "wind_speed": "h", "rain": "r"},
        units={"wind_speed": "furlongs"},
        stamp="middle",
        utc_offset=0.5,
    )
    with pytest.raises(ClimateFault) as caught:
        read(table(year), layout)
    said = str(caught.value)
    assert len(caught.value.faults) == 7
    for words in (
        "rain",
        "air temperature",
        "month, day and hour",
        "“h” stands for more",
        "furlongs",
        "middle",
        "whole",
    ):
        assert words in said


@pytest.mark.parametrize(
    ("harm", "says"),
    [
        (lambda text: text.replace("temp_air", "temp air", 1), "row 1: there is no column “temp_air”; there are time,"),
        (lambda text: text.replace("2019-01-04 07:00,", "yesterday,"), "row 81: “yesterday” is no date"),
        (lambda text: text.replace("2019-01-04 07:00,", "2019-13-04 07:00,"), "row 81: month 13"),
        (lambda text: text.replace("2019-01-04 07:00,", "2019-01-04 06:00,"), "row 81: 4 Jan 06:00 was already given"),
        (lambda text: text.replace("2019-01-04 07:00,", "2019-01-04 07:00,warm"), "row 81, column temp_air: “warm"),
        (lambda text: text.replace("2019-01-04 07:00,", '"2019-01-04 07:00,'), "quotation mark"),
        (lambda text: text.replace("2019-01-04 07:00,", "2019-01-04 07:00"), "row 81: 7 fields"),
        (lambda text: text.partition("\n")[0], "before its first hour"),
        (lambda text: text[: len(text) // 2].rpartition("\n")[0], "missing from"),
    ],
)
def test_a_broken_table_is_refused_in_words(year: ClimateYear, harm: Callable[[str], str], says: str) -> None:
    text = harm(table(year).to_csv(index=False))
    with pytest.raises(ClimateFault) as caught:
        table_year(text.encode(), layout_of(year), name="mine.csv")
    assert says in str(caught.value)
    assert "Did you mean" in str(caught.value) or "no column" not in str(caught.value)


def test_a_note_beside_a_table_maps_its_headers(year: ClimateYear, tmp_path: Path) -> None:
    table(year).rename(columns={"temp_air": "T (F)", "time": "When"}).assign(
        **{"T (F)": year.temp_air * 1.8 + 32.0}
    ).to_csv(tmp_path / "mine.csv", index=False)
    note = tmp_path / "mine.toml"
    note.write_text(
        'name = "Fernby"\nsource = "a station of a test"\nlicence = "none"\nlatitude = 36.1\nlongitude = -79.95\n'
        'altitude = 273.0\nutc_offset = -5.0\n[columns]\ntemp_air = "T (F)"\ntime = "When"\n'
        '[units]\ntemp_air = "°F"\n',
        encoding="utf-8",
    )
    np.testing.assert_allclose(load_year(str(tmp_path / "mine.csv")).temp_air, year.temp_air, atol=1e-6)
    note.write_text(note.read_text(encoding="utf-8").replace('"When"', "7"), encoding="utf-8")
    with pytest.raises(ClimateFault, match=r"mine.toml, columns.time: this must be text"):
        load_year(str(tmp_path / "mine.csv"))


def test_headers_are_offered_to_choose_from() -> None:
    content = "Station: Fernby\n\nWhen;T;RH\n01.01.2019 00:00;5,1;80\n".encode("utf-8-sig")
    assert headers(content, name="x.csv") == ["When", "T", "RH"]
    with pytest.raises(ClimateFault, match="no row of headers"):
        headers(b"1,2\n3,4\n", name="x.csv")
