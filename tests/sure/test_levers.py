"""Does an option pay back in just the years asked for once a lever stands where it is said to have to?"""

import dataclasses

import numpy as np
import pytest

from estimator import Case, run
from estimator.climate.year import ClimateYear
from estimator.drawn import Difference
from estimator.inputs.places import with_values
from estimator.leak_range import with_q50
from estimator.levers import LONGEST, cost_needed, levers, life_needed, what_would_it_take
from estimator.plan import Plan
from estimator.survey.fill import filled
from tests.sure.cases import SHIPPED

YEARS = 20.0


def moved_case(case: Case, name: str, value: float) -> Case:
    whole = filled(case).case
    if name == "leakage":
        return with_q50(whole, value)
    paths = next(lever.paths for lever in levers(whole, option="recovery") if lever.name == name)
    moved: Case = with_values(whole, dict.fromkeys(paths, value))
    return moved


@pytest.mark.parametrize("name", ["gas", "direct electric", "heat pump", "annual rule", "example"])
def test_a_lever_where_it_must_be_makes_the_payback_asked_for(name: str, year: ClimateYear) -> None:
    case = SHIPPED[name]
    needed = what_would_it_take(case, year, option="recovery", baseline="extract", years=YEARS)
    assert [each.name for each in needed][-2:] == ["cost", "life"]
    for each in needed[:-2]:
        for value in each.values:
            direct = run(moved_case(case, each.name, value), year).against_baseline["recovery"]
            assert direct.simple_payback == pytest.approx(YEARS, rel=1e-5)


@pytest.mark.parametrize("name", ["gas", "direct electric"])
def test_where_no_value_would_do_none_of_many_does(name: str, year: ClimateYear) -> None:
    case = SHIPPED[name]
    for each in what_would_it_take(case, year, option="recovery", baseline="extract", years=YEARS)[:-2]:
        if each.values:
            continue
        assert not each.holds_now
        for value in np.geomspace(each.low, each.high, 9):
            compared = run(moved_case(case, each.name, float(value)), year).against_baseline["recovery"]
            assert compared.simple_payback > YEARS


def figures(*, saving: float, capital: float) -> Difference:
    one = np.ones(1)
    payback = np.array([capital / saving if saving > 0.0 else np.inf])
    return Difference(
        heat_saved=one,
        net_saving=saving * one,
        carbon_saving=one,
        net_capital=capital * one,
        payback=payback,
        efficiency=one,
        plan=Plan(
            flows=np.array([[-capital, saving]]),
            outlays=np.array([[capital, 0.0]]),
            heat_saved=np.ones((1, 2)),
            carbon_saved=np.ones((1, 2)),
            grid_factor=np.ones((1, 1)),
            discount=0.0,
        ),
    )


def test_cost_and_life_by_hand() -> None:
    # 150 a year for 20 years return 3,000; 4,500 at 150 a year take 30 years.
    now = figures(saving=150.0, capital=4500.0)
    cost = cost_needed(now, years=YEARS, currency="£")
    assert cost.values == (3000.0,)
    assert (cost.now, cost.holds_now) == (4500.0, False)
    assert life_needed(now, now_years=20.0).values == (30.0,)
    assert not life_needed(now, now_years=20.0).holds_now
    assert life_needed(now, now_years=35.0).holds_now


def test_nothing_saved_is_returned_by_no_cost_and_no_life() -> None:
    now = figures(saving=-10.0, capital=4500.0)
    assert cost_needed(now, years=YEARS, currency="£").values == ()
    assert life_needed(now, now_years=20.0).values == ()
    assert life_needed(figures(saving=1.0, capital=LONGEST + 1.0), now_years=20.0).values == ()


def test_what_holds_already_says_where_it_would_stop(year: ClimateYear) -> None:
    case = SHIPPED["direct electric"]
    kept = dataclasses.replace(case.options["recovery"].cost, grant=1000.0)
    case = dataclasses.replace(
        case, options={**case.options, "recovery": dataclasses.replace(case.options["recovery"], cost=kept)}
    )
    leakage = next(
        each
        for each in what_would_it_take(case, year, option="recovery", baseline="extract", years=YEARS)
        if each.name == "leakage"
    )
    assert leakage.holds_now
    assert leakage.values[0] > leakage.now


def test_an_option_without_an_exchanger_has_no_such_lever() -> None:
    names = [lever.name for lever in levers(filled(Case()).case, option="extract")]
    assert "efficiency" not in names
    assert "fan power" in names
