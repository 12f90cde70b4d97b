"""What was promised, what was measured on site, and what is the difference worth?

The measurements take the place of the planned figures one after the other; each step is a full estimate, so that the
steps add up to the whole difference.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from estimator.air.leakage import REFERENCE_PRESSURE, TEST_PRESSURE
from estimator.compare import Comparison, Result, run
from estimator.estimate import Estimate, OptionYear
from estimator.inputs.case import Case
from estimator.inputs.measured import anything
from estimator.inputs.option import Option
from estimator.inputs.places import with_values
from estimator.inputs.points import certificate_points
from estimator.inputs.room_lines import room_flows
from estimator.leak_range import house_q50
from estimator.running import fan_power
from estimator.survey.numbers import option_numbers
from estimator.units import from_percent, to_m3h, to_percent

_SIDES = ("supply", "extract")
_ORDINARY = {
    "flows.control": "none", "flows.running_share": 100.0, "flows.boost_share": 0.0, "flows.setback_share": 0.0,
    "flows.away_share": 0.0, "unit.filter_pressure_rise": 0.0,
}  # fmt: skip
"""Ordinary use and nothing else, with clean filters, as measured at commissioning."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Point:
    """One thing promised and measured, in its unit, and what the difference is worth a year.

    worth is None for what is read and not paid. heat, electricity: saved against the promise [kWh], negative where more
    is needed; money: the same on the household's bills; air: more fresh air than promised, on average [m³/h].
    """

    name: str
    unit: str
    promised: float
    measured: float
    heat: float = 0.0
    electricity: float = 0.0
    money: float = 0.0
    air: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomMeasured:
    """One room: air planned for it, None where the plan does not name it, and measured in it [m³/h]."""

    name: str
    side: str
    planned: float | None
    measured: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class AsCommissioned:
    """The option as measured. points: each with its worth; whole: all of them together."""

    option: str
    points: tuple[Point, ...]
    whole: Point
    rooms: tuple[RoomMeasured, ...]
    efficiency: tuple[float, float]
    promised: Comparison | None
    measured: Comparison | None
    result: Result


def as_commissioned(result: Result) -> AsCommissioned | None:
    """What was measured against what was promised; None where nothing was measured."""
    planned = result.estimate
    given = planned.case.commissioned
    if not anything(given) or given.option not in planned.options:
        return None
    points, before, after = [], result, result
    for step in _steps(planned.case):
        after = run(with_values(before.estimate.case, step.changes), planned.year)
        points.append(_point(step, before.estimate, after.estimate))
        before = after
    return AsCommissioned(
        option=given.option,
        points=tuple(points),
        whole=_worth("all together", "", (math.nan, math.nan), planned, after.estimate),
        rooms=tuple(_rooms(planned.case)),
        efficiency=(_kept(planned.options[given.option]), _kept(after.estimate.options[given.option])),
        promised=_comparison(result, given.option),
        measured=_comparison(after, given.option),
        result=after,
    )


def _comparison(result: Result, option: str) -> Comparison | None:
    """Against the baseline; against today where the option is the baseline itself; None where it is today's."""
    return result.against_baseline.get(option) or result.against_today.get(option)


@dataclass(frozen=True, slots=True)
class _Step:
    """A measurement that takes the place of a planned figure, and how that figure is read from a filled case."""

    name: str
    unit: str
    changes: Mapping[str, Any]
    read: Callable[[Case], float]


def _steps(case: Case) -> Iterator[_Step]:
    """Measurements in the order in which they replace the plan: air, balance, power, leakage."""
    given, name = case.commissioned, case.commissioned.option
    option, path = case.options[name], f"options.{name}."
    if given.fed or given.drawn:
        planned = _flows(option)
        measured = tuple(
            sum(room_flows(text).values()) if text else flow
            for text, flow in zip((given.fed, given.drawn), planned, strict=True)
        )
        larger = max(measured) / max(planned) if max(planned) > 0.0 else 1.0
        moved = {f"flows.{side}": flow * larger for side, flow in zip(_SIDES, planned, strict=True)}
        boost = {"flows.boost_flow": max(float(option.flows.boost_flow or 0.0), *measured), "flows.imbalance": 0.0}
        yield _Step("air moved, the larger of fed and drawn", "m³/h", _under(path, moved | boost), _larger(name))
        even = {f"flows.{side}": flow for side, flow in zip(_SIDES, measured, strict=True)}
        yield _Step("extract over supply, of the larger", "%", _under(path, even), _imbalance(name))
        option = with_values(option, moved | boost | even)
    if given.power is not None:
        factor = max(given.power - float(option.unit.standby or 0.0), 0.0) / _fans(option)
        yield _Step("power of fans and controls", "W", _under(path, _powers(option, factor)), _power(name))
    if given.leakage_value is not None and given.leakage_measure is not None:
        tested = {"measure": given.leakage_measure, "value": given.leakage_value, "basis": "measured"}
        unit = f"{given.leakage_measure}, {'1/h' if given.leakage_measure == 'n50' else 'm³/(h m²)'}"
        yield _Step("leakage of the home", unit, _under("leakage.", tested), _leakage(given.leakage_measure))


def _under(path: str, changes: Mapping[str, Any]) -> dict[str, Any]:
    return {f"{path}{key}": value for key, value in changes.items()}


def _flows(option: Option) -> tuple[float, float]:
    """Fed and drawn in ordinary use [m³/h], imbalance counted."""
    flows = option.flows
    supply, extract = float(flows.supply or 0.0), float(flows.extract or 0.0)
    imbalance = float(from_percent(flows.imbalance or 0.0))
    return supply * (1.0 - max(imbalance, 0.0)), extract * (1.0 - max(-imbalance, 0.0))


def _larger(name: str) -> Callable[[Case], float]:
    return lambda case: max(_flows(case.options[name]))


def _imbalance(name: str) -> Callable[[Case], float]:
    def read(case: Case) -> float:
        fed, drawn = _flows(case.options[name])
        return float(to_percent((drawn - fed) / max(fed, drawn)))

    return read


def _fans(option: Option) -> float:
    """Power of the fans in ordinary use with clean filters [W], standby left out."""
    numbers = option_numbers(with_values(option, _ORDINARY))
    return float(np.squeeze(fan_power(numbers, numbers.states[0])))


def _power(name: str) -> Callable[[Case], float]:
    return lambda case: _fans(case.options[name]) + float(case.options[name].unit.standby or 0.0)


def _powers(option: Option, factor: float) -> dict[str, Any]:
    """Specific fan power of a certificate, however many points it has, times a factor."""
    rows = certificate_points(option.unit.points or "")
    if rows:
        return {"unit.points": "; ".join(f"{row.flow!r} {row.ratio!r} {row.power * factor!r}" for row in rows)}
    return {"unit.fan_power": float(option.unit.fan_power or 0.0) * factor}


def _leakage(measure: str) -> Callable[[Case], float]:
    def read(case: Case) -> float:
        home, q50 = case.home, house_q50(case)
        if measure == "n50":
            return q50 * float(home.envelope_area or 0.0) / float(home.volume or np.nan)
        if measure == "q4":
            return q50 * float((REFERENCE_PRESSURE / TEST_PRESSURE) ** case.leakage.exponent)
        return q50

    return read


def _point(step: _Step, before: Estimate, after: Estimate) -> Point:
    return _worth(step.name, step.unit, (step.read(before.case), step.read(after.case)), before, after)


def _worth(name: str, unit: str, values: tuple[float, float], before: Estimate, after: Estimate) -> Point:
    option = before.case.commissioned.option
    was, now = before.options[option], after.options[option]
    return Point(
        name=name,
        unit=unit,
        promised=values[0],
        measured=values[1],
        heat=was.heating_demand - now.heating_demand,
        electricity=was.electricity - now.electricity,
        money=was.household_bill - now.household_bill,
        air=to_m3h(float(np.mean(now.air.delivered) - np.mean(was.air.delivered))),
    )


def _rooms(case: Case) -> Iterator[RoomMeasured]:
    given = case.commissioned
    plan = case.rooms if case.rooms.fed or case.rooms.drawn else None
    for side in ("fed", "drawn"):
        planned = room_flows(getattr(plan, side)) if plan else {}
        for room, flow in room_flows(getattr(given, side)).items():
            yield RoomMeasured(name=room, side=side, planned=planned.get(room), measured=flow)


def _kept(option: OptionYear) -> float:
    return float(np.squeeze(option.heat.effective_efficiency))
