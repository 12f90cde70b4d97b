"""What is a reported figure, and how is it read from a result?"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

MONEY = "money"


@dataclass(frozen=True, slots=True)
class Reported:
    """A figure: its key in the document, unit, meaning, and how it is read from a result."""

    key: str
    unit: str
    meaning: str
    read: Callable[[Any], Any]


def plain(name: str) -> Callable[[Any], float]:
    """Reads the number of that name."""
    return lambda result: float(getattr(result, name))
