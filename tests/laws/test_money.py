"""Does money behave: bills with their prices, payback with its saving?"""

from __future__ import annotations

import dataclasses
import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator import Case, run
from estimator.inputs.cost import Cost
from estimator.inputs.option import Option, Unit
from estimator.inputs.prices import Prices
from estimator.money.tariffs import flat_bill
from estimator.money.worth import net_present_value, simple_payback
from tests.laws.settings import KINDS, MANY, year_of

STANDING = 365 * (0.60 + 0.30)  # money a year, of the prices below
MONEY = st.floats(1.0, 50_000.0)


def priced(electricity: float, fuel: float) -> Case:
    """The default case at flat prices, 60 and 30 hundredths a day of standing charges."""
    return Case(
        prices=Prices(electricity=electricity, fuel=fuel, electricity_standing=60.0, fuel_standing=30.0),
    )


@pytest.mark.parametrize("kind", KINDS)
def test_doubling_a_flat_price_doubles_the_bill_less_standing_charge(kind: str) -> None:
    year = year_of("Sand Point")
    once, twice = (run(priced(25.0 * f, 7.0 * f), year).estimate.options[kind] for f in (1.0, 2.0))
    assert twice.household_bill - STANDING == pytest.approx(2.0 * (once.household_bill - STANDING), rel=1e-12)
    assert twice.heating_demand == once.heating_demand


@given(energy=MONEY, price=st.floats(0.01, 3.0), standing=st.floats(0.0, 5.0))
@MANY
def test_a_flat_bill_is_straight(energy: float, price: float, standing: float) -> None:
    bill, double = (flat_bill(energy, price=price * f, standing_per_day=standing) for f in (1.0, 2.0))
    assert double - 365.0 * standing == pytest.approx(2.0 * (bill - 365.0 * standing), rel=1e-9)


@given(cost=MONEY, saving=MONEY, more=st.floats(1.001, 10.0))
@MANY
def test_payback_falls_when_saving_rises(cost: float, saving: float, more: float) -> None:
    assert simple_payback(cost, net_saving=saving * more) < simple_payback(cost, net_saving=saving)


@given(cost=st.floats(-10_000.0, 50_000.0), loss=st.floats(0.0, 10_000.0))
@MANY
def test_no_saving_never_pays_back(cost: float, loss: float) -> None:
    """Infinite, not an error, whether nothing is saved or money is lost each year, and whatever it cost."""
    assert simple_payback(cost, net_saving=-loss) == math.inf


@given(cost=st.floats(-10_000.0, 0.0), saving=MONEY)
@MANY
def test_nothing_spent_and_something_saved_pays_at_once(cost: float, saving: float) -> None:
    assert simple_payback(cost, net_saving=saving) == 0.0


@given(cost=MONEY, saving=MONEY, years=st.integers(1, 40))
@MANY
def test_at_nil_discount_present_value_is_years_times_saving_less_cost(cost: float, saving: float, years: int) -> None:
    value = net_present_value(np.array([-cost] + [saving] * years), rate=0.0)
    assert value == pytest.approx(years * saving - cost, rel=1e-9, abs=1e-6)


def test_payback_of_a_whole_case_falls_as_fuel_grows_dearer_and_never_comes_when_it_is_free() -> None:
    year = year_of("Sand Point")
    paybacks = [
        run(priced(25.0, fuel), year).against_baseline["recovery"].simple_payback for fuel in (0.0, 12.0, 18.0, 30.0)
    ]
    assert paybacks[0] == math.inf
    assert all(later < sooner for sooner, later in pairwise(paybacks))
    assert paybacks[-1] > 0.0


def test_an_option_like_its_baseline_saves_nothing() -> None:
    """The same option under another name: every difference is nil, and the payback is infinite."""
    case = Case()
    options = {**case.options, "again": case.options["extract"]}
    again = run(dataclasses.replace(case, options=options), year_of("Greensboro")).against_baseline["again"]
    assert (again.heat_saved, again.bill_saving, again.carbon_saving, again.net_capital) == (0.0, 0.0, 0.0, 0.0)
    assert again.simple_payback == math.inf


def test_upkeep_and_capital_reach_the_payback() -> None:
    """By hand: parts 1,000; two people, three days at 200; VAT 20 %; grant 300; two filter sets at 40, service 20."""
    cost = Cost(
        kit=600.0, ducts=100.0, electrical=150.0, commissioning=50.0, making_good=100.0, people=2.0, days=3.0,
        day_rate=200.0, vat=20.0, grant=300.0, filter_sets=2.0, filter_price=40.0, service=20.0,
    )  # fmt: skip
    free = Cost(
        kit=0.0, ducts=0.0, electrical=0.0, commissioning=0.0, making_good=0.0, people=0.0, days=0.0, grant=0.0,
        filter_sets=0.0, filter_price=0.0, service=0.0,
    )  # fmt: skip
    case = Case(
        options={
            "today": Option(kind="intermittent fans", cost=free),
            "extract": Option(kind="continuous extract", cost=free),
            "recovery": Option(kind="heat recovery", cost=cost, unit=Unit(effectiveness=90.0)),
        }
    )
    found = run(case, year_of("Sand Point")).against_baseline["recovery"]
    assert found.net_capital == pytest.approx(2340.0)  # (1,000 + 1,200) × 1.2 − 300
    assert found.extra_upkeep == pytest.approx(100.0)
    assert found.net_saving == pytest.approx(found.bill_saving - 100.0)
