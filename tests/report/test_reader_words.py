"""Does each reader meet words of their own over the same figures? Expected words by hand."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from estimator import Case, run
from estimator.compare import Result
from estimator.inputs.home import Leakage
from estimator.inputs.places import with_values
from estimator.leak_range import leakage_span
from estimator.report import figures, ledger, reader_words
from estimator.report.sentence import case_sentence
from tests.laws.settings import year_of

TRADE = ("q50", "W/(l/s)", "m³/(h", "Pa", "n50", "SFP")


def of(**changes: Any) -> Result:
    return run(with_values(Case(), {k.replace("__", "."): v for k, v in changes.items()}), year_of("Inland vale"))


@pytest.fixture(scope="module")
def usual() -> Result:
    return of()


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def test_who_lives_there_hears_shares_and_no_unit_of_the_trade(usual: Result) -> None:
    air = ledger.fresh_air(usual.estimate, usual.against_baseline["recovery"])
    said = reader_words.in_plain_words(air)
    assert f"keep {round(100 * air.kept / (air.past + air.lost + air.kept))}%." in said
    sentence = "".join(a + b for a, b in case_sentence(usual.estimate, leakage_span(Case()), plain=True))
    assert "as homes of its age do (not tested)" in sentence
    assert [word for word in TRADE if word in said + sentence] == []
    assert "m³/(h" in plain("".join(a + b for a, b in case_sentence(usual.estimate, leakage_span(Case()))))


def test_who_fits_it_hears_the_figures_of_the_trade(usual: Result) -> None:
    said = plain(reader_words.of_the_trade(usual.estimate, leakage_span(Case()), option="recovery"))
    kept = 100.0 * float(usual.estimate.options["recovery"].heat.effective_efficiency.squeeze())
    assert said.startswith("Fresh air needed 119 m³/h (33 l/s); air permeability q50 estimated 5.0 to 14.0 m³/(h m²);")
    assert f"82% certified, {round(kept)}% in use" in said
    assert "specific fan power" in said
    extract = reader_words.of_the_trade(usual.estimate, leakage_span(Case()), option="extract")
    assert "certified" not in extract


def test_who_advises_hears_what_nobody_has_asked_yet(usual: Result) -> None:
    said = reader_words.to_ask(usual.estimate, leakage_span(Case()))
    assert said.startswith("Still to ask: the floor area, a pressure test, the price on the heating bill, ")
    told = of(home__floor_area=90.0, prices__fuel=8.0, prices__electricity=30.0, home__indoor_temperature=21.0)
    assert reader_words.to_ask(told.estimate, leakage_span(Case())).startswith("Still to ask: a pressure test. ")
    tested = leakage_span(replace(Case(), leakage=Leakage(measure="q50", value=4.0, basis="measured")))
    assert reader_words.to_ask(told.estimate, tested) == "What decides most has been asked and entered."


def test_heat_bought_through_the_meter_has_no_bill_of_its_own() -> None:
    electric = of(heating__fuel="direct electric")
    assert "heating bill" not in reader_words.to_ask(electric.estimate, leakage_span(Case()))


def test_the_trade_hears_its_figures_in_feet_where_it_asked_for_them(usual: Result) -> None:
    before = figures.THINKS_IMPERIAL.set(True)
    try:
        said = plain(reader_words.of_the_trade(usual.estimate, leakage_span(Case()), option="recovery"))
    finally:
        figures.THINKS_IMPERIAL.reset(before)
    assert "Fresh air needed 69.9 cfm" in said  # 119 m³/h / 1.699011
    assert "0.27 to 0.77 cfm/ft²" in said  # 5 and 14 m³/(h m²) / 18.288
