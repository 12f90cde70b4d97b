"""What does an EPW file say?

Field order, missing codes and limits: EnergyPlus, Auxiliary Programs, EPW data dictionary. A row's hour 1
covers 00:00 to 01:00; irradiance is the sum over it, so that mid-hour is the sun's moment.

Files of PVGIS differ: a comment states the moment of their irradiance, as hours from the end of the row's hour, and
their rows are in UTC whatever zone the header names (seen in one recorded for pvlib's tests, 45° N, 8° E).
"""

from __future__ import annotations

import io
import re
from calendar import isleap
from math import floor
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from estimator.climate.clock import turned
from estimator.climate.raw import Column, Place, RawYear, columns_of, from_code
from estimator.climate.rows import Row, data_rows, fields_of, header_numbers, stamps_of, through
from estimator.climate.solar import MID_HOUR
from estimator.errors import ClimateFault, Fault
from estimator.units import Array

HEADER_ROWS = 8
_PVGIS = re.compile(r"Irradiance Time Offset \(h\): *(-?[01]?\.\d+)")  # in the seventh row
FEWEST_FIELDS, MOST_FIELDS = 22, 35  # up to the wind speed, and all that the format has


def _no_temperature(values: Array) -> NDArray[np.bool_]:
    # The dictionary says "99.9 or more"; only its own codes are taken, so that a column in Fahrenheit or in
    # tenths is called implausible rather than missing.
    return np.isclose(values, 99.9) | (values >= 999.0)


COLUMNS = (
    Column("temp_air", "temp_air", _no_temperature),
    Column("relative_humidity", "relative_humidity", from_code(999.0)),
    Column("pressure", "atmospheric_pressure", from_code(999_999.0)),
    Column("ghi", "ghi", from_code(9999.0)),
    Column("dni", "dni", from_code(9999.0)),
    Column("dhi", "dhi", from_code(9999.0)),
    Column("wind_speed", "wind_speed", from_code(999.0)),
)


def is_epw(text: str) -> bool:
    """An EPW file begins with the word LOCATION."""
    return text[:9].upper() == "LOCATION,"


def read_epw(text: str, path: Path) -> RawYear:
    """Rows of an EPW file through pvlib's reader; ClimateFault where it breaks the format."""
    from pvlib import iotools

    rows = data_rows(text, after=HEADER_ROWS)
    lines = text.split("\n")
    if len(lines) < HEADER_ROWS or not lines[HEADER_ROWS - 1].upper().startswith("DATA PERIODS"):
        raise ClimateFault(
            Fault(f"{path.name}, row {HEADER_ROWS}", "an EPW file has 8 header rows, the last DATA PERIODS.")
        )
    head = [*lines[0].split(","), *[""] * 10]
    latitude, longitude, utc_offset, altitude = header_numbers(
        head[6:10], ("latitude", "longitude", "time zone", "altitude")
    )
    stamps = stamps_of(rows, _stamp)
    frame = through("EPW", path, lambda: iotools.read_epw(io.StringIO(text))[0], rows=stamps.row.size)
    moment = MID_HOUR
    if stated := _PVGIS.search(lines[6]):
        whole = floor(utc_offset)
        stamps, moment = turned(stamps, whole), 1.0 + float(stated[1]) + utc_offset - whole
    city, country = head[1].strip(), head[3].strip()
    return RawYear(
        place=Place(
            name=", ".join(part for part in (city, country) if part not in ("", "-")) or path.stem,
            latitude=latitude,
            longitude=longitude,
            altitude=altitude,
            utc_offset=utc_offset,
            source=f"{path.name} (EPW), data: {head[4].strip() or 'not stated'}",
            licence="as its publisher states",
        ),
        stamps=stamps,
        columns=columns_of(frame, COLUMNS, stamps.row),
        labels={column.name: column.label for column in COLUMNS},
        moment=moment,
    )


def _stamp(row: Row) -> tuple[int, int, int]:
    fields = fields_of(row, fewest=FEWEST_FIELDS, most=MOST_FIELDS)
    year, month, day, hour = (int(float(field)) for field in fields[:4])
    if (month, day) == (2, 29) and not isleap(year):
        raise ClimateFault(Fault(f"row {row.number}", f"there is no 29 February in {year}."))
    return month, day, hour - 1
