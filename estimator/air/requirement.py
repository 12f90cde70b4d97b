"""How much fresh air does the dwelling need?

Every rule set is a function of the same five numbers and returns the continuous whole-dwelling rate in m³/s. All
accept floats or columns of homes.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

import numpy as np

from estimator.units import Numeric, from_lps

# Approved Document F vol. 1 (2021), table 1.3: 19, 25, 31, 37, 43 l/s for 1 to 5 bedrooms, 6 more for each further
# one; 13 l/s where there is one habitable room only. The table is the straight line 13 + 6 × bedrooms.
_ENGLAND_ONE_ROOM = 13.0  # l/s
_ENGLAND_PER_BEDROOM = 6.0  # l/s
_ENGLAND_PER_AREA = 0.3  # l/(s m²), the rule that governs where it is higher

# ASHRAE 62.2, total ventilation rate: 0.15 l/s per m² and 3.5 l/s per bedroom plus one.
_ASHRAE_PER_AREA = 0.15  # l/(s m²)
_ASHRAE_PER_PERSON = 3.5  # l/s

# EN 16798-1:2019, table of default total ventilation in dwellings, category II; from memory.
_EN_CATEGORY_II_PER_AREA = 0.42  # l/(s m²)

# Approved Document F vol. 1 (2021), tables 1.1 and 1.2: extract by wet room, l/s. Utility and toilet at the
# continuous high rate from memory. Order: kitchen, bathroom, utility room, toilet.
INTERMITTENT_EXTRACT = (30.0, 15.0, 30.0, 6.0)
INTERMITTENT_KITCHEN_NO_HOOD = 60.0
CONTINUOUS_HIGH_EXTRACT = (13.0, 8.0, 8.0, 6.0)


def england_2021(*, floor_area: Numeric, bedrooms: Numeric, people: Numeric, habitable_rooms: Numeric) -> Any:
    """Whole-dwelling rate of Approved Document F vol. 1 (2021) [m³/s]: by bedrooms or by area, the higher governs.

    floor_area [m²]; the number of people does not enter.

    >>> round(1000 * float(england_2021(floor_area=77.0, bedrooms=3, people=4, habitable_rooms=5)), 3)
    31.0
    """
    del people
    by_bedroom = np.where(
        np.asarray(habitable_rooms) <= 1,
        _ENGLAND_ONE_ROOM,
        _ENGLAND_ONE_ROOM + _ENGLAND_PER_BEDROOM * np.asarray(bedrooms),
    )
    return from_lps(np.maximum(by_bedroom, _ENGLAND_PER_AREA * np.asarray(floor_area)))


def ashrae_62_2(*, floor_area: Numeric, bedrooms: Numeric, people: Numeric, habitable_rooms: Numeric) -> Any:
    """Total rate of ASHRAE 62.2 [m³/s], infiltration credit not taken; floor_area [m²]."""
    del people, habitable_rooms
    return from_lps(_ASHRAE_PER_AREA * np.asarray(floor_area) + _ASHRAE_PER_PERSON * (np.asarray(bedrooms) + 1.0))


def en_16798_category_2(*, floor_area: Numeric, bedrooms: Numeric, people: Numeric, habitable_rooms: Numeric) -> Any:
    """Total rate of EN 16798-1 category II by floor area [m³/s] (value from memory); floor_area [m²]."""
    del bedrooms, people, habitable_rooms
    return from_lps(_EN_CATEGORY_II_PER_AREA * np.asarray(floor_area))


RULES: Mapping[str, Callable[..., Any]] = MappingProxyType(
    {
        "England 2021": england_2021,
        "ASHRAE 62.2": ashrae_62_2,
        "EN 16798-1 category II": en_16798_category_2,
    }
)
"""Rule sets by the name a case file uses; 'entered' needs no rule."""


def ireland_general(*, people: Numeric) -> Any:
    """General rate of the Irish guidance [m³/s]: 5 l/s and 4 l/s a person; kept as a cross-check of the other rules."""
    return from_lps(5.0 + 4.0 * np.asarray(people))


def wet_room_extract(
    *,
    kitchens: Numeric,
    bathrooms: Numeric,
    utility_rooms: Numeric,
    toilets: Numeric,
    rates: tuple[float, float, float, float] = CONTINUOUS_HIGH_EXTRACT,
) -> Any:
    """Sum of the extract of all wet rooms [m³/s]; rates [l/s] in the order kitchen, bathroom, utility, toilet."""
    rooms = (kitchens, bathrooms, utility_rooms, toilets)
    return from_lps(sum(np.asarray(number) * rate for number, rate in zip(rooms, rates, strict=True)))
