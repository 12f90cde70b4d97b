"""How much electricity does a heat pump take, hour by hour, and what must a second source add?"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.units import Numeric, to_kelvin

# Real over ideal performance of dwellings' heat pumps, air to water. With the least lift below it follows the mean of
# the tests collected by Staffell et al., Energy & Environmental Science 5 (2012), over lifts of 15 to 60 K.
GRADE = 0.37
# K; machines gain little by a smaller lift, for their heat exchangers need a difference of their own.
LEAST_LIFT = 25.0


def performance(
    *, source_temp: Numeric, flow_temp: Numeric, grade: Numeric = GRADE, least_lift: float = LEAST_LIFT
) -> Any:
    """Heat per unit of electricity of a heat pump [-], by hour where the temperatures [°C] are.

    A stated share (`grade`) of the ideal between the flow of the heating and the source, outdoor air or ground. The
    lift never counts as less than `least_lift` [K]: without that bound the ideal grows beyond all machines on mild
    days. Defrosting is within the grade, not apart. Source: Carnot; ValueError for a bound that is not above nil.
    """
    if least_lift <= 0.0:
        raise ValueError(f"the least lift must be above nil, not {least_lift} K")
    flow = np.asarray(flow_temp, dtype=float)
    lift = np.maximum(flow - np.asarray(source_temp), least_lift)
    return np.asarray(grade) * to_kelvin(flow) / lift


def flow_temperature(
    temp_out: Numeric, *, design_flow: float, design_temp_out: float, mild_flow: float, mild_temp_out: float
) -> Any:
    """Flow temperature [°C] of a heating that follows the weather: a straight line held at both of its ends.

    design_flow at and below design_temp_out, mild_flow at and above mild_temp_out, all °C. ValueError unless the
    design temperature lies below the mild one.
    """
    if design_temp_out >= mild_temp_out:
        raise ValueError(f"design outdoor temperature {design_temp_out} °C must lie below the mild {mild_temp_out} °C")
    return np.interp(temp_out, (design_temp_out, mild_temp_out), (design_flow, mild_flow))


def shared_heat(heat: Numeric, *, capacity: Numeric = np.inf, second_share: Numeric = 0.0) -> tuple[Any, Any]:
    """Heat of the first and of the second of two sources that share a load; they always sum to the load.

    The second takes a stated share of every hour, as a stove by habit does, and whatever of the rest exceeds the
    capacity of the first, as back-up does. Heat and capacity in one unit: W, or kWh per row.
    """
    load = np.asarray(heat, dtype=float)
    first = np.minimum(load * (1.0 - np.asarray(second_share)), np.asarray(capacity))
    return first, load - first


def seasonal_factor(heat: Numeric, *, electricity: Numeric) -> Any:
    """Heat over electricity of the whole year [-], from both by hour on the last axis; nan where nothing ran."""
    delivered, taken = np.sum(heat, axis=-1), np.sum(electricity, axis=-1)
    nothing = np.full(np.broadcast(delivered, taken).shape, np.nan)
    return np.divide(delivered, taken, out=nothing, where=taken > 0.0)[()]
