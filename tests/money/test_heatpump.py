"""Does the heat pump agree with measured machines, with Carnot, and with a count hour by hour?"""

from __future__ import annotations

import math

import numpy as np
import pytest

from estimator.money import energy, heatpump

DRAW = np.random.default_rng(4)
OUT = 8.0 + 9.0 * np.sin(np.arange(8760) * 2 * np.pi / 8760 - 2.0) + DRAW.normal(0.0, 3.0, 8760)
HEAT = np.maximum(16.0 - OUT, 0.0) * 0.2  # kWh per hour


@pytest.mark.parametrize("lift", range(15, 61, 5))
def test_like_the_mean_of_measured_machines(lift: int) -> None:
    """Regression over tests of air-source machines, Staffell et al. 2012 (doi 10.1039/c2ee22653g), 15 to 60 K."""
    measured = 6.81 - 0.121 * lift + 0.000630 * lift**2
    ours = heatpump.performance(source_temp=45.0 - lift, flow_temp=45.0)
    assert ours == pytest.approx(measured, rel=0.14)


def test_ideal_machine() -> None:
    """Textbook Carnot heat pump between 0 and 27 °C: 300.15 K over 27 K (Çengel and Boles, from memory)."""
    ideal = heatpump.performance(source_temp=0.0, flow_temp=27.0, grade=1.0, least_lift=1.0)
    assert ideal == pytest.approx(11.117, abs=1e-3)


def test_year_by_brute_force() -> None:
    """Weather-compensated flow, capacity 3.5 kW, a stove that takes a tenth: every hour on its own."""
    flow = heatpump.flow_temperature(OUT, design_flow=50.0, design_temp_out=-3.0, mild_flow=30.0, mild_temp_out=15.0)
    cop = heatpump.performance(source_temp=OUT, flow_temp=flow, grade=0.4, least_lift=20.0)
    pump, other = heatpump.shared_heat(HEAT, capacity=3.5, second_share=0.1)
    electricity = energy.fuel_energy(pump, efficiency=cop)
    factor = heatpump.seasonal_factor(pump, electricity=electricity)

    taken = given = added = 0.0
    for out, heat in zip(OUT.tolist(), HEAT.tolist(), strict=True):
        if out <= -3.0:
            water = 50.0
        elif out >= 15.0:
            water = 30.0
        else:
            water = 50.0 - (out + 3.0) * 20.0 / 18.0
        lift = water - out if water - out > 20.0 else 20.0
        by_pump = 0.9 * heat
        if by_pump > 3.5:
            by_pump = 3.5
        given += by_pump
        added += heat - by_pump
        taken += by_pump * lift / (0.4 * (water + 273.15))
    assert electricity.sum() == pytest.approx(taken, rel=1e-12)
    assert other.sum() == pytest.approx(added, rel=1e-12)
    assert factor == pytest.approx(given / taken, rel=1e-12)
    assert (0.9 * HEAT > 3.5).any()
    assert (flow - OUT < 20.0).any()


def test_sources_share_all_of_the_load() -> None:
    first, second = heatpump.shared_heat(HEAT, capacity=np.array([[1.0], [np.inf]]), second_share=0.25)
    np.testing.assert_allclose(first + second, np.stack([HEAT, HEAT]))
    assert first[0].max() == 1.0
    assert second[1].sum() == pytest.approx(HEAT.sum() / 4)


def test_nothing_ran() -> None:
    assert math.isnan(heatpump.seasonal_factor(np.zeros(3), electricity=np.zeros(3)))


def test_impossible_bounds() -> None:
    with pytest.raises(ValueError, match="least lift"):
        heatpump.performance(source_temp=5.0, flow_temp=45.0, least_lift=0.0)
    with pytest.raises(ValueError, match="below the mild"):
        heatpump.flow_temperature(0.0, design_flow=50.0, design_temp_out=15.0, mild_flow=30.0, mild_temp_out=15.0)
