"""What do the lists of rooms, ways and doors say, and what in them cannot be read?"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from estimator.inputs.faults import shown

_MOST_FLOW = 3000.0  # m³/h
_MOST_AREA = 200_000.0  # mm²
_FIRE = "fire"
_THROUGH = ">"


class Line(NamedTuple):
    """One way of the air: rooms in order, and its flow [m³/h]."""

    rooms: tuple[str, ...]
    flow: float


def room_flows(text: str) -> dict[str, float]:
    """Flow of each room [m³/h] in one line of text. Raises ValueError, in words."""
    flows: dict[str, float] = {}
    for name, word in _entries(text):
        if name in flows:
            raise ValueError(f"{shown(name)} is given twice. Give each room once.")
        flows[name] = _number(word, most=_MOST_FLOW, unit="m³/h")
    return flows


def air_lines(text: str) -> tuple[Line, ...]:
    """The ways of the air in one line of text. Raises ValueError, in words."""
    return tuple(Line(_rooms(way), _number(word, most=_MOST_FLOW, unit="m³/h")) for way, word in _entries(text))


def special_doors(text: str) -> dict[frozenset[str], float | None]:
    """Free area [mm²] of doors unlike the rest, None for a fire door. Raises ValueError, in words."""
    found: dict[frozenset[str], float | None] = {}
    for way, word in _entries(text):
        rooms = _rooms(way)
        if len(rooms) != 2:
            raise ValueError(f"{shown(way)} is no door: a door joins two rooms. Write it as hall > kitchen 10000.")
        found[frozenset(rooms)] = None if word == _FIRE else _number(word, most=_MOST_AREA, unit="mm²")
    return found


def _entries(text: str) -> Iterator[tuple[str, str]]:
    """Name and last word of each entry between semicolons."""
    for part in filter(None, (part.strip() for part in text.split(";"))):
        name, _, word = part.rpartition(" ")
        if not name.strip():
            raise ValueError(f"{shown(part)} needs a name and then a figure, such as bedroom 43. Write both.")
        yield name.strip(), word


def _rooms(way: str) -> tuple[str, ...]:
    rooms = tuple(room.strip() for room in way.split(_THROUGH))
    if len(rooms) < 2 or not all(rooms) or len(set(rooms)) < len(rooms):
        raise ValueError(f"{shown(way)} is no way from room to room. Write each room once, with > between rooms.")
    return rooms


def _number(word: str, *, most: float, unit: str) -> float:
    try:
        number = float(word)
    except ValueError:
        raise ValueError(f"{shown(word)} is no number of {unit}. Write a plain number after the name.") from None
    if not 0.0 < number <= most:
        raise ValueError(f"{number:g} {unit} cannot be; more than 0 and at most {most:g} is allowed. Correct it.")
    return number
