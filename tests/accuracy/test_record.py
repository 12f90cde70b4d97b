"""Is the error that the package states of itself the one that a smaller run finds, and wide enough for each home?"""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest

from estimator import load_year
from estimator.climate.sources import DEMO_CLIMATES
from estimator.evidence.held import Held, held
from estimator.evidence.method import band_of, method_run
from estimator.units import Array
from tests.accuracy.homes import sample
from tests.accuracy.record import CLIMATES, COMMAND, FITTED, HOMES, PERHAPS_FITTED, bands, figures

SMALLER = 120
ANOTHER_DRAW = 52016


@cache
def found_on(name: str) -> Held:
    """Homes of another draw, in columns, on an included climate."""
    return held(sample(SMALLER, draw=ANOTHER_DRAW), load_year(name))


def test_every_climate_is_stated_and_those_fitted_on_are_named() -> None:
    stated = method_run()
    assert (stated.homes, stated.command) == (HOMES, COMMAND)
    assert [row.climate for row in stated.climates] == list(CLIMATES)
    assert [row.climate for row in stated.climates if row.fitted == "yes"] == list(FITTED)
    assert [row.climate for row in stated.climates if row.fitted == "perhaps"] == list(PERHAPS_FITTED)


@pytest.mark.parametrize("name", ["Inland vale", "Upland", "Greensboro"])
def test_other_homes_agree_with_what_is_stated(name: str) -> None:
    """Homes of another draw: the middle within 0.2 points, 95 of 100 where stated, none far beyond the worst."""
    stated = next(row for row in method_run().climates if row.climate == name)
    result = found_on(name)
    found, error = figures(result), np.abs(result.saving_error)
    assert found["median"] == pytest.approx(stated.median, abs=0.002)
    assert found["bias"] == pytest.approx(stated.bias, abs=0.002)
    assert found["demand_bias"] == pytest.approx(stated.demand_bias, abs=0.01)
    assert np.mean(error <= stated.nineteen_in_twenty) > 0.88
    assert found["worst"] < 1.5 * stated.worst


def test_the_error_shown_for_a_home_like_theirs_holds_19_of_20_other_homes_in_every_band() -> None:
    """Homes that the bounds were not drawn from, each against the bounds that stand beside its own answer."""
    results = [found_on(name) for name in (*DEMO_CLIMATES, *FITTED)]
    share = np.concatenate([result.met_by_heating for result in results])
    error = np.concatenate([result.saving_error for result in results])
    shown = [band_of(float(part), method_run()) for part in share]
    inside = np.array([band.low <= miss <= band.high for band, miss in zip(shown, error, strict=True)])
    for band in method_run().bands:
        homes = np.array([each is band for each in shown])
        assert np.mean(inside[homes]) >= 0.95 if np.sum(homes) >= 20 else np.sum(~inside[homes]) <= 1


def homes_that_miss(error: Array) -> Held:
    """Homes whose heating meets half of the loss, with the given errors of the saving."""
    one = np.ones(error.size)
    return Held(
        extract=2.0 + error,
        recovery=1.0 * one,
        extract_reference=2.0 * one,
        recovery_reference=one,
        loss=(2.0 + error) / 0.45,
    )


def test_a_climate_where_the_methods_part_widens_the_band_however_few_its_homes_are() -> None:
    rng = np.random.default_rng(1)
    calm, wild = homes_that_miss(rng.normal(0.0, 0.005, 900)), homes_that_miss(rng.normal(0.01, 0.05, 60))
    quiet, both = ({band["up_to"]: band for band in bands([*some])}[0.5] for some in ([calm], [calm, wild]))
    inside = (wild.saving_error >= both["low"]) & (wild.saving_error <= both["high"])
    assert np.mean(inside) >= 0.95
    assert both["high"] > 4.0 * quiet["high"]
