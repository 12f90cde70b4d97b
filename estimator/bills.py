"""What does a home buy, pay and emit in a year with an option, the whole household on its meters?

The only place where heat and electricity become money: estimate, sweeps, draws and months all come here.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from estimator.money import carbon, energy, heatpump, household, tariffs
from estimator.money.household import Carried
from estimator.supply import Supply
from estimator.units import DAYS_PER_YEAR, HOURS_PER_YEAR, to_kwh


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Roof:
    """What the cells on the roof do in a year with an option: kWh, shape (…,).

    Of the electricity for ventilation and for heat, what was bought and what was only not sold: the household's other
    use has the first call on the sun, then heat, then ventilation.
    """

    generated: Any
    bought: Any
    sold: Any
    ventilation: Carried
    heating: Carried


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Bills:
    """A year with an option: energy kWh, money, carbon kg, each of shape (…, 1).

    The bill of ventilation is what the household's bill would be less without it, that of heat what it would be less
    without both, the bill of ventilation apart. Carbon counts all electricity used at the grid's factor, sun or not.
    """

    useful_heat: Any
    first_heat: Any
    fans: Any
    frost: Any
    first_energy: Any  # bought for the first source of heat, hot water apart
    second_energy: Any
    hot_water: Any
    heat_bill: Any
    ventilation_bill: Any
    electricity_bill: Any  # all that goes by the price of electricity, export deducted
    fuel_bill: Any  # all that goes by the price of fuel
    heat_carbon: Any
    ventilation_carbon: Any
    grid_energy: Any  # all electricity the household uses
    electricity_carbon: Any  # of all of it
    fuel_carbon: Any
    roof: Roof | None

    @property
    def household_bill(self) -> Any:
        """The whole household's bill [money], standing charges included."""
        return self.electricity_bill + self.fuel_bill

    @property
    def household_carbon(self) -> Any:
        """Carbon of the whole household [kg]."""
        return self.electricity_carbon + self.fuel_carbon

    @property
    def seasonal_factor(self) -> Any:
        """Heat per unit bought of the first source over the year [-]; nan where it gave none."""
        nothing = np.full(np.shape(self.first_heat), np.nan)
        return np.divide(self.first_heat, self.first_energy, out=nothing, where=np.asarray(self.first_energy) > 0.0)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Loads:
    """Energy by row [kWh], (…, rows), of one option: useful heat, what the two sources take, and ventilation."""

    heat: Any
    first_heat: Any
    first: Any
    second: Any
    fans: Any
    frost: Any


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Rows:
    """A year with an option by row, (…, rows): energy kWh, the whole household's cost and carbon, what PV gives.

    Standing charges fall on all rows alike; the rows add up to the figures of the year.
    """

    loads: Loads
    bought: Any
    sold: Any
    cost: Any
    carbon: Any


def loads(supply: Supply, *, heat: Any, fans: Any, preheater: Any) -> Loads:
    """Energy of an option from its power [W]: heat and pre-heater by row (…, rows), fans as their mean."""
    if supply.by_row:
        useful, frost, blown = to_kwh(heat * supply.step), to_kwh(preheater * supply.step), to_kwh(fans * supply.step)
    else:
        useful = to_kwh(np.sum(heat, axis=-1, keepdims=True) * supply.step)
        frost = to_kwh(np.sum(preheater, axis=-1, keepdims=True) * supply.step)
        blown = to_kwh(fans * HOURS_PER_YEAR)
    first, second = useful, np.zeros(1)
    if supply.shared:
        first, second = heatpump.shared_heat(useful, capacity=supply.capacity, second_share=supply.second_share)
    return Loads(
        heat=useful,
        first_heat=first,
        first=energy.fuel_energy(first, efficiency=supply.first.performance),
        second=energy.fuel_energy(second, efficiency=supply.second.performance),
        fans=np.asarray(blown),
        frost=frost,
    )


def bills(supply: Supply, *, heat: Any, fans: Any, preheater: Any) -> Bills:
    """A year of the household with an option; arguments as for `loads`."""
    taken = loads(supply, heat=heat, fans=fans, preheater=preheater)
    ventilation = taken.fans + taken.frost
    heat_metered = _metered(supply, taken)
    other = supply.other
    with_heat = other if heat_metered is None else other + heat_metered
    alone = _electricity_bill(supply, other)
    heated = alone if with_heat is other else _electricity_bill(supply, with_heat)
    whole = _electricity_bill(supply, with_heat + ventilation)
    first, second = _year(supply, taken.first), _year(supply, taken.second)
    blown, frost = _year(supply, taken.fans), _year(supply, taken.frost)
    # Not metered with the rest: fuel, and electric heat that has a price of its own beside a flat tariff.
    water = np.zeros(1) if supply.one_meter else supply.hot_water
    first_cost = 0.0 if supply.one_meter else tariffs.energy_cost(first, price=supply.first.price)
    second_cost = 0.0 if supply.second.electric else tariffs.energy_cost(second, price=supply.second.price)
    own_cost = first_cost + tariffs.energy_cost(water, price=supply.first.price)
    first_carbon = carbon.emission(first, factor=supply.first.carbon)
    second_carbon = carbon.emission(second, factor=supply.second.carbon)
    own_carbon = first_carbon + carbon.emission(water, factor=supply.first.carbon)
    ventilation_carbon = carbon.emission(blown + frost, factor=supply.carbon)
    grid = blown + frost + _year(supply, other)
    grid_carbon = ventilation_carbon + carbon.emission(_year(supply, other), factor=supply.carbon)
    burnt_carbon: Any = 0.0
    grid_bill, fuel_bill = whole, supply.standing_fuel * DAYS_PER_YEAR
    if supply.first.electric:
        grid, grid_bill, grid_carbon = grid + first + water, grid_bill + own_cost, grid_carbon + own_carbon
    else:
        fuel_bill, burnt_carbon = fuel_bill + own_cost, burnt_carbon + own_carbon
    if supply.second.electric:
        grid, grid_carbon = grid + second, grid_carbon + second_carbon
    else:
        fuel_bill, burnt_carbon = fuel_bill + second_cost, burnt_carbon + second_carbon
    return Bills(
        useful_heat=_year(supply, taken.heat),
        first_heat=_year(supply, taken.first_heat),
        fans=blown,
        frost=frost,
        first_energy=first,
        second_energy=second,
        hot_water=supply.hot_water,
        heat_bill=heated - alone + first_cost + second_cost,
        ventilation_bill=whole - heated,
        electricity_bill=grid_bill,
        fuel_bill=fuel_bill,
        heat_carbon=first_carbon + second_carbon,
        ventilation_carbon=ventilation_carbon,
        grid_energy=grid,
        electricity_carbon=grid_carbon,
        fuel_carbon=burnt_carbon,
        roof=_roof(supply, with_heat, heat_metered, ventilation),
    )


def by_row(supply: Supply, *, heat: Any, fans: Any, preheater: Any) -> Rows:
    """The same year by row; ValueError for a supply that keeps yearly sums only."""
    if not supply.by_row:
        raise ValueError("yearly sums have no rows: ask for a supply by row")
    taken = loads(supply, heat=heat, fans=fans, preheater=preheater)
    shape = np.shape(taken.heat)
    heat_metered = _metered(supply, taken)
    used = supply.other + taken.fans + taken.frost + (0.0 if heat_metered is None else heat_metered)
    net = used if supply.sun is None else household.net_load(used, option=0.0, pv=supply.sun)
    bought, sold = household.bought(net), household.sold(net)
    cost = supply.tariff.row_costs(bought, exported=sold)
    water = np.zeros(1) if supply.one_meter else supply.hot_water / supply.rows
    if not supply.one_meter:
        cost = cost + tariffs.energy_cost(taken.first + water, price=supply.first.price)
    if not supply.second.electric:
        cost = cost + tariffs.energy_cost(taken.second, price=supply.second.price)
    standing = np.asarray(supply.tariff.standing_per_day)[..., None] + supply.standing_fuel
    emitted = (
        carbon.emission(taken.fans + taken.frost + supply.other, factor=supply.carbon)
        + carbon.emission(taken.first + water, factor=supply.first.carbon)
        + carbon.emission(taken.second, factor=supply.second.carbon)
    )
    return Rows(
        loads=taken,
        bought=np.broadcast_to(bought, shape),
        sold=np.broadcast_to(sold, shape),
        cost=np.broadcast_to(cost + standing * DAYS_PER_YEAR / supply.rows, shape),
        carbon=np.broadcast_to(emitted, shape),
    )


def _metered(supply: Supply, taken: Loads) -> Any | None:
    """Electricity for heat that the tariff prices, by row; None where there is none."""
    first = taken.first if supply.one_meter else None
    second = taken.second if supply.second.electric and supply.shared else None
    if first is None or second is None:
        return second if first is None else first
    return first + second


def _electricity_bill(supply: Supply, used: Any) -> Any:
    """What the tariff charges for electricity used by row, less what the roof sells; shape (…, 1)."""
    if supply.sun is None:
        return np.asarray(supply.tariff.bill(used))[..., None]
    net = household.net_load(used, option=0.0, pv=supply.sun)
    return np.asarray(supply.tariff.bill(household.bought(net), exported=household.sold(net)))[..., None]


def _roof(supply: Supply, with_heat: Any, heat_metered: Any | None, ventilation: Any) -> Roof | None:
    if supply.sun is None:
        return None
    net = household.net_load(with_heat, option=ventilation, pv=supply.sun)
    heat = np.zeros(supply.rows) if heat_metered is None else heat_metered
    return Roof(
        generated=np.sum(supply.sun, axis=-1),
        bought=np.sum(household.bought(net), axis=-1),
        sold=np.sum(household.sold(net), axis=-1),
        ventilation=household.carried(with_heat, option=ventilation, pv=supply.sun),
        heating=household.carried(supply.other, option=heat, pv=supply.sun),
    )


def _year(supply: Supply, rows: Any) -> Any:
    """The year's sum, (…, 1), of figures by row, or of one that is the same in every row."""
    series = np.atleast_1d(rows)
    return np.sum(series, axis=-1, keepdims=True) if series.shape[-1] == supply.rows else series * supply.rows
