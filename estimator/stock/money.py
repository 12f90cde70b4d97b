"""What do the options of many homes take, cost and emit in a year?

Where money does not hang on the hour, the sums of the year go to the one function that makes bills; where it does
(prices by the clock, a heat pump by the hour, cells on the roof), the rows of the corridor do, some homes at a time.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from estimator.bills import Bills, bills
from estimator.climate.year import ClimateYear
from estimator.corridor import air_year, heat_year, home_year
from estimator.costs import option_capital, option_upkeep
from estimator.inputs.case import Case
from estimator.stock.lean import Yearly
from estimator.stock.pick import part_of
from estimator.supply import supply
from estimator.survey.numbers import home_numbers, option_numbers
from estimator.units import Array, to_kwh

_ROWS_AT_ONCE = 48_000  # of all homes together


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Costs:
    """One option in n homes: heat [kWh], bill [money/year] and carbon [kg] at each leakage, (n, leakages).

    Electricity and frost protection [kWh], (n, 1), do not hang on the leakage; capital and upkeep: floats or columns.
    """

    heat: Array
    bill: Array
    carbon: Array
    electricity: Array
    frost: Array
    capital: Any
    upkeep: Any


def costs_of_sums(case: Case, year: ClimateYear, sums: Mapping[str, Yearly]) -> dict[str, Costs]:
    """Costs of options by name from the sums of their year, for a filled case whose money does not hang on the hour."""
    bought = supply(case, year)
    found = {}
    for name, total in sums.items():
        each = [
            bills(
                bought,
                heat=total.heat[:, [column]] / bought.step,
                fans=total.fans[:, None],
                preheater=total.frost[:, None] / bought.step,
            )
            for column in range(total.heat.shape[1])
        ]
        found[name] = _costs(case, name, each, heat=to_kwh(total.heat))
    return found


def costs_by_row(
    case: Case, year: ClimateYear, hours: ClimateYear, *, areas: Mapping[str, Sequence[Array]]
) -> dict[str, Costs]:
    """The same where money hangs on the hour; areas: leakage areas [m²] asked about for each option, columns (n, 1)."""
    count = len(next(iter(areas.values()))[0])
    size = max(1, _ROWS_AT_ONCE // year.rows)
    pieces: dict[str, list[Costs]] = {name: [] for name in areas}
    for first in range(0, count, size):
        part = slice(first, min(first + size, count))
        here = part_of(case, part)
        home = home_numbers(here)
        shared, bought = home_year(home, year), supply(here, year, hourly=hours)
        for name, leaks in areas.items():
            numbers, each, heats = option_numbers(here.options[name]), [], []
            for area in leaks:
                leaky = dataclasses.replace(home, leakage_area=area[part])
                air = air_year(leaky, numbers, shared, top_up=home.top_up and name != case.today)
                heat = heat_year(leaky, numbers, shared, air, step=year.weight)
                each.append(bills(bought, heat=heat.heat, fans=air.fans, preheater=air.preheater))
                heats.append(each[-1].useful_heat)
            pieces[name].append(_costs(here, name, each, heat=np.concatenate(heats, axis=1)))
    return {name: _joined(found) for name, found in pieces.items()}


def _costs(case: Case, name: str, each: Sequence[Bills], *, heat: Array) -> Costs:
    """Costs of an option from its bills at each leakage."""
    shape, first = (len(heat), 1), each[0]

    def side_by_side(figures: Sequence[Any]) -> Array:
        return np.concatenate([np.broadcast_to(figure, shape) for figure in figures], axis=1)

    cost = case.options[name].cost
    return Costs(
        heat=heat,
        bill=side_by_side([found.household_bill for found in each]),
        carbon=side_by_side([found.household_carbon for found in each]),
        electricity=np.broadcast_to(first.fans + first.frost, shape),
        frost=np.broadcast_to(first.frost, shape),
        capital=np.broadcast_to(option_capital(cost), shape),
        upkeep=np.broadcast_to(option_upkeep(cost), shape),
    )


def _joined(pieces: Sequence[Costs]) -> Costs:
    return Costs(
        **{item.name: np.concatenate([getattr(p, item.name) for p in pieces]) for item in dataclasses.fields(Costs)}
    )
