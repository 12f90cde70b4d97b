"""How far is a UK-average year made of monthly means from the published UK standard year of degree-days?

They are different averages: the monthly means are of a warmer period and weigh places otherwise. The difference is
stated here, not tuned away; one shift of temperature, the same all year, accounts for nearly all of it.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from estimator.climate.sources import load_year
from estimator.units import MONTH_DAYS, Array

# UK standard year of degree-days, base 15.5 °C by month, and by year at three bases [K d], as used in the trade.
STANDARD_MONTHS = np.array([395, 342, 297, 233, 151, 77, 42, 44, 83, 177, 275, 346])
STANDARD = {10.0: 1060.0, 15.5: 2462.0, 18.5: 3422.0}
MONTHS = np.repeat(np.arange(12), np.array(MONTH_DAYS) * 24)
FOUND = {10.0: -0.16, 15.5: -0.11, 18.5: -0.08}
SHIFT = 0.8  # K


@pytest.fixture(scope="module")
def temp() -> Array:
    return load_year("UK average").temp_air


def degree_days(temp: Array, base: float) -> float:
    return float(np.where(temp < base, base - temp, 0.0).sum() / 24.0)


@pytest.mark.parametrize("base", STANDARD)
def test_the_difference_is_as_stated(temp: Array, base: float, table: Callable[[str, str], None]) -> None:
    difference = degree_days(temp, base) / STANDARD[base] - 1.0
    table(
        "Degree-days of the UK average, made of monthly means, against the published UK standard year",
        f"base {base:4g} °C: {degree_days(temp, base):.0f} K d, standard {STANDARD[base]:.0f}, "
        f"{100 * difference:+.1f} %; {SHIFT:g} K colder all year it would be {degree_days(temp - SHIFT, base):.0f}",
    )
    assert difference == pytest.approx(FOUND[base], abs=0.015)


@pytest.mark.parametrize("base", STANDARD)
def test_one_shift_of_temperature_accounts_for_it_at_every_base(temp: Array, base: float) -> None:
    """Were the spread of days or hours wrong, the three bases would ask for three shifts."""
    assert degree_days(temp - SHIFT, base) == pytest.approx(STANDARD[base], rel=0.03)


def test_the_months_run_alike(temp: Array) -> None:
    """Shares of the year by month, within two hundredths of the year.

    December differs most: it is as cold as January in the monthly means, and was milder in the standard year.
    """
    below = np.where(temp < 15.5, 15.5 - temp, 0.0)
    shares = np.bincount(MONTHS, below) / below.sum()
    np.testing.assert_allclose(shares, STANDARD_MONTHS / STANDARD_MONTHS.sum(), atol=0.02)


def test_colder_regions_have_more_degree_days_and_more_frost() -> None:
    """Common practice, no source: Cornwall is mild, the east of Scotland is not; the sea keeps frost from Shetland."""
    west, east, isles = (load_year(name).temp_air for name in ("South-west England", "East Scotland", "Shetland"))
    assert degree_days(west, 15.5) < degree_days(east, 15.5)
    assert (west < -3.0).sum() < (east < -3.0).sum()
    assert (isles < -3.0).sum() < (east < -3.0).sum()
