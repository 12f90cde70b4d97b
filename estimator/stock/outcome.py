"""What does heat recovery save in each home of a group, as it is and once sealed, and which way is best?

The baseline and heat recovery stand in the same home at its own leakage and at the one it could be sealed to; the
ventilation of today stands beside them. Every saving is baseline minus option.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from estimator.air import leakage
from estimator.climate.year import ClimateYear
from estimator.inputs.case import Case
from estimator.inputs.quantity import Tag
from estimator.money import worth
from estimator.routes import BOTH, LEAVE, RECOVER, SEAL, sealing_cost
from estimator.stock.lean import yearly
from estimator.stock.money import costs_by_row, costs_of_sums
from estimator.stock.pick import homes_in
from estimator.supply import needs_rows
from estimator.survey.fill import filled
from estimator.survey.numbers import home_leakage_area, home_numbers, option_numbers
from estimator.units import Array, to_m3h

ROUTES = (LEAVE, SEAL, RECOVER, BOTH)
OWN, SEALED = 0, 1  # leakages asked about, in this order


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Outcome:
    """n homes: arrays (n,). kWh, money and kg a year; leakage q50 [m³/(h m²)]; payback in years, infinite for never."""

    case: Case  # as filled
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


def outcome(case: Case, year: ClimateYear, *, hours: ClimateYear, recovery: str, full_year: bool = False) -> Outcome:
    """Homes of a case whose entries are columns (n, 1), in a weather year of blocks, or of hours for `full_year`.

    hours: the same year in hours, for the sun on roofs.
    """
    survey = filled(case)
    whole = survey.case
    home = home_numbers(whole)
    area = np.asarray(home_leakage_area(whole.home, whole.leakage))
    envelope, exponent = whole.home.envelope_area, whole.leakage.exponent
    now = to_m3h(leakage.leakage_flow(area, pressure=leakage.TEST_PRESSURE, exponent=exponent)) / _known(envelope)
    count = homes_in(case)
    now = np.broadcast_to(now, (count, 1))
    target = np.minimum(whole.sealing.target, now)
    names = tuple(dict.fromkeys((whole.baseline, recovery, whole.today)))
    areas = [np.broadcast_to(area, (count, 1)), area * target / now]
    asked = {name: areas if name in (whole.baseline, recovery) else areas[:1] for name in names}
    if needs_rows(whole):
        costs = costs_by_row(whole, year, hours, areas=asked)
    else:
        options = {name: option_numbers(whole.options[name]) for name in names}
        sums = yearly(home, options, year, areas=asked, today=whole.today, single=not full_year)
        costs = costs_of_sums(whole, year, sums)
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
        "heat_saved": (base.heat - ours.heat)[:, [OWN]],
        "extra_electricity": ours.electricity - base.electricity,
        "frost": ours.frost,
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
        case=whole,
        basis=survey.origins["leakage.value"].tag,
        gains=np.concatenate([np.broadcast_to(gain, (count, 1)) for gain in gains], axis=1),
    )


def _known(value: Any) -> Any:
    if value is None:
        raise ValueError("an entry was left open: only a filled case can be asked")
    return np.asarray(value, dtype=float)
