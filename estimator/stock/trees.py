"""How are some of the homes, or fewer digits, taken of a whole tree of numbers?

A tree is made of dataclasses, mappings and tuples; its leaves are floats, columns (n, 1) of homes, and
whatever else there is.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Iterator, Mapping
from typing import Any

import numpy as np

Pick = Callable[[slice], Any]


def in_single_precision(value: Any) -> Any:
    """The tree with every floating number in single precision, as an array."""
    if isinstance(value, np.ndarray | np.generic | float):
        leaf = np.asarray(value)
        return leaf.astype(np.float32) if np.issubdtype(leaf.dtype, np.floating) else leaf
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        return dataclasses.replace(
            value, **{name: in_single_precision(inner) for name, inner in _fields(value).items()}
        )
    if isinstance(value, Mapping):
        return {name: in_single_precision(inner) for name, inner in value.items()}
    if isinstance(value, tuple):
        inside: Iterator[Any] = (in_single_precision(inner) for inner in value)
        return type(value)(*inside) if hasattr(value, "_fields") else tuple(inside)
    return value


def homes_picked(value: Any, count: int) -> Pick:
    """What gives the tree with only some of its `count` homes; what is the same for all of them stays as it is.

    The tree is gone through once, however often homes are picked.
    """
    return _picker(value, count) or (lambda part: value)


def _picker(value: Any, count: int) -> Pick | None:
    """The same; None for a tree without homes."""
    if isinstance(value, np.ndarray):
        return value.__getitem__ if value.ndim == 2 and len(value) == count else None
    if isinstance(value, tuple):
        made: Any = getattr(type(value), "_make", tuple)
        return _together(dict(enumerate(value)), count, lambda parts: made(parts.values()))
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        kind: Any = type(value)
        return _together(_fields(value), count, lambda parts: kind(**parts))
    if isinstance(value, Mapping):
        return _together(dict(value), count, lambda parts: parts)
    return None


def _together(inside: dict[Any, Any], count: int, made: Callable[[dict[Any, Any]], Any]) -> Pick | None:
    picks = {name: pick for name, inner in inside.items() if (pick := _picker(inner, count)) is not None}
    if not picks:
        return None
    return lambda part: made({**inside, **{name: pick(part) for name, pick in picks.items()}})


def _fields(value: Any) -> dict[str, Any]:
    return {item.name: getattr(value, item.name) for item in dataclasses.fields(value)}
