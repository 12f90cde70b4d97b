"""What is a yearly saving worth against what it costs?"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.units import Numeric, from_percent


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
    series = np.asarray(flows, dtype=float)
    years = np.arange(series.shape[-1])
    return np.sum(series / (1.0 + np.asarray(rate)[..., None]) ** years, axis=-1)
