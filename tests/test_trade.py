"""Does the estimator know what the trade knows?

Every fact here is common practice, no source: a check that the model can say it, never a rosy default. Where a default
rests on one, the origin that is shown beside the figure says so in the same words.
"""

from __future__ import annotations

import dataclasses
from typing import Any

import numpy as np
import pytest

from estimator import Case, estimate
from estimator.air.exchanger import supply_temperature
from estimator.air.recovery import DuctShares, inside_envelope
from estimator.air.requirement import wet_room_extract
from estimator.inputs.catalogue import option_fact, option_kinds, option_row
from estimator.inputs.cost import Cost
from estimator.inputs.home import Home
from estimator.inputs.option import Flows, Option, Unit
from estimator.survey.fill import filled
from estimator.units import to_lps
from tests.laws.settings import year_of

COMMON_PRACTICE = "common practice, no source"
# Fans that somebody switches on when needed are how a house is aired today, not a ventilation that runs.
ALL_DAY = [kind for kind in option_kinds() if option_fact(kind, "flow_from") != "intermittent rates"]


def with_option(kind: str, *, flows: Flows | None = None, unit: Unit | None = None, cost: Cost | None = None) -> Case:
    """The default case with one of its options said anew."""
    case = Case()
    option = Option(kind=kind, flows=flows or Flows(), unit=unit or Unit(), cost=cost or Cost())
    name = next(name for name, standing in case.options.items() if standing.kind == kind)
    return dataclasses.replace(case, options={**case.options, name: option})


@pytest.mark.parametrize("kind", ALL_DAY)
def test_ventilation_runs_24_hours_every_day(kind: str) -> None:
    """Common practice, no source."""
    known = option_row(kind)["flows.running_share"]
    assert known.value == 100.0
    assert COMMON_PRACTICE in known.source


def test_a_fan_that_never_rests_draws_its_power_for_8760_hours() -> None:
    """Common practice, no source. 33 l/s at 0.4 W/(l/s), no boost, no standby: 13.2 W × 8,760 h = 115.632 kWh."""
    flows = Flows(extract=33.0 * 3.6, boost_share=0.0)
    case = with_option("continuous extract", flows=flows, unit=Unit(fan_power=0.4, standby=0.0))
    option = estimate(case, year_of("Greensboro")).options["extract"]
    assert option.fan_electricity == pytest.approx(115.632, rel=1e-9)
    assert np.all(option.air.envelope >= 0.033 - 1e-12)


def test_a_plate_of_95_per_cent_supplies_19_degrees_at_20_and_0() -> None:
    """Common practice, no source."""
    assert supply_temperature(20.0, temp_out=0.0, effectiveness=0.95) == pytest.approx(19.0, abs=1e-12)
    bare = DuctShares(intake=1.0, exhaust=1.0, supply=1.0, extract=1.0)
    capacity = 40.0  # W/K
    back = inside_envelope(
        np.array([20.0]),
        temp_in=20.0,
        effectiveness=0.95,
        ducts=bare,
        capacity_supply=capacity,
        capacity_balanced=capacity,
    )
    assert back.heat[0] / capacity == pytest.approx(19.0, abs=1e-12)


def test_the_default_plate_is_a_middling_one() -> None:
    """The 95 % of good plates (common practice, no source) is a check; the default stands well below and says why."""
    known = option_row("heat recovery")["unit.effectiveness"]
    assert 73.0 < known.value < 90.0
    assert known.tag == "typical"
    assert "95%" in known.source
    assert COMMON_PRACTICE in known.source


def test_two_people_take_about_three_days() -> None:
    """Common practice, no source; longer in an occupied home."""
    row = option_row("heat recovery")
    assert row["cost.people"].value == 2.0
    assert row["cost.days"].value == pytest.approx(3.0, abs=1.0)
    assert COMMON_PRACTICE in row["cost.people"].source
    assert COMMON_PRACTICE in row["cost.days"].source
    assert "occupied" in row["cost.days"].source


def test_their_days_are_in_the_cost() -> None:
    """Common practice, no source: six days of work at 250 are 1,500 before tax."""
    nothing = Cost(kit=0.0, ducts=0.0, electrical=0.0, commissioning=0.0, making_good=0.0, vat=0.0, day_rate=250.0)
    option = estimate(with_option("heat recovery", cost=nothing), year_of("Greensboro")).options["recovery"]
    assert option.capital == pytest.approx(1500.0)


@pytest.mark.parametrize(
    "path", ["flows.running_share", "cost.people", "cost.days", "unit.frost", "ducts.bore", "flows.imbalance"]
)
def test_what_rests_on_the_trade_is_shown_so(path: str) -> None:
    """The origin that table, document and dashboard show names common practice in these words."""
    origin = filled(Case()).origins[f"options.recovery.{path}"]
    assert origin.tag in ("typical", "assumed")
    assert COMMON_PRACTICE in origin.source


def test_supply_goes_to_bedrooms_and_living_rooms_and_extract_comes_from_wet_rooms() -> None:
    """Common practice, no source: the row says so, and both sides of the unit move the same air."""
    words = option_fact("heat recovery", "words")
    assert "feeds bedrooms and living rooms" in words
    assert "draws from the wet rooms" in words
    flows = filled(Case()).case.options["recovery"].flows
    assert flows.supply == flows.extract


def test_a_bedroom_more_asks_for_supply_and_a_bathroom_more_for_extract() -> None:
    """Common practice, no source: bedrooms set the air supplied, wet rooms (kitchen, bath, utility) what is drawn."""

    def flows_of(**changes: int) -> Flows:
        return filled(Case(home=Home(**changes))).case.options["recovery"].flows  # type: ignore[arg-type]

    plain, bedroom = flows_of(bedrooms=3), flows_of(bedrooms=5)
    assert (bedroom.supply or 0.0) > (plain.supply or 0.0)
    bathrooms = flows_of(bedrooms=3, bathrooms=4)
    assert bathrooms.supply == plain.supply
    assert (bathrooms.boost_flow or 0.0) > (plain.boost_flow or 0.0)
    one_each: dict[str, Any] = {"kitchens": 1, "bathrooms": 1, "utility_rooms": 1, "toilets": 1}
    assert all(
        to_lps(wet_room_extract(**{**one_each, room: 2}) - wet_room_extract(**one_each)) > 5.0 for room in one_each
    )


def test_about_one_valve_a_room() -> None:
    """Common practice, no source: the rooms that get air are the habitable ones, bedrooms and a living room or two."""
    for bedrooms in range(1, 7):
        rooms = filled(Case(home=Home(bedrooms=bedrooms))).case.home.habitable_rooms
        assert rooms is not None
        assert bedrooms < rooms <= bedrooms + 2
    area = filled(Case()).case.options["extract"].flows.ventilator_area
    assert area == pytest.approx(4 * 4000.0)  # one ventilator in each of three bedrooms and the living room
