"""What happens in each hour of the year, with an option and with its baseline?

For those who want to follow the working down to the hour: columns for a table, one hour told in full, and a map of the
year with the hours of the day on one side and the days on the other.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from estimator.compare import Comparison
from estimator.estimate import Estimate, OptionYear
from estimator.report import figures
from estimator.report.rows import Rows
from estimator.units import DAYS_PER_YEAR, HOURS_PER_DAY, MONTH_DAYS, MONTH_NAMES, Array, to_kwh, to_m3h


@dataclass(frozen=True, slots=True)
class Column:
    """One figure of each hour: heading with unit, and how it is read of an option."""

    words: str
    unit: str
    read: Callable[[Estimate, OptionYear], Any]

    @property
    def heading(self) -> str:
        """As written above a column."""
        return _heading(self.words, self.unit)


def _heading(words: str, unit: str, *, imperial: bool | None = False) -> str:
    """As written above a column; tables that leave for other programs stay metric."""
    return f"{words} [{figures.unit_shown(unit, imperial=imperial)}]"


_NIGHT = (*range(6), 22, 23)  # hours of the day

WEATHER: tuple[tuple[str, str, Callable[[Estimate], Any]], ...] = (
    ("outdoor temperature", "°C", lambda done: done.year.temp_air),
    ("wind at 10 m", "m/s of wind", lambda done: done.year.wind_speed),
    ("sun and inside gains", "W", lambda done: done.shared.gain),
)

COLUMNS: tuple[Column, ...] = (
    Column("air through leaks and ventilators", "m³/h", lambda _, option: to_m3h(option.air.envelope)),
    Column("air through the unit", "m³/h", lambda _, option: to_m3h(option.air.balanced)),
    Column("air through windows", "m³/h", lambda _, option: to_m3h(option.air.windows)),
    Column("air entering the exchanger", "°C", lambda _, option: option.air.entering),
    Column("heat kept by the unit", "W", lambda _, option: option.air.recovered),
    Column("heaters of the unit", "W", lambda _, option: option.air.preheater),
    Column("fans and controls", "W", lambda _, option: option.air.fans),
    Column("heat that the air takes", "W", lambda _, option: option.heat.ventilation_load),
    Column(
        "heat lost, fabric and air", "W",
        lambda done, option: np.asarray(done.home.fabric_loss) * done.shared.temp_difference
        + option.heat.ventilation_load,
    ),
    Column("heat from the heating", "W", lambda _, option: option.heat.heat),
)  # fmt: skip


def of(done: Estimate, option: OptionYear, column: Column) -> Array:
    """One figure of an option in every row of the year, (rows,)."""
    return np.broadcast_to(np.squeeze(np.asarray(column.read(done, option), dtype=float)), (done.year.rows,))


def stamps(rows: int) -> tuple[NDArray[Any], NDArray[Any], Array]:
    """Month 1 to 12, day of month and hour of day at which each row begins, (rows,) each; standard time."""
    hour = np.arange(rows) * (DAYS_PER_YEAR * HOURS_PER_DAY / rows)
    day = (hour // HOURS_PER_DAY).astype(int)
    first = np.concatenate([[0], np.cumsum(MONTH_DAYS)])
    month = np.asarray(np.searchsorted(first, day, side="right"), dtype=int)
    return month, day - first[month - 1] + 1, np.asarray(hour % HOURS_PER_DAY)


def table(done: Estimate, comparison: Comparison) -> Mapping[str, NDArray[Any]]:
    """Every column of both options for a download, headings with unit, one row an hour."""
    month, day, hour = stamps(done.year.rows)
    found: dict[str, NDArray[Any]] = {"month": month, "day": day, "hour begins": hour}
    found |= {_heading(words, unit): np.asarray(read(done)) for words, unit, read in WEATHER}
    for name in (comparison.baseline, comparison.option):
        option = done.options[name]
        found |= {f"{option.label}: {column.heading}": of(done, option, column) for column in COLUMNS}
    return found


def told(done: Estimate, comparison: Comparison, *, month: int, day: int, hour: int) -> Rows:
    """One hour in full: what is outside, then each figure with the baseline and with the option.

    month, day: from 1; hour: 0 to 23, of standard time. ValueError for a day that the month has not.
    """
    if not (1 <= month <= len(MONTH_DAYS) and 1 <= day <= MONTH_DAYS[month - 1] and 0 <= hour < HOURS_PER_DAY):
        raise ValueError(f"day {day} of month {month}, hour {hour}, is no hour of a year of 365 days")
    row = int(((sum(MONTH_DAYS[: month - 1]) + day - 1) * HOURS_PER_DAY + hour) / done.year.weight)
    base, option = done.options[comparison.baseline], done.options[comparison.option]
    outside = ((words, unit, [float(read(done)[row])] * 2) for words, unit, read in WEATHER)
    inside = (
        (column.words, column.unit, [float(of(done, each, column)[row]) for each in (base, option)])
        for column in COLUMNS
    )
    name = f"{day} {MONTH_NAMES[month - 1]}, {hour:02d}:00 to {(hour + 1) % 24:02d}:00, standard time"
    return Rows(
        caption=name,
        head=("in this hour", base.label, option.label),
        rows=tuple(
            (
                _heading(words, unit, imperial=None),
                *(figures.fixed(float(figures.converted(value, unit)), decimals=1) for value in values),
            )
            for words, unit, values in (*outside, *inside)
        ),
        note="Heat from the heating also depends on what the house stored in the hours before.",
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class YearMap:
    """One figure of every hour, (24, 365): hours of the day by days of the year."""

    words: str
    unit: str
    values: Array
    finding: str


def heat_saved_map(done: Estimate, comparison: Comparison) -> YearMap:
    """Where in the year the option saves heat [kWh an hour]; below nil where it takes more than the baseline."""
    base, option = done.options[comparison.baseline], done.options[comparison.option]
    saved = to_kwh(np.squeeze(base.heat.heat - option.heat.heat) * done.year.weight)
    values = np.asarray(saved).reshape(int(DAYS_PER_YEAR), -1).T
    total = float(np.sum(values))
    if total <= 0.0:
        finding = "Over the year no heat is saved"
    else:
        days = np.sort(np.sum(values, axis=0))[::-1]
        half = int(np.searchsorted(np.cumsum(days), total / 2.0) + 1)
        finding = f"Half of the heat is saved in the {half} best days of the year"
    return YearMap(words="heat saved in the hour", unit="kWh", values=values, finding=finding)


def in_words(found: YearMap) -> str:
    """The map told to those who do not see it."""
    total = float(np.sum(found.values))
    night = float(np.sum(found.values[list(_NIGHT)]))
    part = f", {figures.share(night / total)} of it from 22:00 to 06:00" if total > 0.0 else ""
    return (
        f"{found.finding}. A map of all hours, days from left to right, hours of the day from below: "
        f"{found.words}, {figures.quantity(total, found.unit)} in the year{part}."
    )


def quarters(found: YearMap) -> Rows:
    """The map in numbers: each month, by four parts of the day."""
    ends = np.cumsum(MONTH_DAYS)
    parts = {"00 to 06": slice(0, 6), "06 to 12": slice(6, 12), "12 to 18": slice(12, 18), "18 to 24": slice(18, 24)}
    rows = []
    for name, first, last in zip(MONTH_NAMES, ends - np.asarray(MONTH_DAYS), ends, strict=True):
        cells = [float(np.sum(found.values[hours_of_day, first:last])) for hours_of_day in parts.values()]
        rows.append((name, *(figures.fixed(cell, decimals=1) for cell in (*cells, sum(cells)))))
    return Rows(
        caption=f"{found.words.capitalize()} [{found.unit}]",
        head=("month", *(f"{words} h" for words in parts), "all"),
        rows=tuple(rows),
    )
