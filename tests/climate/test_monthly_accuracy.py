"""Is a year made of monthly means near enough to the real year that they are from?

The table of errors stands at the end of the tests' output; the longer one, over twenty throws of chance, is printed by
`python -m tests.accuracy.monthly`. Miami has no base
with degree-hours worth comparing and no frost; its homes save too little heat for a relative error.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from estimator.climate.monthly import DRAW, FROST
from tests.accuracy.monthly import HEAD, KNOWN, YEARS, frost_range, law_without, nine_in_ten, real, row, tried

pytestmark = pytest.mark.slow
COLD_YEARS = ("Greensboro", "Sand Point")
ALONE = ("wind, sun", "wind, sun, swing")
ALLOWED_ALONE = {20.0: 0.03, 18.0: 0.03, 15.5: 0.07, 12.0: 0.15}
FEW_DRAWS = (DRAW, 1, 2, 3, 4)
FEWER = (DRAW, 1)  # where heat is worked out in a hundred homes


@pytest.mark.parametrize("name", COLD_YEARS)
@pytest.mark.parametrize("known", ["temperature alone", *ALONE])
def test_degree_hours_from_monthly_means_alone(name: str, known: str) -> None:
    for draw in FEW_DRAWS:
        found = tried(name, known, draw).degree_hours
        assert len(found) == 4
        for base, error in found.items():
            assert abs(error) < ALLOWED_ALONE[base], f"base {base:g}, draw {draw}"


@pytest.mark.parametrize("name", COLD_YEARS)
@pytest.mark.parametrize("known", [*ALONE, "wind, sun, spread", "wind, sun, swing, spread"])
def test_heat_saved_in_nine_of_ten_homes(name: str, known: str) -> None:
    """The throw that stands for the year.

    At Greensboro, without spread, five of twenty throws lie beyond (two with the swing known), the worst at 6.6 %.
    """
    assert nine_in_ten(name, known) < 4.0


@pytest.mark.parametrize(("name", "most"), [("Greensboro", 4.0), ("Sand Point", 7.5)])
def test_heat_saved_from_temperature_alone(name: str, most: float) -> None:
    """Wind and sun are guessed then; Sand Point is windier and cloudier than its latitude, and lies beyond 4 %."""
    assert nine_in_ten(name, "temperature alone") < most


@pytest.mark.parametrize("name", YEARS)
@pytest.mark.parametrize("known", KNOWN)
def test_the_table_of_errors(name: str, known: str, table: Callable[[str, str], None]) -> None:
    """Worked out for the throw that stands for the year and another; `python -m tests.accuracy.monthly` for 20."""
    table(
        f"Errors in % of years made of monthly figures: mean of two throws (worst)\n{HEAD}",
        row(name, known, FEWER),
    )
    if not KNOWN[known]:
        low, high = frost_range(name).min(), frost_range(name).max()
        frost = f"frost hours from monthly means {low:.0f}-{high:.0f}, real {(real(name).temp_air < FROST).sum()}"
        table("Frost as a range over 20 throws and three spreads", f"{name}: {frost}")


@pytest.mark.parametrize("name", COLD_YEARS)
def test_degree_hours_with_the_spread_of_daily_means(name: str) -> None:
    """Swing known as well, mean of throws; with swing inferred from the sun Greensboro reads 3.4 % low at 12 °C."""
    found = [tried(name, "wind, sun, swing, spread", draw).degree_hours for draw in FEW_DRAWS]
    for base in found[0]:
        assert abs(np.mean([one[base] for one in found])) < 0.02


@pytest.mark.parametrize("name", ["Greensboro", "Sand Point", "Miami"])
def test_the_true_frost_lies_within_the_range(name: str) -> None:
    hours = frost_range(name)
    assert hours.shape == (3, 20)
    assert hours.min() <= (real(name).temp_air < FROST).sum() <= hours.max()


@pytest.mark.parametrize("name", ["Greensboro", "Sand Point"])
@pytest.mark.parametrize("known", ["wind, sun, spread", "wind, sun, swing, spread"])
def test_frost_hours_with_the_spread_of_daily_means(name: str, known: str) -> None:
    found = [tried(name, known, draw) for draw in range(1, 21)]
    truth = found[0].frost_real
    assert np.mean([one.frost for one in found]) == pytest.approx(truth, abs=max(40.0, 0.3 * truth))


@pytest.mark.parametrize("name", ["Greensboro", "Sand Point", "Miami"])
def test_the_law_of_spread_was_not_fitted_on_the_year_it_is_tried_on(name: str) -> None:
    """Leaving a year out moves the law: each is fitted on the other two."""
    others = {law_without(other) for other in ("Greensboro", "Sand Point", "Miami") if other != name}
    assert law_without(name) not in others
