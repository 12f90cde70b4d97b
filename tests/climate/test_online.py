"""Does a place become a year through the service, and does every way it can fail end in plain words?

No test asks beyond this machine: the service is a server of `replay`, or an address where nobody listens.
"""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

from estimator.climate import online, pvgis
from estimator.climate.cache import Cache
from estimator.climate.nearby import distance
from estimator.climate.online import Point, is_point, point_of, what_leaves
from estimator.climate.raw import Stamps
from estimator.climate.solar import sun_position
from estimator.climate.sources import SOURCES, load_year
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault
from tests.climate.conftest import PLACE
from tests.climate.replay import Replay, Row, as_csv, as_epw, as_json

HOURLY = ("temp_air", "wind_speed", "ghi", "dni", "dhi", "relative_humidity", "pressure")


@pytest.mark.parametrize("form", ["json", "csv", "epw"])
def test_each_form_gives_the_year_that_went_into_it(
    server: Replay,
    ask: Callable[..., ClimateYear],
    answered_rows: list[Row],
    included: Callable[[str], ClimateYear],
    form: str,
) -> None:
    """What was moved to UTC comes back to local hours, and the sun on the walls is that of the station's own file.

    The EPW form rounds wind to tenths, and its offset is not handed on by pvlib but found from closure.
    """
    server.body = {"json": as_json, "csv": as_csv, "epw": as_epw}[form](answered_rows)
    year, station = ask(form=form), included("Greensboro")
    for column in HOURLY:
        np.testing.assert_allclose(getattr(year, column), getattr(station, column), atol=0.051, err_msg=column)
    np.testing.assert_allclose(year.facades.sum(axis=1), station.facades.sum(axis=1), rtol=0.02)
    if form != "epw":
        np.testing.assert_allclose(year.facades, station.facades, atol=0.1)
        assert year.sun_moment == 0.5
    assert (year.utc_offset, year.altitude, year.name) == (-5.0, 273.0, "36.10° N, 79.95° W")
    assert year.source.startswith("typical year of PVGIS (European Commission")
    assert not year.invented


def test_the_stated_moment_closes_the_light_of_a_recorded_answer() -> None:
    """Global is direct on the flat plus diffuse, at the moment that PVGIS states: 0.1761 h after the hour, UTC.

    Rows of 2 January 2018 in tmy_45.000_8.000_2005_2023.json, recorded for pvlib's own tests; 45° N, 8° E, 250 m.
    Half an hour off, they miss by tens of W/m².
    """
    ghi = np.array([107.0, 244.0, 336.0, 379.0, 364.0, 309.0, 204.0])  # 08:00 to 14:00
    dni = np.array([441.62, 757.94, 829.08, 841.73, 791.09, 783.88, 681.92])
    dhi = np.array([45.0, 50.0, 58.0, 65.0, 74.0, 61.0, 50.0])

    def missed(moment: float) -> float:
        sun = sun_position(latitude=45.0, longitude=8.0, altitude=250.0, utc_offset=0.0, moment=moment)
        return float(np.abs(ghi - dhi - dni * sun.height[24 + 8 : 24 + 15]).max())

    assert missed(0.1761) < 4.0
    assert missed(0.6761) > 25.0
    assert missed(-0.3239) > 25.0


def test_an_epw_file_of_the_service_is_read_by_its_own_clock(
    answered_rows: list[Row], included: Callable[[str], ClimateYear], tmp_path: Path
) -> None:
    """Its header names the local zone, its rows are in UTC."""
    path = tmp_path / "tmy_36.100_-79.950.epw"
    path.write_bytes(as_epw(answered_rows))
    year, station = load_year(str(path)), included("Greensboro")
    np.testing.assert_allclose(year.temp_air, station.temp_air, atol=0.01)
    np.testing.assert_allclose(year.facades, station.facades, atol=0.1)


def test_the_moment_is_found_where_the_answer_states_none(
    server: Replay, ask: Callable[..., ClimateYear], answered_rows: list[Row]
) -> None:
    """The light of a station's hour is its mean, so that the middle closes it best."""
    server.body = as_json(answered_rows, offset=None)
    assert ask().sun_moment == pytest.approx(0.5, abs=0.1)


@pytest.mark.parametrize(
    ("zone", "shift"), [("UTC-5", 0), ("UTC-4", 1), ("UTC+1", 6), ("UTC-4:30", 0), ("UTC-5:30", -1)]
)
def test_a_stated_zone_turns_values_and_sun_together(
    server: Replay,
    ask: Callable[..., ClimateYear],
    good_answer: bytes,
    included: Callable[[str], ClimateYear],
    zone: str,
    shift: int,
) -> None:
    """The wall sees the same sun by any clock."""
    server.body = good_answer
    year, station = ask(f"{PLACE},{zone}"), included("Greensboro")
    np.testing.assert_allclose(year.temp_air, np.roll(station.temp_air, shift), atol=0.06)
    np.testing.assert_allclose(year.facades.sum(axis=1), station.facades.sum(axis=1), rtol=2e-3)


def test_it_is_asked_once_for_the_rounded_place_after_telling(
    server: Replay, ask: Callable[..., ClimateYear], good_answer: bytes, told: list[str]
) -> None:
    server.body = lambda form: good_answer if told and form == "json" else b""
    first, again = ask("36.1123,-79.9366"), ask("36.1° N, 79.94° W")
    np.testing.assert_array_equal(first.facades, again.facades)
    assert [(query["lat"], query["lon"]) for query in server.asked] == [(["36.1"], ["-79.95"])]
    assert len(told) == 1
    for words in ("36.10", "-79.95", "0.05°", "127.0.0.1", "internet address", "kept in"):
        assert words in told[0]


def test_before_a_request_the_commission_is_named_and_after_it_nothing_leaves(
    server: Replay, ask: Callable[..., ClimateYear], good_answer: bytes, tmp_path: Path
) -> None:
    point, cache = point_of(PLACE), Cache(tmp_path / "kept")
    assert "re.jrc.ec.europa.eu (PVGIS, a service of the European Commission)" in what_leaves(point, cache=cache)
    server.body = good_answer
    ask()
    assert what_leaves(point, url=server.url, cache=cache).startswith("Nothing leaves this machine")


def test_a_folder_that_cannot_be_written_is_said_and_the_year_comes_all_the_same(
    server: Replay, ask: Callable[..., ClimateYear], good_answer: bytes, tmp_path: Path
) -> None:
    server.body = good_answer
    (tmp_path / "file").write_text("in the way of the folder")
    year = ask(cache=Cache(tmp_path / "file" / "kept"))
    assert any("cannot be written" in repair for repair in year.repairs)
    assert ask(cache=Cache(None)).rows == 8760
    assert len(server.asked) == 2


def test_a_damaged_kept_year_is_asked_for_again(
    server: Replay, ask: Callable[..., ClimateYear], good_answer: bytes, tmp_path: Path
) -> None:
    server.body = good_answer
    ask()
    (path,) = (tmp_path / "kept").iterdir()
    path.write_bytes(path.read_bytes()[:5000])
    assert ask().rows == 8760
    assert len(server.asked) == 2


def test_waiting_is_told_while_it_lasts(server: Replay, ask: Callable[..., ClimateYear], good_answer: bytes) -> None:
    server.body, server.wait = good_answer, 0.8
    waited: list[float] = []
    ask(waiting=waited.append)
    assert waited[0] < 0.5 < waited[-1]
    assert waited == sorted(waited)


@pytest.mark.parametrize(
    ("reference", "point"),
    [
        ("52.2,0.1", (52.2, 0.1, 0.0)),
        (" 52.23 , -0.12 ", (52.25, -0.1, 0.0)),
        ("52.2 0.1", (52.2, 0.1, 0.0)),
        ("33.9° S, 151.2° E", (-33.9, 151.2, 10.0)),
        ("40.4N 3.7W", (40.4, -3.7, 0.0)),
        ("40.4,-3.7,UTC+1", (40.4, -3.7, 1.0)),
        ("28.6,77.2,UTC+5:30", (28.6, 77.2, 5.5)),
        ("47.6,-52.7,UTC-3:30", (47.6, -52.7, -3.5)),
        ("-0.01,0.01", (0.0, 0.0, 0.0)),
    ],
)
def test_a_place_is_read_and_rounded(reference: str, point: tuple[float, float, float]) -> None:
    assert is_point(reference)
    assert point_of(reference) == Point(latitude=point[0], longitude=point[1], utc_offset=point[2])


@pytest.mark.parametrize(
    "reference", ["Upland", "52.2", "52.2,0.1,7", "a/52.2,0.1", "52.2,0.1.csv", "", "N,E", "1e3,5"]
)
def test_what_is_no_place_is_left_to_other_sources(reference: str) -> None:
    assert not is_point(reference)
    with pytest.raises(ClimateFault, match="no latitude and longitude"):
        point_of(reference)


def test_a_place_off_the_map_is_refused_with_all_faults() -> None:
    with pytest.raises(ClimateFault) as caught:
        load_year("95,200,UTC+20")
    assert [fault.where for fault in caught.value.faults] == [
        "climate, latitude",
        "climate, longitude",
        "climate, utc offset",
    ]


def test_the_source_stands_among_the_others_and_says_so_before_it_asks(
    server: Replay,
    good_answer: bytes,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    caplog: pytest.LogCaptureFixture,
) -> None:
    monkeypatch.setenv(online.URL_VARIABLE, server.url)
    monkeypatch.setenv("ESTIMATOR_CACHE", str(tmp_path / "kept"))
    server.body = good_answer
    assert load_year(PLACE).rows == 8760
    assert "36.10" in caplog.text
    (source,) = [source for source in SOURCES if source.network]
    assert source.owns("52.2,0.1")
    assert source.names == ()


def test_a_year_packed_by_another_version_is_asked_for_again(
    server: Replay, ask: Callable[..., ClimateYear], good_answer: bytes, monkeypatch: pytest.MonkeyPatch
) -> None:
    server.body = good_answer
    ask()
    monkeypatch.setattr(pvgis, "_VERSION", 99)
    assert ask().rows == 8760
    assert len(server.asked) == 2


def test_a_year_is_packed_with_its_own_columns_and_read_back_with_no_others(server: Replay, good_answer: bytes) -> None:
    """NumPy before 2.3 stores whatever it does not know as a setting: years kept by it held one column too many."""
    server.body = good_answer
    answer = pvgis.answer_from(server.url, latitude=36.1, longitude=-79.95, timeout=60.0)
    packed, setting = io.BytesIO(answer.packed()), io.BytesIO()
    with np.load(packed) as file:
        assert set(file.files) == {"head", *(f"stamp_{name}" for name in Stamps.__slots__), *answer.columns}
    np.save(setting, np.array(False))
    with zipfile.ZipFile(packed, "a") as file:
        file.writestr("allow_pickle.npy", setting.getvalue())
    again = pvgis.unpacked(packed.getvalue())
    assert again is not None
    assert set(again[0].columns) == set(answer.columns)


def test_distance_over_the_ground() -> None:
    """A quarter of a great circle is 10,008 km on a sphere of the earth's mean radius; Greenwich to Paris
    observatories, 51.4779 N 0 and 48.8363 N 2.3365 E, some 340 km (from memory)."""
    assert distance(0.0, 0.0, to=(90.0, 0.0)) == pytest.approx(10_008, rel=1e-3)
    assert distance(51.4779, 0.0, to=(48.8363, 2.3365)) == pytest.approx(340, rel=0.02)
