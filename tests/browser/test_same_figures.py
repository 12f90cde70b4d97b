"""Does every page answer a case of somebody's own with the figures of the command line and the Python interface?

One case, far from the demo home, is opened by its link on every page that answers about a home.
"""

from __future__ import annotations

import csv
import datetime
import io
import json
import re
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pyarrow.csv
import pytest
from playwright.sync_api import Browser

from estimator import load_year
from estimator.__main__ import main
from estimator.at_leakage import ground as leaky_ground
from estimator.draws import ground
from estimator.estimate import estimate
from estimator.inputs.casefile import case_from_dict, case_to_toml
from estimator.leak_range import leakage_span, over_leakage_range
from estimator.report import fit_words, leave, life, sure_words, tight, variants, weather_words
from estimator.report.fitting import fitting
from estimator.report.sure_words import Tried, tried
from estimator.report.weather import balance, weather
from estimator.sample import Sample, sample
from estimator.stock.demo import invented
from estimator.ui.link import to_link
from estimator.ui.shell import PAGES
from tests.browser.harness import Server
from tests.browser.test_journeys import plain
from tests.browser.windows import visit

WRITTEN = {
    "version": 1,
    "home": {"floor_area": 138.0, "bedrooms": 4, "indoor_temperature": 21.0},
    "place": {"climate": "Upland"},
    "leakage": {"measure": "q50", "value": 3.4, "basis": "measured"},
    "prices": {"fuel": 9.3},
}
CASE = case_from_dict(WRITTEN)
LOW, RESULT, HIGH = over_leakage_range(CASE, YEAR := load_year(CASE.place.climate))
SPAN = leakage_span(CASE)
BESIDE = "Mild coast"  # which the page shows beside a climate until told otherwise


@cache
def _sample() -> Sample:
    return sample(ground(CASE, YEAR))


@cache
def _all_tried() -> Tried:
    return tried(_sample(), option="recovery")


def _which_way() -> str:
    found = variants.ways(RESULT.estimate, _sample().cases, baseline=CASE.baseline)
    label = RESULT.estimate.options[CASE.baseline].label
    return variants.sentence(found, baseline=label, currency=CASE.prices.currency)


def _tight() -> str:
    place = leaky_ground(CASE, YEAR)
    swept = tight.sweeps(place, option="recovery")
    return tight.verdict(tight.tightness(place, SPAN, option="recovery", swept=swept)).sentence


def _years() -> str:
    both = {CASE.baseline: RESULT.against_baseline["recovery"], CASE.today: RESULT.against_today["recovery"]}
    return life.answer(life.lives(_all_tried(), both)[0])


def _sure() -> str:
    found = _all_tried()
    return sure_words.sentence(found, found.against[0])


@cache
def _paper() -> str:
    return leave.paper(RESULT, _all_tried(), SPAN, names=leave.Names(), today=datetime.date(2026, 1, 1)).answer


ANSWERS: dict[str, Callable[[], str]] = {
    "compare": _which_way,
    "tight": _tight,
    "years": _years,
    "sure": _sure,
    "fit": lambda: fit_words.answer(fitting(RESULT, (LOW, HIGH), "recovery")),
    "worked": _paper,
    "paper": _paper,
}
"""Address of each page and the answer that the Python interface gives."""
OTHERWISE = {"", "weather", "trust", "many"}
"""Addresses that the other tests here open."""


def test_no_page_is_left_out() -> None:
    assert ANSWERS.keys() | OTHERWISE == {address for _, _, address in PAGES}


def test_every_page_answers_as_the_python_interface_does(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        for address, expected in ANSWERS.items():
            here.open(f"/{address}?case={to_link(WRITTEN)}")
            assert plain(here.answer()) == plain(expected()), address
        here.assert_quiet()


def test_the_first_page_answers_as_the_command_line_does(
    browser: Browser, server: Server, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "case.toml"
    file.write_text(case_to_toml(CASE), encoding="utf-8")
    assert main(["estimate", str(file)]) == 0
    printed = plain(capsys.readouterr().out)
    with visit(browser, server) as here:
        here.open(f"/?case={to_link(WRITTEN)}")
        assert plain(here.answer()) in printed
        here.assert_quiet()


def test_the_weather_of_the_case_is_that_of_the_command_line(
    browser: Browser, server: Server, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Sentence and months of the page; its cold against degree-hours counted here, its heating season against JSON."""
    done, base = RESULT.estimate, balance(RESULT.estimate, "recovery")
    here_, other = (weather(one, option="recovery", base=base) for one in (done, estimate(CASE, load_year(BESIDE))))
    assert here_.cold == pytest.approx(np.maximum(base - YEAR.temp_air, 0.0).sum(), rel=1e-9)
    made = _printed_json(tmp_path, capsys)
    assert here_.heated.sum() == pytest.approx(made["options"]["recovery"]["yearly"]["heating_demand"]["value"])
    with visit(browser, server) as here:
        here.open(f"/weather?case={to_link(WRITTEN)}")
        assert plain(here.answer()) == plain(weather_words.answer(here_, other))
        here.unfold("Every month in numbers")
        words = plain(here.page.locator("body").inner_text())
        for row in weather_words.months(here_).rows:
            assert all(plain(cell) in words for cell in row), row
        here.assert_quiet()


def _printed_json(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Any:
    file = tmp_path / "case.toml"
    file.write_text(case_to_toml(CASE), encoding="utf-8")
    assert main(["estimate", str(file), "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_why_trust_this_says_what_the_evidence_command_says(
    browser: Browser, server: Server, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["evidence"]) == 0
    printed = plain(capsys.readouterr().out)
    with visit(browser, server) as here:
        here.open("/trust")
        assert re.search(r"\d+", here.answer())
        assert plain(here.answer()) in printed
        titles = here.page.locator("summary p", has_text=re.compile(r"\d")).all_inner_texts()
        assert len(titles) > 5
        assert [title for title in titles if plain(title).upper() not in printed] == []
        here.assert_quiet()


def test_many_homes_come_out_as_from_the_stock_command(browser: Browser, server: Server, tmp_path: Path) -> None:
    """Every figure of every home in the table that is taken along, to the last digit the command prints."""
    source, results = tmp_path / "mine.csv", tmp_path / "results.csv"
    pyarrow.csv.write_csv(invented(60, start=8), source)
    file = tmp_path / "case.toml"
    file.write_text(case_to_toml(CASE), encoding="utf-8")
    assert main(["stock", str(source), str(results), "--case", str(file), "--workers", "1"]) == 0
    with visit(browser, server) as here:
        here.open(f"/many?case={to_link(WRITTEN)}")
        here.page.get_by_text("Take your own table of homes").click()
        here.after(lambda: here.page.locator("input[type=file]").first.set_input_files(source))
        here.page.locator("p.answer", has_text="60 homes").wait_for()
        with here.page.expect_download() as waiting:
            here.page.get_by_role("button", name="All results as a table (CSV)").click()
        theirs, ours = (_rows(path) for path in (Path(waiting.value.path()), results))
        assert len(theirs) == len(ours) == 60
        assert theirs == ours
        here.assert_quiet()


def _rows(path: Path) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(path.read_text(encoding="utf-8-sig"))))
