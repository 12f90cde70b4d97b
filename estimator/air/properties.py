"""How heavy is air, and how much heat does a cubic metre of it carry?

Dry air throughout. Half-saturated air at 20 °C is 0.4% lighter, but a kilogram of it holds 0.6% more heat:
a cubic metre carries 0.25% more than is counted here (moist-air equations of the CoolProp library).
"""

from __future__ import annotations

from typing import Any

from estimator.units import Numeric, to_kelvin

# ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 1: 8314.472 J/(kmol K) over 28.966 kg/kmol
GAS_CONSTANT_DRY_AIR = 287.042  # J/(kg K)
# Dry air at 20 °C and sea level: 1006.1 by the reference equation of state in the CoolProp library
HEAT_CAPACITY = 1006.0  # J/(kg K)
# Fans are rated and flows are measured on room air
RATED_TEMP = 20.0  # °C
# ICAO standard atmosphere, sea level
SEA_LEVEL_PRESSURE = 101_325.0  # Pa
# ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 3 (from the ICAO standard atmosphere, -5 to 11 km)
_LAPSE = 2.25577e-5  # 1/m
_EXPONENT = 5.2559


def density(temp: Numeric = RATED_TEMP, *, pressure: Numeric = SEA_LEVEL_PRESSURE) -> Any:
    """Density of dry air [kg/m³] from its temperature [°C] and pressure [Pa], as an ideal gas.

    ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 10 (ideal gas). Shapes broadcast.
    """
    return pressure / (GAS_CONSTANT_DRY_AIR * to_kelvin(temp))


def volumetric_heat_capacity(pressure: Numeric = SEA_LEVEL_PRESSURE) -> Any:
    """Heat carried per volume of air moved and per kelvin [J/(m³ K)] at a site pressure [Pa].

    Fans move volume, and flows are measured, at room temperature: density is that of dry air at 20 °C. At sea
    level 1211 J/(m³ K), which is 0.3365 Wh/(m³ K) at 1.204 kg/m³. Shape of `pressure`.
    """
    return density(RATED_TEMP, pressure=pressure) * HEAT_CAPACITY


def pressure_at_altitude(altitude: Numeric) -> Any:
    """Standard atmospheric pressure [Pa] at an altitude above the sea [m].

    ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 3; its table 1 runs from -500 to 10,000 m.
    """
    return SEA_LEVEL_PRESSURE * (1.0 - _LAPSE * altitude) ** _EXPONENT
