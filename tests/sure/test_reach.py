"""Does a first look tell the same story as all cases, and is every form of answer said with range and baseline?"""

from __future__ import annotations

import dataclasses

import pytest

from estimator import Case, load_year, run
from estimator.compare import Comparison
from estimator.draws import ground
from estimator.reach import Reach, first_look, full_look, reach
from estimator.report.answer import carbon, reached, rests_on
from estimator.sample import FEW, sample
from estimator.sure import Spread


@pytest.fixture(scope="module")
def comparison() -> Comparison:
    return run(Case(), load_year("Inland vale")).against_baseline["recovery"]


def far(low: float, high: float, *, paid_back: float = 0.5) -> Reach:
    between = Spread(low=low, middle=(low + high) / 2, high=high)
    return Reach(count=2000, net_saving=between, carbon_saving=between, paid_back=paid_back, years=20.0)


def test_a_first_look_is_near_the_range_of_all_cases_and_always_the_same() -> None:
    place = ground(Case(), load_year("Inland vale"))
    few, again = (reach(first_look(place), option="recovery", baseline="extract", years=20.0) for _ in range(2))
    whole = reach(sample(place).cases, option="recovery", baseline="extract", years=20.0)
    assert reach(full_look(place), option="recovery", baseline="extract", years=20.0) == whole
    assert few.count == FEW <= 128
    assert few == again
    width = whole.net_saving.high - whole.net_saving.low
    for end in ("low", "middle", "high"):
        assert abs(getattr(few.net_saving, end) - getattr(whole.net_saving, end)) < 0.35 * width


@pytest.mark.parametrize(
    ("low", "high", "verdict", "said"),
    [
        (92.0, 141.0, "saves", "would save about £90 to £140 a year"),
        (-62.0, -21.0, "costs", "would cost about £20 to £60 more a year"),
        (-38.0, 91.0, "open", "cannot be told: between costing about £40 more and saving about £90 a year"),
    ],
)
def test_the_three_answers(comparison: Comparison, low: float, high: float, verdict: str, said: str) -> None:
    found = reached(comparison, far(low, high), "£")
    assert found.verdict == verdict
    assert said in found.sentence
    assert found.sentence.endswith("against new plain extract.")
    assert "At the best guess" in found.then
    assert "5 of 10 cases" in found.then


@pytest.mark.parametrize(
    ("low", "high", "said"),
    [
        (102.0, 196.0, "would fall by about 100 to 200"),
        (-196.0, -102.0, "would rise by about 100 to 200"),
        (-50.0, 100.0, "could rise by"),
    ],
)
def test_carbon_has_its_range_and_its_baseline(comparison: Comparison, low: float, high: float, said: str) -> None:
    words = carbon(comparison, far(low, high), baseline="the house as it is aired today")
    assert said in words
    assert words.endswith("against the house as it is aired today.")


def test_only_a_first_look_is_called_about() -> None:
    assert rests_on(64, whole=2000).startswith("About")
    assert not rests_on(2000, whole=2000).startswith("About")


def test_more_air_than_the_baseline_is_said(comparison: Comparison) -> None:
    more = dataclasses.replace(comparison, extra_fresh_air=0.01, heat_saved=-5.0)
    assert "It brings more fresh air than new plain extract" in reached(more, far(-60, -20), "£").then
