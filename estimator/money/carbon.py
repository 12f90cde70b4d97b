"""How much carbon does bought energy emit?"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.units import Numeric


def emission(energy: Numeric, *, factor: Numeric) -> Any:
    """Carbon [kg CO2 equivalent] of energy [kWh] at a factor [kg/kWh]."""
    return np.asarray(energy) * np.asarray(factor)
