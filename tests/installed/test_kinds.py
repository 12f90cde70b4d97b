"""Does every way of ventilating in the catalogue stand on the same mechanisms, and do what its words say?

Laws, and balances written out from the air's own temperatures.
"""

from __future__ import annotations

import dataclasses
from typing import Any

import numpy as np
import pytest

from estimator import Case, OptionYear, estimate
from estimator.inputs.catalogue import option_fact, option_kinds, option_row
from estimator.inputs.option import Option
from estimator.inputs.places import with_values
from estimator.inputs.quantity import declared
from tests.laws.settings import year_of

HEAT = 1211.0  # J/(m³ K), air at 20 °C and sea level


def option_of(kind: str, **changes: Any) -> OptionYear:
    """An option of this kind in the default home at Sand Point, with entries changed: ducts__zone_factor and so on."""
    values = {name.replace("__", "."): value for name, value in changes.items()}
    case = Case(options={"one": with_values(Option(kind=kind), values)}, baseline="one", today="one")
    return estimate(case, year_of("Sand Point")).options["one"]


@pytest.mark.parametrize("kind", option_kinds())
def test_a_row_fills_every_entry_and_is_estimated(kind: str) -> None:
    option = option_of(kind)
    paths = {item.path for item in declared(Option)}
    assert {path for path in option_row(kind) if path != "flows.ventilator_area_per_room"} <= paths
    assert option.heating_demand > 0.0
    assert np.all(np.isfinite(option.air.delivered))
    assert option_fact(kind, "words")


@pytest.mark.parametrize("kind", option_kinds())
def test_only_a_kind_that_supplies_and_extracts_recovers(kind: str) -> None:
    both = option_fact(kind, "supplies") and option_fact(kind, "extracts")
    assert bool(option_of(kind).heat.effective_efficiency.item() > 0.3) == both


def test_room_pairs_have_no_ducts_to_lose_heat_in() -> None:
    """No imbalance, no boost, at the reference flow: installed efficiency is that of the certificate."""
    option = option_of("room pairs", flows__imbalance=0.0, flows__boost_share=0.0, unit__effectiveness=77.0)
    assert option.heat.effective_efficiency.item() == pytest.approx(0.77, rel=1e-9)
    ducted = option_of("heat recovery", flows__imbalance=0.0, flows__boost_share=0.0, unit__effectiveness=77.0)
    assert ducted.heat.effective_efficiency.item() < 0.77


@pytest.mark.parametrize("warmth", [0.0, 0.2, 0.6])
def test_air_from_the_loft_spares_its_own_warmth(warmth: float) -> None:
    """Flow × 1211 J/(m³ K) × lift above outdoors, at a site near sea level."""
    case = Case(options={"one": Option(kind="loft supply")}, baseline="one", today="one")
    warm = with_values(case, {"options.one.ducts.zone_factor": warmth})
    done = estimate(warm, year_of("Sand Point"))
    option, state = done.options["one"], done.options["one"].numbers.states[0]
    lift = warmth * (np.asarray(done.home.temp_in) - done.year.temp_air)
    np.testing.assert_allclose(option.air.recovered, float(state.supply) * HEAT * lift, rtol=0.02, atol=1e-9)
    assert np.all(option.air.envelope >= float(state.supply) - 1e-12)
    assert np.all(option.air.balanced == 0.0)


def test_loft_supply_as_cold_as_outdoors_takes_the_heat_of_extract_at_the_same_flow() -> None:
    """Law: supply or extract, unbalanced air is unbalanced air."""
    alike = {"flows__ventilator_area": 10_000.0, "unit__fan_heat_useful": 0.0, "flows__boost_share": 0.0}
    supply = option_of("loft supply", ducts__zone_factor=0.0, **alike)
    extract = option_of("decentralised extract", **alike)
    assert supply.heating_demand == pytest.approx(extract.heating_demand, rel=1e-9)
    assert option_of("loft supply", **alike).heating_demand < supply.heating_demand


def test_post_heater_warms_the_air_from_the_loft() -> None:
    plain = option_of("loft supply")
    heated = option_of("loft supply", unit__post_heater="yes", unit__post_heat_to=12.0)
    assert heated.frost_electricity > plain.frost_electricity == 0.0
    assert heated.heating_demand < plain.heating_demand


def test_more_ventilators_bring_more_air_by_themselves() -> None:
    small, full = option_of("intermittent fans"), option_of("natural ventilation")
    assert np.mean(full.air.infiltration) > np.mean(small.air.infiltration)
    assert full.fan_electricity == pytest.approx(small.fan_electricity, rel=1e-9)


def test_a_house_can_compare_them_all() -> None:
    options = {kind: Option(kind=kind) for kind in option_kinds()}
    case = dataclasses.replace(Case(), options=options, baseline="continuous extract", today="intermittent fans")
    assert set(estimate(case, year_of("Greensboro")).options) == set(option_kinds())
