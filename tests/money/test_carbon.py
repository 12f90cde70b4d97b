"""Does carbon agree with the published factors to the gram?"""

from __future__ import annotations

import math

import numpy as np
import pytest

from estimator.money import carbon

GRAM = 0.001  # kg


def test_published_factors_to_the_gram() -> None:
    """UK government conversion factors 2025: 1,000 kWh of electricity 195.53 kg, of gas 182.96; 2024: 225.35."""
    path = carbon.stated_path(2024, years=4, known_years=carbon.UK_GRID_YEARS, known_factors=carbon.UK_GRID_FACTORS)
    ours = carbon.yearly_emission(1000.0, path=path)
    np.testing.assert_allclose(ours, [225.35, 195.53, 195.53, 195.53], atol=GRAM / 2)
    assert carbon.emission(1000.0, factor=0.18296) == pytest.approx(182.96, abs=GRAM / 2)


def test_stated_path_is_straight_between_years() -> None:
    path = carbon.stated_path(2025, years=5, known_years=(2026, 2028), known_factors=(0.2, 0.1))
    np.testing.assert_allclose(path, [0.2, 0.2, 0.15, 0.1, 0.1])
    with pytest.raises(ValueError, match="rise"):
        carbon.stated_path(2025, years=5, known_years=(2028, 2026), known_factors=(0.2, 0.1))


def test_lifetime_by_hand() -> None:
    """Gas saved 2,000 kWh a year; 200 kWh more electricity on a path from 0.2 falling a tenth a year; kit 400 kg.

    Year by year: 365.92 less 40, 36, 32.4, ...: 325.92, 329.92, so that the kit is outweighed in year 2.
    """
    electricity = carbon.yearly_emission(200.0, path=np.asarray(0.2 * 0.9 ** np.arange(20.0), dtype=np.float64))
    saving = carbon.yearly_emission(2000.0, path=np.full(20, 0.18296)) - electricity
    assert carbon.carbon_payback(saving, embodied=400.0) == pytest.approx(1 + (400 - 325.92) / 329.92)
    geometric = 40 * (1 - 0.9**20) / 0.1
    assert saving.sum() == pytest.approx(20 * 365.92 - geometric)


def test_a_crossing_that_is_lost_again_does_not_count() -> None:
    assert carbon.carbon_payback(np.array([60.0, 60.0, -30.0, -30.0]), embodied=100.0) == math.inf
    assert carbon.carbon_payback(np.array([-1.0, -1.0]), embodied=100.0) == math.inf
    assert carbon.carbon_payback(np.full((2, 5), 50.0), embodied=np.array([100.0, 0.0])).tolist() == [2.0, 0.0]
