"""What must the installer know of the unit as fitted: frost, supply air, drain, circuit, velocity?

The site's half of an estimate: hours and peaks beside the yearly sums. For one home and one option with an exchanger.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from estimator.air import certificate, condensate, moist
from estimator.air.recovery import Recovered
from estimator.estimate import Estimate, OptionYear
from estimator.frost_ways import Frost, frost
from estimator.points_lost import Step, YearlyWorth, duct_worth, efficiency_steps
from estimator.running import fan_power, recovered
from estimator.survey.numbers import State
from estimator.units import (
    DAYS_PER_YEAR,
    HOURS_PER_DAY,
    SECONDS_PER_HOUR,
    Array,
    from_m3h,
    from_mm,
    from_percent,
    to_m3h,
)

MAINS = 230.0  # V
# Rating often seen on a fused spur in the United Kingdom; common practice, no source. A question for the electrician.
SPUR = 13.0  # A
# Night for a bedroom: from ten in the evening to six in the morning, standard time; assumed.
NIGHT_FROM, NIGHT_HOURS = 22.0, 8.0  # h


@dataclass(frozen=True, slots=True, kw_only=True)
class Drain:
    """Water that drips [kg, which is litres]: most in an hour, in a year, and the most with moist rooms all winter."""

    peak: float
    yearly: float
    bound: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SupplyAir:
    """Outdoor air and the air that the unit brings into the rooms in ordinary use [°C]: coldest hour, day and night.

    What comes through a wall ventilator is outdoor air as it is.
    """

    outdoors_hour: float
    supply_hour: float
    outdoors_day: float
    supply_day: float
    outdoors_night: float
    supply_night: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Installed:
    """The installer's figures for one option. W, A, m/s, hours a year.

    in_hand: what the unit can move beyond its highest state [m³/s]; humidity: mean share of saturation indoors in the
    hours with heat, with this option and with the baseline; sound: declared by the maker [dB(A)], None if not known.
    """

    outside_certificate: tuple[str, ...]  # flows that the certificate says nothing of, in words
    steps: tuple[Step, ...]
    worth: tuple[YearlyWorth, ...]
    frost: Frost
    supply_air: SupplyAir
    drain: Drain
    electrical_peak: float
    current_peak: float
    spur_suffices: bool
    velocity: float
    velocity_boost: float
    in_hand: float
    bypass_hours: float
    humidity: float
    humidity_baseline: float
    sound: float | None


def installed(done: Estimate, name: str) -> Installed | None:
    """The installer's figures; None for an option without an exchanger."""
    option = done.options[name]
    running = _running(done, option)
    if not running:
        return None
    peak = max(float(np.max(fan_power(option.numbers, state) + back.preheater)) for state, back in running)
    peak += float(np.squeeze(option.numbers.standby))
    unit, flows = done.case.options[name].unit, done.case.options[name].flows
    set_flows = (flows.supply, flows.extract, flows.boost_flow)
    moved = [_moved(state) for state, _ in running]
    bore = float(from_mm(done.case.options[name].ducts.bore or np.nan))
    idle = (np.squeeze(option.heat.heat) == 0.0) & (np.squeeze(done.shared.temp_difference) > 0.0)
    return Installed(
        outside_certificate=_outside_certificate(option, moved),
        steps=efficiency_steps(done, name),
        worth=duct_worth(done, name),
        frost=frost(done, name),
        supply_air=_supply_air(done, running[0][1]),
        drain=_drain(done, option, running),
        electrical_peak=peak,
        current_peak=peak / MAINS,
        spur_suffices=peak / MAINS <= SPUR,
        velocity=duct_velocity(moved[0], bore=bore),
        velocity_boost=duct_velocity(max(moved), bore=bore),
        in_hand=float(from_m3h((unit.largest_flow or 0.0) - max(flow or 0.0 for flow in set_flows))),
        bypass_hours=float(np.sum(idle)) * done.year.weight,
        humidity=winter_humidity(done, option),
        humidity_baseline=winter_humidity(done, done.options[done.case.baseline]),
        sound=unit.sound,
    )


def duct_velocity(flow: float, *, bore: float) -> float:
    """Mean velocity [m/s] of a flow [m³/s] in a round duct of this inner diameter [m]."""
    return flow / (np.pi * bore**2 / 4.0)


def _moved(state: State) -> float:
    """Larger flow of a state [m³/s] while the fans run at it."""
    return float(np.squeeze(np.maximum(state.supply, state.extract) / state.demand))


def _outside_certificate(option: OptionYear, moved: list[float]) -> tuple[str, ...]:
    numbers = option.numbers
    one = (
        np.atleast_1d(np.squeeze(entry)) for entry in (numbers.reference_flow, numbers.effectiveness, numbers.fan_power)
    )
    points = numbers.points or certificate.Points(*one)
    low, high = (f"{to_m3h(points.flows[end]):.0f}" for end in (0, -1))
    said = f"{low} m³/h" if low == high else f"{low} to {high} m³/h"
    return tuple(
        f"{to_m3h(flow):.0f} m³/h lies outside the certificate's {said}: ratio and fan power are scaled from it."
        for flow in sorted(set(moved))
        if certificate.beyond(points, flow=flow)
    )


def _running(done: Estimate, option: OptionYear) -> list[tuple[State, Recovered]]:
    """Running states with what the exchanger does in them, ordinary use first; none without an exchanger."""
    if not np.any(option.numbers.effectiveness > 0.0):
        return []
    apart, capacity = done.shared.temp_difference, done.shared.heat_capacity
    states = [
        (state, recovered(done.home, option.numbers, state, apart, heat_capacity=capacity))
        for state in option.numbers.states
    ]
    return [(state, back) for state, back in states if back is not None]


def _supply_air(done: Estimate, ordinary: Recovered) -> SupplyAir:
    outdoors = done.year.temp_air
    supplied = np.broadcast_to(np.squeeze(ordinary.supplied), outdoors.shape)
    hour = int(np.argmin(outdoors))
    days = outdoors.reshape(int(DAYS_PER_YEAR), -1).mean(axis=-1)
    day = int(np.argmin(days))
    rows = slice(*(int(bound * HOURS_PER_DAY / done.year.weight) for bound in (day, day + 1)))
    nights, brought = (_nights(hourly, step=done.year.weight) for hourly in (outdoors, supplied))
    night = int(np.argmin(nights))
    return SupplyAir(
        outdoors_hour=float(outdoors[hour]),
        supply_hour=float(supplied[hour]),
        outdoors_day=float(days[day]),
        supply_day=float(np.mean(supplied[rows])),
        outdoors_night=float(nights[night]),
        supply_night=float(brought[night]),
    )


def _nights(hourly: Array, *, step: float) -> Array:
    """Mean of each night of the year, the one of 31 December running into 1 January."""
    first, rows = int(NIGHT_FROM / step), max(1, int(NIGHT_HOURS / step))
    return np.asarray(np.roll(hourly, -first).reshape(int(DAYS_PER_YEAR), -1)[:, :rows].mean(axis=-1))


def _room_vapour(done: Estimate, option: OptionYear) -> Array:
    """Vapour in room air by rows [kg/kg dry air]: what all the air of the hour leaves in it."""
    year, temp_in = done.year, float(np.squeeze(done.home.temp_in))
    outdoor = condensate.outdoor_vapour(
        year.temp_air, relative_humidity=from_percent(year.relative_humidity), pressure=year.pressure
    )
    return np.asarray(
        condensate.room_vapour(
            outdoor,
            moisture=float(done.case.home.moisture or 0.0) / (HOURS_PER_DAY * SECONDS_PER_HOUR),
            air=condensate.dry_air_flow(np.squeeze(option.air.delivered), pressure=year.pressure),
            temp_in=temp_in,
            pressure=year.pressure,
        )
    )


def winter_humidity(done: Estimate, option: OptionYear) -> float:
    """Mean share of saturation indoors over the hours with heat; over all hours where there are none."""
    share = moist.relative_humidity(
        float(np.squeeze(done.home.temp_in)), humidity_ratio=_room_vapour(done, option), pressure=done.year.pressure
    )
    heated = np.squeeze(option.heat.heat) > 0.0
    return float(np.mean(share[heated] if np.any(heated) else share))


def _drain(done: Estimate, option: OptionYear, running: list[tuple[State, Recovered]]) -> Drain:
    """Room air holds what all the air of the hour leaves in it; the bound holds a moist home's in all hours."""
    year, temp_in = done.year, float(np.squeeze(done.home.temp_in))
    vapour = _room_vapour(done, option)
    moist_rooms = from_percent(done.case.home.moist_air) * moist.saturation_pressure(temp_in)
    bound = np.maximum(vapour, moist.humidity_ratio(moist_rooms, pressure=year.pressure))
    hourly = [
        (float(np.squeeze(state.share)), *_dripped(done, state, back, (vapour, bound))) for state, back in running
    ]
    return Drain(
        peak=max(float(np.max(water)) for _, water, _ in hourly),
        yearly=float(sum(share * np.sum(water) for share, water, _ in hourly) * year.weight),
        bound=max(float(np.max(most)) for _, _, most in hourly),
    )


def _dripped(done: Estimate, state: State, back: Recovered, vapours: tuple[Array, Array]) -> tuple[Any, Any]:
    """Litres an hour, one array for each humidity of the room air."""
    pressure = done.year.pressure
    air = condensate.dry_air_flow(np.squeeze(state.extract), pressure=pressure)
    first, second = (
        condensate.dripping(
            temp=np.squeeze(back.arriving),
            vapour=vapour,
            exchanged=np.squeeze(back.exchanged),
            air=air,
            pressure=pressure,
        ).water
        * SECONDS_PER_HOUR
        for vapour in vapours
    )
    return first, second
