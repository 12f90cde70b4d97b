"""What does each line of a unit as fitted cost a year, against the same unit without it?

Each is the difference of two full estimates: with the option as it is, and with that one line as it would be at best,
or left out. What moves more or less air is compared as it is; what only spoils the air that is moved (imbalance,
leakage inside the unit) is compared at the same mean fresh air, or it would seem to save by giving less.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Literal

import numpy as np

from estimator.estimate import Estimate, estimate
from estimator.inputs.option import Option
from estimator.inputs.places import value_at, with_values
from estimator.units import from_percent, to_m3h

Question = Literal["certificate", "standing", "setting"]
Changes = Mapping[str, Any] | None
"""Entries of the option without the line, by dotted path; None where the line is not in use."""

FOAM = 0.025  # W/(m K), rigid foam; from memory
FLOW_STEP = 10.0  # m³/h
ONE_POINT, ONE_KELVIN = 1.0, 1.0  # %, K


@dataclass(frozen=True, slots=True, kw_only=True)
class LineCost:
    """One line of the option: dotted path, and what it costs a year; negative where it saves.

    against: what it is held against, in words; empty where the line costs nothing by itself. heat: useful heat [kWh];
    electricity [kWh]; money: household's bills and upkeep; air: more fresh air on average [m³/s].
    """

    path: str
    question: Question
    against: str
    heat: float = 0.0
    electricity: float = 0.0
    money: float = 0.0
    air: float = 0.0


@dataclass(frozen=True, slots=True)
class _Line:
    path: str
    question: Question
    against: str
    without: Callable[[Option, Estimate, str], Changes]


def line_costs(done: Estimate, name: str) -> tuple[LineCost, ...]:
    """Every line of an option of a finished estimate, in the order in which it is asked about."""
    option = done.case.options[name]
    return tuple(_cost(done, name, line, line.without(option, done, name)) for line in _LINES)


def _cost(done: Estimate, name: str, line: _Line, changes: Changes) -> LineCost:
    if changes is None:
        return LineCost(path=line.path, question=line.question, against="")
    before, now = done.case.options[name], done.options[name]
    if all(value_at(before, path) == value for path, value in changes.items()):
        return LineCost(path=line.path, question=line.question, against=line.against)
    option = with_values(before, changes)
    other = estimate(dataclasses.replace(done.case, options={name: option}), done.year).options[name]
    return LineCost(
        path=line.path,
        question=line.question,
        against=line.against,
        heat=now.heating_demand - other.heating_demand,
        electricity=now.electricity - other.electricity,
        money=now.household_bill + now.upkeep - other.household_bill - other.upkeep,
        air=float(np.mean(now.air.delivered) - np.mean(other.air.delivered)),
    )


def _at(path: str, value: Any) -> Callable[[Option, Estimate, str], Changes]:
    """The entry at another value."""
    return lambda option, done, name: {path: value}


def _where(used: Callable[[Option], bool], changes: Mapping[str, Any]) -> Callable[[Option, Estimate, str], Changes]:
    """The entries at other values, where the line is in use at all."""
    return lambda option, done, name: changes if used(option) else None


def _nothing(option: Option, done: Estimate, name: str) -> Changes:
    """Lines that cost nothing by themselves."""
    return None


def _better_ratio(option: Option, done: Estimate, name: str) -> Changes:
    unit = option.unit
    return None if unit.points else {"unit.effectiveness": min(99.0, float(unit.effectiveness or 0.0) + ONE_POINT)}


def _read_at_duty(option: Option, done: Estimate, name: str) -> Changes:
    return {"unit.reference_flow": max(float(option.flows.supply or 0.0), float(option.flows.extract or 0.0))}


def _less_air(option: Option, done: Estimate, name: str) -> Changes:
    flows = option.flows
    low = min(float(flows.supply or 0.0), float(flows.extract or 0.0)) - FLOW_STEP
    if low <= 0.0:
        return None
    return {f"flows.{side}": float(getattr(flows, side) or 0.0) - FLOW_STEP for side in ("supply", "extract")}


def _balanced(option: Option, done: Estimate, name: str) -> Changes:
    """Both flows alike, so large that as much fresh air comes on average as now, windows left out."""
    flows, air = option.flows, done.options[name].air
    larger = max(float(flows.supply or 0.0), float(flows.extract or 0.0))
    own = float(np.mean(air.envelope + air.balanced - air.infiltration))
    moved = sum(float(np.squeeze(s.share * np.maximum(s.supply, s.extract))) for s in done.options[name].numbers.states)
    return _scaled(option, own / moved if moved > 0.0 else 1.0, larger) | {"flows.imbalance": 0.0}


def _sound_unit(option: Option, done: Estimate, name: str) -> Changes:
    """No leakage inside, and as much less air moved as used to leak round."""
    fresh = 1.0 - float(from_percent(option.unit.internal_leakage or 0.0))
    flows = option.flows
    sides = {side: float(getattr(flows, side) or 0.0) * fresh for side in ("supply", "extract", "boost_flow")}
    return {"unit.internal_leakage": 0.0, **{f"flows.{side}": flow for side, flow in sides.items()}}


def _scaled(option: Option, factor: float, larger: float) -> dict[str, Any]:
    boost = float(option.flows.boost_flow or larger)
    return {
        "flows.supply": larger * factor,
        "flows.extract": larger * factor,
        "flows.boost_flow": boost * factor,
    }


def _no_boost(option: Option, done: Estimate, name: str) -> Changes:
    return {"flows.boost_flow": max(float(option.flows.supply or 0.0), float(option.flows.extract or 0.0))}


def _colder(path: str, used: Callable[[Option], bool]) -> Callable[[Option, Estimate, str], Changes]:
    """A set point one kelvin lower."""
    group, key = path.split(".")

    def lower(option: Option, done: Estimate, name: str) -> Changes:
        return {path: getattr(getattr(option, group), key) - ONE_KELVIN} if used(option) else None

    return lower


def _outside(option: Option) -> bool:
    return option.ducts.standing == "outside"


def _controlled(option: Option) -> bool:
    return option.flows.control not in (None, "none")


_LINES: tuple[_Line, ...] = (
    _Line("unit.effectiveness", "certificate", "a ratio one point higher", _better_ratio),
    _Line("unit.reference_flow", "certificate", "a certificate read at the flow set here", _read_at_duty),
    _Line("unit.points", "certificate", "one point alone", _where(lambda o: bool(o.unit.points), {"unit.points": ""})),
    _Line("unit.ratio_includes_fan_heat", "certificate", "", _nothing),
    _Line(
        "unit.fan_power", "certificate", "fans that take nothing",
        _where(lambda o: not o.unit.points, {"unit.fan_power": 0.0}),
    ),
    _Line("unit.fan_exponent", "certificate", "an exponent of 1", _at("unit.fan_exponent", 1.0)),
    _Line("unit.standby", "certificate", "none", _at("unit.standby", 0.0)),
    _Line("unit.internal_leakage", "certificate", "a sound unit giving the same fresh air", _sound_unit),
    _Line("unit.in_use_factor", "certificate", "a factor of 1", _at("unit.in_use_factor", 1.0)),
    _Line("unit.fan_pressure", "certificate", "", _nothing),
    _Line("unit.largest_flow", "certificate", "", _nothing),
    _Line("unit.sound", "certificate", "", _nothing),
    _Line(
        "ducts.standing", "standing", "the same unit and ducts inside",
        _where(_outside, {"ducts.standing": "inside"}),
    ),
    _Line("ducts.zone_factor", "standing", "a room as warm as the home", _where(_outside, {"ducts.zone_factor": 1.0})),
    _Line("ducts.intake", "standing", "no such duct", _at("ducts.intake", 0.0)),
    _Line("ducts.exhaust", "standing", "no such duct", _at("ducts.exhaust", 0.0)),
    _Line("ducts.supply", "standing", "no such duct in the cold", _where(_outside, {"ducts.supply": 0.0})),
    _Line("ducts.extract", "standing", "no such duct in the cold", _where(_outside, {"ducts.extract": 0.0})),
    _Line("ducts.bore", "standing", "", _nothing),
    _Line("ducts.insulation", "standing", "bare ducts", _at("ducts.insulation", 0.0)),
    _Line("ducts.conductivity", "standing", "rigid foam as thick", _at("ducts.conductivity", FOAM)),
    _Line("flows.supply", "setting", "both flows 10 m³/h lower", _less_air),
    _Line("flows.extract", "setting", "both flows 10 m³/h lower", _less_air),
    _Line("flows.imbalance", "setting", "balanced flows giving the same fresh air", _balanced),
    _Line("flows.running_share", "setting", "running all hours", _at("flows.running_share", 100.0)),
    _Line("flows.boost_flow", "setting", "no higher flow than ordinary", _no_boost),
    _Line("flows.boost_share", "setting", "no hours on boost", _at("flows.boost_share", 0.0)),
    _Line("flows.setback_share", "setting", "no hours set back", _at("flows.setback_share", 0.0)),
    _Line(
        "flows.setback_flow", "setting", "ordinary flow in those hours",
        _where(lambda o: bool(o.flows.setback_share), {"flows.setback_flow": 100.0}),
    ),
    _Line("flows.away_share", "setting", "no hours set low", _at("flows.away_share", 0.0)),
    _Line(
        "flows.away_flow", "setting", "ordinary flow in those hours",
        _where(lambda o: bool(o.flows.away_share), {"flows.away_flow": 100.0}),
    ),
    _Line("flows.control", "setting", "one flow all day", _where(_controlled, {"flows.control": "none"})),
    _Line(
        "flows.demand_factor", "setting", "one flow all day",
        _where(lambda o: o.flows.control == "by hand", {"flows.demand_factor": 100.0}),
    ),
    _Line(
        "flows.demand_exponent", "setting", "power in step with flow",
        _where(_controlled, {"flows.demand_exponent": 1.0}),
    ),
    _Line("unit.frost", "setting", "no frost protection", _at("unit.frost", "none")),
    _Line(
        "unit.frost_set_point", "setting", "a set point 1 K lower",
        _colder("unit.frost_set_point", lambda o: o.unit.frost != "none"),
    ),
    _Line("unit.post_heater", "setting", "no heater in the supply air", _at("unit.post_heater", "no")),
    _Line(
        "unit.post_heat_to", "setting", "a set point 1 K lower",
        _colder("unit.post_heat_to", lambda o: o.unit.post_heater == "yes"),
    ),
    _Line("unit.fan_heat_useful", "setting", "none of it useful", _at("unit.fan_heat_useful", 0.0)),
    _Line("unit.filter_pressure_rise", "setting", "filters that stay clean", _at("unit.filter_pressure_rise", 0.0)),
    _Line("cost.filter_sets", "setting", "no filters", _at("cost.filter_sets", 0.0)),
    _Line("cost.filter_price", "setting", "filters for nothing", _at("cost.filter_price", 0.0)),
    _Line("cost.service", "setting", "no service", _at("cost.service", 0.0)),
)  # fmt: skip


def more_air(cost: LineCost) -> float:
    """Fresh air that the line brings besides [m³/h], on average."""
    return float(to_m3h(cost.air))
