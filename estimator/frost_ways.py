"""Does this climate need frost protection, and what would each way of it take and cost here?"""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass

import numpy as np

from estimator.air.recovery import Recovered
from estimator.estimate import Estimate, OptionYear, estimate
from estimator.inputs.places import with_values
from estimator.running import recovered
from estimator.survey.numbers import State
from estimator.survey.typical import THROTTLED_EXHAUST
from estimator.units import Array, to_kwh

# Below this the exhaust of a good plate freezes; common practice, no source.
FREEZING = -3.0  # °C, of the air entering the exchanger
# Below this many hours a year a protection hardly ever acts; assumed: about two days in all.
HARDLY_EVER = 50.0  # h
WAYS = ("none", "pre-heater", "throttle")

_ROUNDING = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class FrostWay:
    """One way of frost protection in this home, against none.

    set_point: kept [°C], None without protection; hours: a year in which it acts in ordinary use; electricity: of the
    pre-heater [kWh a year]; coldest: its electricity in the hour in which it takes most [kWh]; heat: more heating than
    without protection [kWh a year], negative where the pre-heater spares some; money: more a year on the household's
    bills; chosen: whether it is the option's own.
    """

    name: str
    set_point: float | None
    hours: float
    electricity: float
    coldest: float
    heat: float
    money: float
    chosen: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Frost:
    """What enters the exchanger, and what keeps it from freezing.

    hours: a year with air below `FREEZING` at the exchanger if nothing warmed it; entering: such air in the coldest
    hour [°C]; needed: whether the climate asks for protection; ways: each with its own set point, chosen one included.
    """

    hours: float
    entering: float
    needed: bool
    ways: tuple[FrostWay, ...]

    @property
    def chosen(self) -> FrostWay:
        """The option's own way."""
        return next(way for way in self.ways if way.chosen)


def frost(done: Estimate, name: str) -> Frost:
    """Every way of frost protection for one option with an exchanger; each is a full estimate."""
    bare = _with(done, name, "none")
    entering = np.squeeze(_ordinary(bare, name).entering)
    hours = float(np.sum(entering < FREEZING)) * done.year.weight
    return Frost(
        hours=hours,
        entering=float(np.min(entering)),
        needed=hours > HARDLY_EVER,
        ways=tuple(_way(done, name, way, bare) for way in WAYS),
    )


def _with(done: Estimate, name: str, way: str) -> Estimate:
    """The estimate with this way, at the option's own set point where it is its own, else at the usual one."""
    option = done.case.options[name]
    if option.unit.frost == way:
        return done
    usual = {"none": FREEZING, "pre-heater": FREEZING, "throttle": THROTTLED_EXHAUST.value}
    changed = with_values(option, {"unit.frost": way, "unit.frost_set_point": usual[way]})
    return estimate(dataclasses.replace(done.case, options={name: changed}), done.year)


def _way(done: Estimate, name: str, way: str, bare: Estimate) -> FrostWay:
    with_it = _with(done, name, way)
    option, without = with_it.options[name], bare.options[name]
    set_point = with_it.case.options[name].unit.frost_set_point
    return FrostWay(
        name=way,
        set_point=None if way == "none" or set_point is None else float(set_point),
        hours=float(np.sum(_acting(with_it, bare, name))) * done.year.weight,
        electricity=option.frost_electricity - without.frost_electricity,
        coldest=float(to_kwh(np.max(_preheater(with_it, option)))),
        heat=option.heating_demand - without.heating_demand,
        money=option.household_bill - without.household_bill,
        chosen=done.case.options[name].unit.frost == way,
    )


def _ordinary(done: Estimate, name: str) -> Recovered:
    """What the exchanger does in ordinary use."""
    numbers = dataclasses.replace(done.options[name].numbers, post_heat_to=None)
    apart, capacity = done.shared.temp_difference, done.shared.heat_capacity
    back = recovered(done.home, numbers, numbers.states[0], apart, heat_capacity=capacity)
    if back is None:
        raise ValueError(f"{name} has no exchanger")
    return back


def _acting(with_it: Estimate, bare: Estimate, name: str) -> Array:
    """Rows in which the protection changes anything in ordinary use."""
    protected, free = _ordinary(with_it, name), _ordinary(bare, name)
    heated = np.squeeze(np.asarray(protected.preheater)) > 0.0
    size = _ROUNDING * float(np.max(np.abs(free.exchanged)))
    throttled = np.squeeze(np.asarray(free.exchanged - protected.exchanged)) > size
    return np.asarray(heated | (~heated & throttled & (np.squeeze(protected.entering) == np.squeeze(free.entering))))


def _preheater(done: Estimate, option: OptionYear) -> Array:
    """Pre-heater [W] averaged over the running states, by rows."""
    numbers = dataclasses.replace(option.numbers, post_heat_to=None)
    apart, capacity = done.shared.temp_difference, done.shared.heat_capacity

    def power(state: State) -> Array:
        back = recovered(done.home, numbers, state, apart, heat_capacity=capacity)
        nothing = np.zeros(done.year.temp_air.shape)
        return nothing if back is None else float(np.squeeze(state.share)) * np.squeeze(back.preheater)

    return np.asarray(sum(power(state) for state in numbers.states))
