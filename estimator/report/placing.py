"""Where is room for words beside a line, so that they collide with nothing?

Pure geometry in pixels, without colours or units. Words never cover words; they cover a line only where nothing else is
left, and a line that carries no curve is then broken around them.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import permutations, product

import numpy as np

from estimator.units import Array

CURVE = 1000.0
"""Cost of covering a curve: nothing but words is worse."""

RULE = 60.0
"""Cost of breaking a line that can be broken."""

_CLEAR = 4.0  # between words and lines
_APART = (20.0, 3.0)  # between words and words, beside and below each other: else they read as one sentence
_BREAK = 3.0  # of a line, around words
_BESIDE = 6.0  # between words and their own line
_STEP = 9.0  # between two places that are tried
_FINE = 5.0  # along a curve; less than any words are high
_MANY = 4  # borders; with more of them not every order is tried
_FAR = 60.0  # beyond which another curve is not mistaken for one's own
_NOWHERE_NEAR = 500.0  # cost of standing away from one's own line


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle, y downwards."""

    left: float
    top: float
    right: float
    bottom: float

    def grown(self, across: float, up: float) -> Box:
        """The same with margins on its sides and above and below."""
        return Box(self.left - across, self.top - up, self.right + across, self.bottom + up)


class Room:
    """The ground on which words may stand, and what already stands there."""

    def __init__(self, bounds: Box) -> None:
        self.bounds = bounds
        self.words: list[Box] = []
        self._lines: list[tuple[Array, float]] = []

    def line(self, points: Array, *, cost: float) -> None:
        """A line through points (n, 2), and what it costs to cover it."""
        self._lines.append((fine(points), cost))

    def beside(self, points: Array, others: Sequence[Array], *, width: float, height: float, late: bool = False) -> Box:
        """Take the best place for words of this size beside one line, told apart from the others; late: at its end."""
        boxes, cost = self._along(fine(points), width, height, late)
        for other in others:
            cost = cost - np.minimum(_FAR, gaps(boxes, fine(other))) / len(others)
        near = self._best(boxes, cost)
        if near is not None and near[0] < CURVE - _FAR:
            return self._take(near[1])
        far = self._best(*self._anywhere(width, height))
        return self._take(min(each for each in (near, far) if each is not None)[1])

    def anywhere(self, *, width: float, height: float) -> Box:
        """Take a place for words that belong to no line, away from all curves."""
        boxes, cost = self._anywhere(width, height)
        for points in (points for points, price in self._lines if price >= CURVE):
            cost = cost - np.minimum(_FAR, gaps(boxes, points))
        found = self._best(boxes, cost)
        if found is None:
            raise ValueError("no room for the words of a picture")
        return self._take(found[1])

    def _along(self, own: Array, width: float, height: float, late: bool) -> tuple[Array, Array]:
        boxes, cost = [], []
        for left in np.arange(self.bounds.left, self.bounds.right - width + 0.1, _STEP).tolist():
            under = own[(own[:, 0] >= left) & (own[:, 0] <= left + width), 1]
            if not under.size:
                continue
            high, low = float(under.min()), float(under.max())
            away = 0.03 * (self.bounds.right - width - left if late else left - self.bounds.left)
            for top, less in ((high - _BESIDE - height, 0.0), (low + _BESIDE, 4.0)):
                boxes.append((left, top, left + width, top + height))
                cost.append(0.5 * (low - high) + away + less)
        return np.array(boxes).reshape(-1, 4), np.array(cost)

    def _anywhere(self, width: float, height: float) -> tuple[Array, Array]:
        tops = np.arange(self.bounds.top, self.bounds.bottom - height + 0.1, _STEP)
        lefts = np.arange(self.bounds.left, self.bounds.right - width + 0.1, _STEP)
        top, left = (grid.ravel() for grid in np.meshgrid(tops, lefts, indexing="ij"))
        return np.stack([left, top, left + width, top + height], axis=1), np.full(top.size, _NOWHERE_NEAR)

    def _best(self, boxes: Array, cost: Array) -> tuple[float, tuple[float, ...]] | None:
        """The cheapest free place with what it costs, the first of several."""
        left, top, right, bottom = boxes.T
        room = self.bounds
        free = (left >= room.left) & (right <= room.right) & (top >= room.top) & (bottom <= room.bottom)
        for taken in (word.grown(*_APART) for word in self.words):
            free &= (right <= taken.left) | (taken.right <= left) | (bottom <= taken.top) | (taken.bottom <= top)
        boxes, cost = boxes[free], cost[free]
        if not cost.size:
            return None
        for points, price in self._lines:
            cost = cost + price * (gaps(boxes, points) < _CLEAR)
        at = int(np.argmin(cost))
        return float(cost[at]), tuple(boxes[at].tolist())

    def _take(self, ends: tuple[float, ...]) -> Box:
        self.words.append(Box(*ends))
        return self.words[-1]


def gaps(boxes: Array, points: Array) -> Array:
    """Distance from each box (m, 4: left, top, right, bottom) to the nearest of points (n, 2), nil where inside."""
    left, top, right, bottom = boxes.T[:, :, None]
    x, y = points.T[:, None, :]
    across = np.maximum(0.0, np.maximum(left - x, x - right))
    up = np.maximum(0.0, np.maximum(top - y, y - bottom))
    return np.asarray(np.sqrt(np.min(across * across + up * up, axis=1, initial=np.inf)))


def fine(points: Array) -> Array:
    """The same way with points close enough together that no box slips between them."""
    steps = np.hypot(*np.diff(points, axis=0).T)
    along = np.concatenate(([0.0], np.cumsum(steps)))
    places = np.linspace(0.0, along[-1], max(2, int(np.ceil(along[-1] / _FINE)) + 1))
    return np.stack([np.interp(places, along, points[:, at]) for at in (0, 1)], axis=1)


def flags(
    places: Sequence[float], widths: Sequence[float], bounds: tuple[float, float]
) -> tuple[tuple[int, float], ...]:
    """Row and left edge for the words on top of each upright line, one row for each, so that few lines cross words.

    places: of the lines, from left to right; bounds: left and right. Words stand beside their line, to its right or
    its left; a line runs down from its own row through the rows below it.
    """
    low, high = bounds
    best: tuple[float, tuple[tuple[int, float], ...]] | None = None
    straight = tuple(range(len(places)))
    sides = product((True, False), repeat=min(len(places), _MANY))
    orders = permutations(straight) if len(places) <= _MANY else (straight,)
    for rows, some in product(orders, sides):
        right = some + (True,) * (len(places) - len(some))
        lefts = [
            min(max(at + _CLEAR if to_right else at - _CLEAR - width, low), high - width)
            for at, width, to_right in zip(places, widths, right, strict=True)
        ]
        cost = 0.1 * sum(abs(row - number) for number, row in enumerate(rows))
        for line, at in enumerate(places):
            inside = [left < at < left + width for left, width in zip(lefts, widths, strict=True)]
            cost += sum(rows[line] <= rows[words] for words, covers in enumerate(inside) if covers)
        if best is None or cost < best[0]:
            best = (cost, tuple(zip(rows, lefts, strict=True)))
    return best[1] if best else ()


def broken(
    start: float, end: float, across: float, words: Iterable[Box], *, upright: bool
) -> list[tuple[float, float]]:
    """The pieces of a straight line that are left once it is broken around words.

    start, end along the line; across: where it lies; upright: from top to bottom, else from side to side.
    """
    pieces = [(start, end)]
    for word in (box.grown(_BREAK, _BREAK) for box in words):
        first, last, low, high = (
            (word.top, word.bottom, word.left, word.right)
            if upright
            else (word.left, word.right, word.top, word.bottom)
        )
        if low < across < high:
            pieces = [
                piece
                for begin, stop in pieces
                for piece in ((begin, min(stop, first)), (max(begin, last), stop))
                if piece[1] - piece[0] > 1.0
            ]
    return pieces
