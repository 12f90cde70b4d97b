"""Does the air that is fed reach the rooms it is drawn from, and is it said in words where it does not?

Openings by Bernoulli's equation with the coefficient of EN 13141-1 (0.61; from memory), worked by hand. Facts of the
trade are marked.
"""

from __future__ import annotations

from typing import Any

import pytest

from estimator import Case, case_from_dict
from estimator.air.paths import door_flows, opening_area, opening_pressure
from estimator.air_paths import AirPaths, air_paths
from estimator.errors import InputFaults
from estimator.inputs.places import with_values
from estimator.inputs.room_lines import room_flows
from estimator.survey.fill import filled

EVEN: dict[str, Any] = {
    "rooms.fed": "large bedroom 40; small bedroom 25; living room 45",
    "rooms.drawn": "kitchen 50; bathroom 60",
    "rooms.lines": (
        "large bedroom > landing > bathroom 40; small bedroom > landing > bathroom 20; "
        "small bedroom > landing > hall > kitchen 5; living room > hall > kitchen 45"
    ),
    "rooms.door_area": 12_000.0,
    "options.recovery.flows.supply": 110.0,
    "options.recovery.flows.extract": 110.0,
    "options.recovery.flows.boost_flow": 143.0,
    "options.recovery.unit.largest_flow": 180.0,
}


def found(**changes: Any) -> AirPaths:
    values = {**EVEN, **{name.replace("__", "."): value for name, value in changes.items()}}
    made = air_paths(filled(with_values(Case(), values)).case)
    assert made is not None
    return made


def said(made: AirPaths, words: str) -> bool:
    return any(words in sentence for sentence in made.words)


def test_what_is_fed_is_drawn_and_every_room_has_its_branches() -> None:
    """By hand: boost is 1.3 times ordinary use; 52, 32.5, 58.5, 65 and 78 m³/h in branches of 30 are 2+2+2+3+3."""
    made = found()
    assert made.fed == made.drawn == 110.0
    assert made.boost == pytest.approx(1.3)
    assert made.branches == 12
    assert made.in_hand == pytest.approx(37.0)
    assert [room.name for room in made.rooms] == [
        "large bedroom",
        "small bedroom",
        "living room",
        "kitchen",
        "bathroom",
    ]


def test_doors_carry_the_sum_of_the_lines_through_them() -> None:
    flows = {door.between: door.flow for door in found().doors}
    assert flows == {
        ("large bedroom", "landing"): 40.0,
        ("landing", "bathroom"): 60.0,
        ("small bedroom", "landing"): 25.0,
        ("landing", "hall"): 5.0,
        ("hall", "kitchen"): 50.0,
        ("living room", "hall"): 45.0,
    }


def test_air_of_every_room_is_conserved() -> None:
    """Law: what enters a room by doors and ducts leaves it, whatever the lines."""
    made = found()
    into = {room.name: room.fed - room.drawn for room in made.rooms}
    for door in made.doors:
        into[door.between[0]] = into.get(door.between[0], 0.0) - door.flow
        into[door.between[1]] = into.get(door.between[1], 0.0) + door.flow
    assert all(net == pytest.approx(0.0, abs=1e-9) for net in into.values())


def test_lines_that_meet_in_a_door_cancel() -> None:
    flows = door_flows([(("a", "b"), 5.0), (("b", "a"), 3.0)])
    assert flows == {frozenset(("a", "b")): 2.0}


def test_a_gap_of_10_mm_under_a_door_of_760_mm() -> None:
    """Approved Document F vol. 1 (2021) asks for 7,600 mm²; from memory. At 1 Pa: 0.61 × 0.0076 × √(2/1.204) m³/s."""
    assert opening_area(5.975e-3, pressure=1.0) == pytest.approx(0.0076, rel=1e-3)
    assert opening_pressure(5.975e-3, area=0.0076) == pytest.approx(1.0, rel=1e-3)
    assert opening_pressure(2 * 5.975e-3, area=0.0076) == pytest.approx(4.0, rel=1e-3)
    assert Case().rooms.door_area == 7600.0


def test_a_narrow_gap_is_flagged_with_the_area_it_needs() -> None:
    made = found(rooms__doors="landing > bathroom 5000")
    narrow = next(door for door in made.doors if door.between == ("landing", "bathroom"))
    assert narrow.area == 5000.0
    assert narrow.area_needed == pytest.approx(19_488.0, abs=1.0)
    assert said(made, "needs about 19,500 mm²")
    assert not said(found(rooms__doors=f"landing > bathroom {narrow.area_needed + 1.0}"), "landing and bathroom")


def test_no_air_under_a_fire_door() -> None:
    """Common practice, no source: a fire door is never cut."""
    made = found(rooms__doors="hall > kitchen fire")
    door = next(door for door in made.doors if door.between == ("hall", "kitchen"))
    assert door.area is None
    assert door.pressure is None
    assert said(made, "between hall and kitchen, a fire door: never cut it")


def test_paths_that_do_not_balance_are_said() -> None:
    assert not said(found(), "more is")
    assert not said(found(), "carry")
    made = found(rooms__drawn="kitchen 50; bathroom 48")
    assert said(made, "12 m³/h more is fed than drawn (16 m³/h on boost): it passes out")
    assert said(made, "bathroom is drawn from at 48 m³/h, but its lines carry 60 m³/h")
    assert said(made, "are drawn 98 m³/h together, the estimate counts 110 m³/h")
    assert said(found(rooms__fed="large bedroom 40; small bedroom 25; living room 39"), "6 m³/h more is drawn than fed")


def test_a_unit_too_small_is_said_and_refused() -> None:
    assert said(found(options__recovery__unit__largest_flow=120.0), "too small: the rooms ask for 143 m³/h")
    options = {"recovery": {"kind": "heat recovery", "flows": {"boost_flow": 200.0}, "unit": {"largest_flow": 150.0}}}
    with pytest.raises(InputFaults, match="200 m³/h on boost is more than the 150 m³/h that the unit moves"):
        case_from_dict({"version": 1, "baseline": "recovery", "today": "recovery", "options": options})


@pytest.mark.parametrize(
    ("entry", "text", "words"),
    [
        ("fed", "bedroom", "needs a name"),
        ("fed", "bedroom 0", "cannot be"),
        ("fed", "bedroom 10; bedroom 20", "given twice"),
        ("drawn", "kitchen much", "no number"),
        ("lines", "bedroom 40", "no way from room to room"),
        ("lines", "bedroom > hall > bedroom 40", "no way from room to room"),
        ("doors", "a > b > c 100", "no door"),
    ],
)
def test_what_cannot_be_read_is_refused_in_words(entry: str, text: str, words: str) -> None:
    with pytest.raises(InputFaults, match=words) as refused:
        case_from_dict({"version": 1, "rooms": {entry: text}})
    assert [fault.where for fault in refused.value.faults] == [f"rooms.{entry}"]


def test_nothing_given_is_nothing_said() -> None:
    assert air_paths(filled(Case()).case) is None
    assert room_flows(" ; ") == {}
