"""Which unit stands for a metric one with those who think in feet, and how do its numbers convert?"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from estimator import units


@dataclass(frozen=True, slots=True)
class Imperial:
    """How a metric unit is shown to those who asked for imperial ones."""

    unit: str
    convert: Callable[[Any], Any]

    def back(self, shown: float) -> float:
        """The metric number of one shown; every conversion here is a straight line."""
        nil = self.convert(0.0)
        return float((shown - nil) / (self.convert(1.0) - nil))


_FEET_PER_METRE = math.sqrt(units.to_ft2(1.0))
_INCHES_PER_FOOT = 12.0


def _feet(metres: float) -> float:
    return metres * _FEET_PER_METRE


def _inches(millimetres: float) -> float:
    return _feet(units.from_mm(millimetres)) * _INCHES_PER_FOOT


IMPERIAL: dict[str, Imperial] = {
    "m²": Imperial("ft²", units.to_ft2),
    "m³": Imperial("ft³", lambda volume: volume * _FEET_PER_METRE**3),
    "m": Imperial("ft", _feet),
    "km": Imperial("miles", lambda way: units.to_mph(units.from_kmh(way))),
    "mm": Imperial("in", _inches),
    "mm²": Imperial("in²", lambda area: units.to_ft2(units.from_mm2(area)) * _INCHES_PER_FOOT**2),
    "m³/h": Imperial("cfm", lambda flow: units.to_cfm(units.from_m3h(flow))),
    "l/s": Imperial("cfm", lambda flow: units.to_cfm(units.from_lps(flow))),
    "°C": Imperial("°F", units.to_fahrenheit),
    **{
        f"m³/(h m²){at}": Imperial(f"cfm/ft²{at}", lambda leak: units.to_cfm(units.from_m3h(leak)) / units.to_ft2(1.0))
        for at in ("", " at 4 Pa", " at 50 Pa")
    },
    "m/s of wind": Imperial("mph", units.to_mph),
    "m/s": Imperial("ft/min", lambda speed: _feet(speed) * units.SECONDS_PER_HOUR / units.MINUTES_PER_HOUR),
    "kg/m³": Imperial("lb/ft³", lambda weight: units.to_pounds(weight) / _FEET_PER_METRE**3),
    "K": Imperial("°F", units.to_fahrenheit_degrees),
    "K h": Imperial("°F h", units.to_fahrenheit_degrees),
    **{
        each: Imperial(each.replace("K", "°F"), lambda loss: loss / units.to_fahrenheit_degrees(1.0))
        for each in ("W/K", "Wh/K")
    },
    **{f"{each}/m²": Imperial(f"{each}/ft²", lambda spread: spread / units.to_ft2(1.0)) for each in ("kWh", "money")},
    "W/(l/s)": Imperial("W/cfm", lambda power: units.from_watt_per_lps(power) * units.from_cfm(1.0)),
}
"""Units that people who think in feet expect; energy, power and carbon stay as their meters and factors count them."""
