"""What does moist air hold: vapour, heat, volume; and when does it drip?

Equations of ASHRAE Handbook Fundamentals 2017, chapter 1 (SI edition), as ideal gases. Vapour is counted in
kg per kg of *dry* air; enthalpy is zero for dry air at 0 °C and liquid water at 0 °C. All shapes broadcast.
"""

from __future__ import annotations

import warnings
from collections.abc import Callable
from typing import Any

import numpy as np

from estimator.air.properties import GAS_CONSTANT_DRY_AIR
from estimator.errors import ExtrapolationWarning
from estimator.units import Array, Numeric, to_kelvin

# Eq. 5, over ice, -100 to 0 °C
_ICE = (-5.6745359e3, 6.3925247e0, -9.6778430e-3, 6.2215701e-7, 2.0747825e-9, -9.4840240e-13, 4.1635019e0)
# Eq. 6, over liquid water, 0 to 200 °C
_WATER = (-5.8002206e3, 1.3914993e0, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 0.0, 6.5459673e0)
# Triple point of water: the two curves meet here to 1e-7 K, while at 0 °C they are 0.06 Pa apart
_TRIPLE_POINT = 0.01  # °C
_COLDEST, _HOTTEST = -100.0, 200.0  # °C, range of eqs. 5 and 6

# Eq. 20: molar mass of water over that of dry air, 18.015268/28.966
MASS_RATIO = 0.621945
# Eqs. 28 to 30: heat of dry air and of vapour, and heat of vaporisation at 0 °C
_HEAT_DRY_AIR = 1006.0  # J/(kg K)
_HEAT_VAPOUR = 1860.0  # J/(kg K)
_VAPORISATION = 2_501_000.0  # J/kg
# Eqs. 33 and 35: wick wet or frozen, (heat of evaporation at 0 °C, its fall per K, heat capacity of the film)
_WET = (2_501_000.0, 2326.0, 4186.0)
_FROZEN = (2_830_000.0, 240.0, 2100.0)

_SMALLEST_STEP = 1e-6  # K: the search doubles its digits each step, so what is left after it is about 1e-12
_MOST_STEPS = 60


def _log_saturation(temp: Array) -> tuple[Array, Array]:
    """Natural logarithm of saturation pressure in Pa, and its slope per K."""
    kelvin = np.asarray(to_kelvin(temp))
    frozen = np.asarray(temp) < _TRIPLE_POINT
    c = [np.where(frozen, ice, water) for ice, water in zip(_ICE, _WATER, strict=True)]
    powers = c[1] + kelvin * (c[2] + kelvin * (c[3] + kelvin * (c[4] + kelvin * c[5])))
    slope = c[2] + kelvin * (2.0 * c[3] + kelvin * (3.0 * c[4] + kelvin * 4.0 * c[5]))
    return c[0] / kelvin + powers + c[6] * np.log(kelvin), -c[0] / kelvin**2 + slope + c[6] / kelvin


def _search(start: Numeric, step: Callable[[Array], Array]) -> Any:
    """Where Newton's `step` (what to subtract) has become nil; not-a-number where it never does."""
    temp = np.array(start, dtype=float)
    for _ in range(_MOST_STEPS):
        change = step(temp)
        temp = temp - change
        if not np.any(np.abs(change) > _SMALLEST_STEP):
            return temp[()]
    return np.where(np.abs(change) > _SMALLEST_STEP, np.nan, temp)[()]


def saturation_pressure(temp: Numeric) -> Any:
    """Saturation pressure of vapour [Pa] at a temperature [°C]: over ice below 0.01 °C, over water above.

    Eqs. 5 and 6. Outside -100 to 200 °C the value is returned with an `ExtrapolationWarning`.
    """
    low, high = np.min(temp), np.max(temp)
    if low < _COLDEST or high > _HOTTEST:
        warnings.warn(
            f"saturation asked at {low:.0f} to {high:.0f} °C; its equations hold from -100 to 200 °C",
            ExtrapolationWarning,
            stacklevel=2,
        )
    return np.exp(_log_saturation(np.asarray(temp, dtype=float))[0])[()]


def dew_point(vapour_pressure: Numeric) -> Any:
    """Temperature [°C] at which vapour of this partial pressure [Pa] saturates (frost point below 0.01 °C).

    Inverse of `saturation_pressure` by search. Air so dry that it would have to be below -100 °C, where the
    equations end, has none: not a number.
    """
    pressure = np.asarray(vapour_pressure, dtype=float)
    target = np.log(np.where(pressure >= saturation_pressure(_COLDEST), pressure, np.nan))

    def step(temp: Array) -> Array:
        logarithm, slope = _log_saturation(temp)
        return np.asarray((logarithm - target) / slope)

    # ln p rises and flattens with temperature: from the cold side the search never overshoots
    return _search(np.full(target.shape, _COLDEST), step)


def humidity_ratio(vapour_pressure: Numeric, *, pressure: Numeric) -> Any:
    """Vapour held [kg/kg dry air] at a partial pressure of vapour and a total pressure [Pa]. Eq. 20."""
    return MASS_RATIO * vapour_pressure / (pressure - vapour_pressure)


def vapour_pressure(humidity_ratio: Numeric, *, pressure: Numeric) -> Any:
    """Partial pressure of vapour [Pa] from vapour held [kg/kg dry air] and total pressure [Pa]. Eq. 20."""
    return pressure * humidity_ratio / (MASS_RATIO + humidity_ratio)


def saturation_humidity_ratio(temp: Numeric, *, pressure: Numeric) -> Any:
    """Most vapour that air can hold [kg/kg dry air] at a temperature [°C] and total pressure [Pa]. Eq. 21."""
    return humidity_ratio(saturation_pressure(temp), pressure=pressure)


def relative_humidity(temp: Numeric, *, humidity_ratio: Numeric, pressure: Numeric) -> Any:
    """Share of saturation [0-1] of air with this temperature [°C], vapour [kg/kg dry air] and pressure [Pa].

    Eq. 22: over ice below 0.01 °C. Weather stations report it over water even in frost.
    """
    return vapour_pressure(humidity_ratio, pressure=pressure) / saturation_pressure(temp)


def enthalpy(temp: Numeric, *, humidity_ratio: Numeric) -> Any:
    """Heat held [J/kg dry air] by air of this temperature [°C] and vapour [kg/kg dry air]. Eq. 30."""
    return _HEAT_DRY_AIR * temp + humidity_ratio * (_VAPORISATION + _HEAT_VAPOUR * temp)


def specific_volume(temp: Numeric, *, humidity_ratio: Numeric, pressure: Numeric) -> Any:
    """Volume [m³/kg dry air] at a temperature [°C], vapour [kg/kg dry air] and pressure [Pa]. Eq. 26."""
    return GAS_CONSTANT_DRY_AIR * to_kelvin(temp) * (1.0 + humidity_ratio / MASS_RATIO) / pressure


def temperature_at_enthalpy(enthalpy: Numeric, *, humidity_ratio: Numeric, pressure: Numeric) -> Any:
    """Temperature [°C] of air cooled or warmed to an enthalpy [J/kg dry air], dripping what it cannot hold.

    humidity_ratio: vapour before condensation [kg/kg dry air]; pressure: total [Pa]. Where the air would be
    oversaturated it lies on the saturation line instead; the heat left in the condensate is not counted.
    """
    dry = (enthalpy - humidity_ratio * _VAPORISATION) / (_HEAT_DRY_AIR + humidity_ratio * _HEAT_VAPOUR)
    dripping = dew_point(vapour_pressure(humidity_ratio, pressure=pressure))
    saturated = np.asarray(dry) < dripping  # never so where there is no dew point

    def step(temp: Array) -> Array:
        logarithm, slope = _log_saturation(temp)
        vapour = np.exp(logarithm)
        ratio = MASS_RATIO * vapour / (pressure - vapour)
        ratio_slope = ratio * slope * pressure / (pressure - vapour)
        of_vapour = _VAPORISATION + _HEAT_VAPOUR * temp
        excess = _HEAT_DRY_AIR * temp + ratio * of_vapour - enthalpy
        heat_slope = _HEAT_DRY_AIR + ratio_slope * of_vapour + ratio * _HEAT_VAPOUR
        return np.where(saturated, excess / heat_slope, 0.0)

    # heat along the saturation line rises ever faster: from the warm side the search never overshoots
    return _search(np.where(saturated, dripping, dry), step)


def humidity_ratio_at_wet_bulb(temp: Numeric, *, wet_bulb: Numeric, pressure: Numeric) -> Any:
    """Vapour held [kg/kg dry air] by air of this dry and wet-bulb temperature [°C] and total pressure [Pa].

    Eq. 33, or eq. 35 where the wick is frozen (wet bulb below 0 °C).
    """
    frozen = np.asarray(wet_bulb) < 0.0
    heat, fall, film = (np.where(frozen, ice, water) for ice, water in zip(_FROZEN, _WET, strict=True))
    gained = (heat - fall * wet_bulb) * saturation_humidity_ratio(wet_bulb, pressure=pressure)
    given = _HEAT_DRY_AIR * (temp - np.asarray(wet_bulb))
    return ((gained - given) / (heat + _HEAT_VAPOUR * temp - film * wet_bulb))[()]
