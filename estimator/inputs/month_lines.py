"""What does a line of twelve figures say, January first, and what in it cannot be read?"""

from __future__ import annotations

import math
from collections.abc import Iterable

from estimator.inputs.faults import shown

_TWELVE = 12
_FORM = "Write twelve numbers with blanks between, January first, with a decimal point."


def twelve(line: str) -> tuple[float, ...] | None:
    """The numbers of a line, None for an empty one; ValueError, in words, for what is no line of twelve numbers."""
    words = line.split()
    if not words:
        return None
    if len(words) != _TWELVE:
        raise ValueError(f"{len(words)} figures are given. {_FORM}")
    return tuple(_number(word) for word in words)


def _number(word: str) -> float:
    try:
        value = float(word)
    except ValueError:
        value = math.nan
    if not math.isfinite(value):
        raise ValueError(f"{shown(word)} is no number. {_FORM}")
    return value


def as_line(values: Iterable[float]) -> str:
    """Twelve numbers as the line that `twelve` reads."""
    return " ".join(f"{value:.10g}" for value in values)
