"""What does a plain hourly table say, whoever made it?

Two ways lead here. `place.csv` with a note `place.toml` beside it, which says where, whose and what it is: so the
demo climates are written. Or a table handed over with a `Layout`, which says the same: `table_year`.
"""

from __future__ import annotations

import csv
import tomllib
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from estimator.climate.clean import checked_year
from estimator.climate.columns import DATE_COLUMNS, TIME_COLUMN, UNITS, Layout, header_of, layout_faults, when
from estimator.climate.plausible import ReadReport, read_report
from estimator.climate.raw import TITLES, Column, Place, RawYear, columns_of
from estimator.climate.rows import data_rows, fields_of
from estimator.climate.standins import completed
from estimator.climate.text import text_of
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault, Fault
from estimator.units import Array

NUMBERS = ("latitude", "longitude", "altitude", "utc_offset")
TEXTS = ("name", "source", "licence")
BLANKS = {"", "-", "--", "na", "n/a", "nan", "null", "none", "missing"}
NO_VALUE = -99.0  # and below: -99, -999 and -9999 are the usual codes, and no quantity here is so low
_QUANTITIES = (*TITLES, *DATE_COLUMNS, TIME_COLUMN)


def table_year(content: bytes, layout: Layout, *, name: str) -> tuple[ClimateYear, ReadReport]:
    """The checked year of a table of any headers, and a report on it; ClimateFault in plain words.

    name: of the file, for messages. Temperature is needed; what else the layout does not name is judged from it
    (`standins`), and the report says so.
    """
    raw = read_table(text_of(content, name), layout, name=name)
    return (year := checked_year(raw)), read_report(year, raw.labels)


def headers(content: bytes, *, name: str) -> list[str]:
    """Headers of a table, to choose from: the first row of more than one text without a number among them."""
    for line in text_of(content, name).split("\n", 40)[:40]:
        fields = _split(line)
        if _names_columns(fields):
            return fields
    raise ClimateFault(Fault(name, "there is no row of headers over a table; the first row must name the columns."))


def read_table(text: str, layout: Layout, *, name: str) -> RawYear:
    """Rows of a table in SI, with stand-ins for what it lacks; ClimateFault with all that is wrong with the layout."""
    import pandas as pd

    if faults := layout_faults(layout):
        raise ClimateFault(*faults)
    header = header_of(text, wanted=list(layout.columns.values()))
    rows = data_rows(text, after=header.row)
    try:
        cells = list(csv.reader((row.text for row in rows), delimiter=header.separator))
    except csv.Error:
        cells = []
    if len(cells) != len(rows):
        raise ClimateFault(Fault(name, "rows run into each other; the file seems damaged by a stray quotation mark."))
    for row, fields in zip(rows, cells, strict=True):
        if len(fields) != len(header.names):
            fields_of(row, fewest=len(header.names), most=len(header.names), separator=header.separator)
    stamps = when(rows, cells, layout, header.names)
    present = [title for title in TITLES if title in layout.columns]
    frame = pd.DataFrame(
        {
            layout.columns[title]: [
                _number(fields[position], header.separator)
                for position in [header.names.index(layout.columns[title])]
                for fields in cells
            ]
            for title in present
        },
        dtype=object,
    )
    columns = columns_of(frame, [Column(title, layout.columns[title], _missing) for title in present], stamps.row)
    for title in present:
        unit = layout.units.get(title, next(iter(UNITS[title])))
        columns[title] = np.asarray(UNITS[title][unit](columns[title]))
    labels = {title: layout.columns[title] for title in present}
    return completed(RawYear(place=layout.place, stamps=stamps, columns=columns, labels=labels))


def _missing(values: Array) -> NDArray[np.bool_]:
    return values <= NO_VALUE


def _number(text: str, separator: str) -> str | None:
    """The text of a number with a point for its decimals; None where it stands for no value."""
    text = text.strip()
    if text.casefold() in BLANKS:
        return None
    return text.replace(",", ".") if separator != "," else text


def is_plain(text: str) -> bool:
    """A plain table names its columns in the first row, and has a number in the next."""
    first, _, rest = text.partition("\n")
    fields, below = _split(first), _split(rest.partition("\n")[0])
    return _names_columns(fields) and len(below) == len(fields) and any(_is_figure(field) for field in below)


def read_plain(text: str, path: Path) -> RawYear:
    """Rows of a plain table and the place in the note beside it; ClimateFault where either is lacking."""
    return read_table(text, _layout(path.with_suffix(".toml"), _split(text.partition("\n")[0])), name=path.name)


def noted_place(table: Path) -> Place:
    """Where the year of a table lies, by the note beside it."""
    return _place(_note(table.with_suffix(".toml")))


def _split(line: str) -> list[str]:
    separator = max(",;\t", key=line.count)
    return [field.strip().strip('"').strip() for field in line.split(separator)]


def _names_columns(fields: list[str]) -> bool:
    return len(fields) > 1 and any(fields) and not any(_is_figure(field) for field in fields)


def _is_figure(text: str) -> bool:
    return text[:1].isdigit() or (text[:1] in "+-." and text[1:2].isdigit())


def _layout(note: Path, names: list[str]) -> Layout:
    """The layout that a note states; headers that are names of quantities speak for themselves."""
    said = _note(note)
    mapped = said.get("columns", {})
    own = {name.lower(): name for name in names if name.lower() in _QUANTITIES}
    used = set(mapped.values())
    return Layout(
        place=_place(said),
        columns={name: header for name, header in own.items() if header not in used} | mapped,
        units=said.get("units", {}),
        stamp=said.get("stamp", "start"),
        utc_offset=said.get("table_utc_offset"),
    )


def _note(note: Path) -> dict[str, Any]:
    try:
        said = tomllib.loads(note.read_text(encoding="utf-8"))
    except FileNotFoundError:
        raise ClimateFault(
            Fault(note.name, "a plain table needs this note beside it, with " + ", ".join((*TEXTS, *NUMBERS)) + ".")
        ) from None
    except (OSError, ValueError, RecursionError) as error:
        raise ClimateFault(Fault(note.name, f"the note cannot be read ({str(error)[:100]}).")) from None
    kinds: list[tuple[str, type | tuple[type, ...], str, bool]] = [
        *((name, str, "text in quotes", True) for name in TEXTS),
        *((name, (int, float), "a number", True) for name in NUMBERS),
        ("table_utc_offset", (int, float), "a number", False),
        ("stamp", str, "“start” or “end”", False),
        ("columns", dict, "a table of quantity = “header”", False),
        ("units", dict, "a table of quantity = “unit”", False),
    ]
    faults = [
        Fault(f"{note.name}, {name}", f"this must be {what}.")
        for name, kind, what, needed in kinds
        if (needed or name in said) and (not isinstance(said.get(name), kind) or isinstance(said.get(name), bool))
    ]
    faults += [
        Fault(f"{note.name}, {table}.{name}", "this must be text in quotes.")
        for table in ("columns", "units")
        if isinstance(said.get(table), dict)
        for name, value in said[table].items()
        if not isinstance(value, str)
    ]
    if not isinstance(said.get("invented", False), bool):
        faults.append(Fault(f"{note.name}, invented", "this must be true or false."))
    if faults:
        raise ClimateFault(*faults)
    return said


def _place(said: dict[str, Any]) -> Place:
    latitude, longitude, altitude, utc_offset = (float(said[name]) for name in NUMBERS)
    return Place(
        name=said["name"],
        source=said["source"],
        licence=said["licence"],
        invented=said.get("invented", False),
        latitude=latitude,
        longitude=longitude,
        altitude=altitude,
        utc_offset=utc_offset,
    )
