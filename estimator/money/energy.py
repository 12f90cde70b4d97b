"""How much energy must be bought for a given heat?"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.units import Numeric


def fuel_energy(heat: Numeric, *, efficiency: Numeric) -> Any:
    """Energy bought [kWh] for useful heat [kWh] at a seasonal efficiency (a fraction; above 1 for a heat pump)."""
    return np.asarray(heat) / np.asarray(efficiency)


def break_even_ratio(price_electricity: Numeric, *, price_fuel: Numeric, efficiency: Numeric) -> Any:
    """Heat [kWh] that one extra kWh of electricity must save to pay for itself; prices in one unit.

    Infinite where the heat costs nothing.
    """
    cost = np.asarray(price_electricity, dtype=float) * np.asarray(efficiency)
    shape = np.broadcast(cost, price_fuel).shape
    return np.divide(cost, price_fuel, out=np.full(shape, np.inf), where=np.asarray(price_fuel) > 0.0)
