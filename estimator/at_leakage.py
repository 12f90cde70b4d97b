"""What would this home's options take and give if the home were tighter or leakier?

Everything but the leakage is held: derived flows do not depend on it, so one survey and one reading of the weather
serve all leakages, which stand as homes on the first axis.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from estimator.air import joining, leakage
from estimator.bills import bills
from estimator.climate.year import ClimateYear
from estimator.corridor import HomeYear, air_year, heat_year, home_year
from estimator.costs import option_capital, option_upkeep
from estimator.inputs.case import Case
from estimator.money import worth
from estimator.supply import Supply, supply
from estimator.survey.fill import Filled, filled
from estimator.survey.numbers import HomeNumbers, home_numbers, option_numbers
from estimator.units import Array, from_m3h, to_m3h


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Ground:
    """A filled case and its weather, ready to be asked about any leakage."""

    case: Case
    year: ClimateYear
    home: HomeNumbers
    shared: HomeYear
    supply: Supply


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class OptionAt:
    """One option at n leakages: arrays (n,). kWh, money and kg a year; flows m³/h; shares 0 to 1."""

    q50: Array  # m³/(h m²)
    heat: Array
    electricity: Array
    bill: Array  # heat and ventilation, standing charges and other uses left out: they are the same at every leakage
    carbon: Array
    own_air: Array  # mean fresh air without windows opened in thought
    short: Array  # share of hours with less than the required air, before windows
    through_exchanger: Array  # balanced flow per all outdoor air, windows included; nil without an exchanger
    capital: float
    upkeep: float

    def at(self, places: slice | NDArray[np.intp]) -> OptionAt:
        """The same at some of the leakages."""
        return dataclasses.replace(self, **{name: getattr(self, name)[places] for name in _ARRAYS})

    def and_at(self, other: OptionAt) -> OptionAt:
        """The same at the leakages of both."""
        both: dict[str, Any] = {name: np.concatenate([getattr(self, name), getattr(other, name)]) for name in _ARRAYS}
        return dataclasses.replace(self, **both)


_ARRAYS = ("q50", "heat", "electricity", "bill", "carbon", "own_air", "short", "through_exchanger")


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Difference:
    """An option against a named baseline at n leakages: arrays (n,); every saving is baseline minus option."""

    q50: Array  # m³/(h m²)
    n50: Array  # 1/h
    air_changes: Array  # 1/h, mean infiltration through the leaks alone, no fans, no ventilators
    through_exchanger: Array  # share of fresh air, 0 to 1
    heat_saved: Array  # kWh
    net_saving: Array  # money a year, upkeep counted
    carbon_saving: Array  # kg
    payback: Array  # years, infinite where nothing is saved
    net_capital: float
    life: float
    option: str
    baseline: str


def ground(case: Case, year: ClimateYear, *, survey: Filled | None = None) -> Ground:
    """The case surveyed once and the weather read once; survey: the case without gaps, where somebody has it."""
    whole = (survey or filled(case)).case
    home = home_numbers(whole)
    return Ground(case=whole, year=year, home=home, shared=home_year(home, year), supply=supply(whole, year))


def areas_of(q50: Array, case: Case) -> Array:
    """Effective leakage areas [m²], a column (n, 1), of a filled home with these q50 [m³/(h m²)]."""
    flow = from_m3h(np.asarray(q50, dtype=float)[:, None] * _known(case.home.envelope_area))
    area = leakage.leakage_area(flow, pressure=leakage.TEST_PRESSURE, exponent=case.leakage.exponent)
    return np.asarray(area)


def option_at(
    place: Ground,
    name: str,
    q50: Array,
    *,
    join: Callable[..., Any] = joining.envelope_flow,
    known: OptionAt | None = None,
) -> OptionAt:
    """One option of the case at each of the leakages q50 [m³/(h m²)], (n,), each once; `join` as in the corridor.

    known: the same option of the same place at leakages that need not be worked out again.
    """
    distinct, back = np.unique(q50, return_inverse=True)
    if known is not None and np.any(new := ~np.isin(distinct, known.q50)):
        known = known.and_at(option_at(place, name, distinct[new], join=join))
    if known is not None:
        order = np.argsort(known.q50)
        return known.at(order[np.searchsorted(known.q50[order], q50)])
    if len(distinct) < len(q50):
        return option_at(place, name, distinct, join=join).at(back)
    case, option, step = place.case, place.case.options[name], place.year.weight
    numbers = option_numbers(option)
    home = dataclasses.replace(place.home, leakage_area=areas_of(q50, case))
    air = air_year(home, numbers, place.shared, top_up=home.top_up and name != case.today, join=join)
    heat = heat_year(home, numbers, place.shared, air, step=step)
    year = bills(place.supply, heat=heat.heat, fans=air.fans, preheater=air.preheater)
    recovers = bool(np.any(numbers.effectiveness > 0.0))
    through = np.mean(air.balanced, axis=-1) / np.mean(air.delivered, axis=-1)
    return OptionAt(
        q50=np.asarray(q50, dtype=float),
        heat=year.useful_heat[:, 0],
        electricity=(year.fans + year.frost)[:, 0],
        bill=(year.heat_bill + year.ventilation_bill)[:, 0],
        carbon=(year.heat_carbon + year.ventilation_carbon)[:, 0],
        own_air=to_m3h(np.mean(air.envelope + air.balanced, axis=-1)),
        short=np.mean(air.short, axis=-1),
        through_exchanger=through if recovers else np.zeros_like(through),
        capital=float(np.squeeze(option_capital(option.cost))),
        upkeep=float(np.squeeze(option_upkeep(option.cost))),
    )


def difference_at(
    place: Ground, q50: Array, *, option: str, baseline: str, join: Callable[..., Any] = joining.envelope_flow
) -> Difference:
    """An option against a baseline, both at each of the leakages q50 [m³/(h m²)], (n,); `join` as in the corridor."""
    leak = np.atleast_1d(np.asarray(q50, dtype=float))
    ours, theirs = (option_at(place, name, leak, join=join) for name in (option, baseline))
    return difference(place, leak, ours=ours, theirs=theirs, option=option, baseline=baseline)


def difference(
    place: Ground, leak: Array, *, ours: OptionAt, theirs: OptionAt, option: str, baseline: str
) -> Difference:
    """An option against a baseline that have both been worked out at the same leakages [m³/(h m²)], (n,)."""
    net_saving = theirs.bill - ours.bill - (ours.upkeep - theirs.upkeep)
    net_capital = ours.capital - theirs.capital
    home = place.case.home
    volume = _known(home.volume)
    infiltration = np.mean(areas_of(leak, place.case) * place.shared.specific_infiltration, axis=-1)
    return Difference(
        q50=leak,
        n50=leak * _known(home.envelope_area) / volume,
        air_changes=to_m3h(infiltration) / volume,
        through_exchanger=ours.through_exchanger,
        heat_saved=theirs.heat - ours.heat,
        net_saving=net_saving,
        carbon_saving=theirs.carbon - ours.carbon,
        payback=np.asarray(worth.simple_payback(net_capital, net_saving=net_saving)),
        net_capital=net_capital,
        life=place.case.worth.life,
        option=option,
        baseline=baseline,
    )


def _known(value: Any) -> Any:
    if value is None:
        raise ValueError("an entry was left open: only a filled case can be asked")
    return value
