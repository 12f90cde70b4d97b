"""Does the house remember, lose and balance heat as a calculation by hand says?

Each expected value is worked out by hand from the law named; the constants of the memory are those of the fit that
`tests/accuracy` holds against ISO 13790.
"""

from __future__ import annotations

import numpy as np
import pytest

from estimator.heat.demand import (
    balance_temperature,
    cold_rows,
    heat_at_fixed_base,
    heat_with_memory,
    loss_coefficient,
    time_constant,
    yearly_heat_with_memory,
)
from estimator.heat.memory import woven


def test_memory_of_a_medium_house_by_hand() -> None:
    """ISO 13790, table 12, class medium: 165 kJ/(m² K); 120 m²; 220 W/K. 0.33 × 5500/220 + 2 = 10.25 h."""
    assert time_constant(165.0 / 3.6 * 120.0, 220.0) == pytest.approx(0.33 * 25.0 + 2.0)
    np.testing.assert_allclose(time_constant(np.array([5500.0, 11000.0]), np.array([220.0, 110.0])), [10.25, 35.0])


def test_heating_gives_what_is_lacking_and_takes_nothing_away() -> None:
    np.testing.assert_array_equal(
        heat_with_memory(np.array([300.0, -0.5, 0.0, 0.25]), memory=0.0, step=1.0), [300.0, 0.0, 0.0, 0.25]
    )


def test_degree_hours_below_a_fixed_base_by_hand() -> None:
    """Fabric 150 W/K and air 30 W/K: 180 W for each kelvin below 15.5 °C, and no heat from there up."""
    outside = np.array([5.5, 15.0, 15.25, 15.5, 18.0, 20.0, 22.0])
    heat = heat_at_fixed_base(30.0 * (20.0 - outside), outside, temp_in=20.0, fabric=150.0, base=15.5)
    np.testing.assert_allclose(heat, [1800.0, 90.0, 45.0, 0.0, 0.0, 0.0, 0.0], rtol=1e-12)


def test_loss_per_kelvin_is_all_loss_over_all_degrees_of_the_cold_rows() -> None:
    """By hand: (4000 + 50 + 90)/(20 + 0.25 + 0.5) W/K; what is lost to the sky at nil difference does not count."""
    difference = np.array([20.0, 0.25, 0.0, -5.0, 0.5])
    loss = np.array([[4000.0, 50.0, 33.0, -950.0, 90.0], [2000.0, 25.0, 33.0, -950.0, 45.0]])
    found = loss_coefficient(loss, cold_rows(difference))
    np.testing.assert_allclose(found, [[4140.0 / 20.75], [2070.0 / 20.75]], rtol=1e-12)


def test_loss_per_kelvin_where_it_is_hardly_or_never_colder_outside() -> None:
    hardly = loss_coefficient(np.array([50.0, -100.0]), cold_rows(np.array([0.25, -1.0])))
    never = loss_coefficient(np.array([0.0, -100.0]), cold_rows(np.array([0.0, -1.0])))
    np.testing.assert_allclose([*hardly, *never], [200.0, 0.0])


def test_heat_of_a_year_of_woven_rows_by_hand() -> None:
    """Rows of 3 h, nothing remembered: 300 + 0.25 W for 3 h; none is taken away. Of two homes, each its own."""
    load = woven(np.array([[300.0, -0.5, 0.0, 0.25], [-1.0, -2.0, 10.0, 20.0]]))
    found = yearly_heat_with_memory(load.copy(), memory=np.zeros((2, 1)), step=3.0)
    np.testing.assert_allclose(found, [[900.75], [90.0]], rtol=1e-12)


def test_balance_temperature_by_hand() -> None:
    """A steady house: 160 W/K × 3.125 K are carried by 500 W of gains."""
    assert balance_temperature(18.5, mean_gain=500.0, loss_per_kelvin=160.0) == pytest.approx(15.375)
