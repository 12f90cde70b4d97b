"""Which rows does a weather file have, and which hours are they for?"""

from __future__ import annotations

import warnings
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from estimator.climate.raw import Stamps, counted
from estimator.errors import ClimateFault, Fault
from estimator.units import MONTH_DAYS

if TYPE_CHECKING:
    import pandas as pd


class Row(NamedTuple):
    """One row with its number as an editor or a spreadsheet shows it."""

    number: int
    text: str


def data_rows(text: str, *, after: int) -> list[Row]:
    """Rows that are not blank, after the header rows."""
    return [
        Row(number, line) for number, line in enumerate(text.split("\n"), start=1) if number > after and line.strip()
    ]


def stamps_of(rows: Sequence[Row], stamp: Callable[[Row], tuple[int, int, int]]) -> Stamps:
    """Month, day and starting hour of each row; ClimateFault naming the first row without."""
    if not rows:
        raise ClimateFault(Fault("", "the file ends before its first hour; it must hold a year of hours."))
    found = np.empty((len(rows), 3), dtype=np.int64)
    for index, row in enumerate(rows):
        try:
            found[index] = stamp(row)
        except (ValueError, IndexError, OverflowError) as error:
            if isinstance(error, ClimateFault):
                raise
            raise ClimateFault(
                Fault(f"row {row.number}", f"no date and hour can be read from “{row.text[:30].strip()}…”.")
            ) from None
    month, day, hour = found.T
    longest = np.array(MONTH_DAYS)[np.clip(month, 1, 12) - 1] + (month == 2)
    possible = (month >= 1) & (month <= 12) & (day >= 1) & (day <= longest) & (hour >= 0) & (hour <= 23)
    if not possible.all():
        index = int(np.argmin(possible))
        raise ClimateFault(
            Fault(
                f"row {rows[index].number}",
                f"month {month[index]}, day {day[index]}, hour from {hour[index]}:00 does not exist.",
            )
        )
    return Stamps(month=month, day=day, hour=hour, row=np.array([row.number for row in rows]))


def header_numbers(texts: Sequence[str], names: Sequence[str]) -> list[float]:
    """Numbers of the header; ClimateFault with every one that is none."""
    faults, numbers = [], []
    for text, name in zip(texts, names, strict=True):
        try:
            numbers.append(float(text))
        except ValueError:
            faults.append(Fault("row 1", f"the {name} must be a number, not “{text.strip()[:20]}”."))
    if faults:
        raise ClimateFault(*faults)
    return numbers


def fields_of(row: Row, *, fewest: int, most: int, separator: str = ",") -> list[str]:
    """Fields of a row; ClimateFault where their number says that the row is cut or damaged."""
    fields = row.text.split(separator)
    if not fewest <= len(fields) <= most:
        allowed = f"{fewest}" if fewest == most else f"{fewest} to {most}"
        raise ClimateFault(
            Fault(
                f"row {row.number}",
                f"{counted(len(fields), 'field')} where there should be {allowed}; the file seems cut there.",
            )
        )
    return fields


def through(kind: str, path: Path, read: Callable[[], pd.DataFrame], *, rows: int) -> pd.DataFrame:
    """The frame that a library's reader makes of the file; ClimateFault where it fails or loses a row."""
    from pandas.errors import DtypeWarning

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", DtypeWarning)  # text in a column that matters is found later, with its row
            frame = read()
    except Exception:  # whatever a damaged file makes of the reader, the user gets a sentence
        frame = None
    if frame is None or len(frame) != rows:
        what = f"a row does not keep to the format {kind}; the file seems damaged, perhaps by a stray quotation mark."
        raise ClimateFault(Fault(path.name, what)) from None
    return frame
