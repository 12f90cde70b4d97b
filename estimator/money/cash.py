"""What is paid and saved in each year of a plan?

Every function returns a row of years, today first (year 0) and the horizon last, shape (..., years + 1), so that rows
add up: `flows = kit_costs(baseline) - kit_costs(option) + growing(saving of each fuel) - growing(extra upkeep)`.
Payments within a year count at its end. Growth and discount rates must be of one kind, all real or all nominal.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.units import Numeric

# Years; the due times of a life of 0.1 years must not slip a year by the last digit of a float.
_ROUNDING = 1e-9


def growing(first_year: Numeric, *, growth: Numeric = 0.0, years: int) -> Any:
    """A yearly amount that grows by a fraction each year: nil today, `first_year` in year 1."""
    amount, rate = np.asarray(first_year, dtype=float)[..., None], np.asarray(growth, dtype=float)[..., None]
    year = np.arange(1, years + 1)
    row = amount * (1.0 + rate) ** (year - 1)
    return np.concatenate((np.zeros((*row.shape[:-1], 1)), row), axis=-1)


def kit_costs(
    cost: Numeric, *, life: Numeric, years: int, first: Numeric = 0.0, growth: Numeric = 0.0, residual: bool = True
) -> Any:
    """What buying a thing and renewing it costs by year [money], its worth at the horizon deducted.

    cost: at today's price; growth: of that price a year (fraction). first: year of the first purchase, nil for new kit
    bought today, later for a baseline whose own kit has some years left. It is renewed each `life` [years] while that
    falls before the horizon. What then remains of the last purchase is credited in the final year, straight line over
    its life. ValueError for a life or a first purchase that cannot be.
    """
    price, span, start, rate = np.broadcast_arrays(
        *(np.asarray(value, dtype=float)[..., None] for value in (cost, life, first, growth))
    )
    if np.any(span <= 0.0) or np.any(start < 0.0):
        raise ValueError("a life must be above nil and the first purchase not before today")
    year = np.arange(years + 1)
    # Purchases up to the end of each year; the horizon itself is no time to buy.
    until = np.where(year < years, year + _ROUNDING, years - _ROUNDING)
    made = np.maximum(np.floor((until - start) / span) + 1.0, 0.0)
    costs = np.diff(made, axis=-1, prepend=0.0) * price * (1.0 + rate) ** year
    if residual:
        costs[..., -1] -= _remaining(made[..., -1], price, span, start, rate, years)
    return costs


def _remaining(made: Any, price: Any, span: Any, start: Any, rate: Any, years: int) -> Any:
    """Straight-line worth at the horizon of the last purchase, at what was paid for it."""
    bought = start[..., 0] + (made - 1.0) * span[..., 0]
    left = np.maximum(1.0 - (years - bought) / span[..., 0], 0.0)
    paid = price[..., 0] * (1.0 + rate[..., 0]) ** np.ceil(bought - _ROUNDING)
    return np.where(made > 0.0, paid * left, 0.0)


def cumulative(flows: Numeric) -> Any:
    """Running sum of yearly flows on the last axis."""
    return np.cumsum(flows, axis=-1)


def real_rate(nominal: Numeric, *, inflation: Numeric) -> Any:
    """Yearly rate or growth above inflation (fractions), after Fisher."""
    return (1.0 + np.asarray(nominal)) / (1.0 + np.asarray(inflation)) - 1.0
