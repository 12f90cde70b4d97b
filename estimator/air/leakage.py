"""What does a pressure test say about the holes in the envelope?"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.units import Numeric

TEST_PRESSURE = 50.0  # Pa, of q50 and n50
# ASTM E779 convention: reference pressure of the effective leakage area, discharge coefficient 1; from memory.
REFERENCE_PRESSURE = 4.0  # Pa
AIR_DENSITY = 1.204  # kg/m³, at 20 °C and 101,325 Pa
# Sharp-edged opening: share of a background ventilator's equivalent area that counts as effective leakage area.
DISCHARGE_COEFFICIENT = 0.61
TYPICAL_EXPONENT = 0.65  # ASTM E779 convention; from memory


def leakage_area(flow: Numeric, *, pressure: float, exponent: Numeric = TYPICAL_EXPONENT) -> Any:
    """Effective leakage area [m²] at 4 Pa from a leakage flow [m³/s] measured at `pressure` [Pa].

    The measured flow is brought down the power law to 4 Pa and read as an orifice of discharge coefficient 1.
    """
    at_reference = np.asarray(flow) * (REFERENCE_PRESSURE / pressure) ** np.asarray(exponent)
    return at_reference * np.sqrt(AIR_DENSITY / (2.0 * REFERENCE_PRESSURE))


def leakage_flow(area: Numeric, *, pressure: float, exponent: Numeric = TYPICAL_EXPONENT) -> Any:
    """Leakage flow [m³/s] at `pressure` [Pa] of an effective leakage area [m²]; the reverse of `leakage_area`."""
    at_reference = np.asarray(area) * np.sqrt(2.0 * REFERENCE_PRESSURE / AIR_DENSITY)
    return at_reference * (pressure / REFERENCE_PRESSURE) ** np.asarray(exponent)


def flow_coefficient(area: Numeric, *, exponent: Numeric = TYPICAL_EXPONENT) -> Any:
    """Flow coefficient c [m³/(s Pa^n)] of Q = c Δp^n, from an effective leakage area [m²]."""
    return leakage_flow(area, pressure=1.0, exponent=exponent)


def ventilator_leakage_area(equivalent_area: Numeric) -> Any:
    """Effective leakage area [m²] of open background ventilators, from their equivalent area [m²]."""
    return DISCHARGE_COEFFICIENT * np.asarray(equivalent_area)
