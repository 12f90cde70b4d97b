"""How far may each input of a filled case lie from its best guess, and why?"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Any

import numpy as np

from estimator.air.exchanger import counterflow_effectiveness
from estimator.inputs.case import Case
from estimator.inputs.catalogue import is_electric, is_heat_pump, option_fact, table
from estimator.inputs.option import Option
from estimator.inputs.places import value_at
from estimator.inputs.quantity import TAGS, Tag
from estimator.survey.fill import Filled
from estimator.units import Array, Numeric, from_percent, to_percent

WEATHER = "weather."
SPAN = "span"
_OF_EACH_OPTION = "options.*."
_OF_ELECTRICITY = ("prices.electricity", "prices.electricity_carbon")

Ends = tuple[float, float]


def _factor(middle: Numeric, low: float, high: float, place: Array) -> Any:
    return np.asarray(middle) * low ** np.maximum(-place, 0.0) * high ** np.maximum(place, 0.0)


def _offset(middle: Numeric, low: float, high: float, place: Array) -> Any:
    return np.asarray(middle) + low * np.maximum(-place, 0.0) + high * np.maximum(place, 0.0)


def _transfer_units(middle: Numeric, low: float, high: float, place: Array) -> Any:
    share = from_percent(middle)
    return to_percent(counterflow_effectiveness(_factor(share / (1.0 - share), low, high, place)))


SCALES: Mapping[str, Callable[[Numeric, float, float, Array], Any]] = MappingProxyType(
    {"factor": _factor, SPAN: _factor, "offset": _offset, "transfer units": _transfer_units}
)
"""What the ends of a range do to the best guess. None of them leaves the possible: a factor is never negative."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One input of the table of ranges: lowest and highest by tag."""

    name: str
    words: str
    settle: str
    paths: tuple[str, ...]
    scale: str
    only: str
    tag: Tag | None
    ends: Mapping[Tag, Ends]
    reason: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Range:
    """One uncertain input of one case: by dotted path, the lowest and the highest as its scale counts them."""

    name: str
    words: str
    settle: str
    scale: str
    ends: Mapping[str, Ends]
    tags: Mapping[str, Tag]
    reason: str
    source: str

    def drawn(self, path: str, middle: Numeric, place: Array) -> Any:
        """The entry where its best guess is `middle`, at places between -1 (lowest), 0 (best guess) and 1 (highest)."""
        low, high = self.ends[path]
        return SCALES[self.scale](middle, low, high, place)


@cache
def rows() -> tuple[Row, ...]:
    """The table of ranges."""
    return tuple(
        Row(
            name=name,
            words=row["words"],
            settle=row["settle"],
            paths=tuple(row["paths"]),
            scale=row["scale"],
            only=row.get("only", ""),
            tag=row.get("tag"),
            ends={tag: (float(row[tag][0]), float(row[tag][1])) for tag in TAGS if tag in row},
            reason=row["reason"],
            source=row["source"],
        )
        for name, row in table("ranges").items()
    )


def ranges(survey: Filled, *, leakage: Ends) -> tuple[Range, ...]:
    """The inputs of a case that are drawn, each entry with the ends that its tag gives it.

    leakage: lowest and highest factor on the leakage, from whatever is known of it. Where heat is bought through the
    electricity meter, its price and carbon move with those of electricity, and are no inputs of their own.
    """
    found = []
    linked = is_electric(survey.case.heating.fuel)
    for row in rows():
        paths = _paths(row, survey.case)
        if linked:
            paths = [path for path in paths if not path.startswith("prices.fuel")]
            paths += [path.replace("electricity", "fuel") for path in paths if path in _OF_ELECTRICITY]
        tags = {path: row.tag or survey.origins[path].tag for path in paths}
        ends = {path: leakage if row.scale == SPAN else row.ends[tags[path]] for path in paths}
        if paths:
            found.append(
                Range(
                    name=row.name,
                    words=row.words,
                    settle=row.settle,
                    scale=row.scale,
                    ends=ends,
                    tags=tags,
                    reason=row.reason,
                    source=row.source,
                )
            )
    return tuple(found)


def _paths(row: Row, case: Case) -> list[str]:
    paths = []
    for path in row.paths:
        if path.startswith(_OF_EACH_OPTION):
            below = path.removeprefix(_OF_EACH_OPTION)
            paths += [f"options.{name}.{below}" for name, option in case.options.items() if _applies(row.only, option)]
        elif _in_use(path, row.only, case):
            # A tariff of several prices moves as one.
            several = path == "prices.electricity" and case.prices.tariff.kind != "flat"
            paths.append("prices.tariff.level" if several else path)
    # A factor on nothing is no input: an option that costs nothing has no uncertain cost.
    return [path for path in paths if row.scale == "offset" or path.startswith(WEATHER) or np.any(value_at(case, path))]


def _in_use(path: str, only: str, case: Case) -> bool:
    """Whether the home has what an entry is about."""
    pump, second = case.heating.pump, case.heating.second
    if path == "heating.second.price":
        return bool(np.any(np.asarray(second.share) > 0.0)) and not is_electric(second.fuel)
    if only == "roof":
        return bool(np.any(np.asarray(case.roof.size) > 0.0))
    if only in ("heat pump", "no heat pump") and is_heat_pump(case.heating.fuel) != (only == "heat pump"):
        return False
    # By the hour a heat pump goes by its grade, else by its seasonal efficiency.
    return only != "heat pump" or path.endswith("grade") == (pump.mode == "hourly")


def _applies(only: str, option: Option) -> bool:
    if only == "recovers":
        return bool(np.any(np.asarray(option.unit.effectiveness) > 0.0))
    if only == "balanced":
        return bool(option_fact(option.kind, "supplies") and option_fact(option.kind, "extracts"))
    return True
