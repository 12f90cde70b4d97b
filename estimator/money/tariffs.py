"""What does a year of bought energy cost?"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.units import DAYS_PER_YEAR, Numeric


def energy_cost(energy: Numeric, *, price: Numeric) -> Any:
    """Cost [money] of energy [kWh] at one price [money/kWh]."""
    return np.asarray(energy) * np.asarray(price)


def flat_bill(energy: Numeric, *, price: Numeric, standing_per_day: Numeric) -> Any:
    """Yearly cost at one price: energy [kWh], price [money/kWh], standing charge [money/day]."""
    return energy_cost(energy, price=price) + np.asarray(standing_per_day) * DAYS_PER_YEAR
