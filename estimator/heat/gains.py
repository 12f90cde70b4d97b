"""How much of the house's heat comes free, from sun, people and machines?"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.units import Array, Numeric


def solar_gain(facades: Array, apertures: tuple[Numeric, Numeric, Numeric, Numeric]) -> Any:
    """Sun through the windows [W], (…, hours).

    facades: irradiance on vertical planes north, east, south, west [W/m²], (4, hours); apertures: effective collecting
    areas in the same order [m²], each a float or a column (n, 1).
    """
    gain: Any = 0.0
    for irradiance, aperture in zip(facades, apertures, strict=True):
        gain = gain + np.asarray(aperture) * irradiance
    return gain


def mean_gain_in_heating(gain: Numeric, heat: Array) -> Any:
    """Mean gain [W] over the hours with heat, shape (…, 1); NaN where there are none."""
    on = heat > 0.0
    hours = np.sum(on, axis=-1, keepdims=True)
    total = np.sum(np.where(on, gain, 0.0), axis=-1, keepdims=True)
    return np.divide(total, hours, out=np.full(total.shape, np.nan), where=hours > 0)
