"""How cold is the year, in degree-hours and degree-days?"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.units import HOURS_PER_DAY, Array, Numeric

HITCHIN_K = 0.71  # 1/K, Hitchin's constant for the UK; from memory


def degree_hours(temp_out: Array, *, base: Numeric, step: float = 1.0) -> Any:
    """Heating degree-hours [K h], shape (…): degrees below `base` [°C] summed over rows of `step` hours."""
    return np.sum(np.maximum(np.asarray(base) - temp_out, 0.0), axis=-1) * step


def degree_days_from_hours(temp_out: Array, *, base: float) -> Any:
    """Heating degree-days [K d] from hourly temperatures [°C]: hourly degrees below the base over 24."""
    return degree_hours(temp_out, base=base) / HOURS_PER_DAY


def degree_days_of_day(lowest: Numeric, highest: Numeric, *, base: float) -> Any:
    """Degree-days [K d] of a day from its lowest and highest temperature [°C], the Met Office's four-case rule."""
    low, high = np.asarray(lowest, dtype=float), np.asarray(highest, dtype=float)
    mean = (low + high) / 2.0
    cases = [low >= base, mean > base, high >= base]
    values = [np.zeros_like(mean), (base - low) / 4.0, (base - low) / 2.0 - (high - base) / 4.0]
    return np.select(cases, values, default=base - mean)


def degree_days_of_month(mean: Numeric, *, base: float, days: Numeric, k: float = HITCHIN_K) -> Any:
    """Degree-days [K d] of a month from its mean temperature [°C], Hitchin's formula; days in the month."""
    below = base - np.asarray(mean, dtype=float)
    near_nil = np.abs(below) < 1e-9
    safe = np.where(near_nil, 1.0, below)
    return np.asarray(days) * np.where(near_nil, 1.0 / k, safe / -np.expm1(-k * safe))
