"""What does the whole household buy and sell in each hour, and what of an option does its own roof carry?

All electricity of the home meets in one meter. Netting by the hour takes use and sun to be even within it; real use is
not, so that what the roof carries is somewhat overstated, the more so for short loads.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from estimator.money.clock import Clock, hours_per_row
from estimator.units import Array, Numeric

_SATURDAY, _SUNDAY = 5, 6


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """How a household's electricity spreads over clock hours and months, in parts of its mean.

    Only proportions count: a load profile is scaled to the household's own yearly kWh.
    """

    working_day: tuple[float, ...]
    saturday: tuple[float, ...]
    sunday: tuple[float, ...]
    months: tuple[float, ...]
    tag: str
    source: str


# fmt: off
SHAPES: dict[str, Shape] = {
    "measured mean of many homes": Shape(
        working_day=(0.57, 0.42, 0.39, 0.37, 0.38, 0.46, 0.82, 1.14, 1.21, 1.17, 1.12, 1.14,
                     1.26, 1.24, 1.08, 0.98, 0.95, 1.09, 1.35, 1.56, 1.48, 1.32, 1.14, 0.86),
        saturday=(0.64, 0.50, 0.41, 0.38, 0.38, 0.39, 0.51, 0.78, 1.10, 1.30, 1.38, 1.45,
                  1.54, 1.51, 1.38, 1.29, 1.28, 1.47, 1.68, 1.75, 1.54, 1.26, 1.18, 1.00),
        sunday=(0.73, 0.54, 0.43, 0.39, 0.38, 0.38, 0.40, 0.53, 0.89, 1.33, 1.60, 1.81,
                1.84, 1.53, 1.22, 1.06, 0.95, 1.04, 1.27, 1.47, 1.40, 1.26, 1.11, 0.83),
        months=(1.20, 1.17, 1.10, 1.02, 0.92, 0.86, 0.82, 0.84, 0.89, 0.98, 1.05, 1.16),
        tag="typical",
        source="representative profile H0 (VDEW 1999) with its seasonal curve, mean of the seasons' days; Germany",
    ),
    "out in the daytime": Shape(
        working_day=(0.6, 0.5, 0.5, 0.5, 0.5, 0.6, 1.2, 1.6, 1.1, 0.6, 0.5, 0.5,
                     0.5, 0.5, 0.5, 0.6, 0.9, 1.5, 2.1, 2.3, 2.1, 1.8, 1.4, 0.9),
        saturday=(0.7, 0.5, 0.5, 0.5, 0.5, 0.5, 0.6, 0.9, 1.2, 1.3, 1.3, 1.3,
                  1.4, 1.3, 1.2, 1.2, 1.2, 1.5, 1.7, 1.7, 1.5, 1.4, 1.2, 0.9),
        sunday=(0.7, 0.6, 0.5, 0.5, 0.5, 0.5, 0.5, 0.7, 1.0, 1.3, 1.4, 1.5,
                1.6, 1.4, 1.2, 1.1, 1.1, 1.4, 1.7, 1.7, 1.5, 1.3, 1.1, 0.8),
        months=(1.20, 1.17, 1.10, 1.02, 0.92, 0.86, 0.82, 0.84, 0.89, 0.98, 1.05, 1.16),
        tag="assumed",
        source="common practice, no source; months as in the measured mean",
    ),
    "even at all hours": Shape(
        working_day=(1.0,) * 24, saturday=(1.0,) * 24, sunday=(1.0,) * 24, months=(1.0,) * 12,
        tag="assumed", source="no habit at all: a bound, not a household",
    ),
}
# fmt: on


def load_profile(yearly: Numeric, *, shape: Shape, clock: Clock) -> Array:
    """Electricity of each hour of the year [kWh], shape (..., 8760), that sums to `yearly` [kWh]."""
    kind = np.select([clock.weekday == _SATURDAY, clock.weekday == _SUNDAY], [1, 2], default=0)
    days = np.array((shape.working_day, shape.saturday, shape.sunday))
    weight = days[kind, clock.hour] * np.array(shape.months)[clock.month]
    profile: Array = np.asarray(yearly, dtype=float)[..., None] * (weight / weight.sum())
    return profile


def row_sums(hourly: Array, *, rows: int) -> Array:
    """Energy of each row of a shorter year: shape (..., 8760) to (..., rows)."""
    sums: Array = hourly.reshape(*hourly.shape[:-1], rows, hours_per_row(rows)).sum(axis=-1)
    return sums


def net_load(other: Numeric, *, option: Numeric, pv: Numeric = 0.0) -> Any:
    """What passes the meter in each row [kWh]: bought above nil, sold below."""
    return np.asarray(other) + np.asarray(option) - np.asarray(pv)


def bought(net: Numeric) -> Any:
    """Energy bought in each row [kWh] of a net load."""
    return np.maximum(net, 0.0)


def sold(net: Numeric) -> Any:
    """Energy sold in each row [kWh] of a net load."""
    return np.maximum(-np.asarray(net), 0.0)


@dataclass(frozen=True, slots=True, eq=False)
class Carried:
    """How an option's electricity [kWh a year] is met: bought on top, or not sold any more; together all of it."""

    bought: Any
    not_sold: Any

    @property
    def share(self) -> Any:
        """Share that the roof carries [-]; nan for an option that takes nothing."""
        whole = np.asarray(self.bought + self.not_sold, dtype=float)
        return np.divide(self.not_sold, whole, out=np.full(whole.shape, np.nan), where=whole != 0.0)[()]


def carried(other: Numeric, *, option: Numeric, pv: Numeric) -> Carried:
    """What of the option's electricity comes from the grid, and what from sun that would have been sold.

    The option comes last: the household's other use has the first call on the sun, for it is there without the option.
    Rows on the last axis [kWh per row], summed away. For two options pass their loads one after the other, the first of
    them within `other`.
    """
    without, with_it = net_load(other, option=0.0, pv=pv), net_load(other, option=option, pv=pv)
    return Carried(
        bought=np.sum(bought(with_it) - bought(without), axis=-1),
        not_sold=np.sum(sold(without) - sold(with_it), axis=-1),
    )
