"""What does an option cost to have fitted, each year, and in the years when parts of it are renewed?"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.inputs.cost import Cost
from estimator.money import cash, worth
from estimator.units import Array


def option_capital(cost: Cost) -> Any:
    """Cost of fitting an option [money] from its filled parts: numbers, or columns (n, 1) of homes."""
    parts: Any = 0.0
    for part in (cost.kit, cost.ducts, cost.electrical, cost.commissioning, cost.making_good):
        parts = parts + _filled(part)
    return worth.capital(
        parts=parts,
        people=_filled(cost.people),
        days=_filled(cost.days),
        day_rate=_filled(cost.day_rate),
        vat_percent=_filled(cost.vat),
        grant=_filled(cost.grant),
    )


def option_upkeep(cost: Cost) -> Any:
    """Yearly upkeep of an option [money/year] from its filled parts, as `option_capital`."""
    return worth.upkeep(
        filter_sets=_filled(cost.filter_sets),
        filter_price=_filled(cost.filter_price),
        service=_filled(cost.service),
    )


def later_costs(cost: Cost, *, years: int, growth: float) -> Array:
    """Renewals of kit and fans by year [money], shape (…, years + 1), less what is left of the kit at the end.

    What is fitted today is no part of it. The kit is renewed by its like when due and then each time its life is over;
    what remains of the last one is credited in the final year, straight line. Fans are replaced each time they are
    worn, and are worth nothing at the end. growth: of those prices a year (fraction).
    """
    life, due, price = (_row(value) for value in (cost.kit_life, cost.renewal_year, cost.renewal))
    rows: Array = np.asarray(cash.kit_costs(price, life=life, years=years, first=due, growth=growth))
    rows = rows + np.asarray(
        cash.kit_costs(
            _row(cost.fans),
            life=_row(cost.fans_year),
            years=years,
            first=_row(cost.fans_year),
            growth=growth,
            residual=False,
        )
    )
    rows[..., -1] -= price * np.clip((due - years) / life, 0.0, 1.0)
    return rows


def embodied_carbon(cost: Cost, *, years: int, standing: bool) -> Array:
    """Carbon [kg] of making the kit, by year as `later_costs`, today's in year 0 unless it stands already."""
    life, due, each = (_row(value) for value in (cost.kit_life, cost.renewal_year, cost.embodied))
    rows: Array = np.asarray(cash.kit_costs(each, life=life, years=years, first=due))
    rows[..., -1] -= each * np.clip((due - years) / life, 0.0, 1.0)
    if not standing:
        rows[..., 0] += each
    return rows


def _row(value: Any) -> Any:
    """A number, or one for each home, without the axis of time."""
    number = _filled(value)
    return number[..., 0] if number.ndim else number


def _filled(value: Any) -> Any:
    if value is None:
        raise ValueError("an entry was left open: only a filled case can be costed")
    return np.asarray(value, dtype=float)
