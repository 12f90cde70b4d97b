"""What does a year of bought energy cost?

Every tariff answers for the whole year of an hourly profile, never with a price for one kWh: only so do blocks and
standing charges fit, and the worth of a saving is the difference of two whole bills. Prices are money per kWh.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, Protocol

import numpy as np
from numpy.typing import NDArray

from estimator.errors import Fault, InputFaults
from estimator.money.clock import DAYS_PER_WEEK, Clock, row_means
from estimator.units import DAYS_PER_YEAR, HOURS_PER_DAY, Array, Numeric

EVERY_DAY = (0, 1, 2, 3, 4, 5, 6)
WORKING_DAYS = (0, 1, 2, 3, 4)
WHOLE_YEAR = (int(DAYS_PER_YEAR),)


def energy_cost(energy: Numeric, *, price: Numeric) -> Any:
    """Cost [money] of energy [kWh] at one price [money/kWh]."""
    return np.asarray(energy) * np.asarray(price)


def flat_bill(energy: Numeric, *, price: Numeric, standing_per_day: Numeric) -> Any:
    """Yearly cost at one price: energy [kWh], price [money/kWh], standing charge [money/day]."""
    return energy_cost(energy, price=price) + np.asarray(standing_per_day) * DAYS_PER_YEAR


class Tariff(Protocol):
    """What a kind of tariff must be able to do."""

    @property
    def standing_per_day(self) -> Numeric:
        """Standing charge [money/day]."""

    def bill(self, imported: Array, *, exported: Array | None = None) -> Any:
        """Cost of a year [money]: energy bought and sold [kWh] per row, rows of equal length on the last axis.

        The time axis is summed away: (..., n) gives (...). Prices may be floats or arrays of that leading shape.
        ValueError for bought or sold energy below nil: the profile of a net load must be parted first.
        """

    def row_costs(self, imported: Array, *, exported: Array | None = None) -> Any:
        """The same bill by row, (..., n), standing charges left out: what each row adds to it, less what it sells."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Flat:
    """One price at every hour."""

    price: Numeric
    standing_per_day: Numeric = 0.0
    export_price: Numeric = 0.0

    def bill(self, imported: Array, *, exported: Array | None = None) -> Any:
        """See `Tariff.bill`."""
        energy = _counted(imported).sum(axis=-1)
        return energy * np.asarray(self.price) + _rest(self.standing_per_day, self.export_price, exported)

    def row_costs(self, imported: Array, *, exported: Array | None = None) -> Any:
        """See `Tariff.row_costs`."""
        return _counted(imported) * np.asarray(self.price)[..., None] - _earned(self.export_price, exported)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class TimeOfUse:
    """A price for each clock hour of the week.

    week: shape (..., 7, 24), Monday first. A year of rows longer than an hour is charged at the mean price of the hours
    in each row.
    """

    week: Array
    clock: Clock
    standing_per_day: Numeric = 0.0
    export_price: Numeric = 0.0

    def __post_init__(self) -> None:
        shape = np.shape(self.week)
        if shape[-2:] != (DAYS_PER_WEEK, int(HOURS_PER_DAY)):
            raise InputFaults(
                [Fault("tariff.week", f"a table of shape {shape} was given; give 24 prices for each of 7 days")]
            )

    def row_costs(self, imported: Array, *, exported: Array | None = None) -> Any:
        """See `Tariff.row_costs`."""
        bought = _counted(imported)
        price = row_means(self.hourly_price, rows=bought.shape[-1])
        return bought * price - _earned(self.export_price, exported)

    @property
    def hourly_price(self) -> Array:
        """Price at each hour of the year, shape (..., 8760)."""
        prices: Array = np.asarray(self.week, dtype=float)[..., self.clock.weekday, self.clock.hour]
        return prices

    def bill(self, imported: Array, *, exported: Array | None = None) -> Any:
        """See `Tariff.bill`."""
        bought = _counted(imported)
        cost = np.sum(bought * row_means(self.hourly_price, rows=bought.shape[-1]), axis=-1)
        return cost + _rest(self.standing_per_day, self.export_price, exported)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Block:
    """A price for the first kWh of each billing period, another for the next, and so on.

    prices: one for each block; limits: the kWh at which each block but the last ends, counted from nil in each
    period; period_days: lengths of the billing periods, together 365 (units.MONTH_DAYS for months). The limits are the
    same for short and long months.
    """

    prices: tuple[Numeric, ...]
    limits: tuple[float, ...]
    period_days: tuple[int, ...] = WHOLE_YEAR
    standing_per_day: Numeric = 0.0
    export_price: Numeric = 0.0

    def __post_init__(self) -> None:
        faults = []
        if len(self.prices) != len(self.limits) + 1:
            what = (
                f"{len(self.prices)} prices and {len(self.limits)} limits were given; give one limit fewer than prices"
            )
            faults.append(Fault("tariff.limits", what))
        if any(high <= low for low, high in zip((0.0, *self.limits), self.limits, strict=False)):
            faults.append(Fault("tariff.limits", f"{self.limits} was given; limits must rise from above nil, in kWh"))
        if sum(self.period_days) != DAYS_PER_YEAR or min(self.period_days) < 1:
            what = f"the billing periods have {sum(self.period_days)} days together; they must fill 365 days"
            faults.append(Fault("tariff.period_days", what))
        if faults:
            raise InputFaults(faults)

    def bill(self, imported: Array, *, exported: Array | None = None) -> Any:
        """See `Tariff.bill`."""
        use = self._period_use(_counted(imported))
        edges = (0.0, *self.limits, np.inf)
        cost = sum(
            np.asarray(price) * np.sum(np.clip(use, low, high) - low, axis=-1)
            for price, low, high in zip(self.prices, edges, edges[1:], strict=False)
        )
        return cost + _rest(self.standing_per_day, self.export_price, exported)

    def row_costs(self, imported: Array, *, exported: Array | None = None) -> Any:
        """See `Tariff.row_costs`: each kWh at the price of the block in which the meter of its period then stands."""
        bought = _counted(imported)
        starts = self._period_starts(bought.shape[-1])
        before = np.cumsum(bought, axis=-1) - bought
        lengths = np.diff(starts, append=bought.shape[-1])
        meter = before - np.repeat(before[..., starts], lengths, axis=-1)
        edges = (0.0, *self.limits, np.inf)
        cost = sum(
            np.asarray(price)[..., None] * (np.clip(meter + bought, low, high) - np.clip(meter, low, high))
            for price, low, high in zip(self.prices, edges, edges[1:], strict=False)
        )
        return cost - _earned(self.export_price, exported)

    def _period_use(self, bought: Array) -> Array:
        use: Array = np.add.reduceat(bought, self._period_starts(bought.shape[-1]), axis=-1)
        return use

    def _period_starts(self, rows: int) -> NDArray[np.intp]:
        ends = np.cumsum(self.period_days)
        last, remainder = np.divmod(ends * rows, int(DAYS_PER_YEAR))
        if remainder.any():
            raise ValueError(f"rows of {DAYS_PER_YEAR / rows:g} days do not end with the billing periods")
        return np.concatenate(([0], last[:-1])).astype(np.intp)


TARIFFS: dict[str, type[Flat] | type[TimeOfUse] | type[Block]] = {
    "flat": Flat,
    "time of use": TimeOfUse,
    "block": Block,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """A price from one clock time to another, on some weekdays (0 Monday); half hours are 0.5.

    A window may run past midnight: its hours after midnight are those of the same listed days. Equal times mean the
    whole day.
    """

    price: float
    start: float
    stop: float
    days: Sequence[int] = EVERY_DAY


def week_of_prices(base: float, *, windows: Sequence[Window]) -> Array:
    """Prices of the clock hours of a week, shape (7, 24), from a base price and windows; later windows win.

    An hour that is only partly within a window is charged at the mean, as if use were even within the hour.
    """
    week = np.full((DAYS_PER_WEEK, int(HOURS_PER_DAY)), float(base))
    for window in windows:
        share = _share_within(window.start, stop=window.stop)
        days = list(window.days)
        week[days] = week[days] * (1.0 - share) + window.price * share
    return week


def _share_within(start: float, *, stop: float) -> Array:
    """Share of each of the 24 clock hours between two times of the day, past midnight where stop <= start."""
    if not (0.0 <= start <= HOURS_PER_DAY and 0.0 <= stop <= HOURS_PER_DAY):
        raise InputFaults([Fault("tariff window", f"{start:g} to {stop:g} h was given; use clock times of 0 to 24")])
    hour = np.arange(HOURS_PER_DAY)
    if stop <= start:
        return _overlap(hour, start, HOURS_PER_DAY) + _overlap(hour, 0.0, stop)
    return _overlap(hour, start, stop)


def _overlap(hour: Array, start: float, stop: float) -> Array:
    share: Array = np.maximum(np.minimum(hour + 1.0, stop) - np.maximum(hour, start), 0.0)
    return share


def _counted(profile: Array) -> Array:
    energy = np.asarray(profile, dtype=float)
    if not np.all(energy >= 0.0):
        raise ValueError("bought and sold energy must be nil or more in every row: part a net load first")
    return energy


def _rest(standing_per_day: Numeric, export_price: Numeric, exported: Array | None) -> Any:
    """Standing charges of the year, less what exported energy earns."""
    standing = np.asarray(standing_per_day) * DAYS_PER_YEAR
    return standing if exported is None else standing - np.asarray(export_price) * _counted(exported).sum(axis=-1)


def _earned(export_price: Numeric, exported: Array | None) -> Any:
    """What exported energy earns in each row."""
    return 0.0 if exported is None else np.asarray(export_price)[..., None] * _counted(exported)
