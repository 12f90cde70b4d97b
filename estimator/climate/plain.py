"""What does a plain hourly table with a note beside it say?

`place.csv` has one row an hour and named columns, `place.toml` beside it says where, whose and what it is.
The demo climates are written so; anybody's own year can be.
"""

from __future__ import annotations

import io
import tomllib
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from estimator.climate.raw import TITLES, Column, Place, RawYear, columns_of
from estimator.climate.rows import Row, data_rows, fields_of, stamps_of, through
from estimator.errors import ClimateFault, Fault
from estimator.units import Array

STAMP_COLUMNS = ("month", "day", "hour")  # the hour that starts, 0 to 23, local standard time
NUMBERS = ("latitude", "longitude", "altitude", "utc_offset")
TEXTS = ("name", "source", "licence")


def _never(values: Array) -> NDArray[np.bool_]:
    return np.zeros(values.shape, dtype=bool)  # this format leaves a missing value blank


def is_plain(text: str) -> bool:
    """A plain table names its columns in the first row, month, day and hour first."""
    return text[:200].lower().replace(" ", "").startswith(",".join(STAMP_COLUMNS) + ",")


def read_plain(text: str, path: Path) -> RawYear:
    """Rows of a plain table and the place in the note beside it; ClimateFault where either is lacking."""
    import pandas as pd

    place = _place(path.with_suffix(".toml"))
    names = [name.strip().lower() for name in text.partition("\n")[0].split(",")]
    lost = [name for name in TITLES if name not in names and name != "pressure"]
    if lost:
        raise ClimateFault(Fault("row 1", f"columns are missing: {', '.join(lost)}."))

    def stamp(row: Row) -> tuple[int, int, int]:
        month, day, hour, *_ = fields_of(row, fewest=len(names), most=len(names))
        return int(month), int(day), int(hour)

    stamps = stamps_of(data_rows(text, after=1), stamp)
    frame = through(
        "of a plain table",
        path,
        lambda: pd.read_csv(io.StringIO(text), names=names, header=0),
        rows=stamps.row.size,
    )
    present = [Column(name, name, _never) for name in TITLES if name in names]
    return RawYear(
        place=place,
        stamps=stamps,
        columns=columns_of(frame, present, stamps.row),
        labels={column.name: column.label for column in present},
    )


def _place(note: Path) -> Place:
    try:
        said = tomllib.loads(note.read_text(encoding="utf-8"))
    except FileNotFoundError:
        raise ClimateFault(
            Fault(note.name, "a plain table needs this note beside it, with " + ", ".join((*TEXTS, *NUMBERS)) + ".")
        ) from None
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        raise ClimateFault(Fault(note.name, f"the note cannot be read ({str(error)[:100]}).")) from None
    faults = [
        Fault(f"{note.name}, {name}", f"this must be {what}.")
        for names, kinds, what in ((TEXTS, str, "text in quotes"), (NUMBERS, (int, float), "a number"))
        for name in names
        if not isinstance(said.get(name), kinds) or isinstance(said.get(name), bool)
    ]
    if not isinstance(said.get("invented", False), bool):
        faults.append(Fault(f"{note.name}, invented", "this must be true or false."))
    if faults:
        raise ClimateFault(*faults)
    return Place(
        name=said["name"],
        source=said["source"],
        licence=said["licence"],
        invented=said.get("invented", False),
        latitude=float(said["latitude"]),
        longitude=float(said["longitude"]),
        altitude=float(said["altitude"]),
        utc_offset=float(said["utc_offset"]),
    )
