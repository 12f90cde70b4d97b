"""Does every route equal what two direct estimates say, and is the best leakage to seal to really the best?"""

import dataclasses

import numpy as np
import pytest
from scipy import optimize

from estimator import Case, run
from estimator.at_leakage import Ground, ground, option_at
from estimator.climate.year import ClimateYear
from estimator.inputs.home import Leakage
from estimator.inputs.sealing import Sealing
from estimator.leak_range import with_q50
from estimator.routes import BOTH, LEAVE, RECOVER, SEAL, best_targets, routes, sealing_cost
from estimator.units import to_m3h


@pytest.fixture(scope="module")
def place(year: ClimateYear) -> Ground:
    return ground(Case(), year)


@pytest.mark.parametrize("start", ["today", "extract"])
def test_every_route_equals_two_direct_estimates(start: str, place: Ground, year: ClimateYear) -> None:
    found = routes(place, option="recovery", start=start)
    before = run(with_q50(Case(), 8.5), year).estimate.options
    sealed = run(with_q50(Case(), Case().sealing.target), year).estimate.options
    left = before[start]
    for name, direct in (
        (LEAVE, left),
        (SEAL, sealed[start]),
        (RECOVER, before["recovery"]),
        (BOTH, sealed["recovery"]),
    ):
        route = found.routes[name]
        saving = left.household_bill - direct.household_bill - (direct.upkeep - left.upkeep)
        assert route.net_saving == pytest.approx(saving, rel=1e-9, abs=1e-9)
        assert route.heat_saved == pytest.approx(left.heating_demand - direct.heating_demand, rel=1e-9, abs=1e-9)
        assert route.carbon_saving == pytest.approx(left.household_carbon - direct.household_carbon, rel=1e-9, abs=1e-9)
        assert route.own_air == pytest.approx(
            to_m3h(float(np.mean(direct.air.envelope + direct.air.balanced))), rel=1e-9
        )
        assert route.short == pytest.approx(np.mean(direct.air.short), abs=1e-12)


def test_the_cost_of_both_is_the_cost_of_each(place: Ground) -> None:
    found = routes(place, option="recovery", start="today").routes
    for level in range(3):
        assert found[BOTH].cost[level] == pytest.approx(found[SEAL].cost[level] + found[RECOVER].cost[level])
    assert found[SEAL].cost.low < found[SEAL].cost.middle < found[SEAL].cost.high
    assert found[LEAVE].cost == (0.0, 0.0, 0.0)


def test_each_halving_of_the_leakage_costs_the_same() -> None:
    sealing = Sealing(step_low=5.0, step=10.0, step_high=20.0)
    # 200 m² of envelope: one halving 1,000, 2,000 or 4,000; from 8 to 2 two of them; the reverse nothing.
    once = sealing_cost(sealing, area=200.0, start=np.array(8.0), end=np.array(4.0))
    twice = sealing_cost(sealing, area=200.0, start=np.array(8.0), end=np.array(2.0))
    assert [float(cost) for cost in once] == pytest.approx([1000.0, 2000.0, 4000.0])
    assert [float(cost) for cost in twice] == pytest.approx([2000.0, 4000.0, 8000.0])
    assert [float(c) for c in sealing_cost(sealing, area=200.0, start=np.array(2.0), end=np.array(8.0))] == [0.0] * 3


def test_a_house_tighter_than_the_target_is_not_sealed(year: ClimateYear) -> None:
    tight = Case(leakage=Leakage(measure="q50", value=1.2, basis="measured"))
    found = routes(ground(tight, year), option="recovery", start="extract").routes
    assert found[SEAL].cost.middle == 0.0
    assert found[SEAL].net_saving == pytest.approx(0.0, abs=1e-9)
    assert found[BOTH].net_saving == pytest.approx(found[RECOVER].net_saving, abs=1e-9)


def test_sealing_without_a_ventilation_plan_leaves_the_house_short_of_air(place: Ground) -> None:
    found = routes(place, option="recovery", start="today").routes
    assert found[SEAL].short > found[LEAVE].short > 0.0
    assert found[BOTH].short == pytest.approx(0.0, abs=0.05)


@pytest.mark.parametrize("option", ["today", "extract", "recovery"])
def test_the_best_leakage_agrees_with_a_general_optimiser(option: str, place: Ground) -> None:
    case, area = place.case, float(place.case.home.envelope_area or 0.0)
    unsealed = float(option_at(place, option, np.array([8.5])).bill[0])

    for level, target in enumerate(best_targets(place, option=option)):

        def loss(q50: float, level: int = level) -> float:
            cost = float(sealing_cost(case.sealing, area=area, start=np.array(8.5), end=np.array(q50))[level])
            saved = unsealed - float(option_at(place, option, np.array([q50])).bill[0])
            return cost - saved * case.worth.life

        theirs = optimize.minimize_scalar(loss, bounds=(case.sealing.tightest, 8.5), method="bounded")
        assert target.life_gain == pytest.approx(max(-float(theirs.fun), 0.0), abs=1.0)
        assert target.life_gain == pytest.approx(-loss(target.q50), abs=1e-6)


def test_where_sealing_costs_more_than_it_can_save_no_sealing_is_best(year: ClimateYear) -> None:
    dear = dataclasses.replace(Case(), sealing=Sealing(step_low=200.0, step=300.0, step_high=400.0))
    for target in best_targets(ground(dear, year), option="extract"):
        assert not target.pays
        assert target.q50 == pytest.approx(8.5)


def test_the_first_step_is_the_one_that_leaves_most_money(year: ClimateYear) -> None:
    cheap = dataclasses.replace(Case(), sealing=Sealing(step_low=1.0, step=2.0, step_high=3.0))
    dear = dataclasses.replace(Case(), sealing=Sealing(step_low=200.0, step=300.0, step_high=400.0))
    assert routes(ground(cheap, year), option="recovery", start="extract").first_step.name == SEAL
    assert routes(ground(dear, year), option="recovery", start="extract").first_step.name == LEAVE


@pytest.mark.parametrize("known", [[3.0], [3.0, 7.5], [7.5, 3.0, 9.0], [1.0]])
def test_what_is_known_of_other_leakages_changes_nothing(known: list[float], year: ClimateYear) -> None:
    place, asked = ground(Case(), year), np.array([7.5, 3.0, 7.5, 4.0])
    had = option_at(place, "recovery", np.array(known))
    for one, other in zip(
        dataclasses.astuple(option_at(place, "recovery", asked)),
        dataclasses.astuple(option_at(place, "recovery", asked, known=had)),
        strict=True,
    ):
        np.testing.assert_allclose(one, other, rtol=1e-14)  # one home alone is summed in another order
