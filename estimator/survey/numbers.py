"""What does a filled case say in SI, ready for the corridor?

The only place where words and trade units of a case become the numbers that the physics takes. Every number may be a
float or a column (n, 1) of homes.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from estimator.air import ducts, leakage
from estimator.air.certificate import Points
from estimator.air.infiltration import Setting
from estimator.inputs.case import Case
from estimator.inputs.catalogue import option_fact
from estimator.inputs.home import Home, Leakage
from estimator.inputs.option import Ducts, Option
from estimator.survey.certificate import read_certificate
from estimator.survey.typical import by_word
from estimator.units import from_m3h, from_mm, from_mm2, from_percent

_SHELTER_CLASS = {"none": 1, "few": 2, "some": 3, "much": 4, "full": 5}
# Control factor CTRL of the EU energy label for residential ventilation units, Commission Delegated Regulation (EU)
# 1254/2014, annex VIII: manual, clock, central and local demand control; from memory.
CONTROL_FACTORS = {"none": 1.0, "clock": 0.95, "central demand": 0.85, "local demand": 0.65}
_YES = {"yes": 1, "no": 0, "unknown": 0}
_CRAWLSPACE = {"slab": 0, "basement": 0, "crawlspace": 1}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class HomeNumbers:
    """The home in SI: areas m², volume m³, W/K, Wh/K, W, °C, m³/s."""

    volume: Any
    leakage_area: Any
    setting: Setting
    infiltration_model: str
    fabric_loss: Any
    heat_capacity: Any
    apertures: tuple[Any, Any, Any, Any]
    internal_gains: Any
    temp_in: Any
    required: Any
    top_up: bool
    fixed_base: Any | None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class State:
    """One running state of an option: its share of all hours (0 to 1) and its fan flows of outdoor air [m³/s]."""

    share: Any
    supply: Any
    extract: Any
    demand: Any = 1.0  # factor of demand control that the flows already have
    need: Any = 1.0  # air needed then, as a share of the home's


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class DuctConductances:
    """Conductance U' L of each duct to its surroundings [W/K]."""

    intake: Any
    exhaust: Any
    supply: Any
    extract: Any


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class OptionNumbers:
    """A ventilation option in SI: flows m³/s, area m², specific fan power W/(m³/s), W, °C, fractions.

    Flows are of outdoor air: what leaks round inside the unit is in none of them, and fan power is counted on the rest.
    """

    states: tuple[State, ...]
    ventilator_leakage_area: Any
    effectiveness: Any
    reference_flow: Any
    fan_power: Any
    fan_exponent: Any
    standby: Any
    fan_heat_useful: Any
    preheat_to: Any | None
    throttle_at: Any | None
    outside: bool
    zone_factor: Any
    ducts: DuctConductances
    demand_exponent: Any = 1.0  # fan power goes as the demand factor to this
    post_heat_to: Any | None = None
    supply_warmth: Any | None = None  # of supply air drawn from an unheated room: 0 as outdoors, 1 as indoors
    points: Points | None = None  # of the certificate, where it has several: they stand before the reference


def home_numbers(case: Case) -> HomeNumbers:
    """The home of a filled case."""
    home, leaks = case.home, case.leakage
    return HomeNumbers(
        volume=home.volume,
        leakage_area=home_leakage_area(home, leaks),
        setting=Setting(
            storeys=home.storeys,
            shelter=by_word(_SHELTER_CLASS, leaks.shelter),
            flue=by_word(_YES, home.open_flue),
            crawlspace=by_word(_CRAWLSPACE, leaks.ground),
            exponent=leaks.exponent,
        ),
        infiltration_model=leaks.model,
        fabric_loss=home.fabric_loss,
        heat_capacity=home.heat_capacity,
        apertures=(home.aperture_north, home.aperture_east, home.aperture_south, home.aperture_west),
        internal_gains=home.internal_gains,
        temp_in=home.indoor_temperature,
        required=from_m3h(_number(case.air.entered)),
        top_up=case.air.no_option_short == "yes",
        fixed_base=case.heating.base_temperature if case.heating.mode == "fixed base" else None,
    )


def home_leakage_area(home: Home, leaks: Leakage) -> Any:
    """Effective leakage area [m²] of a filled home, from whatever its test or estimate names."""
    value = _number(leaks.value)
    if leaks.measure == "n50":
        flow, pressure = from_m3h(value * _number(home.volume)), leakage.TEST_PRESSURE
    elif leaks.measure == "q4":
        flow, pressure = from_m3h(value * _number(home.envelope_area)), leakage.REFERENCE_PRESSURE
    else:
        flow, pressure = from_m3h(value * _number(home.envelope_area)), leakage.TEST_PRESSURE
    return leakage.leakage_area(flow, pressure=pressure, exponent=leaks.exponent)


def option_numbers(option: Option) -> OptionNumbers:
    """One option of a filled case."""
    unit = option.unit
    printed = read_certificate(unit)
    return OptionNumbers(
        states=running_states(option),
        ventilator_leakage_area=leakage.ventilator_leakage_area(from_mm2(_number(option.flows.ventilator_area))),
        effectiveness=printed.reference.ratio,
        reference_flow=printed.reference.flow,
        fan_power=printed.reference.power,
        fan_exponent=unit.fan_exponent,
        standby=unit.standby,
        fan_heat_useful=from_percent(_number(unit.fan_heat_useful)),
        preheat_to=unit.frost_set_point if unit.frost == "pre-heater" else None,
        throttle_at=unit.frost_set_point if unit.frost == "throttle" else None,
        outside=option.ducts.standing == "outside",
        zone_factor=option.ducts.zone_factor,
        ducts=_duct_conductances(option.ducts),
        demand_exponent=option.flows.demand_exponent,
        post_heat_to=unit.post_heat_to if unit.post_heater == "yes" else None,
        supply_warmth=option.ducts.zone_factor if option_fact(option.kind, "air_from") == "loft" else None,
        points=printed.points,
    )


def demand_factor(option: Option) -> Any:
    """Mean flow over ordinary flow under the option's control, 0 to 1."""
    flows = option.flows
    standard = by_word({**CONTROL_FACTORS, "by hand": np.nan}, flows.control)
    return np.where(np.asarray(flows.control) == "by hand", from_percent(_number(flows.demand_factor)), standard)


def running_states(option: Option) -> tuple[State, ...]:
    """Ordinary use, boost, set-back, absence and rest with their shares of the year, which sum to one.

    Residual imbalance takes air from the supply side (extract exceeds supply) where it is positive. Every state keeps
    the proportion of supply to extract. Shares are taken in turn, boost first, each at most what is left of the running
    hours; they count for every hour of the year alike. Demand control lowers ordinary use, and with it the air needed.
    """
    flows = option.flows
    running = from_percent(_number(flows.running_share))
    left, shares = running, []
    for entry in (flows.boost_share, flows.away_share, flows.setback_share):
        shares.append(np.minimum(from_percent(_number(entry)), left))
        left = left - shares[-1]
    supply, extract = _fresh_flows(option)
    larger = np.maximum(from_m3h(_number(flows.supply)), from_m3h(_number(flows.extract)))
    boost = np.divide(from_m3h(_number(flows.boost_flow)), larger, out=np.ones(np.shape(larger)), where=larger > 0.0)
    demand, away, setback = (
        demand_factor(option), from_percent(_number(flows.away_flow)), from_percent(_number(flows.setback_flow)),
    )  # fmt: skip
    return _apart(
        State(share=left, supply=supply * demand, extract=extract * demand, demand=demand, need=demand),
        State(share=shares[0], supply=supply * boost, extract=extract * boost),
        State(share=shares[1], supply=supply * away, extract=extract * away, need=away),
        State(share=shares[2], supply=supply * setback, extract=extract * setback),
        State(share=1.0 - running, supply=supply * 0.0, extract=extract * 0.0),
    )


def _apart(*states: State) -> tuple[State, ...]:
    """Those that ever occur, in order; two of the same flows, as where a unit needs no boost, count as the first."""
    kept: list[State] = []
    for state in states:
        if not np.any(state.share > 0.0):
            continue
        same = next((place for place, other in enumerate(kept) if _alike(state, other)), None)
        if same is None:
            kept.append(state)
        else:
            kept[same] = replace(kept[same], share=kept[same].share + state.share)
    return tuple(kept)


def _alike(one: State, other: State) -> bool:
    return all(
        np.array_equal(getattr(one, name), getattr(other, name)) for name in ("supply", "extract", "demand", "need")
    )


def _fresh_flows(option: Option) -> tuple[Any, Any]:
    """Supply and extract in ordinary use [m³/s] after imbalance, less what leaks round inside the unit."""
    flows = option.flows
    supply, extract = from_m3h(_number(flows.supply)), from_m3h(_number(flows.extract))
    if option_fact(option.kind, "supplies") and option_fact(option.kind, "extracts"):
        imbalance = from_percent(_number(flows.imbalance))
        supply = supply * (1.0 - np.maximum(imbalance, 0.0))
        extract = extract * (1.0 - np.maximum(-imbalance, 0.0))
    fresh = 1.0 - from_percent(_number(option.unit.internal_leakage))
    return supply * fresh, extract * fresh


def _duct_conductances(entry: Ducts) -> DuctConductances:
    per_metre = ducts.linear_transmittance(
        bore=from_mm(_number(entry.bore)),
        insulation=from_mm(_number(entry.insulation)),
        conductivity=_number(entry.conductivity),
    )
    return DuctConductances(
        intake=per_metre * entry.intake,
        exhaust=per_metre * entry.exhaust,
        supply=per_metre * entry.supply,
        extract=per_metre * entry.extract,
    )


def _number(value: Any) -> Any:
    return np.asarray(value, dtype=float)
