"""Is the span of an untested, guessed or tested leakage as wide as it should be, and does every estimate follow it?"""

import dataclasses

import pytest

from estimator import Case, case_from_text, case_to_toml, run
from estimator.climate.year import ClimateYear
from estimator.inputs.home import Home, Leakage
from estimator.leak_range import house_q50, leakage_span, over_leakage_range, with_q50
from estimator.survey.fill import filled


def with_leakage(**entries: object) -> Case:
    return Case(leakage=Leakage(**entries))  # type: ignore[arg-type]


def test_an_untested_home_spreads_as_the_table_of_its_age_says() -> None:
    span = leakage_span(Case(home=Home(age="1976 to 1995")))
    # Row of the table of homes, typical, from memory: 5.0, 8.5, 14.0.
    assert (span.low, span.middle, span.high) == pytest.approx((5.0, 8.5, 14.0))
    assert span.tag == "typical"
    assert not span.tested


def test_a_test_is_uncertain_by_a_tenth() -> None:
    span = leakage_span(with_leakage(measure="q50", value=4.0, basis="measured"))
    # EN ISO 9972, calm weather, below 10 %; from memory.
    assert (span.low, span.middle, span.high) == pytest.approx((3.6, 4.0, 4.4))
    assert span.tested
    assert "tested" in span.words


def test_a_guess_is_wider_than_a_typical_figure() -> None:
    guess = leakage_span(with_leakage(measure="q50", value=6.0))
    typical = leakage_span(with_leakage(measure="q50", value=6.0, basis="typical"))
    assert guess.tag == "assumed"
    assert guess.low == pytest.approx(3.0)
    assert guess.high == pytest.approx(12.0)
    assert guess.low < typical.low < typical.middle < typical.high < guess.high


def test_both_published_limits_of_a_dwelling_agree_at_the_exponent_they_imply() -> None:
    # Approved Document L (2021): at most 8.0 m³/(h m²) at 50 Pa or 1.57 at 4 Pa; together an exponent near 0.645.
    case = filled(with_leakage(measure="q4", value=1.57, exponent=0.645)).case
    assert house_q50(case) == pytest.approx(8.0, rel=0.003)


@pytest.mark.parametrize("measure", ["q50", "n50", "q4"])
def test_a_case_moved_to_its_own_q50_gives_its_own_estimate(measure: str, year: ClimateYear) -> None:
    case = with_leakage(measure=measure, value=3.0, basis="measured")
    moved = with_q50(case, house_q50(filled(case).case))
    assert moved.leakage.basis == "measured"
    ours, theirs = run(moved, year).against_baseline["recovery"], run(case, year).against_baseline["recovery"]
    assert ours.net_saving == pytest.approx(theirs.net_saving, rel=1e-9, abs=1e-9)


def test_three_estimates_stand_in_order_of_leakage(year: ClimateYear) -> None:
    case = Case()
    low, middle, high = over_leakage_range(case, year)
    demand = [result.estimate.options["today"].heating_demand for result in (low, middle, high)]
    assert demand == sorted(demand)
    assert demand[0] < demand[2]
    assert middle.estimate.options["today"].heating_demand == run(case, year).estimate.options["today"].heating_demand
    assert all(result.estimate.case.leakage.basis == "typical" for result in (low, middle, high))


def test_a_home_of_the_leakiest_age_still_passes_the_checks_of_a_case_at_both_ends() -> None:
    case = dataclasses.replace(Case(), home=Home(age="before 1920"))
    span = leakage_span(case)
    for q50 in (span.low, span.high):
        back = case_from_text(case_to_toml(with_q50(case, q50)), name="a case")
        assert back.leakage.value == pytest.approx(q50)
