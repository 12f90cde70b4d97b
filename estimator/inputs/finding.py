"""What is a fault of several entries together, before it is told?"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True, slots=True)
class Finding:
    """A fault, and the paths of the other entries it weighs: withheld where one of them was unreadable.

    rows: which homes of a column are at fault, as an array of truths; None for all of them.
    """

    where: str
    what: str
    others: tuple[str, ...] = field(default=())
    rows: Any = field(default=None, compare=False)
