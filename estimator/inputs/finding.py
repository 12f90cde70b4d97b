"""What is a fault of several entries together, before it is told?"""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Finding:
    """A fault, and the paths of the other entries it weighs: withheld where one of them was unreadable."""

    where: str
    what: str
    others: tuple[str, ...] = field(default=())
