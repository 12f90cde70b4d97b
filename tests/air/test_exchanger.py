"""Does the exchanger follow the effectiveness-NTU method?

Reference: the general-purpose library `ht` (heat transfer), function effectiveness_from_NTU, counterflow.
"""

from __future__ import annotations

import numpy as np
import pytest
from ht import effectiveness_from_NTU

from estimator.air.exchanger import counterflow_effectiveness, effectiveness_at_duty, specific_fan_power_at_duty


@pytest.mark.parametrize("ratio", [0.1, 0.5, 0.9, 0.999, 1.0])
@pytest.mark.parametrize("units", [0.2, 1.0, 4.0, 12.0])
def test_counterflow_equals_the_heat_transfer_library(units: float, ratio: float) -> None:
    expected = effectiveness_from_NTU(units, Cr=ratio, subtype="counterflow")  # type: ignore[no-untyped-call]
    assert counterflow_effectiveness(units, capacity_ratio=ratio) == pytest.approx(expected, rel=1e-9)


def test_certificate_is_met_at_its_reference_flow() -> None:
    at_reference = effectiveness_at_duty(0.82, reference_flow=0.03, supply=0.03, extract=0.03)
    assert at_reference == pytest.approx(0.82, rel=1e-12)


def test_less_air_is_recovered_better_and_more_worse() -> None:
    flows = np.linspace(0.005, 0.1, 40)
    found = effectiveness_at_duty(0.82, reference_flow=0.03, supply=flows, extract=flows)
    assert np.all(np.diff(found) < 0.0)
    assert np.all((found > 0.0) & (found < 1.0))


def test_heat_of_unequal_flows_lies_between_those_of_the_smaller_and_the_larger_flow_balanced() -> None:
    heat = 0.02 * effectiveness_at_duty(0.8, reference_flow=0.03, supply=0.02, extract=0.03)
    small = 0.02 * effectiveness_at_duty(0.8, reference_flow=0.03, supply=0.02, extract=0.02)
    large = 0.03 * effectiveness_at_duty(0.8, reference_flow=0.03, supply=0.03, extract=0.03)
    assert small < heat < large


def test_no_flow_is_no_fault() -> None:
    assert np.isfinite(effectiveness_at_duty(0.8, reference_flow=0.03, supply=0.0, extract=0.0))


def test_fan_power_grows_with_its_exponent_and_meets_the_certificate() -> None:
    def at(flow: float) -> float:
        return float(specific_fan_power_at_duty(1100.0, reference_flow=0.03, flow=flow, exponent=1.5))

    assert at(0.03) == pytest.approx(1100.0)
    assert at(0.06) / at(0.03) == pytest.approx(2.0**1.5)
