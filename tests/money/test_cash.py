"""Do the yearly rows of money agree with a ledger kept year by year?"""

from __future__ import annotations

import numpy as np
import numpy_financial as npf
import pytest

from estimator.money import cash, worth


def ledger(cost: float, life: float, years: int, first: float, growth: float) -> list[float]:
    """Walk through the purchases one after another, as a bookkeeper would."""
    row, due, last = [0.0] * (years + 1), first, None
    while due < years - 1e-9:
        book = int(due) if abs(due - round(due)) < 1e-9 and due == round(due) else int(due) + 1
        paid = cost * (1 + growth) ** book
        row[book] += paid
        last = (due, paid)
        due += life
    if last is not None:
        row[years] -= last[1] * max(0.0, 1 - (years - last[0]) / life)
    return row


@pytest.mark.parametrize("life", [4.0, 7.5, 10.0, 20.0, 33.0, 0.75])
@pytest.mark.parametrize("first", [0.0, 3.0, 6.5, 25.0])
@pytest.mark.parametrize("growth", [0.0, 0.03])
def test_kit_costs_like_a_ledger(life: float, first: float, growth: float) -> None:
    ours = cash.kit_costs(900.0, life=life, years=20, first=first, growth=growth)
    np.testing.assert_allclose(ours, ledger(900.0, life, 20, first, growth), atol=1e-9)


def test_kit_costs_of_many_homes() -> None:
    life, first = np.array([8.0, 15.0, 40.0]), np.array([0.0, 2.0, 5.0])
    ours = cash.kit_costs(np.array([500.0, 700.0, 900.0]), life=life, years=20, first=first)
    rows = [ledger(c, x, 20, f, 0.0) for c, x, f in zip((500.0, 700.0, 900.0), life, first, strict=True)]
    np.testing.assert_allclose(ours, rows)


def test_kit_that_dies_with_the_plan_leaves_nothing() -> None:
    row = cash.kit_costs(900.0, life=10.0, years=20)
    assert row[[0, 10, 20]].tolist() == [900.0, 900.0, 0.0]
    # Nobody buys on the last day, whether or not its worth would be credited.
    assert cash.kit_costs(900.0, life=10.0, years=20, residual=False)[20] == 0.0
    half = cash.kit_costs(900.0, life=40.0, years=20)
    assert half[20] == pytest.approx(-450.0)
    assert cash.kit_costs(900.0, life=40.0, years=20, residual=False)[20] == 0.0


def test_impossible_life() -> None:
    with pytest.raises(ValueError, match="above nil"):
        cash.kit_costs(900.0, life=0.0, years=20)
    with pytest.raises(ValueError, match="before today"):
        cash.kit_costs(900.0, life=10.0, years=20, first=-1.0)


def test_growing_prices_like_numpy_financial() -> None:
    """A saving that grows is worth as much as a level one at the rate less the growth (geometric annuity)."""
    row = cash.growing(120.0, growth=0.03, years=20)
    assert row[0] == 0.0
    assert row[20] == pytest.approx(npf.fv(0.03, 19, 0.0, -120.0))
    level = -npf.pv(float(cash.real_rate(0.08, inflation=0.03)), 20, 120.0)
    assert worth.net_present_value(row, rate=0.08) == pytest.approx(level / 1.03)
    fuels = cash.growing(np.array([100.0, 50.0]), growth=np.array([0.02, -0.01]), years=3)
    np.testing.assert_allclose(fuels, [[0, 100, 102, 104.04], [0, 50, 49.5, 49.005]])


def test_real_and_nominal_plans_agree() -> None:
    """A plan in money of today at the real rate is worth what it is in money of the day at the nominal one."""
    inflation, rate = 0.025, 0.035
    real = cash.growing(300.0, growth=0.01, years=20) - cash.kit_costs(4000.0, life=20.0, years=20)
    prices = (1 + inflation) ** np.arange(21)
    nominal_rate = (1 + rate) * (1 + inflation) - 1  # Fisher's relation, any textbook of finance
    nominal = worth.net_present_value(real * prices, rate=nominal_rate)
    assert nominal == pytest.approx(worth.net_present_value(real, rate=rate))
    assert cash.real_rate(nominal_rate, inflation=inflation) == pytest.approx(rate)


def test_cumulative_cash_ends_at_the_undiscounted_worth() -> None:
    flows = cash.growing(300.0, years=12) - cash.kit_costs(2000.0, life=12.0, years=12)
    total = cash.cumulative(flows)
    assert total[0] == -2000.0
    assert total[-1] == pytest.approx(npf.npv(0.0, flows))
