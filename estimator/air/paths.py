"""What flows under which door, and how hard is it pushed?

Rooms may go by any name: lines and doors only need to agree on it. Flows m³/s, areas m², pressures Pa.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Mapping, Sequence
from itertools import pairwise
from typing import Any

import numpy as np

from estimator.air.properties import density
from estimator.units import Numeric

# Sharp-edged opening; the coefficient in which EN 13141-1 states equivalent areas, from memory.
DISCHARGE = 0.61

Door = frozenset[Hashable]
"""The two rooms that a door joins."""


def door_flows(lines: Iterable[tuple[Sequence[Hashable], float]]) -> Mapping[Door, float]:
    """Net flow through each door [m³/s], in order of first crossing; each line is its rooms in order and its flow.

    Lines that cross a door in opposite directions cancel there: air passes one way at a time.
    """
    signed: dict[Door, float] = {}
    way: dict[Door, Hashable] = {}
    for rooms, flow in lines:
        for left, entered in pairwise(rooms):
            door = frozenset((left, entered))
            towards = way.setdefault(door, entered)
            signed[door] = signed.get(door, 0.0) + (flow if entered == towards else -flow)
    return {door: abs(flow) for door, flow in signed.items()}


def opening_pressure(flow: Numeric, *, area: Numeric) -> Any:
    """Pressure difference [Pa] that drives a flow [m³/s] through a free area [m²] above nil: ρ/2 (q/(Cd A))²."""
    return 0.5 * density() * np.square(np.asarray(flow) / (DISCHARGE * np.asarray(area)))


def opening_area(flow: Numeric, *, pressure: Numeric) -> Any:
    """Free area [m²] that passes a flow [m³/s] at a pressure difference [Pa] above nil."""
    return np.asarray(flow) / (DISCHARGE * np.sqrt(2.0 * np.asarray(pressure) / density()))
