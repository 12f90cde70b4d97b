"""Does the air find its way from the fed rooms to those drawn from, and under which doors?"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import ceil

from estimator.air.paths import door_flows, opening_area, opening_pressure
from estimator.inputs.case import Case
from estimator.inputs.room_lines import Line, air_lines, room_flows, special_doors
from estimator.units import from_m3h, from_mm2

# Pressure across a shut door above which it is worth a larger gap; common practice, no source.
DOOR_PRESSURE = 2.0  # Pa
_ROUNDING = 0.5  # m³/h: below what instruments on site can tell
_SIZE = 100.0  # mm²: a gap under a door is cut no finer


@dataclass(frozen=True, slots=True, kw_only=True)
class DoorFound:
    """One door on the way. Flows m³/h, free area and what it should be at boost [mm²], pressure at boost [Pa].

    A fire door has neither area nor pressure: nothing may be cut from it.
    """

    between: tuple[str, str]
    flow: float
    flow_boost: float
    area: float | None
    area_needed: float
    pressure: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomFound:
    """One room: air fed and drawn in ordinary use and on boost [m³/h], and branches from the distribution box."""

    name: str
    fed: float
    drawn: float
    fed_boost: float
    drawn_boost: float
    branches: int


@dataclass(frozen=True, slots=True, kw_only=True)
class AirPaths:
    """Lines, doors and rooms, the unit's reserve on boost [m³/h], and what is wrong or lacking, in words."""

    lines: tuple[Line, ...]
    doors: tuple[DoorFound, ...]
    rooms: tuple[RoomFound, ...]
    fed: float
    drawn: float
    boost: float
    in_hand: float
    branches: int
    words: tuple[str, ...]


def air_paths(case: Case) -> AirPaths | None:
    """The way of the air in a filled case; None where no rooms are given or their option is not there."""
    given = case.rooms
    fed, drawn, lines = room_flows(given.fed), room_flows(given.drawn), air_lines(given.lines)
    if not (fed or drawn or lines) or given.option not in case.options:
        return None
    flows = case.options[given.option].flows
    ordinary = max(float(flows.supply or 0.0), float(flows.extract or 0.0))
    boost = float(flows.boost_flow or ordinary) / ordinary if ordinary else 1.0
    rooms = tuple(
        RoomFound(
            name=name,
            fed=fed.get(name, 0.0),
            drawn=drawn.get(name, 0.0),
            fed_boost=fed.get(name, 0.0) * boost,
            drawn_boost=drawn.get(name, 0.0) * boost,
            branches=sum(_branches(side.get(name, 0.0) * boost, each=given.branch_flow) for side in (fed, drawn)),
        )
        for name in dict.fromkeys((*fed, *drawn))
    )
    doors = _doors(case, lines, boost)
    most = max(sum(fed.values()), sum(drawn.values())) * boost
    in_hand = float(case.options[given.option].unit.largest_flow or 0.0) - most
    words = (
        *_balance(fed, drawn, boost),
        *_against_option(case, fed, drawn),
        *_carried(fed, drawn, lines),
        *_door_words(doors),
        *_too_small(in_hand, most),
    )
    return AirPaths(
        lines=lines,
        doors=doors,
        rooms=rooms,
        fed=sum(fed.values()),
        drawn=sum(drawn.values()),
        boost=boost,
        in_hand=in_hand,
        branches=sum(room.branches for room in rooms),
        words=words,
    )


def _branches(flow: float, *, each: float) -> int:
    return ceil(flow / each - 1e-9)


def _doors(case: Case, lines: tuple[Line, ...], boost: float) -> tuple[DoorFound, ...]:
    special = special_doors(case.rooms.doors)
    found = []
    for door, flow in door_flows(lines).items():
        one, other = (str(room) for room in _in_order(door, lines))
        area = special.get(frozenset((one, other)), case.rooms.door_area)
        si = from_m3h(flow * boost)
        found.append(
            DoorFound(
                between=(one, other),
                flow=flow,
                flow_boost=flow * boost,
                area=area,
                area_needed=float(opening_area(si, pressure=DOOR_PRESSURE) / from_mm2(1.0)),
                pressure=None if area is None else float(opening_pressure(si, area=from_mm2(area))),
            )
        )
    return tuple(found)


def _in_order(door: frozenset[object], lines: tuple[Line, ...]) -> tuple[str, str]:
    """The two rooms of a door in the order in which the first line crosses it."""
    return next(pair for line in lines for pair in pairwise(line.rooms) if frozenset(pair) == door)


def _balance(fed: dict[str, float], drawn: dict[str, float], boost: float) -> list[str]:
    more = sum(fed.values()) - sum(drawn.values())
    if abs(more) <= _ROUNDING:
        return []
    side, other, way = ("fed", "drawn", "out") if more > 0.0 else ("drawn", "fed", "in")
    return [
        f"{abs(more):.0f} m³/h more is {side} than {other} ({abs(more) * boost:.0f} m³/h on boost): it passes {way} "
        "through leaks without its heat. Set the valves anew."
    ]


def _against_option(case: Case, fed: dict[str, float], drawn: dict[str, float]) -> list[str]:
    flows = case.options[case.rooms.option].flows
    sides = (("fed", fed, flows.supply), ("drawn", drawn, flows.extract))
    return [
        f"The rooms are {said} {sum(rooms.values()):.0f} m³/h together, "
        f"the estimate counts {float(flow or 0.0):.0f} m³/h."
        for said, rooms, flow in sides
        if abs(sum(rooms.values()) - float(flow or 0.0)) > _ROUNDING
    ]


def _carried(fed: dict[str, float], drawn: dict[str, float], lines: tuple[Line, ...]) -> list[str]:
    found = []
    for said, flows, end in (("fed", fed, 0), ("drawn from", drawn, -1)):
        for room in dict.fromkeys((*flows, *(line.rooms[end] for line in lines))):
            carried = sum(line.flow for line in lines if line.rooms[end] == room)
            if abs(carried - flows.get(room, 0.0)) > _ROUNDING:
                found.append(
                    f"{room} is {said} at {flows.get(room, 0.0):.0f} m³/h, but its lines carry {carried:.0f} m³/h."
                )
    return found


def _door_words(doors: tuple[DoorFound, ...]) -> list[str]:
    found = []
    for door in doors:
        between = f"the door between {door.between[0]} and {door.between[1]}"
        if door.area is None:
            found.append(f"A line passes {between}, a fire door: never cut it; give the air another way.")
        elif door.pressure is not None and door.pressure > DOOR_PRESSURE:
            found.append(
                f"Under {between} {door.flow_boost:.0f} m³/h has {door.area:,.0f} mm²: it needs about "
                f"{ceil(door.area_needed / _SIZE) * _SIZE:,.0f} mm² to stay below {DOOR_PRESSURE:g}\u00a0Pa."
            )
    return found


def _too_small(in_hand: float, most: float) -> list[str]:
    if in_hand >= -_ROUNDING:
        return []
    return [
        f"The unit is too small: the rooms ask for {most:.0f} m³/h on boost, {-in_hand:.0f} m³/h more than it moves."
    ]
