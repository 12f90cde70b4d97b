"""Does every way of naming weather reach the same estimate, at the altitude and in the wind of the home?"""

from __future__ import annotations

import dataclasses
import json
import typing
from pathlib import Path

import numpy as np
import pytest

from estimator import Case, load_year, run
from estimator.__main__ import main
from estimator.climate.cache import FOLDER_VARIABLE
from estimator.climate.chosen import can_travel, case_year, spoken
from estimator.climate.kept_files import file_read, keep, kept_file
from estimator.climate.online import URL_VARIABLE, point_of
from estimator.climate.site import TERRAINS
from estimator.errors import ClimateFault, InputFaults
from estimator.inputs import home
from estimator.inputs.casefile import case_from_dict
from estimator.inputs.writing import case_to_toml
from tests.climate.conftest import PVLIB_DATA
from tests.climate.every import TABLE
from tests.climate.replay import Replay

TEMPERATURES = "4.1 4.4 6.3 8.6 11.6 14.5 16.7 16.5 14.0 10.5 6.9 4.4"
MONTHLY = {"version": 1, "place": {"climate": "monthly means"}, "months": {"temperature": TEMPERATURES}}


@pytest.fixture(autouse=True)
def kept_here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(FOLDER_VARIABLE, str(tmp_path / "kept"))


def at(**place: object) -> Case:
    return case_from_dict({"version": 1, "place": place})


def test_a_case_that_says_nothing_of_its_site_has_the_year_of_its_station() -> None:
    plain, year = case_year(Case()), load_year("Inland vale")
    for column in ("temp_air", "wind_speed", "pressure", "ghi"):
        np.testing.assert_array_equal(getattr(plain, column), getattr(year, column))
    assert plain.altitude == year.altitude
    assert plain.repairs == year.repairs


def test_a_home_on_a_hill_is_colder_and_needs_more_heat() -> None:
    """ISO 2533:1975, standard atmosphere: 6.5 K/km."""
    year = load_year("Inland vale")
    case = at(altitude=year.altitude + 200.0)
    hill = case_year(case)
    np.testing.assert_allclose(year.temp_air - hill.temp_air, 1.3, atol=1e-9)
    heat = [float(np.sum(run(case, one).estimate.options["extract"].heat.heat)) for one in (year, hill)]
    assert heat[1] > heat[0]


def test_a_town_slows_the_wind_and_a_height_raises_it() -> None:
    station = case_year(Case()).wind_speed.mean()
    town, tower = (case_year(at(**place)).wind_speed.mean() for place in ({"terrain": "city"}, {"wind_height": 30.0}))
    assert town < station < tower


def test_the_words_for_terrain_are_those_of_the_table() -> None:
    assert set(typing.get_args(home.Terrain)) == set(TERRAINS)


def test_typed_months_keep_their_means() -> None:
    year = case_year(case_from_dict(MONTHLY))
    days = np.repeat(np.arange(12), np.array([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]) * 24)
    means = [float(year.temp_air[days == month].mean()) for month in range(12)]
    np.testing.assert_allclose(means, [float(word) for word in TEMPERATURES.split()], atol=1e-6)


@pytest.mark.parametrize(
    ("months", "said"),
    [
        ({}, "twelve mean temperatures"),
        ({"temperature": "4 4 6"}, "3 figures are given"),
        ({"temperature": TEMPERATURES.replace("8.6", "warm")}, "'warm' is no number|\"warm\" is no number"),
        ({"temperature": TEMPERATURES.replace("8.6", "nan")}, "nan"),
        ({"temperature": TEMPERATURES, "wind": "1"}, "1 figures"),
    ],
)
def test_months_that_cannot_be_read_are_faults_of_the_case(months: dict[str, str], said: str) -> None:
    with pytest.raises(InputFaults, match=said):
        case_from_dict({**MONTHLY, "months": months})


def test_months_that_are_no_weather_are_faults_of_the_year() -> None:
    fahrenheit = case_from_dict({**MONTHLY, "months": {"temperature": " ".join(["60"] * 12)}})
    with pytest.raises(ClimateFault, match="Fahrenheit"):
        case_year(fahrenheit)


def test_a_place_is_asked_for_only_where_a_network_is_allowed() -> None:
    with pytest.raises(ClimateFault, match="not kept on this machine") as caught:
        case_year(at(climate="52.2,0.1"), online=False)
    assert "A request goes to" in str(caught.value)


def test_a_file_is_read_again_from_what_was_kept_and_its_name_is_not() -> None:
    content = (PVLIB_DATA / "723170TYA.CSV").read_bytes()
    read = file_read(content, name="Mx Example's house.csv")
    assert keep(read) == ""
    again = kept_file(read.reference)
    np.testing.assert_array_equal(again.year.temp_air, read.year.temp_air)
    np.testing.assert_array_equal(case_year(at(climate=read.reference)).temp_air, load_year("Greensboro").temp_air)
    assert again.report == read.report
    assert b"Example" not in read.body
    assert "Example" not in f"{read.reference}{again.year.source}{again.year.name}"


def test_a_file_that_is_not_here_is_said_to_be_missing() -> None:
    with pytest.raises(ClimateFault, match="not at hand here"):
        case_year(at(climate="kept:" + "0" * 24))


@pytest.mark.parametrize(
    ("reference", "words"),
    [
        ("Upland", "Upland"),
        ("monthly means", "your own monthly means"),
        ("52.10,-1.30", "52.10° N, 1.30° W"),
        ("kept:" + "a" * 24, "a weather file of your own"),
    ],
)
def test_what_may_stand_in_a_link_is_named_in_words(reference: str, words: str) -> None:
    assert can_travel(reference)
    assert spoken(reference) == words


@pytest.mark.parametrize("reference", ["/etc/passwd", "C:\\weather.epw", "kept:../x", "mine.csv", "", "kept:"])
def test_no_path_may_stand_in_a_link(reference: str) -> None:
    assert not can_travel(reference)


@pytest.mark.parametrize("said", ["52.2,0.1", "52.2° N 0.1° W", "40.4,-3.7,UTC+1", "27,85,UTC+5:45", "-33.9,151.2"])
def test_a_place_reads_back_as_it_is_written(said: str) -> None:
    point = point_of(said)
    assert point_of(point.reference) == point


def test_weather_on_the_command_line_stands_in_for_that_of_the_case() -> None:
    year = case_year(Case(), reference="Upland")
    assert year.name == "Upland"
    hill = dataclasses.replace(Case().place, altitude=year.altitude + 100.0)
    assert case_year(dataclasses.replace(Case(), place=hill), reference="Upland").altitude == hill.altitude


@pytest.mark.parametrize("said", ["a name", "a file", "a place", "a table of monthly means", "the case's own months"])
def test_all_of_them_reach_the_same_estimate_from_the_command_line(
    said: str,
    server: Replay,
    good_answer: bytes,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.setenv(URL_VARIABLE, server.url)
    server.body = good_answer
    table, case = tmp_path / "means.toml", tmp_path / "case.toml"
    table.write_text(TABLE, encoding="utf-8")
    case.write_text(case_to_toml(case_from_dict(MONTHLY)), encoding="utf-8")
    climate, name = {
        "a name": ("Upland", "Upland"),
        "a file": (str(PVLIB_DATA / "12839.tm2"), "Miami"),
        "a place": ("36.1, -79.95", "36.10° N, 79.95° W"),
        "a table of monthly means": (str(table), "Fernby"),
        "the case's own months": ("", "your own monthly means"),
    }[said]
    words = ["estimate", str(case), "--json", *(["--climate", climate] if climate else [])]
    assert main(words) == 0
    made = json.loads(capsys.readouterr().out)
    assert name in made["climate"]["name"]
    year = case_year(case_from_dict(MONTHLY), reference=climate)
    saved = run(case_from_dict(MONTHLY), year).against_baseline["recovery"].net_saving
    found = made["comparisons"]["against_baseline"]["recovery"]["yearly"]["net_saving"]["value"]
    assert found == pytest.approx(saved, rel=1e-12)
