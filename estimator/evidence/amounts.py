"""How is a printed number with its unit read, and how exactly was it printed?

An amount is text: the number as printed, a space, the unit: "872.6 Pa", "31 l/s", "1.20e3", "1,758 GBP".
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from decimal import Decimal
from types import MappingProxyType
from typing import Any

from estimator import units

_AMOUNT = re.compile(r"(?P<number>[-+]?(?:\d[\d,]*\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)(?:\s+(?P<unit>\S.*))?")


def _as_counted(value: float) -> float:
    return value


_COUNTED_INSIDE = (
    *("", "m", "m²", "m³", "m/s", "m³/s", "kg", "kg/m³", "m³/kg", "kg/kg", "Pa", "°C", "K", "W", "W/K", "W/m²"),
    *("W/(m K)", "W/(m² K)", "J/kg", "J/(m³ K)", "(l/s)²/(cm⁴ K)", "(l/s)²/(cm⁴ (m/s)²)", "(Pa/K)^0.67"),
    *("(Pa s²/m²)^0.67", "kWh", "kWh/m²", "kg/kWh", "h", "days", "years", "K h", "K d", "1/h"),
    *("°", "GBP", "GBP/kWh", "GBP/d"),
)
UNITS: Mapping[str, Callable[[Any], Any]] = MappingProxyType(
    {
        **dict.fromkeys(_COUNTED_INSIDE, _as_counted),
        "m³/h": units.from_m3h,
        "l/s": units.from_lps,
        "cfm": units.from_cfm,
        "ft²": units.from_ft2,
        "mm": units.from_mm,
        "mm²": units.from_mm2,
        "cm²": units.from_cm2,
        "cm²/m²": units.from_cm2,
        "%": units.from_percent,
        "p/kWh": units.from_hundredths,
        "p/d": units.from_hundredths,
        "Wh": units.to_kwh,
        "MJ/m²": units.from_megajoules,
        "W/(l/s)": units.from_watt_per_lps,
    }
)
"""Every unit a check may use, with what brings it to the unit the functions take. All are straight lines."""


def is_amount(text: str) -> bool:
    """Whether the text begins like a number: then it must be an amount in full."""
    return re.match(r"[-+]?\.?\d", text) is not None


def number_and_unit(text: str) -> tuple[str, str]:
    """The number as printed, without thousands commas, and the unit; ValueError in plain words."""
    match = _AMOUNT.fullmatch(text.strip())
    if match is None:
        raise ValueError(f"'{text}' is not a number, a space and a unit, such as '872.6 Pa'")
    unit = match["unit"] or ""
    if unit not in UNITS:
        raise ValueError(f"'{unit}' in '{text}' is not a unit known here; known: {', '.join(filter(None, UNITS))}")
    return match["number"].replace(",", ""), unit


def inside(text: str) -> float:
    """The amount in the unit that the functions take."""
    number, unit = number_and_unit(text)
    return float(UNITS[unit](float(number)))


def outside(value: float, unit: str) -> float:
    """A result of a function in a unit of `UNITS`: the straight line of that unit, taken backwards."""
    nil, one = UNITS[unit](0.0), UNITS[unit](1.0)
    return float((value - nil) / (one - nil))


def half_last_digit(text: str) -> float:
    """Half of the last printed digit, in the printed unit: how far off a right value may be.

    >>> half_last_digit("872.6 Pa"), half_last_digit("1.20e3"), half_last_digit("31 l/s")
    (0.05, 5.0, 0.5)
    """
    exponent = Decimal(number_and_unit(text)[0]).as_tuple().exponent
    return 0.5 * 10.0 ** int(exponent)
