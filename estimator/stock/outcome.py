"""What does heat recovery save in each home of a group, as it is and once sealed, and which way is best?

The baseline and heat recovery stand in the same home at its own leakage and at the one it could be sealed to; the
ventilation of today stands beside them. Every saving is baseline minus option.
"""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass
from typing import Any, cast

import numpy as np
from numpy.typing import NDArray

from estimator.air import leakage
from estimator.climate.year import ClimateYear
from estimator.inputs.case import Case
from estimator.inputs.cost import Cost
from estimator.inputs.quantity import Tag
from estimator.money import carbon, energy, worth
from estimator.routes import BOTH, LEAVE, RECOVER, SEAL, sealing_cost
from estimator.stock.lean import Yearly, yearly
from estimator.survey.fill import filled
from estimator.survey.numbers import home_leakage_area, home_numbers, option_numbers
from estimator.units import Array, from_hundredths, from_percent, to_m3h

ROUTES = (LEAVE, SEAL, RECOVER, BOTH)
OWN, SEALED = 0, 1  # leakages asked about, in this order


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Outcome:
    """n homes: arrays (n,). kWh, money and kg a year; leakage q50 [m³/(h m²)]; payback in years, infinite for never."""

    q50: Array
    basis: Tag  # tag of the leakage: measured, typical, assumed
    heat_saved: Array
    extra_electricity: Array
    frost: Array  # of heat recovery's pre-heater
    bill_saving: Array
    net_saving: Array
    carbon_saving: Array
    net_capital: Array
    payback: Array
    net_saving_today: Array  # against the ventilation of today
    sealing_cost: Array
    net_saving_sealed: Array  # of heat recovery against the baseline, both in the sealed home
    payback_sealed: Array
    gains: Array  # over the life less the cost, one column for each of `ROUTES`
    life: Array

    @property
    def route(self) -> NDArray[np.intp]:
        """Place in `ROUTES` of the way that leaves most money over the life."""
        return np.asarray(np.argmax(self.gains, axis=-1))


def outcome(case: Case, year: ClimateYear, *, recovery: str, full_year: bool) -> Outcome:
    """Homes of a case whose entries are columns (n, 1), in a weather year of blocks, or of hours for `full_year`."""
    survey = filled(case)
    whole = survey.case
    home = home_numbers(whole)
    area = np.asarray(home_leakage_area(whole.home, whole.leakage))
    envelope, exponent = whole.home.envelope_area, whole.leakage.exponent
    now = to_m3h(leakage.leakage_flow(area, pressure=leakage.TEST_PRESSURE, exponent=exponent)) / _known(envelope)
    count = _count(case)
    now = np.broadcast_to(now, (count, 1))
    target = np.minimum(whole.sealing.target, now)
    names = dict.fromkeys((whole.baseline, recovery, whole.today))
    areas = [np.broadcast_to(area, (count, 1)), area * target / now]
    asked = {name: areas if name in (whole.baseline, recovery) else areas[:1] for name in names}
    found = yearly(
        home,
        {name: option_numbers(whole.options[name]) for name in names},
        year,
        areas=asked,
        today=whole.today,
        single=not full_year,
    )
    costs = {name: _costs(whole, name, found[name]) for name in names}
    base, ours, today = costs[whole.baseline], costs[recovery], costs[whole.today]
    _, sealing, _ = sealing_cost(whole.sealing, area=_known(envelope), start=now, end=target)
    life = np.asarray(whole.worth.life, dtype=float)
    saving = base.bill - ours.bill - (ours.upkeep - base.upkeep)
    fitting = ours.capital - base.capital
    without = np.zeros((count, 1))
    gains = (
        without,
        (base.bill[:, [OWN]] - base.bill[:, [SEALED]]) * life - sealing,
        saving[:, [OWN]] * life - fitting,
        (base.bill[:, [OWN]] - ours.bill[:, [SEALED]] - (ours.upkeep - base.upkeep)) * life - fitting - sealing,
    )
    columns = {
        "q50": now,
        "heat_saved": (found[whole.baseline].heat - found[recovery].heat)[:, [OWN]],
        "extra_electricity": _electricity(found[recovery]) - _electricity(found[whole.baseline]),
        "frost": found[recovery].frost[:, None],
        "bill_saving": (base.bill - ours.bill)[:, [OWN]],
        "net_saving": saving[:, [OWN]],
        "carbon_saving": (base.carbon - ours.carbon)[:, [OWN]],
        "net_capital": fitting,
        "payback": worth.simple_payback(fitting, net_saving=saving[:, [OWN]]),
        "net_saving_today": (today.bill - ours.bill)[:, [OWN]] - (ours.upkeep - today.upkeep),
        "sealing_cost": sealing,
        "net_saving_sealed": saving[:, [SEALED]],
        "payback_sealed": worth.simple_payback(fitting, net_saving=saving[:, [SEALED]]),
        "life": life,
    }
    return Outcome(
        **{name: np.broadcast_to(column, (count, 1))[:, 0] for name, column in columns.items()},
        basis=survey.origins["leakage.value"].tag,
        gains=np.concatenate([np.broadcast_to(gain, (count, 1)) for gain in gains], axis=1),
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Costs:
    """One option: bill [money/year] and carbon [kg] at each leakage (n, leakages); the rest floats or columns."""

    bill: Array
    carbon: Array
    capital: Any
    upkeep: Any


def _costs(case: Case, name: str, found: Yearly) -> Costs:
    prices, cost = case.prices, case.options[name].cost
    electricity = _electricity(found)
    fuel = energy.fuel_energy(found.heat, efficiency=from_percent(_known(case.heating.efficiency)))
    return Costs(
        bill=fuel * from_hundredths(_known(prices.fuel)) + electricity * from_hundredths(_known(prices.electricity)),
        carbon=carbon.emission(fuel, factor=_known(prices.fuel_carbon))
        + carbon.emission(electricity, factor=_known(prices.electricity_carbon)),
        capital=_capital(cost),
        upkeep=worth.upkeep(
            filter_sets=_known(cost.filter_sets), filter_price=_known(cost.filter_price), service=_known(cost.service)
        ),
    )


def _capital(cost: Cost) -> Any:
    parts: Any = 0.0
    for part in (cost.kit, cost.ducts, cost.electrical, cost.commissioning, cost.making_good):
        parts = parts + _known(part)
    return worth.capital(
        parts=parts,
        people=_known(cost.people),
        days=_known(cost.days),
        day_rate=_known(cost.day_rate),
        vat_percent=_known(cost.vat),
        grant=_known(cost.grant),
    )


def _electricity(found: Yearly) -> Array:
    return (found.fans + found.frost)[:, None]


def _count(case: Case) -> int:
    """Homes of a case of columns: the length of its floor areas."""
    return len(np.asarray(case.home.floor_area))


def part_of(case: Case, rows: Any) -> Case:
    """The case with only some of its homes."""
    return cast(Case, _taken(case, rows, _count(case)))


def _taken(value: Any, rows: Any, count: int) -> Any:
    if isinstance(value, np.ndarray):
        return value[rows] if value.shape == (count, 1) else value
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        inside = {item.name: _taken(getattr(value, item.name), rows, count) for item in dataclasses.fields(value)}
        return dataclasses.replace(value, **inside)
    if isinstance(value, dict):
        return {name: _taken(inner, rows, count) for name, inner in value.items()}
    return value


def _known(value: Any) -> Any:
    if value is None:
        raise ValueError("an entry was left open: only a filled case can be asked")
    return np.asarray(value, dtype=float)
