"""How is a number with its unit said, on every screen and page alike?

The only place where results are rounded and turned into words. At most three significant figures outside tables,
thousands with a comma, units always, a real minus sign, a gap that never breaks between number and unit.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from contextvars import ContextVar
from typing import Any

from estimator import units
from estimator.report.imperial import IMPERIAL

SIGNIFICANT = 3
GAP = "\u00a0"
MINUS = "\u2212"
UNKNOWN = "not known"

_OF_WIDTH = 2  # significant figures of a range's width
_NOTHING = 1e-6  # smaller numbers are noise in any unit shown here
_TYPED = 6  # significant figures that somebody may have typed
_QUARTERS = 4  # of an inch, in which sheets and pipes are sold; common practice, no source
_AS_SOLD = 0.02  # an inch is sold as 25 mm, 1.6 % short; common practice, no source
_AS_TYPED = 1e-9  # a number typed and converted there and back misses by less


THINKS_IMPERIAL: ContextVar[bool] = ContextVar("THINKS_IMPERIAL", default=False)
"""Whether the reader of this moment asked for imperial units; whoever says nothing else gets those."""


_SPOKEN = {"1/year": "a year", "m/s of wind": "m/s"}
"""Units that nobody says as they are declared."""


def number(value: float | None, *, figures: int = SIGNIFICANT) -> str:
    """A number in words fit for a sentence: at most `figures` significant, thousands with a comma.

    >>> number(1234.5), number(0.2049), number(-38.04), number(None)
    ('1,230', '0.205', '−38', 'not known')
    """
    if value is None or not math.isfinite(value):
        return UNKNOWN
    near = float(f"{value:.{figures - 1}e}")
    if abs(near) < _NOTHING:
        return "0"
    decimals = max(0, figures - 1 - math.floor(math.log10(abs(near))))
    text = f"{abs(near):,.{decimals}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return f"{MINUS}{text}" if near < 0 else text


def borne(value: float, *, low: float, high: float) -> float:
    """A number rounded as the range it stands in bears: to two significant figures of the range's width.

    >>> borne(7.22, low=-38.0, high=45.0), borne(1234.5, low=800.0, high=1700.0), borne(0.753, low=0.6, high=0.9)
    (7.0, 1230.0, 0.75)
    """
    width = high - low
    if not math.isfinite(value) or not math.isfinite(width) or width <= 0.0:
        return value
    places = _OF_WIDTH - 1 - math.floor(math.log10(width))
    return round(value, places)


def fixed(value: float | None, *, decimals: int) -> str:
    """A number for a column of a table, all with the same decimals."""
    if value is None or not math.isfinite(value):
        return UNKNOWN
    text = f"{abs(value):,.{decimals}f}"
    return f"{MINUS}{text}" if value < 0 and text.strip("0.,") else text


def quantity(value: float | None, unit: str, *, imperial: bool | None = None, figures: int = SIGNIFICANT) -> str:
    """A number with its unit as declared in the inputs ("m²", "°C", "%", "kWh" …).

    >>> quantity(110.0, "m²"), quantity(19.5, "°C"), quantity(85.0, "%"), quantity(2.0, "")
    ('110\\xa0m²', '19.5\\xa0°C', '85%', '2')
    """
    if value is None or not math.isfinite(value):
        return UNKNOWN
    if _asked(imperial) and unit in IMPERIAL:
        value, unit = IMPERIAL[unit].convert(value), IMPERIAL[unit].unit
    return joined(number(value, figures=figures), unit)


def _asked(imperial: bool | None) -> bool:
    return THINKS_IMPERIAL.get() if imperial is None else imperial


def entered(value: float, unit: str) -> float:
    """The number that a field shows for a metric one, fit to be typed over.

    One typed in the reader's own units comes back as typed; one that comes from a metric figure is no finer than words.
    """
    if not (THINKS_IMPERIAL.get() and unit in IMPERIAL):
        return value
    shown = float(IMPERIAL[unit].convert(value))
    typed = float(f"{shown:.{_TYPED}g}")
    return typed if math.isclose(shown, typed, rel_tol=_AS_TYPED) else float(f"{shown:.{SIGNIFICANT}g}")


def converted(values: Any, unit: str) -> Any:
    """Metric numbers as the axes and sentences of this reader count them: a float, or an array."""
    return IMPERIAL[unit].convert(values) if THINKS_IMPERIAL.get() and unit in IMPERIAL else values


def to_metric(unit: str) -> Callable[[float], float]:
    """What turns a number typed into a field of now into the metric one, whenever it is typed."""
    return IMPERIAL[unit].back if THINKS_IMPERIAL.get() and unit in IMPERIAL else lambda typed: typed


def joined(text: str, unit: str) -> str:
    """Number and unit, with the gap they need."""
    if not unit:
        return text
    return f"{text}{unit}" if unit == "%" else f"{text}{GAP}{_SPOKEN.get(unit, unit).replace(' ', GAP)}"


def unit_shown(unit: str, *, imperial: bool | None = None) -> str:
    """The unit that `quantity` writes for a declared one."""
    return IMPERIAL[unit].unit if _asked(imperial) and unit in IMPERIAL else _SPOKEN.get(unit, unit)


def nominal(millimetres: float) -> str:
    """A thickness or bore as it is sold: in inches the quarter that is meant, where one is near.

    >>> nominal(25.0)
    '25\\xa0mm'
    """
    if THINKS_IMPERIAL.get():
        inches = float(IMPERIAL["mm"].convert(millimetres))
        quarter = round(inches * _QUARTERS) / _QUARTERS
        if quarter and math.isclose(inches, quarter, rel_tol=_AS_SOLD):
            return joined(f"{quarter:g}", IMPERIAL["mm"].unit)
    return quantity(millimetres, "mm")


def retold(words: str) -> str:
    """A finished sentence of another room, its metric figures in the units that this reader asked for.

    >>> retold("25 mm more of it")
    '25 mm more of it'
    """
    if not THINKS_IMPERIAL.get():
        return words
    return _FIGURE.sub(
        lambda found: nominal(_read(found[1])) if found[2] == "mm" else quantity(_read(found[1]), found[2]), words
    )


_FIGURE = re.compile(rf"([{MINUS}-]?\d[\d,]*(?:\.\d+)?)[ {GAP}](m³/h|mm²|mm|m|°C|K)(?![\w²³/])")


def _read(text: str) -> float:
    return float(text.replace(MINUS, "-").replace(",", ""))


def share(fraction: float | None) -> str:
    """A fraction in per cent, whole unless below one.

    >>> share(0.6249), share(0.004), share(1.0)
    ('62%', '0.4%', '100%')
    """
    if fraction is None or not math.isfinite(fraction):
        return UNKNOWN
    percent = units.to_percent(fraction)
    return joined(number(percent, figures=1) if abs(percent) < 1 else f"{_minus(round(percent))}", "%")


def flow(cubic_metres_per_second: float | None, *, imperial: bool | None = None) -> str:
    """An air flow, in both units the trade uses, or in cubic feet per minute.

    >>> flow(0.031)
    '112\\xa0m³/h (31\\xa0l/s)'
    """
    if cubic_metres_per_second is None or not math.isfinite(cubic_metres_per_second):
        return UNKNOWN
    if _asked(imperial):
        return joined(number(units.to_cfm(cubic_metres_per_second)), "cfm")
    hourly = joined(number(units.to_m3h(cubic_metres_per_second)), "m³/h")
    return f"{hourly} ({joined(number(units.to_lps(cubic_metres_per_second)), 'l/s')})"


def energy(kilowatt_hours: float | None) -> str:
    """Energy in kWh."""
    return quantity(kilowatt_hours, "kWh")


def carbon(kilograms: float | None) -> str:
    """Carbon dioxide equivalent in kg."""
    return quantity(kilograms, "kg")


def temperature(celsius: float | None, *, imperial: bool | None = None) -> str:
    """A temperature."""
    return quantity(celsius, "°C", imperial=imperial)


def years(value: float | None) -> str:
    """A span of years, whole from two up.

    >>> years(1.0), years(1.44), years(12.4)
    ('1 year', '1.4 years', '12 years')
    """
    if value is None or not math.isfinite(value):
        return UNKNOWN
    text = number(value, figures=2) if value < 2 else _minus(round(value))
    return f"{text} year" if text == "1" else f"{text} years"


def _minus(whole: int) -> str:
    return f"{MINUS if whole < 0 else ''}{abs(whole):,}"
