"""What does the exchanger do at the flow it really has?"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.units import Numeric


def effectiveness_at_duty(reference: Numeric, *, reference_flow: Numeric, flow: Numeric) -> Any:
    """Temperature effectiveness of a balanced counterflow plate exchanger at `flow`, from that at `reference_flow`.

    Balanced counterflow: e = NTU/(1 + NTU), so NTU = e/(1 - e). In laminar flow between plates the conductance does not
    depend on flow, so NTU goes with 1/flow. Flows in one unit; effectiveness as a fraction below 1.

    >>> round(float(effectiveness_at_duty(0.8, reference_flow=100.0, flow=200.0)), 4)
    0.6667
    """
    ratio = np.asarray(reference) / (1.0 - np.asarray(reference))
    flow_ = np.asarray(flow, dtype=float)
    scale = np.divide(reference_flow, flow_, out=np.ones(np.broadcast(reference_flow, flow_).shape), where=flow_ > 0.0)
    transfer_units = ratio * scale
    return transfer_units / (1.0 + transfer_units)


def specific_fan_power_at_duty(reference: Numeric, *, reference_flow: Numeric, flow: Numeric, exponent: Numeric) -> Any:
    """Specific fan power at `flow`, same unit as `reference`: it grows as (flow/reference_flow)^exponent.

    The exponent lies between 1 (laminar resistance) and 2 (turbulent); common practice, no source.
    """
    return np.asarray(reference) * (np.asarray(flow) / np.asarray(reference_flow)) ** np.asarray(exponent)


def supply_temperature(temp_in: Numeric, *, temp_out: Numeric, effectiveness: Numeric) -> Any:
    """Supply air temperature [°C] of a bare exchanger: outdoor air lifted by its share of the difference.

    >>> supply_temperature(20.0, temp_out=0.0, effectiveness=0.95)
    19.0
    """
    return temp_out + np.asarray(effectiveness) * (np.asarray(temp_in) - temp_out)
