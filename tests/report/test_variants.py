"""Are any number of ways compared fairly against any of them, and their differences told?"""

from __future__ import annotations

import dataclasses

import pytest

from estimator import Case, load_year
from estimator.draws import ground
from estimator.estimate import Estimate, estimate
from estimator.report import variants
from estimator.report.variants import Way, ways
from estimator.sample import sample

Compared = tuple[Estimate, tuple[Way, ...], tuple[Way, ...]]


@pytest.fixture(scope="module")
def compared() -> Compared:
    usual = Case()
    better = dataclasses.replace(
        usual.options["recovery"],
        label="heat recovery 2",
        unit=dataclasses.replace(usual.options["recovery"].unit, effectiveness=92.0, fan_power=0.6),
    )
    case = dataclasses.replace(usual, options={**usual.options, "recovery-2": better})
    year = load_year("Inland vale")
    done, outcomes = estimate(case, year), sample(ground(case, year), count=200).cases
    return done, ways(done, outcomes, baseline="extract"), ways(done, outcomes, baseline="recovery")


def test_a_better_unit_comes_out_ahead_of_the_usual_one(compared: Compared) -> None:
    _, found, _ = compared
    order = [way.comparison.option for way in found]
    assert order.index("recovery-2") < order.index("recovery")
    middles = [way.reach.net_saving.middle for way in found]
    assert middles == sorted(middles, reverse=True)


def test_counted_the_other_way_round_every_saving_turns_its_sign(
    compared: Compared,
) -> None:
    _, one, other = compared
    there = next(way for way in one if way.comparison.option == "recovery")
    back = next(way for way in other if way.comparison.option == "extract")
    assert there.comparison.net_saving == pytest.approx(-back.comparison.net_saving)
    assert there.comparison.carbon_saving == pytest.approx(-back.comparison.carbon_saving)


def test_a_way_short_of_air_is_never_called_the_cheapest(
    compared: Compared,
) -> None:
    _, found, _ = compared
    assert found[0].comparison.option == "today"  # cheapest of all, since it airs least
    said = variants.sentence(found, baseline="new plain extract", currency="£")
    assert "heat recovery 2" in said.lower()
    assert "short of air" in variants.then(found, baseline="new plain extract")


def test_differences_are_those_entered(compared: Compared) -> None:
    done, _, _ = compared
    said = variants.differences(done, "recovery-2").replace("\u00a0", " ")
    assert "92%" in said
    assert "0.6 W/(l/s)" in said
    assert "beside heat recovery" in said
    assert variants.differences(done, "extract") == "New plain extract: continuous extract."


def test_a_price_that_differs_is_told_in_the_currency_of_the_case() -> None:
    usual = Case()
    one = usual.options["recovery"]
    dearer = dataclasses.replace(one, label="dearer", cost=dataclasses.replace(one.cost, kit=3200.0))
    case = dataclasses.replace(usual, options={**usual.options, "dearer": dearer})
    done = estimate(case, load_year("Inland vale"))
    said = variants.differences(done, "dearer")
    assert "£3,200, not £" in said
    assert "money" not in said


def test_the_table_has_a_column_for_every_way(compared: Compared) -> None:
    _, found, _ = compared
    table = variants.side_by_side(found, baseline="new plain extract", currency="£")
    assert len(table.head) == 1 + len(found)
    assert "new plain extract" in table.caption
