"""How much air do wind and warmth push through the leaks, hour by hour?

Three interchangeable models. Each returns the *specific infiltration* [m/s]: infiltration [m³/s] per m² of effective
leakage area, so that the same hours serve every option whatever ventilators it adds. Shapes: homes first, time last.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any

import numpy as np

from estimator.air.leakage import TEST_PRESSURE, flow_coefficient, leakage_flow
from estimator.units import Array, Numeric

# ASHRAE Fundamentals 2001 ch. 26 (ch. 16 since 2009), basic model: stack coefficient by storeys 1, 2, 3
# [(l/s)²/(cm⁴ K)] and wind coefficient by shelter class 1 to 5 (rows) and storeys (columns) [(l/s)²/(cm⁴ (m/s)²)].
BASIC_STACK = np.array([0.000145, 0.000290, 0.000435])
BASIC_WIND = np.array(
    [
        [0.000319, 0.000420, 0.000494],
        [0.000246, 0.000325, 0.000382],
        [0.000174, 0.000231, 0.000271],
        [0.000104, 0.000137, 0.000161],
        [0.000032, 0.000042, 0.000049],
    ]
)
# (l/s)/cm² to (m³/s)/m²: 1e-3 / 1e-4.
_LPS_PER_CM2 = 10.0

# Walker & Wilson 1998, as tabulated in ASHRAE Fundamentals, enhanced model. Rows: no flue, flue; columns: storeys.
ENHANCED_STACK = np.array([[0.054, 0.078, 0.098], [0.069, 0.089, 0.107]])  # (Pa/K)^n
# Index: ground (slab or basement, crawlspace), flue (no, yes), storeys.
ENHANCED_WIND = np.array(
    [[[0.156, 0.170, 0.170], [0.142, 0.156, 0.167]], [[0.128, 0.142, 0.151], [0.128, 0.142, 0.154]]]
)  # (Pa s²/m²)^n
# Shelter factor by class 1 to 5 (rows); columns: no flue, flue with 1, 2, 3 storeys.
ENHANCED_SHELTER = np.array(
    [
        [1.00, 1.10, 1.07, 1.06],
        [0.90, 1.02, 0.98, 0.97],
        [0.70, 0.86, 0.81, 0.79],
        [0.50, 0.70, 0.64, 0.61],
        [0.30, 0.54, 0.47, 0.43],
    ]
)
ENHANCED_EXPONENT = 0.67
# Wind at eaves height per wind at the weather station, by storeys; ASHRAE Fundamentals, enhanced model; from memory.
EAVES_WIND = np.array([0.48, 0.59, 0.67])

# Kronvall & Persily 1982, retold by Meier 1986: mean infiltration is a twentieth of the flow at 50 Pa.
DIVISOR = 20.0
# National annual method: each sheltered side takes 7.5%, and wind counts against a mean of 4 m/s.
PER_SHELTERED_SIDE = 0.075
ANNUAL_MEAN_WIND = 4.0  # m/s


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Setting:
    """What the models know of a house besides its leakage; scalars, or columns (n, 1) of homes."""

    storeys: Any  # 1, 2 or 3
    shelter: Any  # class 1 (open) to 5 (neighbours close by)
    flue: Any = 0  # 1 with an open flue
    crawlspace: Any = 0  # 1 above a crawlspace
    exponent: Any = 0.65  # of the leakage


def _index(value: Any) -> Any:
    return np.asarray(value, dtype=np.intp)


def _as_precise(figures: Any, like: Array) -> Any:
    """Figures of a table in single precision where the weather is, so that they do not double its width."""
    return np.asarray(figures, dtype=np.result_type(like, np.float32))


def basic(temp_difference: Array, wind: Array, setting: Setting) -> Any:
    """Specific infiltration [m/s] of the basic (Sherman-Grimsrud) model.

    temp_difference: indoor minus outdoor [K]; wind: at the weather station [m/s].
    """
    storey = _index(setting.storeys) - 1
    stack = _as_precise(_LPS_PER_CM2**2 * BASIC_STACK[storey], temp_difference)
    push = _as_precise(_LPS_PER_CM2**2 * BASIC_WIND[_index(setting.shelter) - 1, storey], temp_difference)
    return np.sqrt(stack * np.abs(temp_difference) + push * np.square(wind))


def enhanced(temp_difference: Array, wind: Array, setting: Setting) -> Any:
    """Specific infiltration [m/s] of the enhanced (Walker-Wilson) model; arguments as `basic`.

    Its tables hold for the exponent 0.67, which is used whatever the test reported.
    """
    storey, flue = _index(setting.storeys) - 1, _index(setting.flue)
    shelter = ENHANCED_SHELTER[_index(setting.shelter) - 1, np.where(flue == 1, storey + 1, 0)]
    stack = _as_precise(ENHANCED_STACK[flue, storey], temp_difference) * np.abs(temp_difference) ** ENHANCED_EXPONENT
    eaves = _as_precise(shelter * EAVES_WIND[storey], temp_difference) * wind
    wind_factor = _as_precise(ENHANCED_WIND[_index(setting.crawlspace), flue, storey], temp_difference)
    push = wind_factor * eaves ** (2.0 * ENHANCED_EXPONENT)
    return flow_coefficient(1.0, exponent=ENHANCED_EXPONENT) * np.hypot(stack, push)


def annual(temp_difference: Array, wind: Array, setting: Setting) -> Any:
    """Specific infiltration [m/s] of the annual rule, one figure for all hours: shape (…, 1); arguments as `basic`."""
    del temp_difference
    at_test = leakage_flow(1.0, pressure=TEST_PRESSURE, exponent=setting.exponent)
    mean_wind = np.mean(wind, axis=-1, keepdims=True)
    return divided_by_twenty(at_test, sheltered_sides=_index(setting.shelter) - 1, mean_wind=mean_wind)


def divided_by_twenty(leakage: Numeric, *, sheltered_sides: Any, mean_wind: Any) -> Any:
    """Mean infiltration from leakage at 50 Pa, both in the same unit; mean_wind [m/s]."""
    sheltering = 1.0 - PER_SHELTERED_SIDE * np.asarray(sheltered_sides)
    return np.asarray(leakage) / DIVISOR * sheltering * np.asarray(mean_wind) / ANNUAL_MEAN_WIND


MODELS: Mapping[str, Callable[[Array, Array, Setting], Any]] = MappingProxyType(
    {"basic": basic, "enhanced": enhanced, "annual": annual}
)
"""Infiltration models by the name a case file uses."""
