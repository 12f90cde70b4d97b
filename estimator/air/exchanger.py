"""What does the exchanger do at the flow it really has?"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.units import Numeric

# Closer to equal than this, the formula for equal flows is exact to the last digit that matters.
_BALANCED = 1e-9


def counterflow_effectiveness(transfer_units: Numeric, *, capacity_ratio: Numeric = 1.0) -> Any:
    """Effectiveness of a counterflow exchanger, referred to the smaller flow (effectiveness-NTU method).

    transfer_units: conductance over the smaller capacity flow; capacity_ratio Cr: smaller over larger capacity flow.
    e = (1 − exp(−N(1−Cr)))/(1 − Cr exp(−N(1−Cr))), whose limit at Cr = 1 is N/(1 + N).

    >>> round(float(counterflow_effectiveness(4.0)), 3)
    0.8
    >>> round(float(counterflow_effectiveness(4.0, capacity_ratio=0.5)), 3)
    0.927
    """
    units, ratio = np.asarray(transfer_units, dtype=float), np.asarray(capacity_ratio, dtype=float)
    spread = 1.0 - ratio
    decay = -np.expm1(-units * spread)
    # decay/(spread + Cr decay) is the formula above without its 0/0 near Cr = 1.
    unequal = np.divide(decay, spread + ratio * decay, out=np.zeros(np.shape(decay)), where=spread > _BALANCED)
    return np.where(spread > _BALANCED, unequal, units / (1.0 + units))[()]


def effectiveness_at_duty(reference: Numeric, *, reference_flow: Numeric, supply: Numeric, extract: Numeric) -> Any:
    """Effectiveness of a counterflow plate exchanger at its duty, referred to the smaller flow.

    The certificate gives `reference` (a fraction below 1) at balanced `reference_flow`. Balanced counterflow:
    e = N/(1 + N), so N = e/(1 − e) there. In laminar flow between plates the conductance does not depend on flow, so N
    goes with one over the smaller flow. Flows in one unit.

    >>> round(float(effectiveness_at_duty(0.8, reference_flow=100.0, supply=200.0, extract=200.0)), 4)
    0.6667
    """
    units = np.asarray(reference) / (1.0 - np.asarray(reference))
    smaller, larger = np.minimum(supply, extract), np.maximum(supply, extract)
    shape = np.broadcast(reference_flow, smaller).shape
    scale = np.divide(reference_flow, smaller, out=np.ones(shape), where=smaller > 0.0)
    ratio = np.divide(smaller, larger, out=np.ones(np.shape(smaller)), where=larger > 0.0)
    return counterflow_effectiveness(units * scale, capacity_ratio=ratio)


def specific_fan_power_at_duty(reference: Numeric, *, reference_flow: Numeric, flow: Numeric, exponent: Numeric) -> Any:
    """Specific fan power at `flow`, same unit as `reference`: it grows as (flow/reference_flow)^exponent.

    The exponent lies between 1 (laminar resistance) and 2 (turbulent); common practice, no source.
    """
    return np.asarray(reference) * (np.asarray(flow) / np.asarray(reference_flow)) ** np.asarray(exponent)


def supply_temperature(temp_in: Numeric, *, temp_out: Numeric, effectiveness: Numeric) -> Any:
    """Supply air temperature [°C] of a bare exchanger: outdoor air lifted by its share of the difference.

    >>> float(supply_temperature(20.0, temp_out=0.0, effectiveness=0.95))
    19.0
    """
    return temp_out + np.asarray(effectiveness) * (np.asarray(temp_in) - temp_out)
