"""How do the rows of one clock become those of another?"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from estimator.climate.raw import Stamps
from estimator.units import HOURS_PER_DAY, MONTH_DAYS

DEGREES_PER_HOUR = 360.0 / HOURS_PER_DAY  # of longitude


def zone_of(longitude: float) -> float:
    """Whole hours before UTC of the zone in which a longitude [°] lies by the sun; borders are not asked."""
    return float(round(longitude / DEGREES_PER_HOUR))


def turned(stamps: Stamps, hours: int) -> Stamps:
    """Stamps of the same rows on a clock that many hours ahead; the year closes on itself.

    The calendar has a 29 February where the rows have one.
    """
    if hours == 0:
        return stamps
    leap = bool(((stamps.month == 2) & (stamps.day == 29)).any())
    days = np.array([length + (leap and month == 1) for month, length in enumerate(MONTH_DAYS)])
    starts = np.concatenate([[0], np.cumsum(days)])
    per_day = int(HOURS_PER_DAY)
    slot = ((starts[stamps.month - 1] + stamps.day - 1) * per_day + stamps.hour + hours) % (int(starts[-1]) * per_day)
    day, hour = np.divmod(slot, per_day)
    month = np.searchsorted(starts, day, side="right")
    return replace(stamps, month=month, day=day - starts[month - 1] + 1, hour=hour)
