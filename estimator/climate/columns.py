"""Which column of somebody's table is which quantity, in which unit, and when was each row?"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from difflib import get_close_matches
from typing import Literal, NamedTuple, get_args

import numpy as np

from estimator.climate.clock import turned
from estimator.climate.raw import TITLES, Place, Stamps
from estimator.climate.rows import Row, stamps_of
from estimator.errors import ClimateFault, Fault
from estimator.units import (
    Array,
    from_fahrenheit,
    from_hpa,
    from_kelvin,
    from_kj_per_hour,
    from_kmh,
    from_knots,
    from_mph,
    to_percent,
)

Stamp = Literal["start", "end"]
DATE_COLUMNS = ("month", "day", "hour")
TIME_COLUMN = "time"
_LIGHT: dict[str, Callable[[Array], Array]] = {
    "W/m²": lambda values: values,
    "kJ/m²": from_kj_per_hour,
    "J/cm²": lambda values: from_kj_per_hour(10.0 * values),
}
UNITS: dict[str, dict[str, Callable[[Array], Array]]] = {
    "temp_air": {
        "°C": lambda values: values,
        "°F": from_fahrenheit,
        "K": from_kelvin,
        "0.1 °C": lambda values: values / 10.0,
    },
    "wind_speed": {
        "m/s": lambda values: values,
        "km/h": from_kmh,
        "knots": from_knots,
        "mph": from_mph,
        "0.1 m/s": lambda values: values / 10.0,
    },
    "ghi": _LIGHT,
    "dni": _LIGHT,
    "dhi": _LIGHT,
    "relative_humidity": {"%": lambda values: values, "fraction": to_percent},
    "pressure": {"Pa": lambda values: values, "hPa": from_hpa},
}
"""Units in which a column may be, the first where none is said; irradiance summed over the hour is in kJ or J."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """How a table is to be read: which header is which quantity, in which unit, by which clock."""

    place: Place
    columns: Mapping[str, str]  # keys of TITLES, and month, day and hour or else time; to headers of the table
    units: Mapping[str, str] = field(default_factory=dict)  # keys of TITLES to names in UNITS
    stamp: Stamp = "start"  # whether a row's time is where its hour starts or ends
    utc_offset: float | None = None  # h of the table's clock before UTC; None where it is the place's standard time


class Header(NamedTuple):
    """Where the header of a table stands, and what it says."""

    row: int  # as an editor counts
    separator: str
    names: list[str]


def layout_faults(layout: Layout) -> list[Fault]:
    """What is wrong with a layout, before any table is read."""
    columns, known = layout.columns, (*TITLES, *DATE_COLUMNS, TIME_COLUMN)
    faults = [
        Fault(f"columns, {name}", f"there is no such quantity; known are {', '.join(known)}.")
        for name in columns
        if name not in known
    ]
    if "temp_air" not in columns:
        faults.append(Fault("columns, temp_air", "say which column has the air temperature; an estimate needs it."))
    if TIME_COLUMN not in columns and not all(name in columns for name in DATE_COLUMNS):
        faults.append(Fault("columns, time", "say which column has the time, or which have month, day and hour."))
    for header in sorted({header for header in columns.values() if list(columns.values()).count(header) > 1}):
        faults.append(Fault("columns", f"“{header}” stands for more than one quantity."))
    faults += [
        Fault(f"units, {name}", f"“{unit}” is not known here; known are {', '.join(UNITS.get(name, {})) or 'none'}.")
        for name, unit in layout.units.items()
        if unit not in UNITS.get(name, {})
    ]
    if layout.stamp not in get_args(Stamp):
        faults.append(Fault("stamp", f"“{layout.stamp}” is neither start nor end."))
    if _turn(layout) % 1.0:
        faults.append(Fault("utc offset", "the table's clock must differ from the standard time by whole hours."))
    return faults


def _turn(layout: Layout) -> float:
    return 0.0 if layout.utc_offset is None else layout.place.utc_offset - layout.utc_offset


def header_of(text: str, *, wanted: Sequence[str], searched: int = 40) -> Header:
    """The first row that has all the headers wanted; ClimateFault naming those that the likeliest lacks."""
    best: tuple[int, Header] | None = None
    for number, line in enumerate(text.split("\n", searched)[:searched], start=1):
        separator = max(",;\t", key=line.count)
        names = [name.strip().strip('"').strip() for name in line.split(separator)]
        found = sum(name in names for name in wanted)
        if found == len(wanted):
            return Header(number, separator, names)
        if line.strip() and (best is None or found > best[0]):
            best = found, Header(number, separator, names)
    header = best[1] if best else Header(1, ",", [])
    faults = []
    for name in wanted:
        if name not in header.names:
            near = get_close_matches(name, header.names, n=1)
            hint = f" Did you mean “{near[0]}”?" if near else ""
            has = ", ".join(header.names)[:200]
            faults.append(Fault(f"row {header.row}", f"there is no column “{name}”; there are {has}.{hint}"))
    raise ClimateFault(*faults)


def when(rows: Sequence[Row], cells: Sequence[Sequence[str]], layout: Layout, names: Sequence[str]) -> Stamps:
    """Starting hours of the rows on the clock of the place's standard time."""
    if TIME_COLUMN in layout.columns:
        position = names.index(layout.columns[TIME_COLUMN])
        dates = _dates(rows, [row[position] for row in cells])
    else:
        month, day, hour = (names.index(layout.columns[name]) for name in DATE_COLUMNS)
        dates = {row.number: (cell[month], cell[day], cell[hour], "0") for row, cell in zip(rows, cells, strict=True)}
    # Hours that end at 24:00 are counted from 1; those that end at 00:00 belong to the day before.
    ends = layout.stamp == "end" and not any(float(date[3]) for date in dates.values() if _is_number(date[3]))
    from_one = ends and any(_is_number(date[2]) and float(date[2]) == 24 for date in dates.values())

    def stamp(row: Row) -> tuple[int, int, int]:
        figures = [float(text) for text in dates[row.number][:3]]
        if any(figure % 1.0 for figure in figures):
            raise ValueError(figures)
        return int(figures[0]), int(figures[1]), int(figures[2]) - from_one

    return turned(stamps_of(rows, stamp), int(_turn(layout)) - (ends and not from_one))


_TIME = re.compile(
    r"\s*(\d{1,4})\D(\d{1,2})\D(\d{1,4})(?:\D+(\d{1,2})(?::(\d{1,2}))?(?::\d{1,2}(?:\.\d+)?)?\s*([ap]m)?)?", re.I
)
_TIGHT = re.compile(r"\s*(\d{4})(\d{2})(\d{2})\D?(\d{2}):?(\d{2})?")


def _dates(rows: Sequence[Row], texts: Sequence[str]) -> dict[int, tuple[str, str, str, str]]:
    """Month, day, hour and minute of each row, as text; whether the day or the month comes first, all rows decide."""
    found, first, second = {}, [], []
    for row, text in zip(rows, texts, strict=True):
        if (tight := _TIGHT.match(text)) is not None:
            found[row.number] = ("", *tight.groups("0")[1:], "")
        elif (match := _TIME.match(text)) is None:
            raise ClimateFault(
                Fault(f"row {row.number}", f"“{text[:30].strip()}” is no date and time that can be read.")
            )
        elif len(match[1]) == 4:
            found[row.number] = ("", match[2], match[3], match[4] or "0", match[5] or "0", match[6] or "")
        else:
            first.append(int(match[1]))
            second.append(int(match[2]))
            found[row.number] = ("?", match[1], match[2], match[4] or "0", match[5] or "0", match[6] or "")
    month_first = bool(second) and max(second) > 12 and max(first) <= 12
    return {number: _date(*parts, month_first=month_first) for number, parts in found.items()}


def _date(
    order: str, one: str, two: str, hour: str, minute: str, half: str, *, month_first: bool
) -> tuple[str, str, str, str]:
    if half:
        hour = str(int(hour) % 12 + (12 if half.lower() == "pm" else 0))
    return (two, one, hour, minute) if order and not month_first else (one, two, hour, minute)


def _is_number(text: str) -> bool:
    try:
        return bool(np.isfinite(float(text)))
    except ValueError:
        return False
