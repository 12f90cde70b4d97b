"""Does every page answer a case of somebody's own with the figures of the command line and the Python interface?

One case, far from the demo home, is opened by its link on every page that answers about a home.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from estimator import load_year
from estimator.__main__ import main
from estimator.at_leakage import ground as leaky_ground
from estimator.draws import ground
from estimator.inputs.casefile import case_from_dict, case_to_toml
from estimator.leak_range import leakage_span, over_leakage_range
from estimator.report import fit_words, leave, life, sure_words, tight, variants
from estimator.report.fitting import fitting
from estimator.report.sure_words import Tried, tried
from estimator.sample import sample
from estimator.ui.link import to_link
from tests.browser.harness import Server, visit
from tests.browser.test_journeys import plain

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


def _all_tried() -> Tried:
    return tried(sample(ground(CASE, YEAR)), option="recovery")


def _which_way() -> str:
    found = variants.ways(RESULT.estimate, sample(ground(CASE, YEAR)).cases, baseline=CASE.baseline)
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
