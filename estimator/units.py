"""In which units does the inside count, and how do trade units become SI?

Inside `air`, `heat` and `money`: m³/s, W, K or °C, Pa, kg, kWh for yearly energy. Trade units exist only at
the edge; every conversion is here, so that no bare 3600 stands anywhere else.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Numeric = float | Array
"""A float, a column (n, 1) of homes, or an array whose last axis is time."""

HOURS_PER_YEAR = 8760.0
HOURS_PER_DAY = 24.0
DAYS_PER_YEAR = 365.0
SECONDS_PER_HOUR = 3600.0
MINUTES_PER_HOUR = 60.0
ZERO_CELSIUS = 273.15  # K
MONTH_DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
MONTH_NAMES = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")

_LITRE = 1e-3
_KILO = 1e3
_FOOT = 0.3048
_CUBIC_FOOT = _FOOT**3
_MILE = 5280.0 * _FOOT
_NAUTICAL_MILE = 1852.0
_POUND = 0.45359237


def _plain(value: Numeric | Any) -> Any:
    return value if isinstance(value, float) else np.asarray(value, dtype=float)[()]


def from_m3h(flow: Numeric) -> Any:
    """Flow in m³/s from m³/h."""
    return _plain(flow) / SECONDS_PER_HOUR


def to_m3h(flow: Numeric) -> Any:
    """Flow in m³/h from m³/s."""
    return _plain(flow) * SECONDS_PER_HOUR


def from_lps(flow: Numeric) -> Any:
    """Flow in m³/s from l/s."""
    return _plain(flow) * _LITRE


def to_lps(flow: Numeric) -> Any:
    """Flow in l/s from m³/s."""
    return _plain(flow) / _LITRE


def from_cfm(flow: Numeric) -> Any:
    """Flow in m³/s from cubic feet per minute."""
    return _plain(flow) * _CUBIC_FOOT / MINUTES_PER_HOUR


def to_cfm(flow: Numeric) -> Any:
    """Flow in cubic feet per minute from m³/s."""
    return _plain(flow) * MINUTES_PER_HOUR / _CUBIC_FOOT


def to_ft2(area: Numeric) -> Any:
    """Area in square feet from m²."""
    return _plain(area) / _FOOT**2


def from_ft2(area: Numeric) -> Any:
    """Area in m² from square feet."""
    return _plain(area) * _FOOT**2


def from_mm(length: Numeric) -> Any:
    """Length in m from mm."""
    return _plain(length) / _KILO


def from_mm2(area: Numeric) -> Any:
    """Area in m² from mm²."""
    return _plain(area) / _KILO**2


def from_cm2(area: Numeric) -> Any:
    """Area in m² from cm²."""
    return _plain(area) / 1e4


def from_percent(share: Numeric) -> Any:
    """Fraction from per cent."""
    return _plain(share) / 100.0


def to_percent(share: Numeric) -> Any:
    """Per cent from fraction."""
    return _plain(share) * 100.0


def from_hundredths(price: Numeric) -> Any:
    """Money in whole units (pounds, euros) from hundredths (pence, cents)."""
    return _plain(price) / 100.0


def to_hundredths(price: Numeric) -> Any:
    """Money in hundredths from whole units."""
    return _plain(price) * 100.0


def from_watt_per_lps(power: Numeric) -> Any:
    """Specific fan power in W/(m³/s) from W/(l/s)."""
    return _plain(power) / _LITRE


def watt_per_m3h(power: Numeric) -> Any:
    """Specific fan power in W/(m³/h) from W/(l/s)."""
    return _plain(power) / (_LITRE * SECONDS_PER_HOUR)


def to_kwh(watt_hours: Numeric) -> Any:
    """Energy in kWh from Wh."""
    return _plain(watt_hours) / _KILO


def from_megajoules(energy: Numeric) -> Any:
    """Energy in kWh from MJ."""
    return _plain(energy) * _KILO / SECONDS_PER_HOUR


def from_kelvin(temp: Numeric) -> Any:
    """Temperature in °C from K."""
    return _plain(temp) - ZERO_CELSIUS


def to_kelvin(temp: Numeric) -> Any:
    """Temperature in K from °C."""
    return _plain(temp) + ZERO_CELSIUS


def to_fahrenheit(temp: Numeric) -> Any:
    """Temperature in °F from °C."""
    return _plain(temp) * 1.8 + 32.0


def from_fahrenheit(temp: Numeric) -> Any:
    """Temperature in °C from °F."""
    return (_plain(temp) - 32.0) / 1.8


def to_fahrenheit_degrees(difference: Numeric) -> Any:
    """A difference of temperatures in °F from K."""
    return _plain(difference) * 1.8


def from_kmh(speed: Numeric) -> Any:
    """Speed in m/s from km/h."""
    return _plain(speed) * _KILO / SECONDS_PER_HOUR


def from_knots(speed: Numeric) -> Any:
    """Speed in m/s from knots (nautical miles of 1,852 m an hour)."""
    return _plain(speed) * _NAUTICAL_MILE / SECONDS_PER_HOUR


def from_mph(speed: Numeric) -> Any:
    """Speed in m/s from miles an hour."""
    return _plain(speed) * _MILE / SECONDS_PER_HOUR


def to_mph(speed: Numeric) -> Any:
    """Speed in miles an hour from m/s."""
    return _plain(speed) * SECONDS_PER_HOUR / _MILE


def to_pounds(weight: Numeric) -> Any:
    """Weight in pounds (of 0.45359237 kg) from kg."""
    return _plain(weight) / _POUND


def from_kj_per_hour(power: Numeric) -> Any:
    """Power in W from kJ an hour."""
    return _plain(power) * _KILO / SECONDS_PER_HOUR


def from_hpa(pressure: Numeric) -> Any:
    """Pressure in Pa from hPa (mbar)."""
    return _plain(pressure) * 100.0


def air_changes(flow: Numeric, volume: Numeric) -> Any:
    """Air changes per hour from m³/s and m³."""
    return to_m3h(flow) / _plain(volume)
