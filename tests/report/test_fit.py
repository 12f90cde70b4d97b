"""Is what is said of a unit as fitted true to its figures, and does the site list carry its cautions?"""

from __future__ import annotations

import dataclasses
from functools import cache
from typing import Any

import pytest

from estimator import Case, run
from estimator.cautions import every_caution
from estimator.inputs.places import with_values
from estimator.report import fit_sheets, fit_words, site_words
from estimator.report.fitting import Fitting, fitting
from estimator.report.site_list import SOURCE, site_list, site_rows
from tests.laws.settings import year_of


def found(climate: str = "Inland vale", **changes: Any) -> Fitting:
    values = {f"options.recovery.{path.replace('__', '.')}": value for path, value in changes.items()}
    result = run(with_values(Case(), values), year_of(climate))
    return fitting(result, (result, result), "recovery")


@cache
def usual() -> Fitting:
    return found()


def plain(words: str) -> str:
    return words.replace("\u00a0", " ")


def test_the_answer_names_what_takes_most() -> None:
    assert fit_words.answer(usual()).startswith(
        "The certificate says 82%; 78% comes back here, whatever the leakage. Most is taken by the ducts"
    )
    spread = dataclasses.replace(usual(), kept=(0.69, 0.74))
    assert "82%; 69% to 74% comes back here. Most" in fit_words.answer(spread)
    none = found(ducts__intake=0.0, ducts__exhaust=0.0, flows__imbalance=0.0, unit__frost="none")
    assert fit_words.answer(none).endswith("Nothing on site takes any of it.")
    leaky = found(unit__internal_leakage=15.0, ducts__intake=0.0, ducts__exhaust=0.0)
    assert "what leaks inside the unit" in fit_words.answer(leaky)


def test_saving_and_costing_are_never_confused() -> None:
    for line in usual().lines:
        words = fit_words.line_words(usual(), line.cost.path)
        if line.cost.money > 0.05:
            assert words.startswith("Costs about"), line.cost.path
        elif line.cost.money < -0.05:
            assert words.startswith("Saves about"), line.cost.path
        else:
            assert "Costs about" not in words
            assert "Saves about" not in words


def test_boost_no_higher_than_ordinary_use_says_why_it_costs_nothing() -> None:
    for path in ("flows.boost_flow", "flows.boost_share"):
        assert "already meets the boost rates" in fit_words.line_words(usual(), path)
        higher = found(flows__boost_flow=200.0)
        assert fit_words.line_words(higher, path).startswith("Costs about")


def test_a_duct_that_warms_the_air_before_the_heater_says_why_it_saves() -> None:
    cold = found("Cold plain")
    assert cold.line("ducts.intake").cost.heat > 0.0 > cold.line("ducts.intake").cost.electricity
    assert "Why it saves" in fit_words.line_words(cold, "ducts.intake")
    assert "Why it saves" not in fit_words.line_words(usual(), "ducts.intake")
    assert "Why it saves" not in fit_words.line_words(cold, "ducts.exhaust")


def test_insulation_is_said_with_the_money_of_the_estimate() -> None:
    money = usual().changes[0].worth.money
    assert f"Insulating the ducts saves about £{money:.0f} a year" in fit_words.ducts(usual())
    assert fit_words.ducts(found(ducts__insulation=0.0)).startswith("The ducts are bare")


def test_sound_is_declared_or_asked_for_and_never_money() -> None:
    assert fit_words.sound(usual()).startswith("Not known: ask")
    assert plain(fit_words.sound(found(unit__sound=38.0))) == "38 dB(A) as declared. Never counted in money."
    assert "£" not in site_words.bedroom(usual())


def test_a_load_above_13_amperes_is_flagged() -> None:
    """Common practice, no source."""
    assert "below the 13 A" in plain(site_words.circuit(usual()))
    big = {"flows__supply": 500.0, "flows__extract": 500.0, "flows__boost_flow": 700.0, "unit__frost_set_point": 2.0}
    assert "more than the 13 A" in plain(site_words.circuit(found("Cold plain", **big)))


@pytest.mark.parametrize(
    ("climate", "frost", "words"),
    [
        ("Mild coast", "pre-heater", "hardly needs frost protection"),
        ("Cold plain", "pre-heater", "asks for frost protection"),
        ("Cold plain", "none", "its cost is missing from every figure"),
    ],
)
def test_whether_the_climate_needs_frost_protection_is_said(climate: str, frost: str, words: str) -> None:
    assert words in site_words.frost(found(climate, unit__frost=frost))


def test_a_flow_off_the_certificate_is_said() -> None:
    assert len(site_words.sheet(usual())) == 4
    assert any("lies outside the certificate" in words for words in site_words.sheet(found(unit__reference_flow=200.0)))


def test_nothing_in_hand_is_said() -> None:
    assert fit_words.line_words(usual(), "unit.largest_flow").startswith("Nothing in hand")
    roomy = found(unit__largest_flow=200.0)
    assert "81.2 m³/h in hand" in plain(fit_words.line_words(roomy, "unit.largest_flow"))


def test_the_site_list_says_what_the_trade_knows_with_a_caution_each() -> None:
    """Common practice, no source."""
    words = " ".join(look.words for look in site_list())
    for fact in ("1.2 m apart", "21.5 mm", "180 mm", "16 A breaker", "2.5 mm²", "13 A", "F7", "later visit", "cover",
        "silencers", "joint of the ducts", "in writing",
    ):  # fmt: skip
        assert fact.casefold() in words.casefold(), fact
    assert "never an instruction" in words
    titles = {caution.title for caution in every_caution()}
    for look in site_list():
        assert look.cautions
        assert set(look.cautions) <= titles
    assert SOURCE.capitalize() in site_rows().note


def test_flows_on_boost_have_columns_only_where_boost_moves_more() -> None:
    assert usual().paths is not None
    higher = found(flows__boost_flow=200.0)
    for sheet in (fit_sheets.ways, fit_sheets.doors, fit_sheets.rooms):
        for shown, wanted in ((usual(), False), (higher, True)):
            assert shown.paths is not None
            table = sheet(shown.paths)
            assert any("oost" in head for head in table.head) is wanted
            assert {len(row) for row in table.rows} == {len(table.head)}


def test_uneven_flows_are_never_praised() -> None:
    assert "have the unit balanced" in fit_words.steps_note(usual())
    assert fit_words.steps_note(found(flows__imbalance=0.0)) == ""
