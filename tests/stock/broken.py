"""Which fifteen kinds of broken rows does a table of homes have to bring back, each named?"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np
from numpy.typing import NDArray

FLOOR, AGE, STOREYS = "home.floor_area [m²]", "home.age", "home.storeys"
VALUE, MEASURE, FUEL = "leakage.value [as named]", "leakage.measure", "heating.fuel"
TEMPERATURE, PEOPLE, BEDROOMS = "home.indoor_temperature [°C]", "home.people", "home.bedrooms"

Row = dict[str, str]


def _set(**cells: str) -> Callable[[Row], Row]:
    keys = {
        "floor": FLOOR,
        "age": AGE,
        "storeys": STOREYS,
        "value": VALUE,
        "measure": MEASURE,
        "fuel": FUEL,
        "temperature": TEMPERATURE,
        "people": PEOPLE,
        "bedrooms": BEDROOMS,
    }
    return lambda row: {**row, **{keys[name]: cell for name, cell in cells.items()}}


KINDS: tuple[tuple[str, str, Callable[[Row], Row]], ...] = (
    ("no floor area", "home.floor_area", _set(floor="")),
    ("words for a number", "home.floor_area", _set(floor="about ninety")),
    ("a decimal comma", "home.floor_area", _set(floor="92,5")),
    ("a unit behind the number", "home.floor_area", _set(floor="92 m2")),
    ("far too small", "home.floor_area", _set(floor="3")),
    ("far too large", "home.floor_area", _set(floor="1e9")),
    ("negative", "home.indoor_temperature", _set(temperature="-4")),
    ("not a number", "home.indoor_temperature", _set(temperature="nan")),
    ("half a storey", "home.storeys", _set(storeys="1.5")),
    ("a misspelt age", "home.age", _set(age="1920-1975")),
    ("an unknown fuel", "heating.fuel", _set(fuel="gass")),
    ("a measure without its figure", "leakage.value", _set(measure="q50", value="")),
    ("a figure without its measure", "leakage.value", _set(measure="estimate", value="4.2")),
    ("more bedrooms than fit", "home.bedrooms", _set(floor="20", bedrooms="9")),
    ("a line cut short", "the line", lambda row: dict(list(row.items())[:3])),
)
"""Name, the entry that is at fault, and what is done to a sound row."""


def broken_csv(table: Any, *, share: float, start: int) -> tuple[str, dict[int, str]]:
    """A table as CSV text with a share of its rows broken; and by row number (from 1) the entry at fault."""
    rng = np.random.default_rng(start)
    heads = table.column_names
    rows = table.to_pylist()
    chosen: NDArray[np.intp] = rng.choice(len(rows), max(len(KINDS), round(share * len(rows))), replace=False)
    kinds = {int(row): KINDS[place % len(KINDS)] for place, row in enumerate(chosen)}
    lines = [",".join(heads)]
    for number, cells in enumerate(rows):
        row = {head: "" if cell is None else str(cell) for head, cell in cells.items()}
        if number in kinds:
            row = kinds[number][2](row)
        lines.append(",".join(f'"{cell}"' if "," in cell else cell for cell in row.values()))
    return "\n".join(lines) + "\n", {row + 1: where for row, (_, where, _) in kinds.items()}
