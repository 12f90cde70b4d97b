"""Are degree-days counted as the definitions say, to the edge of each case?"""

from __future__ import annotations

import math

import numpy as np
import pytest

from estimator.heat.degrees import (
    HITCHIN_K,
    degree_days_from_hours,
    degree_days_of_day,
    degree_days_of_month,
    degree_hours,
)


def test_degree_hours_of_rows_of_any_length_by_hand() -> None:
    """(5.25 + 0.25) K × 3 h, and 1.5 K × 3 h, of two years beside each other; a 24th of it where rows are hours."""
    outside = np.array([[10.25, 15.25, 15.5, 20.0], [14.0, 16.0, 30.0, 15.5]])
    np.testing.assert_allclose(degree_hours(outside, base=15.5, step=3.0), [16.5, 4.5], rtol=1e-12)
    np.testing.assert_allclose(degree_days_from_hours(outside, base=15.5), [5.5 / 24.0, 1.5 / 24.0], rtol=1e-12)


@pytest.mark.parametrize(
    ("lowest", "highest", "expected"),
    [
        (1.0, 10.0, 15.5 - 5.5),  # all below the base: base less mean
        (9.5, 17.5, 6.0 / 2.0 - 2.0 / 4.0),  # mostly below: half of base − lowest, less a quarter of highest − base
        (13.5, 19.0, 2.0 / 4.0),  # mostly above: a quarter of base − lowest
        (3.0, 40.0, 12.5 / 4.0),
        (16.0, 21.0, 0.0),  # all above
        (-4.25, 32.75, 19.75 / 2.0 - 17.25 / 4.0),  # more than twice the base above nil
        (7.5, 15.5, 8.0 / 2.0),  # at the edges the cases meet
    ],
)
def test_four_cases_of_a_day(lowest: float, highest: float, expected: float) -> None:
    """The Met Office's rule as published, to base 15.5 °C; worked out by hand."""
    assert degree_days_of_day(lowest, highest, base=15.5) == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize("lowest", [5.5, -20.25, 15.5])
def test_the_cases_of_a_day_meet_without_a_step(lowest: float) -> None:
    """As the rule is continuous wherever the day is mostly below or all below; and where nothing is below."""
    edge = degree_days_of_day(lowest, 15.5, base=15.5)
    assert edge == pytest.approx(degree_days_of_day(lowest, 15.5 - 1e-9, base=15.5), abs=1e-8)


def test_a_month_at_the_base_has_the_limit_of_the_formula() -> None:
    """Hitchin: below/(1 − e^(−k below)) tends to 1/k, and is 1/k + below/2 close to it (Taylor, by hand)."""
    at, near, nearer = degree_days_of_month(np.array([15.5, 15.5 - 2e-4, 15.5 + 3e-10]), base=15.5, days=30)
    assert at == pytest.approx(30.0 / HITCHIN_K, rel=1e-12)
    assert near == pytest.approx(30.0 * (1.0 / HITCHIN_K + 1e-4), rel=1e-8)
    assert nearer == pytest.approx(at, rel=1e-9)
    two = degree_days_of_month(13.5, base=15.5, days=30)
    assert two == pytest.approx(30.0 * 2.0 / (1.0 - math.exp(-0.71 * 2.0)), rel=1e-12)
