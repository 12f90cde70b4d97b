"""From where to where does an uncertain input go, said in its own unit?

An input that is one entry of the option asked about is said as its value. One that stands for several entries, or that
moves what another input has moved before it, is said as a change.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from estimator.draws import Ground
from estimator.inputs.places import every_entry, value_at
from estimator.leak_range import house_q50
from estimator.report import cash
from estimator.report.figures import quantity, share
from estimator.survey.ranges import SPAN, WEATHER, Range

_OPTIONS = "options."
_FACTORS = ("factor", SPAN)
_KELVIN = "K"
_LEAKAGE = "m³/(h m²)"  # at 50 Pa
_FIGURES = {"°C": 3}  # two are enough for all else: no end of a range is better known

Ends = tuple[str, str]


def ends_said(place: Ground, item: Range, *, option: str, at: tuple[float, float]) -> Ends:
    """An input at two places between -1 (lowest) and 1 (highest), for one option of the case."""
    if item.scale == SPAN:
        q50 = house_q50(place.case)
        low, high = (_rounded(_drawn(item, next(iter(item.ends)), q50, where), _LEAKAGE) for where in at)
        return low, high
    paths = _own(item, option)
    if not _moved_before(place, item, paths) and not any(path.startswith(WEATHER) for path in paths):
        values = {_values(place, item, path, at) for path in paths}
        if len(values) == 1:
            return values.pop()
    if item.scale in _FACTORS:
        lowest, highest = ([_drawn(item, path, 1.0, where) for path in paths] for where in at)
        return _share(min(lowest)), _share(max(highest))
    unit = _KELVIN if paths[0].startswith(WEATHER) else _unit(place, paths[0])
    low_end, high_end = (_drawn(item, paths[0], 0.0, where) for where in at)
    return _signed(low_end, unit), _signed(high_end, unit)


def span_said(ends: Ends) -> str:
    """Both ends in one line."""
    low, high = ends
    return low if low == high else f"{low} to {high}"


def _own(item: Range, option: str) -> Sequence[str]:
    """Entries of the home and of this option; of whatever there is where it moves neither."""
    own = [path for path in item.ends if not path.startswith(_OPTIONS) or path.startswith(f"{_OPTIONS}{option}.")]
    return own or list(item.ends)


def _moved_before(place: Ground, item: Range, paths: Sequence[str]) -> bool:
    before = place.inputs[: place.inputs.index(item)]
    return any(path in other.ends for other in before for path in paths)


def _values(place: Ground, item: Range, path: str, at: tuple[float, float]) -> Ends:
    unit, currency = _unit(place, path), place.case.prices.currency
    low, high = (
        _value(_drawn(item, path, float(value_at(place.case, path)), where), unit, currency=currency) for where in at
    )
    return low, high


def _value(value: float, unit: str, *, currency: str) -> str:
    if unit == "p/kWh":
        return cash.unit_price(value, currency)
    return cash.money(value, currency) if unit == "money" else _rounded(value, unit)


def _rounded(value: float, unit: str) -> str:
    return quantity(value, unit, figures=_FIGURES.get(unit, 2))


def _drawn(item: Range, path: str, middle: float, where: float) -> float:
    return float(item.drawn(path, middle, np.asarray(where)))


def _unit(place: Ground, path: str) -> str:
    return next(entry.unit for known, entry in every_entry(place.case) if known == path)


def _share(factor: float) -> str:
    if share(factor - 1.0) in ("0%", "-0%"):
        return "as it is"
    return f"{share(abs(factor - 1.0))} {'more' if factor > 1.0 else 'less'}"


def _signed(change: float, unit: str) -> str:
    said = _rounded(change, unit)
    return f"+{said}" if change > 0.0 else said
