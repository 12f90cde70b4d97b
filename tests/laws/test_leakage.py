"""What does a leaky envelope do to the heat that recovery saves?

Against continuous extract, both fans at the required rate and equal ventilators: the extract fan takes the place of
part of the infiltration, the balanced unit does not, so that the saving falls with every hole.
"""

from __future__ import annotations

import dataclasses
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator import ClimateYear
from estimator.air.leakage import leakage_area
from estimator.corridor import home_year
from estimator.evidence.held import plain_option
from estimator.survey.numbers import HomeNumbers, OptionNumbers
from estimator.units import Array, from_m3h
from tests.accuracy.homes import sample
from tests.climates import OF_EVERY_KIND
from tests.laws.settings import FEW, KINDS, WINTERS, default_home, default_option, demand, homes, year_of

EFFICIENCY = 0.85
LEAKAGES = np.geomspace(0.1, 30.0, 40)[:, None]  # 1/h at 50 Pa
BEYOND = np.geomspace(0.1, 300.0, 48)[:, None]  # far beyond any house
BASE = 15.5  # °C


def pair(home: HomeNumbers, efficiency: float = EFFICIENCY) -> tuple[OptionNumbers, OptionNumbers]:
    """Plain extract and heat recovery at the required rate, nothing else about them."""
    rate = home.required
    return (
        plain_option(supply=0.0, extract=rate),
        plain_option(supply=rate, extract=rate, effectiveness=efficiency),
    )


def saved(home: HomeNumbers, year: ClimateYear, efficiency: float = EFFICIENCY) -> Array:
    """Heat saved [kWh] by recovery against extract, (n, 1)."""
    extract, recovery = pair(home, efficiency)
    return demand(home, extract, year) - demand(home, recovery, year)


def leaky(leakages: Array = LEAKAGES, **changes: Any) -> HomeNumbers:
    """The default home in a column of leakages."""
    home = dataclasses.replace(default_home(), **changes)
    return dataclasses.replace(home, leakage_area=leakage_area(from_m3h(leakages * home.volume), pressure=50.0))


@pytest.mark.parametrize("kind", KINDS)
@given(home=homes(), factor=st.floats(1.01, 4.0))
@FEW
def test_leakier_is_never_cheaper_to_heat(kind: str, home: HomeNumbers, factor: float) -> None:
    """With the rule that no option is short of air switched off, for every option and both winters."""
    leakier = dataclasses.replace(home, leakage_area=home.leakage_area * factor)
    for name in WINTERS:
        tight = demand(home, default_option(kind), year_of(name), top_up=False)
        loose = demand(leakier, default_option(kind), year_of(name), top_up=False)
        assert loose[0] >= tight[0]


@pytest.mark.parametrize("model", ["annual", "basic", "enhanced"])
@pytest.mark.parametrize("name", OF_EVERY_KIND)
def test_saving_falls_strictly_at_a_fixed_base(name: str, model: str) -> None:
    """On climates of every kind, by every infiltration model, far into the negative: nothing is clipped."""
    column = saved(leaky(BEYOND, infiltration_model=model, fixed_base=BASE), year_of(name))[:, 0]
    assert np.all(np.diff(column) < 0.0)
    assert column[0] > 0.0 > column[-1]


def _with_infiltration(times_fan_flow: float, year: ClimateYear) -> HomeNumbers:
    """The default home, leaky enough that its constant infiltration is a given multiple of the required rate."""
    home = dataclasses.replace(default_home(), infiltration_model="annual", fixed_base=BASE)
    specific = float(np.squeeze(home_year(home, year).specific_infiltration))
    return dataclasses.replace(home, leakage_area=times_fan_flow * home.required / specific)


@pytest.mark.parametrize(("efficiency", "crossing"), [(0.5, 0.75), (0.8, 2.4), (0.9, 4.95)])
@pytest.mark.parametrize("name", OF_EVERY_KIND)
def test_saving_passes_nil_where_arithmetic_says(name: str, efficiency: float, crossing: float) -> None:
    """Constant infiltration: nil where √(Qi² + Q²) = Qi + Q (1 − e), solved by hand for three efficiencies.

    e = 0.5: Qi = 0.75 Q. e = 0.8: Qi = 2.4 Q (hypot(2.4, 1) = 2.6 = 2.4 + 0.2). e = 0.9: Qi = 4.95 Q.
    """
    year = year_of(name)
    most = saved(_with_infiltration(0.0, year), year, efficiency)
    at, before, after = (
        saved(_with_infiltration(crossing * factor, year), year, efficiency) for factor in (1.0, 0.999, 1.001)
    )
    assert before > 0.0 > after
    assert abs(at) < 1e-9 * most


@pytest.mark.parametrize("name", OF_EVERY_KIND)
def test_saving_tends_to_minus_what_the_exchanger_fails_to_recover(name: str) -> None:
    """Without leaks it is e Q, under endless leaks −(1 − e) Q: with e = 0.75 three to minus one."""
    year = year_of(name)
    tight = saved(_with_infiltration(0.0, year), year, 0.75)
    endless = saved(_with_infiltration(2e4, year), year, 0.75)
    assert tight / endless == pytest.approx(-3.0, rel=3e-4)


@pytest.mark.parametrize("name", OF_EVERY_KIND)
def test_with_memory_it_rises_hardly_anywhere(name: str) -> None:
    """Fabric from poor to very good in the default home: all rises together at most 5 kWh a year.

    A rise there is at all only where the saving is small, as in a winter that hardly is one.
    """
    for fabric_loss in (50.0, 80.0, 150.0, 260.0):
        steps = np.diff(saved(leaky(fabric_loss=fabric_loss), year_of(name))[:, 0])
        assert np.sum(steps[steps > 0.0]) <= 5.0


@pytest.mark.parametrize("name", OF_EVERY_KIND)
def test_with_memory_it_rises_hardly_anywhere_in_random_homes(name: str) -> None:
    """Equal ventilators: no home among the random ones gains more than 5 kWh a year by being leakier."""
    drawn = sample(24, draw=7)
    savings = []
    for n50 in (0.3, 0.8, 2.0, 5.0, 12.0, 30.0):
        home = dataclasses.replace(drawn.home, leakage_area=drawn.home.leakage_area * (n50 / drawn.n50[:, None]))
        savings.append(saved(home, year_of(name))[:, 0])
    steps = np.diff(savings, axis=0)
    assert np.all(np.sum(np.maximum(steps, 0.0), axis=0) <= 5.0)


@pytest.mark.parametrize("name", OF_EVERY_KIND)
def test_exception_only_houses_that_gains_carry(name: str) -> None:
    """Strong gains in good fabric: where the saving rises by more, the tight house with recovery needs no heat at all.

    What is not needed cannot be saved; leaks bring the need back, and with it the use of recovered heat. Next to none
    is taken as 0.1 kWh a year for each m² of floor.
    """
    year = year_of(name)
    rises = []
    for fabric_loss, internal_gains in ((40.0, 700.0), (40.0, 1000.0), (40.0, 1300.0), (60.0, 1000.0), (60.0, 1300.0)):
        home = leaky(fabric_loss=fabric_loss, internal_gains=internal_gains)
        steps = np.diff(saved(home, year)[:, 0])
        rises.append(float(np.sum(steps[steps > 0.0])))
        if rises[-1] > 5.0:
            assert demand(home, pair(home)[1], year)[0] < 0.1 * 110.0
            fixed = saved(dataclasses.replace(home, fixed_base=BASE), year)[:, 0]
            assert np.all(np.diff(fixed) < 0.0)  # the air is not why: at a fixed base the saving falls
    if name in WINTERS:
        assert max(rises) > 5.0
