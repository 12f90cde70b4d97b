"""Do verdict, pictures and tables of the leaky-house question say what direct estimates say, and never too much?

Every figure is held against `run` of the same home at that leakage, the interface that the published checks hold.
"""

from __future__ import annotations

import datetime
import re
import tomllib
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from estimator import Case, Leakage, case_from_dict, load_year, run
from estimator.at_leakage import ground
from estimator.climate.year import ClimateYear
from estimator.compare import Comparison
from estimator.leak_range import leakage_span, with_q50
from estimator.report import tight_page, tight_routes, tight_sheets
from estimator.report.leave import Names
from estimator.report.tight import Tightness, reach, sealed, stated, sweeps, tightness, verdict
from estimator.report.tight_paper import TightPaper, tight_paper
from estimator.report.tight_plan import border_words, plan
from estimator.routes import BOTH, RECOVER, SEAL, best_targets
from estimator.survey.fill import filled
from estimator.sweep import Threshold

CLIMATES = ("Mild coast", "Inland vale", "Cold plain")
DWELLINGS = sorted((Path(__file__).parents[1] / "dwellings").glob("*.toml"))


def asked(case: Case, year: ClimateYear) -> Tightness:
    place = ground(case, year)
    option = next(name for name in case.options if name not in (case.baseline, case.today))
    return tightness(
        place, leakage_span(case), option=option, swept=sweeps(place, option=option), known=sealed(place, option=option)
    )


def papered(found: Tightness, case: Case) -> TightPaper:
    return tight_paper(found, filled(case), names=Names(), today=datetime.date(2026, 3, 1))


def leaking(q50: float) -> Case:
    return Case(leakage=Leakage(measure="q50", value=q50, basis="measured"))


def direct(found: Tightness, q50: float) -> tuple[Comparison, Comparison]:
    result = run(with_q50(found.case, q50), found.place.year)
    return result.against_baseline[found.option], result.against_today[found.option]


@pytest.fixture(scope="module", params=CLIMATES)
def untested(request: pytest.FixtureRequest) -> Tightness:
    return asked(Case(), load_year(request.param))


@pytest.mark.parametrize("file", DWELLINGS, ids=lambda file: file.stem)
def test_every_figure_of_the_house_equals_a_direct_estimate(file: Path) -> None:
    dwelling = tomllib.loads(file.read_text(encoding="utf-8"))
    case = case_from_dict({"version": 1, **dwelling["case"]})
    found = asked(case, load_year(dwelling["climate"]))
    for at, q50 in enumerate((found.span.low, found.span.middle, found.span.high)):
        for against, right in zip((found.baseline, found.today), direct(found, q50), strict=True):
            here = against.here
            assert here.net_saving[at] == pytest.approx(right.net_saving, rel=1e-9, abs=1e-9)
            assert here.heat_saved[at] == pytest.approx(right.heat_saved, rel=1e-9, abs=1e-9)
            assert here.carbon_saving[at] == pytest.approx(right.carbon_saving, rel=1e-9, abs=1e-9)
            assert here.payback[at] == pytest.approx(right.simple_payback, rel=1e-9)
            assert here.net_capital == pytest.approx(right.net_capital, abs=1e-9)
            side = {True: "does not pay", False: "pays"}[right.net_saving <= 0.0]
            assert against.saving_side in (side, "on both sides")


def test_the_sweep_and_the_borders_equal_direct_estimates(untested: Tightness) -> None:
    baseline, today = untested.baseline.sweep.figures, untested.today.sweep.figures
    for at in (0, 17, 42, 59):
        ours, theirs = direct(untested, float(baseline.q50[at]))
        for curve, right in ((baseline, ours), (today, theirs)):
            assert curve.net_saving[at] == pytest.approx(right.net_saving, rel=1e-9, abs=1e-9)
            assert curve.heat_saved[at] == pytest.approx(right.heat_saved, rel=1e-9)
            assert curve.payback[at] == pytest.approx(right.simple_payback, rel=1e-9)
    air = run(with_q50(untested.case, float(baseline.q50[30])), untested.place.year).estimate.options["recovery"].air
    share = np.mean(air.balanced) / np.mean(air.delivered)
    assert baseline.through_exchanger[30] == pytest.approx(share, rel=1e-9)
    for crossing in untested.baseline.sweep.saving.crossings:
        assert direct(untested, crossing)[0].net_saving == pytest.approx(0.0, abs=1e-6)


def test_routes_of_every_end_equal_direct_estimates(untested: Tightness) -> None:
    life = untested.case.worth.life
    for end, q50 in zip(untested.baseline.routes, (untested.span.low, 0.0, untested.span.high), strict=True):
        if not q50:
            continue
        before = run(with_q50(untested.case, q50), untested.place.year).estimate.options
        after = run(with_q50(untested.case, 3.0), untested.place.year).estimate.options
        left = before["extract"]
        for name, right in ((SEAL, after["extract"]), (RECOVER, before["recovery"]), (BOTH, after["recovery"])):
            saving = left.household_bill - right.household_bill - (right.upkeep - left.upkeep)
            assert end.routes[name].net_saving == pytest.approx(saving, rel=1e-9, abs=1e-9)
            gain = end.routes[name].life_gain.middle + end.routes[name].cost.middle
            assert gain == pytest.approx(saving * life, rel=1e-9, abs=1e-6)


def test_the_best_leakage_is_the_same_from_wherever_the_house_starts(untested: Tightness) -> None:
    best = tight_routes.seal_to(untested, option="extract")
    for end in untested.ends:
        for mine, target in zip(best, best_targets(end, option="extract"), strict=True):
            if target.pays and mine.q50 is not None:
                assert target.q50 == pytest.approx(mine.q50, abs=0.03)
                assert mine.life_gain[0] - 1.0 <= target.life_gain <= mine.life_gain[1] + 1.0


@pytest.mark.parametrize(
    ("crossings", "first", "words", "drawn"),
    [
        ((), True, "at every leakage from 0.5 to 20", "x: even at 20"),
        ((), False, "at no leakage from 0.5 to 20", "x: not even at 0.5"),
        ((4.0,), True, "only up to 4.0", "x up to 4.0"),
        ((4.0,), False, "only above 4.0", "x from 4.0"),
        ((2.0, 9.0), False, "only from 2.0 to 9.0", "x from 2.0|x up to 9.0"),
        ((2.0, 9.0), True, "only up to 2.0 m³/(h m²) and above 9.0", "x up to 2.0|x from 9.0"),
    ],
)
def test_a_border_takes_one_of_four_forms(crossings: tuple[float, ...], first: bool, words: str, drawn: str) -> None:
    threshold = Threshold(what="x", crossings=crossings, holds_at_lowest=first)
    assert reach(threshold).replace("\u00a0", " ").startswith(words)
    assert "|".join(name for _, name in border_words(threshold, "x")) == drawn


@pytest.mark.parametrize(
    ("q50", "head", "side"),
    [(1.0, "Tight enough to save money", "tighter"), (6.7, "On the border", ""), (12.0, "No, too leaky", "leakier")],
)
def test_a_tested_house_is_told_its_side_and_how_far(q50: float, head: str, side: str) -> None:
    found = asked(leaking(q50), load_year("Inland vale"))
    sentence = verdict(found).sentence
    assert sentence.startswith(head)
    assert f"as tested, leaks {0.9 * q50:.1f} to {1.1 * q50:.1f}" in sentence
    assert f"{side} than that border" in sentence if side else "than that border" not in sentence
    border = found.baseline.sweep.saving.crossings[0]
    if side:
        near, far = sorted((abs(0.9 * q50 - border), abs(1.1 * q50 - border)))
        assert f"{near:.1f} to {far:.1f} {side}" in sentence


def test_a_unit_that_costs_nothing_more_is_worth_it_where_it_saves() -> None:
    case = leaking(1.0)
    extract, recovery = case.options["extract"], case.options["recovery"]
    options = {**case.options, "recovery": replace(recovery, cost=filled(case).case.options["extract"].cost)}
    said = verdict(asked(replace(case, options=options), load_year("Cold plain")))
    assert extract is not recovery
    assert said.sentence.startswith("Yes, tight enough")
    assert "any saving pays at once" in said.then


def test_an_untested_house_never_gets_a_bare_number(untested: Tightness) -> None:
    middle = f"{untested.span.middle:.1f}"
    said = verdict(untested)
    text = tight_page.text(papered(untested, Case()))
    for words in (said.sentence, said.then, said.today, text, str(tight_routes.four_routes(untested, untested.today))):
        assert not re.search(rf"(?<![\d.,]){re.escape(middle)}(?![\d.])", words)
    for sheet in (tight_sheets.house(untested), tight_sheets.models(untested), tight_sheets.estimates(untested)):
        assert all(" to " in " ".join(row) or "never" in row or row[0] == "Extra cost" for row in sheet.rows)
    assert plan(untested, "net_saving").house == "this house, not tested: 5.0 to 14.0"


def test_the_page_puts_cautions_before_money_and_names_both_comparisons(untested: Tightness) -> None:
    text = tight_page.text(papered(untested, Case()))
    assert 0 < text.index("Carbon monoxide") < text.index("£")
    assert "new plain extract" in text
    assert "the house as it is aired today" in text
    assert "never seal without a plan for ventilation" in text.replace("\n", " ")
    assert "None" not in text
    assert max(len(line) for line in text.splitlines()) <= 96


def test_a_leakage_is_stated_as_each_test_would() -> None:
    case = filled(Case()).case
    said = stated(case, 6.0)
    assert said["q50"] == 6.0
    assert said["n50"] == pytest.approx(6.0 * float(case.home.envelope_area or 0) / float(case.home.volume or 0))
    # The power law of the pressure test, EN ISO 9972.
    assert said["q4"] == pytest.approx(6.0 * (4.0 / 50.0) ** 0.65)


@pytest.mark.parametrize(
    ("spans", "words"),
    [
        ((float("inf"),), "never"),
        ((0.0, 0.0), "at once"),
        ((8.2, 12.4), "8 to 12 years"),
        ((31.0, float("inf")), "31 years, at worst never"),
        ((0.0, 4.0), "at once, at worst 4 years"),
        ((130.0, 400.0), "over 100 years"),
    ],
)
def test_paybacks_read_as_people_say_them(spans: tuple[float, ...], words: str) -> None:
    assert tight_sheets.paybacks(spans) == words


@pytest.mark.parametrize("q50", [1.0, 6.7, 12.0])
def test_a_range_of_leakage_alone_says_so_since_other_pages_move_everything(q50: float) -> None:
    said = verdict(asked(leaking(q50), load_year("Inland vale")))
    for words in (said.then, said.today):
        assert "By leakage alone, all else at its best guess, " in words.split("a year")[0]
