"""Is a promised figure put where it lies among the cases, with what it would take?"""

import dataclasses

import numpy as np
import pytest

from estimator import run
from estimator.claims import QUESTIONS, Promise, judgement
from estimator.climate.year import ClimateYear
from estimator.draws import Ground
from estimator.leak_range import with_q50
from estimator.sure import Sure
from tests.sure.cases import SHIPPED, recovery_of

# Fitting plain extract in the demo case: 420 + 180 + 2 days at 280 + 150 + 100 + 150, and 20 % tax.
BASELINE_COST = 1872.0


@pytest.fixture(scope="module")
def place(grounds: dict[str, Ground]) -> Ground:
    return grounds["direct electric"]


@pytest.fixture(scope="module")
def answer(place: Ground) -> Sure:
    return recovery_of(place, count=400)


@pytest.mark.parametrize(
    ("percentile", "position"),
    [(5.0, "below the range"), (50.0, "within the range"), (96.0, "beyond the range")],
)
def test_a_saving_is_placed_among_the_cases(percentile: float, position: str, place: Ground, answer: Sure) -> None:
    promised = float(np.percentile(answer.cases.net_saving, percentile))
    found = judgement(place, answer, Promise(kind="saving", value=promised))
    assert found.position == position
    assert found.reached == pytest.approx(1.0 - percentile / 100.0, abs=0.005)
    assert (found.low, found.high) == (answer.net_saving.low, answer.net_saving.high)


def test_what_a_saving_needs_gives_it(place: Ground, answer: Sure, year: ClimateYear) -> None:
    found = judgement(place, answer, Promise(kind="saving", value=260.0))
    leakage = next(each for each in found.needed if each.name == "leakage")
    direct = run(with_q50(SHIPPED["direct electric"], leakage.values[0]), year).against_baseline["recovery"]
    assert direct.net_saving == pytest.approx(260.0, abs=1e-4)


def test_a_payback_counts_the_price_it_was_offered_at(place: Ground, answer: Sure) -> None:
    found = judgement(place, answer, Promise(kind="payback", value=10.0, price=5872.0))
    # 4,000 beyond the baseline in 10 years is 400 a year.
    assert found.reached == np.mean(answer.cases.net_saving >= (5872.0 - BASELINE_COST) / 10.0)
    dear = judgement(place, answer, Promise(kind="payback", value=10.0, price=9000.0))
    assert dear.reached <= found.reached
    assert dear.low > found.low


def test_a_saving_with_its_price_has_its_own_payback(place: Ground, answer: Sure) -> None:
    found = judgement(place, answer, Promise(kind="saving", value=500.0, price=6872.0))
    assert found.payback_of_saving == pytest.approx(10.0)


def test_an_efficiency_nothing_plausible_gives_is_said_to_be_so(place: Ground, answer: Sure) -> None:
    found = judgement(place, answer, Promise(kind="efficiency", value=98.0))
    assert found.position == "beyond every case tried"
    assert found.needed == ()
    assert not found.met_at_best_guess
    modest = judgement(place, answer, Promise(kind="efficiency", value=60.0))
    assert modest.position == "below the range"
    assert modest.reached == 1.0


def test_five_questions_judge_the_number_and_no_firm(place: Ground, answer: Sure) -> None:
    found = judgement(place, answer, Promise(kind="saving", value=200.0))
    assert len(found.questions) == len(set(QUESTIONS)) == 5
    assert all(question.endswith("?") for question in QUESTIONS)


def test_a_promise_is_not_changed_by_the_seed_beyond_noise(place: Ground, answer: Sure) -> None:
    other = recovery_of(place, count=400, start=9)
    promise = Promise(kind="saving", value=200.0)
    first, second = (judgement(place, each, promise) for each in (answer, other))
    assert first.reached == pytest.approx(second.reached, abs=0.08)
    assert dataclasses.asdict(first)["needed"] == dataclasses.asdict(second)["needed"]
