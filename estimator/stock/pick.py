"""Which homes of a case of columns are wanted, and how does one of them stand alone?"""

from __future__ import annotations

import dataclasses
from typing import Any, cast

import numpy as np

from estimator.inputs.case import Case
from estimator.inputs.places import every_entry, value_at, with_values


def homes_in(case: Case) -> int:
    """Homes of a case of columns (n, 1): the length of its floor areas."""
    return len(np.asarray(case.home.floor_area))


def part_of(case: Case, rows: Any) -> Case:
    """The case with only some of its homes."""
    return cast(Case, _taken(case, rows, homes_in(case)))


def _taken(value: Any, rows: Any, count: int) -> Any:
    if isinstance(value, np.ndarray):
        return value[rows] if value.shape == (count, 1) else value
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        inside = {item.name: _taken(getattr(value, item.name), rows, count) for item in dataclasses.fields(value)}
        return dataclasses.replace(value, **inside)
    if isinstance(value, dict):
        return {name: _taken(inner, rows, count) for name, inner in value.items()}
    return value


def home_of(case: Case, place: int) -> Case:
    """One home of a case of columns, by itself, as a person would have entered it."""
    values = {path: value_at(case, path) for path, _ in every_entry(case)}
    alone = {
        path: np.asarray(value[place, 0]).item() for path, value in values.items() if isinstance(value, np.ndarray)
    }
    return cast(Case, with_values(case, alone))
