"""What is a yearly saving worth against what it costs?"""

from __future__ import annotations

from typing import Any, NamedTuple

import numpy as np

from estimator.units import Numeric, from_percent

LEAST_RATE, MOST_RATE = -0.9, 10.0  # a year; beyond, no household would call it a rate of return
_RATES_TRIED = 481
_HALVINGS = 50
_ROUNDING = 1e-12


def capital(
    *, parts: Numeric, people: Numeric, days: Numeric, day_rate: Numeric, vat_percent: Numeric, grant: Numeric
) -> Any:
    """Cost of fitting [money]: parts and people × days × day rate, with value added tax, less the grant."""
    labour = np.asarray(people) * np.asarray(days) * np.asarray(day_rate)
    return (np.asarray(parts) + labour) * (1.0 + from_percent(vat_percent)) - np.asarray(grant)


def upkeep(*, filter_sets: Numeric, filter_price: Numeric, service: Numeric) -> Any:
    """Yearly cost of keeping it running, energy not counted [money/year]."""
    return np.asarray(filter_sets) * np.asarray(filter_price) + np.asarray(service)


def simple_payback(net_capital: Numeric, *, net_saving: Numeric) -> Any:
    """Years until the first year's net saving has returned the net capital.

    Infinite where nothing is saved ("does not pay back"), nil where the net capital is nil or negative and something is
    saved ("pays at once"). Where capital is negative and so is the saving, the answer is infinite too: money is
    given up every year and never returns.
    """
    cost, saving = np.asarray(net_capital, dtype=float), np.asarray(net_saving, dtype=float)
    years = np.divide(cost, saving, out=np.full(np.broadcast(cost, saving).shape, np.inf), where=saving > 0.0)
    return np.maximum(years, 0.0)[()]


def net_present_value(flows: Numeric, *, rate: Numeric) -> Any:
    """Present value [money] of yearly flows on the last axis, the first of them today, at a yearly rate (fraction)."""
    return np.sum(discounted(flows, rate=rate), axis=-1)


def lasting_payback(flows: Numeric) -> Any:
    """Years from when on the running sum of yearly flows is never below nil again, the first flow today.

    Flows on the last axis, taken as even within their year. Later costs count: a sum that turns positive in year 8 and
    falls below nil once more when the fans are renewed has not paid back in year 8. Infinite where the sum ends below
    nil, or where nothing comes back after today; nil where it is never below.
    """
    series = np.asarray(flows, dtype=float)
    total, last = np.cumsum(series, axis=-1), series.shape[-1] - 1
    tolerance = _ROUNDING * np.max(np.abs(total), axis=-1, keepdims=True)
    below = total < -tolerance
    year = last - np.argmax(below[..., ::-1], axis=-1)[..., None]
    debt = -np.take_along_axis(total, year, axis=-1)[..., 0]
    gain = np.take_along_axis(series, np.minimum(year + 1, last), axis=-1)[..., 0]
    ever, ends_below = below.any(axis=-1), below[..., -1]
    crossing = year[..., 0] + np.divide(debt, gain, out=np.zeros_like(debt), where=ever & ~ends_below)
    never = ends_below | (series[..., 1:].sum(axis=-1) <= 0.0)
    return np.where(never, np.inf, np.where(ever, crossing, 0.0))[()]


def discounted(flows: Numeric, *, rate: Numeric) -> Any:
    """Yearly flows at their present value, the first of them today; same shape, rate (fraction) without the years."""
    series = np.asarray(flows, dtype=float)
    return series / (1.0 + np.asarray(rate)[..., None]) ** np.arange(series.shape[-1])


def discounted_payback(flows: Numeric, *, rate: Numeric) -> Any:
    """Years until the discounted flows have returned what was laid out, for good; infinite where they never do."""
    return lasting_payback(discounted(flows, rate=rate))


class ReturnRate(NamedTuple):
    """An internal rate of return, and how many there are; `rate` is nan unless `count` is one."""

    rate: Any
    count: Any


def internal_rate(flows: Numeric) -> ReturnRate:
    """Yearly rate (fraction) at which the flows on the last axis are worth nil today.

    Sought between -90% and +1000% a year. A count of nil means undefined there, above one ambiguous (as where late
    costs follow early savings): in both cases the rate is nan and must be told in words. Two rates closer together
    than 1% of 1 + rate may escape.
    """
    series = np.asarray(flows, dtype=float)
    growth = np.linspace(np.log1p(LEAST_RATE), np.log1p(MOST_RATE), _RATES_TRIED)
    years = np.arange(series.shape[-1])
    positive = series @ np.exp(-np.outer(years, growth)) > 0.0
    change = positive[..., :-1] != positive[..., 1:]
    count, at = change.sum(axis=-1), np.argmax(change, axis=-1)
    low, high = growth[at], growth[at + 1]
    starts_positive = np.take_along_axis(positive, at[..., None], axis=-1)[..., 0]
    for _ in range(_HALVINGS):
        middle = (low + high) / 2.0
        same = (np.sum(series * np.exp(-middle[..., None] * years), axis=-1) > 0.0) == starts_positive
        low, high = np.where(same, middle, low), np.where(same, high, middle)
    return ReturnRate(np.where(count == 1, np.expm1((low + high) / 2.0), np.nan)[()], count)


def annuity_factor(rate: Numeric, *, years: Numeric) -> Any:
    """Present value of one a year, paid at the end of each of the years; at a rate of nil, the years themselves."""
    yearly, term = np.broadcast_arrays(np.asarray(rate, dtype=float), np.asarray(years, dtype=float))
    safe = np.where(yearly == 0.0, 1.0, yearly)
    return np.where(yearly == 0.0, term, -np.expm1(-term * np.log1p(yearly)) / safe)[()]


def cost_per_saved_kwh(costs: Numeric, *, saved: Numeric, rate: Numeric) -> Any:
    """Discounted cost of each kWh saved [money/kWh], to hold against the price of energy.

    costs: extra outlays by year, the first today, energy bills left out. saved: kWh by year in the same years, nil
    today. Infinite where nothing is saved.
    """
    cost, energy = net_present_value(costs, rate=rate), net_present_value(saved, rate=rate)
    endless = np.full(np.broadcast(cost, energy).shape, np.inf)
    return np.divide(cost, energy, out=endless, where=energy > 0.0)[()]
