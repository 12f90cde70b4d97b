"""Do the figures of worth agree with a general library of finance and with published examples?"""

from __future__ import annotations

import math

import numpy as np
import numpy_financial as npf
import pytest

from estimator.money import worth
from estimator.units import Array

DRAW = np.random.default_rng(5)
HUNDRED = [
    (
        np.concatenate(([-DRAW.uniform(500.0, 9000.0)], DRAW.uniform(20.0, 900.0, int(DRAW.integers(5, 40))))),
        float(DRAW.uniform(0.0, 0.12)),
    )
    for _ in range(100)
]


def row(*values: float) -> Array:
    """A row of yearly flows."""
    return np.array(values, dtype=float)


@pytest.mark.parametrize(("flows", "rate"), HUNDRED, ids=map(str, range(100)))
def test_like_numpy_financial(flows: Array, rate: float) -> None:
    """Present value, rate of return, and discounted payback as the first year from which present values stay paid."""
    assert worth.net_present_value(flows, rate=rate) == pytest.approx(npf.npv(rate, flows), rel=1e-9, abs=1e-7)
    found = worth.internal_rate(flows)
    assert found.count == 1
    assert found.rate == pytest.approx(npf.irr(flows), abs=1e-9)
    worths = [npf.npv(rate, flows[: n + 1]) for n in range(len(flows))]
    paid = [n for n, value in enumerate(worths) if value >= 0.0]
    ours = worth.discounted_payback(flows, rate=rate)
    assert math.ceil(ours) == paid[0] if paid else ours == math.inf


@pytest.mark.parametrize(("flows", "rate"), HUNDRED, ids=map(str, range(100)))
def test_level_savings_like_numpy_financial(flows: Array, rate: float) -> None:
    """The same saving every year: annuity, and payback by the library's number of periods, within its year."""
    years, cost, saving = len(flows) - 1, -float(flows[0]), float(flows[1])
    assert worth.annuity_factor(rate, years=years) == pytest.approx(-npf.pv(rate, years, 1.0), rel=1e-9)
    level = np.concatenate(([-cost], np.full(60, saving)))
    with np.errstate(invalid="ignore"):  # nan where even endless saving would not return the cost
        periods = float(npf.nper(rate, saving, -cost))
    ours = float(worth.discounted_payback(level, rate=rate))
    assert math.ceil(ours) == math.ceil(periods) if periods <= 60.0 else ours == math.inf
    # At a rate of exactly nil the library, version 1.0, has the sign the wrong way round.
    undiscounted = float(npf.nper(1e-9, saving, -cost))
    assert worth.simple_payback(cost, net_saving=saving) == pytest.approx(undiscounted, rel=1e-5)
    if undiscounted <= 60.0:
        assert worth.lasting_payback(level) == pytest.approx(undiscounted, rel=1e-5)


def test_cost_of_a_saved_kwh_like_numpy_financial() -> None:
    """Level payment on a loan of the capital, over a level yearly saving of heat."""
    costs, saved = np.zeros(21), np.full(21, 2500.0)
    costs[0], saved[0] = 4000.0, 0.0
    ours = worth.cost_per_saved_kwh(costs, saved=saved, rate=0.035)
    assert ours == pytest.approx(-npf.pmt(0.035, 20, 4000.0) / 2500.0)
    assert worth.cost_per_saved_kwh(costs, saved=-saved, rate=0.035) == math.inf
    assert worth.cost_per_saved_kwh(costs, saved=np.zeros(21), rate=0.035) == math.inf
    assert worth.cost_per_saved_kwh(row(4, 2), saved=row(0, 0.5), rate=0.0) == pytest.approx(12.0)


def test_published_present_values() -> None:
    """HM Treasury, The Green Book, A4.6, through a secondary text: 228.6; the manual of numpy-financial: 3065.22267."""
    assert worth.net_present_value(row(100, 35, 35, 35, 35), rate=0.035) == pytest.approx(228.6, abs=0.05)
    flows = row(-40_000, 5_000, 8_000, 12_000, 30_000)
    assert worth.net_present_value(flows, rate=0.08) == pytest.approx(3065.22267, abs=1e-5)


def test_published_annuities() -> None:
    """Tables of compound interest, from memory: 20 years at 5 % 12.4622, 10 years at 8 % 6.7101; at nil, the years."""
    ours = worth.annuity_factor(row(0.05, 0.08, 0.0), years=row(20, 10, 15))
    np.testing.assert_allclose(ours, [12.4622, 6.7101, 15.0], atol=5e-5)


def test_annuity_at_a_rate_below_nil() -> None:
    """By its definition, one paid at the end of each of twelve years: Σ (1 + r)^-n."""
    expected = sum(0.98**-n for n in range(1, 13))
    assert worth.annuity_factor(-0.02, years=12) == pytest.approx(expected, rel=1e-12)


# Manual of numpy-financial, from memory.
@pytest.mark.parametrize(
    ("flows", "rate"),
    [([-100, 39, 59, 55, 20], 0.28095), ([-100, 0, 0, 74], -0.0955), ([-100, 100, 0, 7], 0.06206)],
)
def test_published_rates_of_return(flows: list[float], rate: float) -> None:
    assert worth.internal_rate(row(*flows)).rate == pytest.approx(rate, abs=5e-6 if abs(rate) > 0.2 else 5e-5)


def test_rates_of_return_are_sought_where_it_says() -> None:
    """One year and one payment: r = payment − 1 by definition, between −90 % and +1000 % a year."""
    found = worth.internal_rate(row(10.95, 9.85, 0.105, 11.05, 0.095)[:, None] * row(0, 1) - row(1, 0))
    np.testing.assert_array_equal(found.count, [1, 1, 1, 0, 0])
    np.testing.assert_allclose(found.rate, [9.95, 8.85, -0.895, math.nan, math.nan], rtol=1e-9)


def test_a_loan_costs_its_borrower_what_it_brings_its_lender() -> None:
    """The same flows the other way round are worth nil at the same rate."""
    lent = row(-100, 39, 59, 55, 20)
    assert worth.internal_rate(-lent).rate == pytest.approx(worth.internal_rate(lent).rate, abs=1e-12)


def test_double_and_undefined_rates() -> None:
    """Solomon, Journal of Business 29 (1956): a pump of 25 % and of 400 %. Hirshleifer (1958): one of none."""
    pump = row(-1_600, 10_000, -10_000)
    double = worth.internal_rate(pump)
    assert double.count == 2
    assert math.isnan(double.rate)
    for rate in (0.25, 4.0):
        assert worth.net_present_value(pump, rate=rate) == pytest.approx(0.0, abs=1e-9)
    none = worth.internal_rate(row(-1, 3, -2.5))
    assert none.count == 0
    assert math.isnan(none.rate)
    assert worth.internal_rate(np.zeros(5)).count == 0


def test_many_homes_and_rates_at_once() -> None:
    """The library's npv is wrong on square tables; ours goes row by row."""
    flows = np.stack([f[:6] for f, _ in HUNDRED[:6]])
    rates = np.array([r for _, r in HUNDRED[:6]])
    alone = [float(npf.npv(r, f)) for f, r in zip(flows, rates, strict=True)]
    np.testing.assert_allclose(worth.net_present_value(flows, rate=rates), alone)
    np.testing.assert_allclose(worth.internal_rate(flows).rate, [float(npf.irr(f)) for f in flows], atol=1e-9)
    both = worth.discounted_payback(flows, rate=rates)
    assert both.tolist() == [worth.discounted_payback(f, rate=r) for f, r in zip(flows, rates, strict=True)]


def test_tables_of_tables_row_by_row() -> None:
    flows = np.stack([-f[:7] if n == 4 else f[:7] for n, (f, _) in enumerate(HUNDRED[10:16])])
    flows[..., 0] /= 4.0
    rates = np.array([r for _, r in HUNDRED[10:16]])
    found = worth.internal_rate(flows.reshape(2, 3, 7))
    alone = [worth.internal_rate(f) for f in flows]
    np.testing.assert_array_equal(found.count.ravel(), [one.count for one in alone])
    np.testing.assert_allclose(found.rate.ravel(), [one.rate for one in alone], rtol=1e-12)
    paid = worth.discounted_payback(flows.reshape(2, 3, 7), rate=rates.reshape(2, 3))
    one_by_one = [worth.discounted_payback(f, rate=r) for f, r in zip(flows, rates, strict=True)]
    np.testing.assert_allclose(paid.ravel(), one_by_one, rtol=1e-12)


@pytest.mark.parametrize(
    ("flows", "years"),
    [
        ([-100.0, 40.0, 40.0, 40.0], 2.5),
        ([-100.0, 60.0, 60.0, -50.0, 60.0], 3.5),  # the fans of year 3 take it below nil again
        ([-100.0, 40.0, 40.0], math.inf),
        ([0.0, 10.0, 10.0], 0.0),
        ([50.0, 10.0, 10.0], 0.0),
        ([50.0, -10.0, -10.0], math.inf),  # cheaper to buy, dearer to run: nothing is paid back
        ([0.0, 0.0, 0.0], math.inf),
        ([-100.0, 50.0, 50.0], 2.0),
        ([-100.0, -10.0, 5.0], math.inf),  # it loses, and goes on losing
        ([-2100.3, 700.1, 700.1, 700.1], 3.0),  # whose sum in 64 bits is a hair below nil
    ],
)
def test_lasting_payback(flows: list[float], years: float) -> None:
    assert worth.lasting_payback(row(*flows)) == pytest.approx(years)


def test_rounding_is_measured_by_the_sums_of_the_same_row() -> None:
    """One home short of a hundredth beside one that lays out a million million."""
    flows = np.array([[-100.0, 50.0, 49.99], [-1e12, 5e11, 1e12]])
    assert worth.lasting_payback(flows).tolist() == [math.inf, 1.5]


def test_simple_payback_without_saving_or_cost() -> None:
    ours = worth.simple_payback(row(1000, 1000, -50, -50, 1000, 10), net_saving=row(0, -5, 10, -10, 250, 0.5))
    assert ours.tolist() == [math.inf, math.inf, 0.0, math.inf, 4.0, 20.0]


def test_capital_from_its_parts() -> None:
    """Two people for three days are six person-days (common practice, no source): 6 × 200 and 3,000 with tax."""
    cost = worth.capital(parts=3000.0, people=2, days=3.0, day_rate=200.0, vat_percent=20.0, grant=500.0)
    assert cost == pytest.approx(4540.0)
    assert worth.upkeep(filter_sets=2, filter_price=25.0, service=60.0) == pytest.approx(110.0)
