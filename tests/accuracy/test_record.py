"""Is the error that the package states of itself the one that a smaller run finds?"""

from __future__ import annotations

import numpy as np
import pytest

from estimator import load_year
from estimator.evidence.method import method_run
from tests.accuracy.homes import held, sample
from tests.accuracy.record import CLIMATES, COMMAND, FITTED, HOMES, figures

SMALLER = 120
ANOTHER_DRAW = 52016


def test_every_climate_is_stated_and_those_fitted_on_are_named() -> None:
    stated = method_run()
    assert (stated.homes, stated.command) == (HOMES, COMMAND)
    assert [row.climate for row in stated.climates] == list(CLIMATES)
    assert [row.climate for row in stated.climates if row.fitted] == list(FITTED)


@pytest.mark.parametrize("name", ["Inland vale", "Upland", "Greensboro"])
def test_other_homes_agree_with_what_is_stated(name: str) -> None:
    """Homes of another draw: the middle within 0.2 points, 95 of 100 where stated, none far beyond the worst."""
    stated = next(row for row in method_run().climates if row.climate == name)
    result = held(sample(SMALLER, draw=ANOTHER_DRAW), load_year(name))
    found, error = figures(result), np.abs(result.saving_error)
    assert found["median"] == pytest.approx(stated.median, abs=0.002)
    assert found["bias"] == pytest.approx(stated.bias, abs=0.002)
    assert found["demand_bias"] == pytest.approx(stated.demand_bias, abs=0.01)
    assert np.mean(error <= stated.nineteen_in_twenty) > 0.88
    assert found["worst"] < 1.5 * stated.worst
