"""Does the air do what air must, whatever the option?"""

from __future__ import annotations

import dataclasses
from typing import Any

import numpy as np
import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator import names
from estimator.air.recovery import DuctShares, inside_envelope, outside_envelope
from estimator.corridor import air_year, home_year
from estimator.evidence.held import plain_option
from estimator.survey.numbers import HomeNumbers
from tests.laws.settings import (
    FEW,
    KINDS,
    MANY,
    WINTERS,
    default_home,
    default_option,
    demand,
    homes,
    ventilation_load,
    year_of,
)

SHARE = st.floats(0.0, 1.0)
OUTDOORS = np.linspace(-35.0, 40.0, 76)


def _heat_content(pressure: float) -> float:
    """Dry air at 20 °C [J/(m³ K)]: density by the psychrolib library, 1,006 J/(kg K)."""
    psychrolib.SetUnitSystem(psychrolib.SI)
    return float(psychrolib.GetDryAirDensity(20.0, pressure)) * 1006.0


@given(home=homes(), flow=st.floats(0.005, 0.15))
@FEW
def test_balanced_without_recovery_is_flow_times_heat_content_times_difference(home: HomeNumbers, flow: float) -> None:
    year = year_of("Sand Point")
    shared, _, fans = ventilation_load(home, plain_option(supply=flow, extract=flow), year)
    _, _, leaks = ventilation_load(home, plain_option(supply=0.0, extract=0.0), year)
    difference = home.temp_in - year.temp_air
    expected = _heat_content(float(np.mean(year.pressure))) * flow * difference
    np.testing.assert_allclose(fans - leaks, expected, rtol=1e-6, atol=1e-6)
    np.testing.assert_array_equal(shared.temp_difference, difference)


@given(home=homes(), flow=st.floats(0.005, 0.15))
@FEW
def test_extract_and_balanced_differ_only_through_joining(home: HomeNumbers, flow: float) -> None:
    year = year_of("Greensboro")
    shared, balanced, load_balanced = ventilation_load(home, plain_option(supply=flow, extract=flow), year)
    _, extract, load_extract = ventilation_load(home, plain_option(supply=0.0, extract=flow), year)
    np.testing.assert_array_equal(balanced.infiltration, extract.infiltration)
    assert np.all(balanced.recovered == 0.0)
    assert np.all(extract.recovered == 0.0)
    leaks = balanced.infiltration
    less = leaks + flow - np.sqrt(leaks**2 + flow**2)
    spared = shared.heat_capacity * less * shared.temp_difference
    np.testing.assert_allclose(load_balanced - load_extract, spared, rtol=1e-9, atol=1e-9)


def _supplied(form: str, shares: DuctShares, *, effectiveness: float, temp_in: float, **more: Any) -> Any:
    difference = temp_in - OUTDOORS
    common: dict[str, Any] = {
        "temp_in": temp_in,
        "effectiveness": effectiveness,
        "ducts": shares,
        "capacity_supply": 40.0,
        "capacity_balanced": 40.0,
    }
    if form == "inside":
        return inside_envelope(difference, **common)
    return outside_envelope(difference, zone_factor=more["zone_factor"], **common)


@pytest.mark.parametrize("form", ["inside", "outside"])
@given(
    effectiveness=st.floats(0.0, 0.99),
    shares=st.tuples(SHARE, SHARE, SHARE, SHARE),
    zone=SHARE,
    temp_in=st.floats(15.0, 25.0),
)
@MANY
def test_supply_lies_between_outdoors_and_indoors(
    form: str, effectiveness: float, shares: tuple[float, ...], zone: float, temp_in: float
) -> None:
    """Without a heater: the heat spared is that of air no warmer than the rooms and no colder than outdoors."""
    back = _supplied(form, DuctShares(*shares), effectiveness=effectiveness, temp_in=temp_in, zone_factor=zone)
    supply = OUTDOORS + back.heat / 40.0
    low, high = np.minimum(OUTDOORS, temp_in), np.maximum(OUTDOORS, temp_in)
    assert np.all(supply >= low - 1e-9)
    assert np.all(supply <= high + 1e-9)
    assert np.all((back.entering >= low - 1e-9) & (back.entering <= high + 1e-9))
    assert np.all(back.preheater == 0.0)


@given(home=homes(), factor=st.floats(0.05, 1.5))
@FEW
def test_no_option_is_ever_short_with_the_rule_on(home: HomeNumbers, factor: float) -> None:
    """Whatever the fans give, in every hour, for every option; and without the rule no window is opened."""
    for kind in KINDS:
        option = default_option(kind)
        states = tuple(
            dataclasses.replace(state, supply=state.supply * factor, extract=state.extract * factor)
            for state in option.states
        )
        option = dataclasses.replace(option, states=states)
        for name in WINTERS:
            shared = home_year(home, year_of(name))
            on, off = (air_year(home, option, shared, top_up=top_up) for top_up in (True, False))
            assert np.all(on.delivered >= home.required * (1.0 - 1e-12))
            assert np.all(off.windows == 0.0)
            enough = off.short == 0.0
            np.testing.assert_allclose(on.windows[enough], 0.0, atol=1e-6 * home.required)


@pytest.mark.parametrize("name", names())
@pytest.mark.parametrize("efficiency", [0.6, 0.95])
def test_perfectly_tight_house_saves_flow_times_heat_content_times_efficiency_times_degree_hours(
    name: str, efficiency: float
) -> None:
    """No leaks, ventilators, ducts, frost heater, imbalance; fixed base; density by psychrolib, degrees counted."""
    base = 15.5
    home = dataclasses.replace(default_home(), leakage_area=0.0, fixed_base=base)
    year, rate = year_of(name), home.required
    extract = demand(home, plain_option(supply=0.0, extract=rate), year)
    recovery = demand(home, plain_option(supply=rate, extract=rate, effectiveness=efficiency), year)
    below = year.temp_air[year.temp_air < base]
    degree_hours = base * below.size - below.sum()
    expected = rate * _heat_content(float(np.mean(year.pressure))) * efficiency * degree_hours / 1000.0
    assert (extract - recovery).item() == pytest.approx(expected, rel=1e-6)
