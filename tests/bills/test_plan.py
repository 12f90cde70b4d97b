"""Does a plan over the years agree with a ledger kept by hand and with a general library of finance?

A hundred random pairs of options: capital, renewals, fans, upkeep, growing prices, a falling grid, real and nominal.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy_financial as npf
import pytest

from estimator import Case, load_year, run
from estimator.costs import embodied_carbon, later_costs
from estimator.drawn import difference
from estimator.draws import ground, outcomes
from estimator.inputs.cost import Cost
from estimator.inputs.places import with_values
from estimator.inputs.prices import Prices, Worth
from estimator.plan import Plan, Terms, Yearly, plan, terms

DRAW = np.random.default_rng(77)


@dataclass
class Side:
    """What one option takes and costs, in plain numbers."""

    cost: Cost
    electricity: float
    fuel: float
    fans: float
    kwh: float
    gas_carbon: float
    heat: float
    capital: float
    upkeep: float
    standing: bool


def a_side(*, standing: bool, recovers: bool) -> Side:
    life = float(DRAW.uniform(6.0, 40.0))
    return Side(
        cost=Cost(
            kit_life=life,
            renewal=float(DRAW.uniform(0.0, 3000.0)),
            renewal_year=float(DRAW.uniform(0.0, life)) if standing else life,
            fans=float(DRAW.choice([0.0, 250.0])),
            fans_year=float(DRAW.uniform(5.0, 18.0)),
            embodied=float(DRAW.uniform(0.0, 500.0)),
        ),
        electricity=float(DRAW.uniform(500.0, 1500.0)),
        fuel=float(DRAW.uniform(300.0, 900.0) if recovers else DRAW.uniform(700.0, 1900.0)),
        fans=float(DRAW.uniform(5.0, 120.0)),
        kwh=float(DRAW.uniform(2500.0, 4000.0)),
        gas_carbon=float(DRAW.uniform(500.0, 3500.0)),
        heat=float(DRAW.uniform(4000.0, 9000.0) if recovers else DRAW.uniform(7000.0, 15000.0)),
        capital=0.0 if standing else float(DRAW.uniform(500.0, 7000.0)),
        upkeep=float(DRAW.uniform(0.0, 120.0)),
        standing=standing,
    )


def a_case() -> Case:
    return Case(
        prices=Prices(
            electricity_carbon=float(DRAW.uniform(0.05, 0.5)),
            electricity_growth=float(DRAW.uniform(-3.0, 6.0)),
            fuel_growth=float(DRAW.uniform(-3.0, 6.0)),
            carbon_path="falling" if DRAW.random() < 0.7 else "constant",
            carbon_end_year=int(DRAW.integers(2028, 2060)),
            carbon_end=float(DRAW.uniform(0.0, 0.2)),
        ),
        worth=Worth(
            horizon=int(DRAW.integers(3, 41)),
            discount=float(DRAW.uniform(0.0, 10.0)),
            terms="nominal" if DRAW.random() < 0.5 else "real",
            inflation=float(DRAW.uniform(0.0, 5.0)),
        ),
    )


HUNDRED = [
    (a_case(), a_side(standing=bool(DRAW.random() < 0.5), recovers=False), a_side(standing=False, recovers=True))
    for _ in range(100)
]


def as_yearly(case: Case, side: Side) -> Yearly:
    on: Terms = terms(case)
    factor = case.prices.electricity_carbon or 0.0
    return Yearly(
        electricity_bill=side.electricity,
        fuel_bill=side.fuel,
        ventilation_bill=side.fans,
        grid_energy=side.kwh,
        electricity_carbon=side.kwh * factor,
        fuel_carbon=side.gas_carbon,
        useful_heat=side.heat,
        capital=np.asarray(side.capital),
        upkeep=np.asarray(side.upkeep),
        later=later_costs(side.cost, years=on.years, growth=on.other_growth),
        embodied=embodied_carbon(side.cost, years=on.years, standing=side.standing),
        terms=on,
    )


def bought(due: float, life: float, price: float, years: int, growth: float, *, left_over: bool) -> list[float]:
    """Purchases one after another from a first one, what is left of the last given back at the end."""
    row = [0.0] * (years + 1)
    last = None
    while due < years - 1e-9:
        paid = price * (1.0 + growth) ** math.ceil(due - 1e-9)
        row[math.ceil(due - 1e-9)] += paid
        last, due = (due, paid), due + life
    if last and left_over:
        row[years] -= last[1] * max(0.0, 1.0 - (years - last[0]) / life)
    return row


def kit_rows(case: Case, side: Side) -> tuple[list[float], list[float]]:
    """Later costs [money] and embodied carbon [kg] by year."""
    cost, years = side.cost, case.worth.horizon or 0
    growth = case.worth.inflation / 100.0 if case.worth.terms == "nominal" else 0.0
    life, due = cost.kit_life or 0.0, cost.renewal_year or 0.0
    money = bought(due, life, cost.renewal or 0.0, years, growth, left_over=True)
    fans_year = cost.fans_year or 0.0
    fans = bought(fans_year, fans_year, cost.fans or 0.0, years, growth, left_over=False)
    made = bought(due, life, cost.embodied or 0.0, years, 0.0, left_over=True)
    money = [a + b for a, b in zip(money, fans, strict=True)]
    if due > years:
        money[years] -= (cost.renewal or 0.0) * (due - years) / life
        made[years] -= (cost.embodied or 0.0) * (due - years) / life
    if not side.standing:
        made[0] += cost.embodied or 0.0
    return money, made


@dataclass
class Ledger:
    """The rows of a plan as a bookkeeper writes them."""

    flows: list[float]
    outlays: list[float]
    saved: list[float]
    carbon: list[float]


def ledger(case: Case, base: Side, option: Side) -> Ledger:
    prices, years = case.prices, case.worth.horizon or 0
    other = case.worth.inflation / 100.0 if case.worth.terms == "nominal" else 0.0
    (base_money, base_made), (money, made) = kit_rows(case, base), kit_rows(case, option)
    flows = [-(option.capital - base.capital) - (money[0] - base_money[0])]
    outlays, saved, carbon = [-flows[0]], [0.0], [base_made[0] - made[0]]
    factor = prices.electricity_carbon or 0.0
    for year in range(1, years + 1):
        electricity = (1.0 + prices.electricity_growth / 100.0) ** (year - 1)
        gas, rest = (1.0 + prices.fuel_growth / 100.0) ** (year - 1), (1.0 + other) ** (year - 1)
        extra = (option.upkeep - base.upkeep) * rest + money[year] - base_money[year]
        bills = (base.electricity - option.electricity) * electricity + (base.fuel - option.fuel) * gas
        flows.append(bills - extra)
        outlays.append(extra + (option.fans - base.fans) * electricity)
        saved.append(base.heat - option.heat)
        calendar, grid = prices.carbon_year + year - 1, factor
        if prices.carbon_path == "falling":
            gone = min((calendar - prices.carbon_year) / (prices.carbon_end_year - prices.carbon_year), 1.0)
            grid = factor + (prices.carbon_end - factor) * gone
        own = base.gas_carbon - option.gas_carbon
        carbon.append((base.kwh - option.kwh) * grid + own + base_made[year] - made[year])
    return Ledger(flows, outlays, saved, carbon)


@pytest.mark.parametrize("number", range(100))
def test_every_figure_like_ledger_and_numpy_financial(number: int) -> None:
    case, base, option = HUNDRED[number]
    by_hand = ledger(case, base, option)
    ours: Plan = plan(as_yearly(case, option), baseline=as_yearly(case, base))
    rate = case.worth.discount / 100.0
    np.testing.assert_allclose(ours.flows, by_hand.flows, rtol=1e-9, atol=1e-7)
    np.testing.assert_allclose(ours.carbon_saved, by_hand.carbon, rtol=1e-9, atol=1e-7)
    assert ours.net_present_value == pytest.approx(npf.npv(rate, by_hand.flows), rel=1e-9, abs=1e-6)
    cost, kwh = npf.npv(rate, by_hand.outlays), npf.npv(rate, by_hand.saved)
    assert ours.cost_per_kwh == pytest.approx(cost / kwh if kwh > 0.0 else math.inf, rel=1e-9)
    np.testing.assert_allclose(ours.cumulative, np.cumsum(by_hand.flows), rtol=1e-9, atol=1e-6)
    if ours.internal_rate.count == 1:
        # Next to what the flows amount to at that rate, which far below nil is very much.
        scale = npf.npv(ours.internal_rate.rate, np.abs(by_hand.flows))
        assert npf.npv(ours.internal_rate.rate, by_hand.flows) == pytest.approx(0.0, abs=1e-9 * scale)
        signs = np.sign([flow for flow in by_hand.flows if abs(flow) > 1e-9])
        if np.count_nonzero(np.diff(signs)) == 1:  # one rate only, by Descartes' rule
            assert ours.internal_rate.rate == pytest.approx(npf.irr(by_hand.flows), abs=1e-7)
    worths = [float(npf.npv(rate, by_hand.flows[: n + 1])) for n in range(len(by_hand.flows))]
    below = [n for n, value in enumerate(worths) if value < -1e-6]
    if worths[-1] < 0.0:
        assert ours.discounted_payback == math.inf
    elif ours.discounted_payback < math.inf:
        assert math.ceil(ours.discounted_payback - 1e-9) == (below[-1] + 1 if below else 0)
    assert ours.carbon_lifetime == pytest.approx(sum(by_hand.carbon), rel=1e-9, abs=1e-6)
    if ours.carbon_payback < math.inf:
        after = np.cumsum(by_hand.carbon)[math.ceil(float(ours.carbon_payback)) :]
        assert np.all(after > -1e-6)
    elif np.sum(by_hand.carbon[1:]) > 0.0:
        assert sum(by_hand.carbon) < 1e-6


def test_a_drawn_plan_equals_that_of_a_direct_run() -> None:
    values: dict[str, Any] = {"prices.fuel_growth": 2.0, "prices.carbon_path": "falling"}
    case = with_values(Case(), values)
    place = ground(case, load_year("Inland vale"))
    found = outcomes(place, np.zeros((3, len(place.inputs))), full_year=True)
    direct = run(case, place.year).against_baseline["recovery"].plan
    drawn = difference(found["recovery"], baseline=found["extract"]).plan
    np.testing.assert_allclose(drawn.flows[2], direct.flows, rtol=1e-9, atol=1e-7)
    np.testing.assert_allclose(drawn.carbon_saved[1], direct.carbon_saved, rtol=1e-9, atol=1e-7)
    assert drawn.net_present_value.shape == drawn.discounted_payback.shape == (3,)


def test_what_stands_today_must_be_renewed_one_day() -> None:
    """Against today the fans' own renewal, half way through a life of 20 years, is not paid: 350 in year 10."""
    against = run(Case(), load_year("Inland vale"))
    plain, today = against.against_today["extract"], against.estimate.options["today"]
    without = with_values(Case(), {"options.today.cost.renewal": 0.0})
    less = run(without, load_year("Inland vale")).against_today["extract"]
    assert today.yearly.later[10] == 350.0
    assert plain.plan.flows[10] - less.plan.flows[10] == pytest.approx(350.0)
    assert plain.plan.flows[20] - less.plan.flows[20] == pytest.approx(-175.0)  # half a life is left of it then
