"""How does an option's year divide into months?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from estimator.bills import by_row
from estimator.corridor import kept_and_passed
from estimator.estimate import Estimate, OptionYear
from estimator.heat import demand
from estimator.supply import supply
from estimator.units import (
    HOURS_PER_DAY,
    HOURS_PER_YEAR,
    MONTH_DAYS,
    Array,
    to_m3h,
)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Months:
    """Twelve figures of each quantity: flows are means, energies kWh, money in the case's currency, carbon kg.

    The household's other electricity and hot water fall on the months by their days, or by its profile where the bill
    depends on the hour. Balance temperature is NaN in a month without heat, effective efficiency nil.
    """

    air_delivered_m3h: Array
    infiltration_m3h: Array
    windows_m3h: Array
    effective_efficiency: Array
    balance_temperature: Array
    degree_hours: Array
    heating_demand: Array
    fan_electricity: Array
    frost_electricity: Array
    electricity: Array
    fuel_energy: Array
    bill: Array
    carbon: Array


def month_starts(rows: int) -> NDArray[np.intp]:
    """Row at which each month begins, for a year of `rows` equal rows that divide a day."""
    per_day = rows * HOURS_PER_DAY / HOURS_PER_YEAR
    days = np.concatenate([[0], np.cumsum(MONTH_DAYS)[:-1]])
    return np.asarray(np.round(days * per_day), dtype=np.intp)


def month_sums(values: Any, rows: int) -> Any:
    """Sums over each month, (…, 12), of values by row, (…, rows); a single value stands for every row."""
    full = np.broadcast_to(values, (*np.shape(values)[:-1], rows))
    return np.add.reduceat(full, month_starts(rows), axis=-1)


def months(done: Estimate, option: OptionYear) -> Months:
    """The year of one option of an estimate, month by month."""
    rows, air, heat = done.year.rows, option.air, option.heat
    counted = month_sums(np.ones(rows), rows)
    spread = done.supply if done.supply.by_row else supply(done.case, done.year, by_row=True)
    year = by_row(spread, heat=heat.heat, fans=np.squeeze(air.fans), preheater=air.preheater)
    fans, frost = month_sums(year.loads.fans, rows), month_sums(year.loads.frost, rows)
    kept, passed = (month_sums(part, rows) for part in kept_and_passed(done.shared, air, heat.heat))
    return Months(
        air_delivered_m3h=to_m3h(month_sums(air.delivered, rows) / counted),
        infiltration_m3h=to_m3h(month_sums(air.infiltration, rows) / counted),
        windows_m3h=to_m3h(month_sums(air.windows, rows) / counted),
        effective_efficiency=np.divide(kept, passed, out=np.zeros(passed.shape), where=passed > 0.0),
        balance_temperature=_balance(done, option, rows),
        degree_hours=_degree_hours(done, option, rows),
        heating_demand=month_sums(year.loads.heat, rows),
        fan_electricity=fans,
        frost_electricity=frost,
        electricity=fans + frost,
        fuel_energy=month_sums(year.loads.first, rows) + month_sums(year.loads.second, rows),
        bill=month_sums(year.cost, rows),
        carbon=month_sums(year.carbon, rows),
    )


def _degree_hours(done: Estimate, option: OptionYear, rows: int) -> Any:
    """Demand over loss coefficient, or the degrees below a fixed base, summed over each month [K h]."""
    step, base = done.year.weight, done.home.fixed_base
    if base is None:
        return month_sums(option.heat.heat, rows) * step / np.squeeze(option.heat.loss_coefficient)
    return month_sums(np.maximum(base - done.year.temp_air, 0.0), rows) * step


def _balance(done: Estimate, option: OptionYear, rows: int) -> Any:
    heat, home = option.heat, done.home
    if home.fixed_base is not None:
        return np.full(len(MONTH_DAYS), float(home.fixed_base))
    on = heat.heat > 0.0
    hours = month_sums(on * 1.0, rows)
    useful = done.shared.gain + np.asarray(option.numbers.fan_heat_useful) * option.air.fans
    gain = month_sums(np.where(on, useful, 0.0), rows)
    mean = np.divide(gain, hours, out=np.full(hours.shape, np.nan), where=hours > 0.0)
    return demand.balance_temperature(home.temp_in, mean_gain=mean, loss_per_kelvin=np.squeeze(heat.loss_coefficient))
