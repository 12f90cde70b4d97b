"""Is a proposed plan one whose air arrives, in any home?"""

from __future__ import annotations

from typing import Any

import pytest

from estimator import Case
from estimator.air_paths import AirPaths, air_paths
from estimator.inputs import check
from estimator.inputs.places import with_values
from estimator.room_plan import planned_rooms
from estimator.survey.fill import filled


def planned(**home: Any) -> AirPaths:
    case = filled(with_values(Case(), {f"home.{key}": value for key, value in home.items()})).case
    case = with_values(case, {"rooms": planned_rooms(case, "recovery")})
    assert not [fault for fault in check.faults(case) if fault.where.startswith("rooms")]
    found = air_paths(case)
    assert found is not None
    return found


@pytest.mark.parametrize(
    "home",
    [
        {},
        {"bedrooms": 1, "toilets": 0, "floor_area": 45.0},
        {"bedrooms": 5, "bathrooms": 3, "toilets": 2, "utility_rooms": 1, "floor_area": 240.0},
        {"bedrooms": 12, "bathrooms": 8, "toilets": 8, "utility_rooms": 4, "floor_area": 900.0},
    ],
)
def test_it_balances_and_every_line_carries_what_its_rooms_need(home: dict[str, Any]) -> None:
    """Law: fed equals drawn, and nothing in words but what doors and unit have to say."""
    found = planned(**home)
    assert found.fed == pytest.approx(found.drawn, abs=0.2)
    assert len(found.lines) < len(found.rooms)
    assert not [words for words in found.words if "carry" in words or "more is" in words or "counts" in words]


def test_bedrooms_and_living_rooms_are_fed_and_wet_rooms_drawn_from() -> None:
    """Approved Document F vol. 1 (2021), table 1.2: kitchen 13, bathroom 8, toilet 6 of 27 l/s; toilet from memory."""
    rooms = {room.name: room for room in planned(bedrooms=3).rooms}
    assert rooms["kitchen"].drawn / rooms["bathroom"].drawn == pytest.approx(13.0 / 8.0, rel=0.01)
    assert rooms["toilet"].drawn / rooms["bathroom"].drawn == pytest.approx(6.0 / 8.0, rel=0.01)
    assert rooms["bedroom 1"].fed > 0.0
    assert rooms["living room"].fed > rooms["bedroom 1"].fed
