"""Which column of a table is likely which quantity, and in which unit, judged by its header alone?

A first guess for a form that somebody then corrects. The words are those that weather services write over columns.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from estimator.climate.columns import TIME_COLUMN, UNITS

_WORDS: Mapping[str, str] = {
    TIME_COLUMN: r"date.?time|timestamp|time|date|when|stamp|zeit|utc",
    "month": r"month|mo",
    "day": r"day",
    "hour": r"hour|hr",
    "temp_air": r"temp|dry.?bulb|t2m|tdb|\bta\b|\bt\b",
    "wind_speed": r"wind.?sp|wind.?vel|ws10m|\bws\b|wind(?!.?dir)",
    "ghi": r"ghi|global|g\(h\)|solar|irradiance|radiation",
    "dni": r"dni|direct|beam|gb\(n\)",
    "dhi": r"dhi|diffuse|gd\(h\)",
    "relative_humidity": r"humid|\brh\b|rhum",
    "pressure": r"press|\bsp\b|\bslp\b|mslp",
}
_NOT = re.compile(r"dew|wet.?bulb|flag|uncert|source|direction|\bdir\b|gust|min\b|max\b", re.I)
_UNIT_MARKS: tuple[tuple[str, str], ...] = (
    ("°F", r"°\s?f|\bdeg\.?\s?f\b|fahrenheit|[_( ]f\b"),
    ("0.1 °C", r"0\.1|tenth"),
    ("K", r"kelvin|[_( \[]k[)\]]?$"),
    ("km/h", r"km.?/?.?h|kmh|kph"),
    ("knots", r"knots?|\bkt|\bkn\b"),
    ("mph", r"mph|mi/h"),
    ("0.1 m/s", r"0\.1|tenth"),
    ("kJ/m²", r"kj"),
    ("J/cm²", r"j/cm"),
    ("fraction", r"fraction|0.?-.?1\b"),
    ("hPa", r"hpa|mbar|\bmb\b"),
)


def guessed_columns(headers: Sequence[str]) -> dict[str, str]:
    """Quantity to header, for those that a header speaks of; no header twice."""
    found: dict[str, str] = {}
    for name, words in _WORDS.items():
        free = [header for header in headers if header not in found.values() and not _NOT.search(header)]
        exact = [header for header in free if header.strip().casefold() == name]
        alike = [header for header in free if re.search(words, header.replace("_", " "), re.I)]
        if exact or alike:
            found[name] = (exact or alike)[0]
    if TIME_COLUMN in found and {"month", "day", "hour"} <= found.keys():
        del found[TIME_COLUMN]
    return found


def guessed_unit(name: str, header: str) -> str:
    """The unit that a header names for a quantity, else the usual one."""
    for unit, mark in _UNIT_MARKS:
        if unit in UNITS[name] and re.search(mark, header, re.I):
            return unit
    return next(iter(UNITS[name]))
