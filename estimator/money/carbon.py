"""How much carbon does bought energy emit, in its year and over a life?

Carbon is kg of CO2 equivalent. Electricity that the own roof carries counts at the grid's factor like any other: it
would have been sold and would have displaced that much elsewhere.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np

from estimator.money.worth import lasting_payback
from estimator.units import Numeric

# UK government conversion factors for company reporting, 2024 and 2025: generation with transmission and distribution.
UK_GRID_YEARS = (2024, 2025)
UK_GRID_FACTORS = (0.20705 + 0.01830, 0.17700 + 0.01853)  # kg/kWh


def emission(energy: Numeric, *, factor: Numeric) -> Any:
    """Carbon [kg CO2 equivalent] of energy [kWh] at a factor [kg/kWh]."""
    return np.asarray(energy) * np.asarray(factor)


def stated_path(first_year: int, *, years: int, known_years: Sequence[float], known_factors: Sequence[float]) -> Any:
    """Factor [kg/kWh] of each year from `first_year`, straight between stated years, held level beyond them.

    ValueError where the stated years do not rise or do not match the factors.
    """
    known = np.asarray(known_years, dtype=float)
    if known.size != len(known_factors) or known.size == 0 or np.any(np.diff(known) <= 0.0):
        raise ValueError("stated years must rise, each with one factor")
    return np.interp(first_year + np.arange(years), known, np.asarray(known_factors, dtype=float))


def yearly_emission(energy: Numeric, *, path: Numeric) -> Any:
    """Carbon [kg] of each year: the same energy [kWh] every year on a path of factors [kg/kWh]; shape (..., years)."""
    return np.asarray(energy, dtype=float)[..., None] * np.asarray(path)


def carbon_payback(yearly_saving: Numeric, *, embodied: Numeric) -> Any:
    """Years until the carbon saved has outweighed the embodied carbon for good; infinite where it never does.

    On a falling grid path a saving may shrink or turn: a crossing that is lost again does not count.
    """
    saving = np.asarray(yearly_saving, dtype=float)
    debt = np.broadcast_to(np.asarray(embodied, dtype=float), saving.shape[:-1])[..., None]
    return lasting_payback(np.concatenate((-debt, saving), axis=-1))
