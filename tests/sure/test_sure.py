"""Is the answer to "how sure" reproducible, as wide as its ranges, and right about what to measure first?"""

import dataclasses

import numpy as np
import pytest

from estimator import run
from estimator.climate.year import ClimateYear
from estimator.drawn import difference
from estimator.draws import Ground, outcomes
from estimator.sample import FEW, MANY, sample
from estimator.sure import Spread, Sure, spread, sure, sure_of
from estimator.tries import places
from tests.sure.cases import SHIPPED, differences, recovery_of


@pytest.fixture(scope="module")
def electric(grounds: dict[str, Ground]) -> Sure:
    return recovery_of(grounds["direct electric"])


def test_the_same_seed_gives_the_same_answer(grounds: dict[str, Ground]) -> None:
    first, again, other = (recovery_of(grounds["gas"], count=200, start=start) for start in (3, 3, 4))
    assert first.net_saving == again.net_saving
    assert [each.changes for each in first.knowing] == [each.changes for each in again.knowing]
    assert first.net_saving != other.net_saving


@pytest.mark.parametrize(("name", "against"), [*((name, "baseline") for name in SHIPPED), ("gas", "today")])
def test_wider_ranges_never_narrow_the_answer_and_its_ends_hold_the_middle(
    name: str, against: str, grounds: dict[str, Ground]
) -> None:
    place = grounds[name]
    baseline = getattr(place.case, against)
    where = places(len(place.inputs), count=300, start=1)
    best = differences(place, 0.0 * where[:1], option="recovery", baseline=baseline)
    widths = []
    for widening in (0.5, 0.75, 1.0, 1.25, 1.6):
        found = differences(place, widening * where, option="recovery", baseline=baseline)
        pair = []
        for figure in ("net_saving", "carbon_saving"):
            ends = spread(getattr(found, figure))
            assert ends.low <= getattr(best, figure)[0] <= ends.high
            assert ends.low <= ends.middle <= ends.high
            pair.append(ends.high - ends.low)
        widths.append(pair)
    assert np.all(np.diff(widths, axis=0) > 0.0)


def test_percentiles_are_cases_and_never_is_the_last_of_them() -> None:
    sample = np.array([7.0, np.inf, 3.0, 12.0, 5.0, np.inf, 9.0, 20.0, 4.0, np.inf])
    found = spread(sample)
    # The inverse of the distribution function, by a general library.
    expected = [np.quantile(sample[np.isfinite(sample)], 0.0), 9.0, np.inf]
    assert [found.low, found.middle, found.high] == expected
    finite = np.random.default_rng(1).normal(size=137)
    low, middle, high = np.quantile(finite, [0.1, 0.5, 0.9], method="inverted_cdf")
    assert spread(finite) == Spread(low=float(low), middle=float(middle), high=float(high))


def test_baseline_and_option_stand_in_the_same_house(grounds: dict[str, Ground]) -> None:
    """An option against its own twin saves nothing in any case drawn."""
    place = grounds["gas"]
    twin = dataclasses.replace(place.case, options={**place.case.options, "twin": place.case.options["recovery"]})
    where = places(len(place.inputs), count=40, start=1)
    inputs = tuple(
        dataclasses.replace(
            item,
            ends={
                **item.ends,
                **{p.replace(".recovery.", ".twin."): e for p, e in item.ends.items() if ".recovery." in p},
            },
        )
        for item in place.inputs
    )
    found = outcomes(dataclasses.replace(place, case=twin, inputs=inputs), where)
    apart = difference(found["twin"], baseline=found["recovery"])
    assert np.ptp(found["recovery"].heat) > 1000.0
    for figure in ("heat_saved", "net_saving", "carbon_saving", "net_capital"):
        assert np.all(getattr(apart, figure) == 0.0)


def test_a_swing_is_what_two_direct_estimates_say(electric: Sure, year: ClimateYear) -> None:
    swing = next(swing for swing in electric.swings if swing.input.name == "indoor_temperature")
    case = SHIPPED["direct electric"]
    # A tenth of a symmetric triangle lies below 1 − √0.8 of the half-width from its lower end: 2 K here.
    away = 2.0 * (1.0 - np.sqrt(0.2))
    for said, moved in ((swing.saving_at_low, -away), (swing.saving_at_high, away)):
        home = dataclasses.replace(case.home, indoor_temperature=case.home.indoor_temperature + moved)
        direct = run(dataclasses.replace(case, home=home), year).against_baseline["recovery"].net_saving
        assert said == pytest.approx(direct, abs=electric.error.net_saving + 1.0)
    assert [swing.width for swing in electric.swings] == sorted((s.width for s in electric.swings), reverse=True)


@pytest.mark.parametrize("name", ["leakage", "cost", "price_of_electricity", "wind"])
def test_what_knowing_brings_is_what_a_nested_sample_says(
    name: str, electric: Sure, grounds: dict[str, Ground]
) -> None:
    """By brute force: the input held at each of 24 places in turn, all others drawn anew."""
    place = grounds["direct electric"]
    number = [item.name for item in place.inputs].index(name)
    now = np.median(electric.cases.payback <= electric.years)
    means, left, other = [], [], []
    for place_number, at in enumerate(np.sort(places(1, count=24, start=11)[:, 0])):
        where = places(len(place.inputs), count=150, start=100 + place_number)
        where[:, number] = at
        found = differences(place, where, option="recovery", baseline="extract")
        other.append(np.median(found.payback <= electric.years) != now)
        means.append(np.mean(found.net_saving))
        left.append(np.var(found.net_saving))
    said = next(each for each in electric.knowing if each.input.name == name)
    # All variance is that of the means and what is left on average (law of total variance).
    narrowing = 1.0 - np.sqrt(np.mean(left) / (np.mean(left) + np.var(means)))
    assert said.narrowing == pytest.approx(narrowing, abs=0.02)
    assert said.changes == pytest.approx(100.0 * np.mean(other), abs=9.0)


def test_share_paid_back_counts_cases(electric: Sure) -> None:
    for years in (10.0, 20.0, 60.0):
        assert electric.paid_back(years) == sum(p <= years for p in electric.cases.payback) / MANY


def test_few_cases_come_close_to_many(electric: Sure, year: ClimateYear) -> None:
    few = sure(SHIPPED["direct electric"], year, option="recovery", baseline="extract", count=FEW)
    assert few.count == FEW <= 128
    width = electric.net_saving.high - electric.net_saving.low
    for end in ("low", "middle", "high"):
        assert getattr(few.net_saving, end) == pytest.approx(getattr(electric.net_saving, end), abs=0.2 * width)


def test_the_error_of_the_short_year_is_measured_and_small(electric: Sure) -> None:
    width = electric.net_saving.high - electric.net_saving.low
    assert 0.0 < electric.error.net_saving < 0.02 * width
    assert 0.0 < electric.error.heat_saved < 0.021 * electric.heat_saved.high
    assert electric.error.hours_per_block == 6.0


def test_one_sample_serves_every_option_and_baseline(grounds: dict[str, Ground]) -> None:
    place = grounds["gas"]
    drawn = sample(place, count=150)
    for option, baseline in (("recovery", "extract"), ("recovery", "today"), ("extract", "today")):
        alone = sure_of(
            sample(place, names=(option, baseline), count=150), option=option, baseline=baseline, years=30.0
        )
        together = sure_of(drawn, option=option, baseline=baseline, years=30.0)
        assert together.net_saving == alone.net_saving
        assert together.error == alone.error
        assert [each.changes for each in together.knowing] == [each.changes for each in alone.knowing]
