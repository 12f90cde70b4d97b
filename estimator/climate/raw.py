"""What does a weather file say, before anybody believes it?"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from estimator.errors import ClimateFault, Fault, visible
from estimator.units import Array

if TYPE_CHECKING:
    import pandas as pd

Whole = NDArray[np.int64]
Missing = Callable[[Array], NDArray[np.bool_]]

TITLES = {
    "temp_air": "air temperature",
    "wind_speed": "wind speed",
    "ghi": "global irradiance",
    "dni": "direct irradiance",
    "dhi": "diffuse irradiance",
    "relative_humidity": "relative humidity",
    "pressure": "air pressure",
}
IRRADIANCES = ("ghi", "dni", "dhi")


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where a year belongs and whose it is; the same names and units as in `ClimateYear`."""

    name: str
    latitude: float
    longitude: float
    altitude: float
    utc_offset: float
    source: str
    licence: str
    invented: bool = False

    def __post_init__(self) -> None:
        for name in ("name", "source", "licence"):  # a file may hold marks that steer a terminal or turn a line
            object.__setattr__(self, name, visible(getattr(self, name)))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Stamps:
    """Month, day and hour (0-23, the hour that starts there) of each row, and the row's number in the file."""

    month: Whole
    day: Whole
    hour: Whole
    row: Whole


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class RawYear:
    """Rows as the file has them, in SI, with NaN for missing values; nothing checked, ordered or mended."""

    place: Place
    stamps: Stamps
    columns: dict[str, Array]  # keyed like TITLES; "pressure" may be absent
    labels: dict[str, str] = field(default_factory=dict)  # what the file itself calls each column
    moment: float = 0.5  # h after the stamp at which the sun stands for the row
    notes: tuple[str, ...] = ()  # what was put in place of something the file lacks, in words

    def label(self, column: str) -> str:
        """The column's name in the file, else in plain words."""
        return self.labels.get(column, TITLES[column])


@dataclass(frozen=True, slots=True)
class Column:
    """One column of a format: our name, the file's label, its missing code, and its units in one of SI."""

    name: str
    label: str
    missing: Missing
    per: float = 1.0


def from_code(code: float) -> Missing:
    """A value at or above the code is missing."""
    return lambda values: values >= code


def up_to_code(code: float) -> Missing:
    """A value at or below the code is missing."""
    return lambda values: values <= code


def columns_of(frame: pd.DataFrame, columns: Sequence[Column], row: Whole) -> dict[str, Array]:
    """SI arrays with NaN for missing codes and blanks; ClimateFault naming each column with text in it."""
    import pandas as pd

    faults, out = [], {}
    for column in columns:
        given = frame[column.label]
        values = pd.to_numeric(given, errors="coerce").to_numpy(dtype=float, na_value=np.nan, copy=True)
        wrong = np.flatnonzero(np.isinf(values) | (np.isnan(values) & given.notna().to_numpy()))
        if wrong.size:
            faults.append(
                Fault(
                    f"row {row[wrong[0]]}, column {column.label}",
                    f"“{str(given.iloc[wrong[0]])[:20]}” is no usable number{_more(wrong.size)}; mend the file.",
                )
            )
        values[column.missing(values)] = np.nan
        out[column.name] = values / column.per
    if faults:
        raise ClimateFault(*faults)
    return out


def counted(count: int, noun: str) -> str:
    """A count with its noun, in the plural where it is one."""
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"


def _more(count: int) -> str:
    return f" ({count} such rows)" if count > 1 else ""
