"""Which shape has a stream from which parts leave, one after the other, drawn to scale?

Pure geometry, without colours, words or units: `along` is the way the stream runs, `across` grows from its straight
edge to the side where parts leave. A part larger than what is left of the stream is drawn in two pieces: what the
stream can feed, and what it cannot. A part below nil joins instead of leaving.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

Point = tuple[float, float]
"""along, across"""

HAIRLINE = 1.5
"""A part that is not nil stays visible, however small [px]."""


@dataclass(frozen=True, slots=True)
class Curve:
    """A quarter turn to a point, about a centre at the given radius; `left` tells the sense of turning."""

    to: Point
    radius: float
    left: bool


Step = Point | Curve


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One part of the stream as drawn."""

    start: float  # along, where it parts from the stream
    near: float  # along, edges of its own straight piece
    far: float
    level: float  # of the stream afterwards; below nil: what is missing
    fed: tuple[Step, ...] | None  # outline of what the stream feeds
    unfed: tuple[Step, ...] | None  # outline of what it cannot

    @property
    def begin(self) -> float:
        """Along, where it first touches stream or edge, whichever way it goes."""
        return min(self.start, self.near)


@dataclass(frozen=True, slots=True)
class Stream:
    """The whole picture's geometry."""

    level: float  # at the beginning
    parts: tuple[Part, ...]
    end: float  # along
    depth: float  # across, where parts that left end
    scale: float


def drawn_size(size: float) -> float:
    """Size as drawn: never finer than a hairline, sign kept."""
    return 0.0 if size == 0 else max(abs(size), HAIRLINE) * (1 if size > 0 else -1)


def reach(total: float, sizes: Sequence[float]) -> float:
    """How far across the stream, or what it lacks, ever comes; in the unit of what is given."""
    levels = [total]
    for size in sizes:
        levels.append(levels[-1] - size)
    return max(abs(level) for level in levels)


def stream(
    total: float,
    sizes: Sequence[float],
    *,
    scale: float,
    lead: float,
    tail: float,
    bend: float,
    drop: float,
    room: Callable[[int, float], float],
) -> Stream:
    """The stream of `total` from which `sizes` leave in turn.

    total, sizes in any unit, turned to px by `scale`; lead, tail: px before the first part and after the last;
    bend: inner radius; drop: px that parts run on below the stream; room(i, px): px along that part i needs.
    """
    steps = [drawn_size(size * scale) for size in sizes]
    depth = reach(total * scale, steps) + bend + drop
    level, along = total * scale, lead
    parts: list[Part] = []
    for index, size in enumerate(steps):
        part = _leaves(level, size, along, bend, depth) if size >= 0 else _joins(level, -size, along, bend, depth)
        parts.append(part)
        level = part.level
        along += room(index, abs(size))
    return Stream(total * scale, tuple(parts), along + tail, depth, scale)


def _leaves(level: float, size: float, start: float, bend: float, depth: float) -> Part:
    fed = max(0.0, min(size, level))
    near = start + bend
    outline: tuple[Step, ...] | None = None
    if fed > 0:
        outline = (
            (start, level - fed),
            Curve((near + fed, level + bend), bend + fed, left=False),
            (near + fed, depth),
            (near, depth),
            (near, level + bend),
            Curve((start, level), bend, left=True),
        )
    missing = ((near + fed, 0.0), (near + size, 0.0), (near + size, depth), (near + fed, depth))
    return Part(
        start=start,
        near=near,
        far=near + size,
        level=level - size,
        fed=outline,
        unfed=missing if size - fed > 1e-9 else None,
    )


def _joins(level: float, size: float, start: float, bend: float, depth: float) -> Part:
    base = max(0.0, level)
    fed = max(0.0, level + size) - base
    meet = start + fed + bend
    outline: tuple[Step, ...] | None = None
    if fed > 0:
        outline = (
            (start, depth),
            (start, base + fed + bend),
            Curve((meet, base), bend + fed, left=False),
            (meet, base + fed),
            Curve((start + fed, base + fed + bend), bend, left=True),
            (start + fed, depth),
        )
    covers = ((start + fed, 0.0), (start + size, 0.0), (start + size, depth), (start + fed, depth))
    return Part(
        start=meet if fed > 0 else start,
        near=start,
        far=start + size,
        level=level + size,
        fed=outline,
        unfed=covers if size - fed > 1e-9 else None,
    )


def best_scale(fits: Callable[[float], bool], *, most: float) -> float:
    """The largest scale up to `most` for which the picture fits; 0 where none does."""
    if fits(most):
        return most
    low, high = 0.0, most
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (middle, high) if fits(middle) else (low, middle)
    return low
