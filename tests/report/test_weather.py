"""Are the figures of the weather page those of the file, and do its words say what the figures say?"""

from __future__ import annotations

import csv
import re
from dataclasses import replace

import numpy as np
import pytest

from estimator import Case, estimate, load_year
from estimator.climate.sources import DEMO_CLIMATES, demo_folder
from estimator.report import charts_weather, figures, weather_words
from estimator.report.palette import DARK, LIGHT
from estimator.report.weather import BASES, Weather, balance, weather
from estimator.units import MONTH_DAYS, MONTH_NAMES

BASE = 15.5


def of(name: str, base: float = BASE) -> Weather:
    return weather(estimate(Case(), load_year(name)), option="recovery", base=base)


@pytest.fixture(scope="module")
def vale() -> Weather:
    return of("Inland vale")


@pytest.fixture(scope="module")
def plain() -> Weather:
    return of("Cold plain")


def column(name: str, wanted: str) -> list[float]:
    """A column of a demo file, read with the standard library alone."""
    lines = (demo_folder() / DEMO_CLIMATES[name]).read_text(encoding="utf-8").splitlines()
    rows = list(csv.DictReader(line for line in lines if not line.startswith("#")))
    (key,) = [key for key in rows[0] if key.startswith(wanted)]
    return [float(row[key]) for row in rows]


def test_months_are_those_of_the_file_added_up_by_hand(vale: Weather) -> None:
    temps = column("Inland vale", "temp_air")
    start = 24 * sum(MONTH_DAYS[:11])
    december = temps[start:]
    assert len(december) == 24 * MONTH_DAYS[11]
    assert vale.temp[11] == pytest.approx(sum(december) / len(december), rel=1e-9)
    assert vale.coldest[11] == min(december)
    assert vale.warmest[11] == max(december)
    assert vale.degree_hours[11] == pytest.approx(sum(BASE - t for t in december if t < BASE), rel=1e-9)
    assert vale.freezing.sum() == sum(t < 0 for t in temps)
    assert vale.frost.sum() == sum(t < vale.set_point for t in temps)


@pytest.mark.parametrize(("name", "at"), [("Greensboro", 15.5), ("Sand Point", 20.0)])
def test_degree_hours_agree_with_a_sum_made_apart(name: str, at: float) -> None:
    """Typical years carried by pvlib, summed with pvlib's own readers of the files."""
    from pathlib import Path

    import pvlib

    from estimator.climate.sources import REAL_YEARS

    file = Path(pvlib.__file__).parent / "data" / REAL_YEARS[name]
    temps = pvlib.iotools.read_tmy3(file, map_variables=True)[0]["temp_air"].to_numpy()
    found = of(name, at)
    assert found.cold == pytest.approx(float(np.clip(at - temps, 0.0, None).sum()), rel=0.002)
    assert np.interp(at, BASES, found.over_bases) == pytest.approx(found.cold, rel=1e-9)


def test_a_pre_heater_is_hardly_needed_on_the_mild_coast_and_is_on_the_cold_plain(plain: Weather) -> None:
    """Common practice, no source."""
    coast = of("Mild coast")
    assert coast.preheater is not None
    assert plain.preheater is not None
    assert coast.preheater.hours < weather_words.HARDLY < plain.preheater.hours
    assert plain.preheater.electricity > 20.0 * max(coast.preheater.electricity, 0.1)
    assert re.search(r"would (never act|act only)", weather_words.answer(coast, plain))
    assert "only" not in weather_words.answer(plain, coast)


def test_the_heater_acts_only_while_it_is_colder_than_its_set_point(vale: Weather, plain: Weather) -> None:
    for one in (vale, plain):
        assert one.preheater is not None
        assert 0.0 < one.preheater.hours <= one.frost.sum()


def test_words_compare_the_right_way_round(vale: Weather, plain: Weather) -> None:
    assert "less cold to work on than in Cold plain" in weather_words.answer(vale, plain)
    assert "more cold to work on than in Inland vale" in weather_words.answer(plain, vale)
    assert "as much cold" in weather_words.answer(vale, vale)
    assert "no cold to work on" in weather_words.answer(vale, replace(plain, degree_hours=np.zeros(12)))


def test_without_a_pre_heater_the_hours_of_frost_are_said(vale: Weather, plain: Weather) -> None:
    said = weather_words.answer(replace(vale, preheater=None), plain)
    assert said.startswith("Outdoor air is below −3")


@pytest.mark.parametrize(
    ("heated", "said"),
    [
        ([9, 9, 9, 5, 0, 0, 0, 0, 0, 4, 9, 9], "from October to April"),
        ([0, 0, 0, 0, 0, 9, 9, 9, 0, 0, 0, 0], "from June to August"),
        ([9] * 12, "in every month"),
        ([0] * 12, "needs no heating"),
    ],
)
def test_the_season_is_named(vale: Weather, heated: list[float], said: str) -> None:
    assert said in weather_words.season(replace(vale, heated=np.array(heated, dtype=float)))


def test_a_south_wall_leads_north_of_the_tropics_and_a_north_wall_south_of_them(vale: Weather) -> None:
    assert "a south wall" in weather_words.sun(vale)
    assert "a north wall" in weather_words.sun(replace(vale, sun=vale.sun[[2, 1, 0, 3]]))


def test_a_year_without_cold_is_a_sentence_too(vale: Weather) -> None:
    hot = replace(vale, degree_hours=np.zeros(12), over_bases=np.zeros(len(BASES)), frost=np.zeros(12))
    assert "no cold" in weather_words.bases(hot)
    assert "0\u00a0hours here" in weather_words.frost(hot, vale)


def test_the_table_has_every_month_and_the_year(vale: Weather) -> None:
    table = weather_words.months(vale)
    assert [row[0] for row in table.rows] == [*MONTH_NAMES, "Year"]
    assert "Invented" in table.note
    assert table.rows[-1][4].replace(",", "") == f"{vale.cold:.0f}"


@pytest.mark.parametrize("palette", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize("name", ["temperature", "cold", "frost", "wind", "bases", "sun"])
def test_charts_draw_both_and_name_them(vale: Weather, plain: Weather, name: str, palette: object) -> None:
    figure = getattr(charts_weather, name)(vale, plain, palette=palette)
    words = " ".join(note.text for note in figure.layout.annotations)
    assert "Inland vale" in words
    assert "Cold plain" in words
    low, high = figure.layout.yaxis.range
    for trace in figure.data:
        assert low <= min(trace.y) <= max(trace.y) <= high


def test_the_base_offered_is_where_the_home_needs_heat() -> None:
    done = estimate(Case(), load_year("Inland vale"))
    exact = float(np.squeeze(done.options["recovery"].heat.balance_temperature))
    assert balance(done, "recovery") == pytest.approx(exact, abs=0.25)
    assert balance(done, "recovery") * 2 % 1 == 0


@pytest.mark.parametrize(
    ("imperial", "units"),
    [
        (False, ("°C", "K h a month", "hours a month", "m/s", "K h a year", "kWh/m² a year")),
        (True, ("°F", "°F h a month", "hours a month", "mph", "°F h a year", "kWh/ft² a year")),
    ],
)
def test_every_axis_says_the_unit_that_its_figures_are_drawn_in(
    vale: Weather, imperial: bool, units: tuple[str, ...]
) -> None:
    asked = figures.THINKS_IMPERIAL.set(imperial)
    try:
        drawn = [
            draw(vale, vale, palette=LIGHT)
            for draw in (
                charts_weather.temperature, charts_weather.cold, charts_weather.frost, charts_weather.wind,
                charts_weather.bases, charts_weather.sun,
            )
        ]  # fmt: skip
        windiest = max(drawn[3].data[-1].y)
    finally:
        figures.THINKS_IMPERIAL.reset(asked)
    assert tuple(figure.layout.yaxis.title.text for figure in drawn) == units
    low, high = drawn[0].layout.yaxis.range
    assert low < min(drawn[0].data[0].y)  # neither end of the span lies on the frame
    assert high > max(drawn[0].data[0].y)
    # 1 mile = 1,609.344 m: NIST SP 811, table B.8.
    assert windiest == pytest.approx(max(vale.wind) * (3600.0 / 1609.344 if imperial else 1.0))
