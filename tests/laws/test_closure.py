"""Does the heat of exchanger, ducts and house add up in every hour?

The nodes are walked one by one, outdoors to rooms and rooms to outdoors, with duct losses from their own exponential
and the exchanger of a general heat transfer library (`ht`, counterflow effectiveness from transfer units).
What the rooms lose must be what the estimator asks of the heating, and what enters from heating, pre-heater and the
unit's room must be what leaves through leaks and exhaust.
"""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass
from typing import Any

import numpy as np
import pytest
from ht import effectiveness_from_NTU
from hypothesis import given
from hypothesis import strategies as st

from estimator.corridor import AirYear, HomeYear
from estimator.evidence.held import plain_option
from estimator.survey.numbers import DuctConductances, HomeNumbers, OptionNumbers
from tests.laws.settings import FEW, homes, ventilation_load, year_of

CONDUCTANCE = st.floats(0.0, 8.0)  # W/K
FLOW = st.floats(0.01, 0.1)  # m³/s
ZONE = 0.3


@dataclass(frozen=True)
class Walk:
    """Temperatures along both streams [°C] and what the rooms lose to the ducts that stand in them [W]."""

    entering: Any
    supplied: Any  # as it reaches the rooms
    exhausted: Any  # as it leaves the house or the unit's room
    preheater: Any  # W
    from_rooms: Any  # W, to ducts in warm rooms
    from_zone: Any  # W, to ducts in the unit's room (negative: given to it)


def _after(start: Any, surrounding: Any, conductance: float, capacity: float) -> Any:
    return surrounding + (start - surrounding) * np.exp(-conductance / capacity)


def walk(option: OptionNumbers, shared: HomeYear, temp_in: float) -> Walk:
    """Both streams of a unit that runs all day at one flow."""
    state, duct = option.states[0], option.ducts
    supply, extract = shared.heat_capacity * state.supply, shared.heat_capacity * state.extract
    least = min(supply, extract)
    certified = float(option.effectiveness)  # in equal flows at the reference flow: N = e/(1 − e)
    units = certified / (1.0 - certified) * option.reference_flow / min(state.supply, state.extract)
    from_units: Any = effectiveness_from_NTU
    effectiveness = from_units(units, Cr=least / max(supply, extract), subtype="counterflow")
    out = temp_in - shared.temp_difference
    around = out + ZONE * shared.temp_difference if option.outside else temp_in
    arriving = _after(out, around, duct.intake, supply)
    entering = arriving if option.preheat_to is None else np.maximum(arriving, option.preheat_to)
    drawn = _after(temp_in, around, duct.extract, extract) if option.outside else temp_in
    exchanged = effectiveness * least * (drawn - entering)
    leaving, spent = entering + exchanged / supply, drawn - exchanged / extract
    supplied = _after(leaving, around, duct.supply, supply) if option.outside else leaving
    exhausted = _after(spent, around, duct.exhaust, extract)
    to_ducts = supply * (arriving - out + supplied - leaving) + extract * (exhausted - spent + drawn - temp_in)
    return Walk(
        entering=entering,
        supplied=supplied,
        exhausted=exhausted,
        preheater=supply * (entering - arriving),
        from_rooms=0.0 if option.outside else to_ducts,
        from_zone=to_ducts if option.outside else 0.0,
    )


def closes(home: HomeNumbers, option: OptionNumbers, walked: Walk, shared: HomeYear, air: AirYear, load: Any) -> None:
    """Rooms and whole house balance to 1e-9 of the largest flow of heat."""
    state = option.states[0]
    capacity, difference = shared.heat_capacity, shared.temp_difference
    through_leaks = air.delivered - state.supply  # the rest of all outdoor air
    rooms = (
        capacity * through_leaks * difference
        + capacity * state.supply * (home.temp_in - walked.supplied)
        + walked.from_rooms
    )
    size = float(np.max(np.abs(capacity * air.delivered * difference)))
    np.testing.assert_allclose(load, rooms, rtol=0.0, atol=1e-9 * size)
    np.testing.assert_allclose(air.preheater, walked.preheater, rtol=0.0, atol=1e-9 * size)
    np.testing.assert_allclose(air.entering, walked.entering, rtol=0.0, atol=1e-9)
    # Supply exceeds extract: the difference leaves as room air through the leaks, like all that came in by them.
    out = home.temp_in - difference
    leaves = capacity * (air.delivered - state.extract) * difference + capacity * state.extract * (
        walked.exhausted - out
    )
    np.testing.assert_allclose(load + air.preheater + walked.from_zone, leaves, rtol=0.0, atol=1e-9 * size)


@pytest.mark.parametrize("outside", [False, True], ids=["inside", "outside"])
@pytest.mark.parametrize("heater", [None, -3.0, 2.0], ids=["no heater", "heater", "strong heater"])
@given(
    home=homes(),
    effectiveness=st.floats(0.3, 0.98),
    supply=FLOW,
    ratio=st.sampled_from([0.7, 0.95, 1.0, 1.05, 1.4]),
    ducts=st.tuples(CONDUCTANCE, CONDUCTANCE, CONDUCTANCE, CONDUCTANCE),
)
@FEW
def test_heat_of_exchanger_and_house_closes(
    outside: bool,
    heater: float | None,
    home: HomeNumbers,
    effectiveness: float,
    supply: float,
    ratio: float,
    ducts: tuple[float, float, float, float],
) -> None:
    year = year_of("Sand Point")
    plain = plain_option(supply=supply, extract=supply * ratio, effectiveness=effectiveness)
    intake, exhaust, warm_supply, warm_extract = ducts
    option = dataclasses.replace(
        plain,
        preheat_to=heater,
        outside=outside,
        zone_factor=ZONE,
        ducts=DuctConductances(
            intake=intake,
            exhaust=exhaust,
            supply=warm_supply if outside else 0.0,
            extract=warm_extract if outside else 0.0,
        ),
    )
    shared, air, load = ventilation_load(home, option, year)
    closes(home, option, walk(option, shared, home.temp_in), shared, air, load)
