"""Does the clock agree with the public database of time zones?"""

from __future__ import annotations

from datetime import datetime, timedelta, timezone
from zoneinfo import ZoneInfo

import numpy as np
import pytest

from estimator.errors import InputFaults
from estimator.money.clock import DAYLIGHT_SAVING, clock, hours_per_row, row_means

# IANA time zone database through the standard library; years without a leap day since the rules were last changed.
ZONES = [
    ("Europe/London", "Europe", 0.0),
    ("Europe/Helsinki", "Europe", 2.0),
    ("America/New_York", "North America", -5.0),
    ("America/St_Johns", "North America", -3.5),
    ("Australia/Sydney", "Australia, south-east", 10.0),
    ("Pacific/Auckland", "New Zealand", 12.0),
    ("Asia/Tokyo", "none", 9.0),
]


@pytest.mark.parametrize("year", [2015, 2017, 2018, 2019, 2021, 2022, 2023])
@pytest.mark.parametrize(("zone", "rule", "offset"), ZONES)
def test_like_the_time_zone_database(zone: str, rule: str, offset: float, year: int) -> None:
    first = datetime(year, 1, 1, tzinfo=timezone(timedelta(hours=offset)))
    local = [(first + timedelta(hours=h)).astimezone(ZoneInfo(zone)) for h in range(8760)]
    ours = clock(first_weekday=first.weekday(), daylight_saving=DAYLIGHT_SAVING[rule], utc_offset=offset)
    assert ours.hour.tolist() == [moment.hour for moment in local]
    assert ours.weekday.tolist() == [moment.weekday() for moment in local]
    assert ours.month.tolist() == [moment.month - 1 for moment in local]


def test_weekday_that_is_none() -> None:
    with pytest.raises(InputFaults, match="0 for Monday"):
        clock(first_weekday=7, daylight_saving=None)


def test_rows_must_fill_the_year() -> None:
    assert hours_per_row(2190) == 4
    np.testing.assert_array_equal(row_means(np.arange(8760.0), rows=4380)[:2], [0.5, 2.5])
    with pytest.raises(ValueError, match="evenly"):
        hours_per_row(1000)
