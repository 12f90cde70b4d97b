"""Do the three ways of frost protection act when they must, and cost what two full estimates say?"""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from estimator import Case, Estimate, estimate
from estimator.frost_ways import WAYS, Frost, frost
from estimator.inputs.places import with_values
from tests.laws.settings import year_of

NO_DUCTS = {"options.recovery.ducts.intake": 0.0, "options.recovery.flows.imbalance": 0.0}


def done_with(climate: str, **changes: Any) -> Estimate:
    values = {**NO_DUCTS, **{f"options.recovery.{name.replace('__', '.')}": value for name, value in changes.items()}}
    return estimate(with_values(Case(), values), year_of(climate))


def ways(climate: str, **changes: Any) -> Frost:
    return frost(done_with(climate, **changes), "recovery")


@pytest.mark.parametrize("chosen", WAYS)
def test_every_way_is_the_difference_of_two_full_estimates(chosen: str) -> None:
    found = ways("Cold plain", unit__frost=chosen)
    assert found.chosen.name == chosen
    bare = done_with("Cold plain", unit__frost="none").options["recovery"]
    for way in found.ways:
        other = done_with("Cold plain", unit__frost=way.name).options["recovery"]
        assert way.electricity == pytest.approx(other.frost_electricity, abs=1e-9)
        assert way.heat == pytest.approx(other.heating_demand - bare.heating_demand, abs=1e-6)
        assert way.money == pytest.approx(other.household_bill - bare.household_bill, abs=1e-6)


def test_a_preheater_acts_below_its_set_point_only() -> None:
    year = year_of("Cold plain")
    heater = {way.name: way for way in ways("Cold plain").ways}["pre-heater"]
    assert heater.hours == np.count_nonzero(year.temp_air < -3.0)


def test_throttling_acts_where_the_exhaust_would_fall_below_its_set_point() -> None:
    """Balanced exhaust leaves at Ti - e (Ti - To): with e 0.82 and 19.5 °C, 1 °C is reached at To = -3.06 °C."""
    year = year_of("Cold plain")
    found = {way.name: way for way in ways("Cold plain", flows__boost_share=0.0).ways}
    limit = 19.5 - (19.5 - 1.0) / 0.82
    assert found["throttle"].hours == np.count_nonzero(year.temp_air < limit)
    assert found["throttle"].electricity == 0.0
    assert found["throttle"].heat > 0.0
    assert found["none"].hours == 0.0


@pytest.mark.parametrize(("climate", "needed"), [("Mild coast", False), ("Cold plain", True)])
def test_whether_the_climate_asks_for_it_does_not_hang_on_what_is_fitted(climate: str, needed: bool) -> None:
    """Common practice, no source: hardly ever on the coast, wanted on the plain."""
    for chosen in WAYS:
        assert ways(climate, unit__frost=chosen).needed is needed
