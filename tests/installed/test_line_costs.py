"""Is what each line is said to cost the difference of two full estimates, and of the right sign?"""

from __future__ import annotations

from functools import cache
from typing import Any

import numpy as np
import pytest

from estimator import Case, Estimate, case_from_text, estimate
from estimator.inputs.option import Option
from estimator.inputs.places import with_values
from estimator.inputs.quantity import declared
from estimator.inputs.template import example_text
from estimator.line_costs import LineCost, line_costs, more_air
from tests.laws.settings import year_of

SPOILT: dict[str, Any] = {
    "unit.internal_leakage": 4.0,
    "unit.filter_pressure_rise": 60.0,
    "unit.reference_flow": 90.0,
    "unit.in_use_factor": 0.95,
    "unit.post_heater": "yes",
    "ducts.standing": "outside",
    "ducts.supply": 5.0,
    "ducts.extract": 5.0,
    "flows.imbalance": 10.0,
    "flows.boost_flow": 160.0,
    "flows.setback_share": 30.0,
    "flows.control": "central demand",
}


def done_with(changes: dict[str, Any], climate: str = "Cold plain") -> Estimate:
    values = {f"options.recovery.{path}": value for path, value in changes.items()}
    return estimate(with_values(Case(), values), year_of(climate))


@cache
def spoilt() -> tuple[Estimate, dict[str, LineCost]]:
    done = done_with(SPOILT)
    return done, {cost.path: cost for cost in line_costs(done, "recovery")}


@pytest.mark.parametrize(
    ("path", "without"),
    [
        ("unit.effectiveness", 83.0), ("unit.fan_power", 0.0), ("unit.standby", 0.0), ("unit.fan_exponent", 1.0),
        ("unit.in_use_factor", 1.0), ("unit.filter_pressure_rise", 0.0), ("ducts.standing", "inside"),
        ("ducts.supply", 0.0), ("ducts.extract", 0.0), ("ducts.insulation", 0.0), ("ducts.zone_factor", 1.0),
        ("flows.boost_share", 0.0), ("flows.setback_share", 0.0), ("flows.control", "none"), ("unit.frost", "none"),
        ("unit.frost_set_point", -4.0), ("unit.post_heater", "no"), ("cost.filter_sets", 0.0), ("cost.service", 0.0),
    ],
)  # fmt: skip
def test_it_is_the_difference_of_two_full_estimates(path: str, without: Any) -> None:
    done, costs = spoilt()
    now = done.options["recovery"]
    other = done_with({**SPOILT, path: without}).options["recovery"]
    assert costs[path].heat == pytest.approx(now.heating_demand - other.heating_demand, abs=1e-6)
    assert costs[path].electricity == pytest.approx(now.electricity - other.electricity, abs=1e-6)
    bills = now.household_bill + now.upkeep - other.household_bill - other.upkeep
    assert costs[path].money == pytest.approx(bills, abs=1e-6)
    assert costs[path].against


@pytest.mark.parametrize(
    "path", ["unit.internal_leakage", "ducts.standing", "ducts.supply", "unit.filter_pressure_rise"]
)
def test_what_spoils_costs_and_insulation_saves(path: str) -> None:
    _, costs = spoilt()
    assert costs[path].money > 0.0
    assert costs["ducts.insulation"].money < 0.0


@pytest.mark.parametrize("path", ["flows.imbalance", "unit.internal_leakage"])
def test_what_only_spoils_the_air_is_compared_at_the_same_fresh_air(path: str) -> None:
    tight = {"leakage.measure": "n50", "leakage.value": 0.6, "air.no_option_short": "no"}
    for home in ({}, tight):
        values = {**home, "options.recovery.flows.imbalance": 20.0, "options.recovery.unit.internal_leakage": 5.0}
        done = estimate(with_values(Case(), values), year_of("Greensboro"))
        cost = next(cost for cost in line_costs(done, "recovery") if cost.path == path)
        assert more_air(cost) == pytest.approx(0.0, abs=0.5)
        assert cost.money > 0.0


def test_lines_not_in_use_and_lines_at_their_best_cost_nothing() -> None:
    costs = {cost.path: cost for cost in line_costs(done_with({"flows.imbalance": 0.0}), "recovery")}
    for path in ("ducts.supply", "flows.setback_flow", "unit.post_heat_to", "flows.imbalance", "unit.in_use_factor"):
        assert (costs[path].heat, costs[path].electricity, costs[path].money) == (0.0, 0.0, 0.0)


def test_every_line_is_an_entry_and_every_entry_of_unit_and_ducts_is_asked_about() -> None:
    asked = {cost.path for cost in spoilt()[1].values()}
    entries = {item.path for item in declared(Option)}
    assert asked <= entries
    assert {path for path in entries if path.startswith(("unit.", "ducts.", "flows."))} - asked == {
        "flows.ventilator_area"
    }


def test_insulating_the_ducts_of_the_shipped_example() -> None:
    """The sum that the page says is the difference of two full estimates."""
    case = case_from_text(example_text(), name="example.toml")
    year = year_of(case.place.climate)
    done = estimate(case, year)
    for name in ("recovery", "loft"):
        cost = next(cost for cost in line_costs(done, name) if cost.path == "ducts.insulation")
        bare = estimate(with_values(case, {f"options.{name}.ducts.insulation": 0.0}), year).options[name]
        now = done.options[name]
        assert cost.money == pytest.approx(now.household_bill - bare.household_bill, rel=1e-9)
        assert cost.money < -10.0
        assert np.isfinite(cost.heat)
