"""Does a pressure test become holes, and holes a flow, as the power law and the orifice say by hand?"""

from __future__ import annotations

import math

import pytest

from estimator.air.leakage import (
    AIR_DENSITY,
    TEST_PRESSURE,
    flow_coefficient,
    leakage_area,
    leakage_flow,
    ventilator_leakage_area,
)


def test_blower_doors_are_read_at_fifty_pascals() -> None:
    """EN ISO 9972: n50 and q50 are stated at 50 Pa; air of 20 °C weighs 101,325/(287.05 × 293.15) kg/m³."""
    assert TEST_PRESSURE == 50.0
    assert pytest.approx(101_325.0 / (287.05 * 293.15), rel=2e-4) == AIR_DENSITY


@pytest.mark.parametrize("pressure", [1.0, 4.0, 10.0, 50.0, 75.0])
def test_holes_pass_what_an_orifice_passes_at_four_pascals_and_the_power_law_elsewhere(pressure: float) -> None:
    """Bernoulli: √(2 × 4/1.204) = 2.5777 m/s through each m² at 4 Pa; ASTM E779's exponent of 0.65."""
    speed = math.sqrt(8.0 / 1.204)
    assert leakage_flow(0.08, pressure=pressure) == pytest.approx(0.08 * speed * (pressure / 4.0) ** 0.65, rel=1e-12)
    assert leakage_flow(0.08, pressure=pressure, exponent=0.5) == pytest.approx(
        0.08 * math.sqrt(2.0 * pressure / 1.204), rel=1e-12
    )
    assert leakage_area(leakage_flow(0.08, pressure=pressure), pressure=pressure) == pytest.approx(0.08, rel=1e-12)


def test_coefficient_is_the_flow_at_one_pascal() -> None:
    """Q = c Δp^n, so that c is Q at 1 Pa, and 50^n of it the flow at 50 Pa."""
    coefficient = flow_coefficient(0.08, exponent=0.7)
    assert coefficient * 50.0**0.7 == pytest.approx(leakage_flow(0.08, pressure=50.0, exponent=0.7), rel=1e-12)


def test_a_sharp_edged_opening_counts_for_the_narrowest_part_of_its_jet() -> None:
    """Kirchhoff: a free jet from a slot with a sharp edge narrows to π/(π + 2), 0.611, of the opening."""
    assert ventilator_leakage_area(0.02) == pytest.approx(0.02 * math.pi / (math.pi + 2.0), rel=2e-3)
