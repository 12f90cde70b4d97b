"""How much air does an untested house let in, judged from what can be seen of it?

Three published ways. The UK national method adds air changes for storeys, structure, floor, door and windows, and a
flow for each opening that no pressure test counts. ASHRAE goes by how carefully the house was built and by its surface
out of doors. EN 15242 goes by the floor area alone.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

import numpy as np

from estimator.air.infiltration import DIVISOR
from estimator.units import Numeric, from_m3h

# UK Standard Assessment Procedure 2012, section 2 and table 2.1, flow of each opening [m³/h]; from memory.
CHIMNEY = 40.0
OPEN_FLUE = 20.0
INTERMITTENT_FAN = 10.0
PASSIVE_VENT = 10.0
FLUELESS_GAS_FIRE = 40.0

# The same section, air changes per hour added for the fabric; structure as retold, the rest from memory.
PER_FURTHER_STOREY = 0.1
FRAME = 0.25  # steel or timber frame
MASONRY = 0.35
SUSPENDED_FLOOR_UNSEALED = 0.2
SUSPENDED_FLOOR_SEALED = 0.1
NO_LOBBY = 0.05
WINDOWS_BARE = 0.25
WINDOWS_STRIPPED_LESS = 0.2

# ASHRAE Handbook Fundamentals 2021, ch. 17, table 3: effective leakage area at 4 Pa per surface out of doors [m²/m²].
# Each class twice the one before: sealed by a specialist; carefully built; usual new housing; usual before 1970; old
# houses as they were built.
UNIT_LEAKAGE: Mapping[str, float] = MappingProxyType(
    {"tight": 0.7e-4, "good": 1.4e-4, "average": 2.8e-4, "leaky": 5.6e-4, "very leaky": 10.4e-4}
)

# EN 15242:2007, table B.1 as retold: leakage at 4 Pa per floor area [m³/(h m²)], low, average, high.
SINGLE_FAMILY = (0.9, 1.8, 3.6)
MULTI_FAMILY = (0.6, 1.1, 2.2)


def opening_flow(
    *,
    chimneys: Numeric = 0,
    flues: Numeric = 0,
    fans: Numeric = 0,
    passive_vents: Numeric = 0,
    flueless_fires: Numeric = 0,
) -> Any:
    """Air through openings that a pressure test leaves out [m³/s], from how many there are of each."""
    hourly = (
        CHIMNEY * np.asarray(chimneys)
        + OPEN_FLUE * np.asarray(flues)
        + INTERMITTENT_FAN * np.asarray(fans)
        + PASSIVE_VENT * np.asarray(passive_vents)
        + FLUELESS_GAS_FIRE * np.asarray(flueless_fires)
    )
    return from_m3h(hourly)


def fabric_air_changes(
    *, storeys: Numeric, structure: Numeric, floor: Numeric, lobby_missing: Numeric, stripped: Numeric
) -> Any:
    """Air changes through the fabric [1/h] before shelter and wind.

    structure: `FRAME` or `MASONRY`; floor: nil or one of the two for suspended floors; lobby_missing: 1 without a
    draught lobby, else 0; stripped: share of windows and doors with draught seals, 0 to 1.
    """
    return (
        PER_FURTHER_STOREY * (np.asarray(storeys) - 1)
        + np.asarray(structure)
        + np.asarray(floor)
        + NO_LOBBY * np.asarray(lobby_missing)
        + WINDOWS_BARE
        - WINDOWS_STRIPPED_LESS * np.asarray(stripped)
    )


def equivalent_permeability(air_changes: Numeric) -> Any:
    """The q50 [m³/(h m²)] in whose place these air changes [1/h] stand.

    The national worksheet puts a tested q50, divided by twenty, where the air changes of the fabric stand otherwise.
    """
    return DIVISOR * np.asarray(air_changes)


def leakage_by_surface(surface: Numeric, *, unit_leakage: Numeric) -> Any:
    """Effective leakage area [m²] from the surface out of doors [m²] and a figure of `UNIT_LEAKAGE`.

    surface: walls with their windows, and the ceiling or roof; no slab, no wall between neighbours.
    """
    return np.asarray(surface) * np.asarray(unit_leakage)


def leakage_by_floor_area(floor_area: Numeric, *, per_area: Numeric) -> Any:
    """Leakage at 4 Pa [m³/s] from the floor area [m²] and a figure of `SINGLE_FAMILY` or `MULTI_FAMILY`."""
    return from_m3h(np.asarray(floor_area) * np.asarray(per_area))
