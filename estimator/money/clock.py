"""What does the clock on the wall say in each hour of the weather year?

Weather is kept in local standard time, tariffs and habits go by the clock: where summer time is observed they part by
an hour for more than half of the year. A year here has 365 days, so that only the weekday of 1 January is open.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from estimator.errors import Fault, InputFaults
from estimator.units import DAYS_PER_YEAR, HOURS_PER_DAY, HOURS_PER_YEAR, MONTH_DAYS, Array

Whole = NDArray[np.int64]

DAYS_PER_WEEK = 7
SUNDAY = 6
_HOURS = int(HOURS_PER_YEAR)
_DAY = int(HOURS_PER_DAY)


@dataclass(frozen=True, slots=True)
class ChangeDay:
    """When the clocks change: the nth Sunday of a month (1 to 12; -1 the last), at an hour of standard time."""

    month: int
    sunday: int
    hour: float


@dataclass(frozen=True, slots=True)
class DaylightSaving:
    """From when to when the clock runs an hour ahead; hours of universal time where `universal`, else of local."""

    starts: ChangeDay
    ends: ChangeDay
    universal: bool = False


# Directive 2000/84/EC, kept by the United Kingdom; 15 U.S.C. 260a as of 2007; Standard Time Amendment (Daylight
# Saving) Act 2007 of New South Wales; New Zealand Daylight Time Order 2007. All from memory, checked in the tests
# against the public database of time zones.
DAYLIGHT_SAVING: dict[str, DaylightSaving | None] = {
    "none": None,
    "Europe": DaylightSaving(ChangeDay(3, -1, 1.0), ChangeDay(10, -1, 1.0), universal=True),
    "North America": DaylightSaving(ChangeDay(3, 2, 2.0), ChangeDay(11, 1, 1.0)),
    "Australia, south-east": DaylightSaving(ChangeDay(10, 1, 2.0), ChangeDay(4, 1, 2.0)),
    "New Zealand": DaylightSaving(ChangeDay(9, -1, 2.0), ChangeDay(4, 1, 2.0)),
}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Clock:
    """Clock time of the 8,760 hours of the year, each an array of whole numbers of shape (8760,).

    weekday: 0 Monday to 6 Sunday; hour: 0 to 23; month: 0 January to 11 December.
    """

    weekday: Whole
    hour: Whole
    month: Whole


def clock(*, first_weekday: int, daylight_saving: DaylightSaving | None, utc_offset: float = 0.0) -> Clock:
    """Clock time of every hour of a year of standard time.

    first_weekday: of 1 January, 0 Monday to 6 Sunday. utc_offset [h]: standard time less universal time; it matters
    only where the clocks change by universal time. InputFaults for a weekday outside 0 to 6.
    """
    if first_weekday not in range(DAYS_PER_WEEK):
        raise InputFaults(
            [Fault("weekday of 1 January", f"{first_weekday} was given; use 0 for Monday up to 6 for Sunday")]
        )
    standard = np.arange(_HOURS)
    shown = standard + _ahead(standard, daylight_saving, first_weekday, utc_offset)
    day = shown // _DAY
    months = np.repeat(np.arange(len(MONTH_DAYS)), MONTH_DAYS)
    return Clock(
        weekday=(first_weekday + day) % DAYS_PER_WEEK,
        hour=shown % _DAY,
        month=months[day % int(DAYS_PER_YEAR)],
    )


def _ahead(standard: Whole, rule: DaylightSaving | None, first_weekday: int, utc_offset: float) -> Whole:
    """1 while the clock runs an hour ahead, else 0."""
    if rule is None:
        return np.zeros_like(standard)
    shift = utc_offset if rule.universal else 0.0
    start = _hour_of_year(rule.starts, first_weekday) + shift
    end = _hour_of_year(rule.ends, first_weekday) + shift
    after, before = standard >= start, standard < end
    on = after & before if start < end else after | before
    return on.astype(np.int64)


def _hour_of_year(change: ChangeDay, first_weekday: int) -> float:
    first = sum(MONTH_DAYS[: change.month - 1])
    days = np.arange(first, first + MONTH_DAYS[change.month - 1])
    sundays = days[(first_weekday + days) % DAYS_PER_WEEK == SUNDAY]
    chosen = sundays[change.sunday - 1] if change.sunday > 0 else sundays[change.sunday]
    return float(chosen) * HOURS_PER_DAY + change.hour


def hours_per_row(rows: int) -> int:
    """Whole hours each row of a year stands for; ValueError where the rows do not fill the year evenly."""
    if rows < 1 or _HOURS % rows:
        raise ValueError(f"{rows} rows do not fill a year of {_HOURS} h evenly")
    return _HOURS // rows


def row_means(hourly: Array, *, rows: int) -> Array:
    """Mean of an hourly series over each row of a shorter year: shape (..., 8760) to (..., rows)."""
    means: Array = hourly.reshape(*hourly.shape[:-1], rows, hours_per_row(rows)).mean(axis=-1)
    return means
