"""What does the certificate of a unit say in SI, once leakage inside it and the loading of filters are counted?"""

from __future__ import annotations

from typing import Any, NamedTuple

import numpy as np

from estimator.air.certificate import Points, Reference, reference_at
from estimator.inputs.option import Unit
from estimator.inputs.points import certificate_points
from estimator.units import from_m3h, from_percent, from_watt_per_lps

_FILTER_MEAN = 0.5  # resistance grows about evenly from clean to changed: its mean rise is half of it


class Certificate(NamedTuple):
    """Per flow of fresh air, m³/s and W/(m³/s): the reference, points where several are given, the ratio printed."""

    reference: Reference
    points: Points | None
    printed: Any


def read_certificate(unit: Unit) -> Certificate:
    """The certificate of a filled unit. With several points, the reference is what they say at the reference flow.

    What leaks round inside is in no flow and in no ratio: fan power is counted on the rest. The in-use factor is in.
    """
    flow, ratio, power = (_number(unit.reference_flow), _number(unit.effectiveness), _number(unit.fan_power))
    points = None
    rows = certificate_points(unit.points or "")
    if rows:
        points = Points(*np.array(rows).T)
        flow, ratio, power = reference_at(points, flow=flow)
        points = Points(*_counted(unit, *points))
    return Certificate(Reference(*_counted(unit, flow, ratio, power)), points, from_percent(ratio))


def _counted(unit: Unit, flow: Any, ratio: Any, power: Any) -> tuple[Any, Any, Any]:
    """Flow, ratio and fan power in SI of what is printed: m³/h, %, W/(l/s).

    With `leaked` of the supply air being extract air, supply was measured at leaked + (1 − leaked) e of the difference;
    a ratio below the leakage leaves nothing exchanged.
    """
    leaked = from_percent(_number(unit.internal_leakage))
    filters = _FILTER_MEAN * _number(unit.filter_pressure_rise) / _number(unit.fan_pressure)
    alone = np.maximum((from_percent(ratio) - leaked) / (1.0 - leaked), 0.0) * _number(unit.in_use_factor)
    fresh = 1.0 - leaked
    return from_m3h(flow) * fresh, alone, from_watt_per_lps(power) * (1.0 + filters) / fresh


def _number(value: Any) -> Any:
    return np.asarray(value, dtype=float)
