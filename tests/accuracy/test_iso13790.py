"""Is the heat saved by recovery what the simple hourly method of ISO 13790:2008 finds?

The two constants of the memory were fitted to this method on other homes, among others on the two real years; the
invented years played no part in it. Both methods get the same air; the reference keeps its surface resistance, its
split of gains and its windows (see there), so that the *demand* of the estimator, which counts fabric air to air, reads
higher. The saving, a difference, hardly does.
"""

from __future__ import annotations

import numpy as np
import pytest

from estimator import load_year
from estimator.climate.sources import DEMO_CLIMATES
from estimator.evidence.held import Held, held
from tests.accuracy.homes import Sample, sample
from tests.accuracy.table import row, worst

HOMES = 250
DRAW = 13790
YEARS = ("Greensboro", "Sand Point", *DEMO_CLIMATES)


@pytest.fixture(scope="module")
def homes() -> Sample:
    return sample(HOMES, draw=DRAW)


@pytest.fixture(scope="module", params=YEARS)
def result(request: pytest.FixtureRequest, homes: Sample) -> Held:
    found = held(homes, load_year(request.param))
    print(row(request.param, found), worst(homes, found), sep="\n")
    return found


def test_heat_saved(result: Held) -> None:
    """Median error within 1 %, 95 of 100 homes within 4 %, none beyond 6 %."""
    error = np.abs(result.saving_error)
    assert np.median(error) < 0.01
    assert np.quantile(error, 0.95) < 0.04
    assert np.max(error) < 0.06


def test_every_home_saves_heat_worth_comparing(result: Held) -> None:
    """A relative error of nearly nothing would say nothing: the least saving is well above the noise."""
    assert np.min(result.saved_reference) > 100.0


def test_every_mass_class_and_both_ends_of_leakage(result: Held, homes: Sample) -> None:
    """No corner of the sample hides behind the rest: each mass class, tight and leaky homes by themselves."""
    error = np.abs(result.saving_error)
    corners = [homes.mass_class == number for number in range(5)] + [homes.n50 < 1.5, homes.n50 > 6.0]
    for corner in corners:
        assert np.count_nonzero(corner) >= 20
        assert np.median(error[corner]) < 0.02


def test_demand_itself_reads_high(result: Held) -> None:
    """Fabric counted air to air: 5 to 11 % above the reference in the middle, nine in ten homes within 16 %.

    The reference puts 15.5 W/K per m² of floor in series with all fabric, which alone makes 3 to 19 % of fabric of 0.5
    to 3 W/(K m²). The error is stated, not hidden: it is why the tool answers with savings.
    """
    middle = np.median(result.demand_error)
    assert 0.05 < middle < 0.11
    assert np.quantile(np.abs(result.demand_error), 0.9) < 0.16
