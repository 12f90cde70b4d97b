"""Whose turn is it to try all cases?

As many visitors at a time as there are processors, in the order they came. With more, none is done sooner, and each
holds its memory all the while; who waits has a first look meanwhile, which comes sooner with fewer at work.
"""

from __future__ import annotations

import os
from collections import deque
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from itertools import islice
from threading import Condition

_AT_ONCE = os.cpu_count() or 1
_QUEUE: deque[object] = deque()
"""Who tries, and behind them who waits."""
_MOVED = Condition()
_ASKS = 0.2  # s between two looks whether somebody who waits still wants a turn


@contextmanager
def turn(told: Callable[[int], None]) -> Iterator[None]:
    """Wait for a turn, and have it. told: called with nil while waiting, and free to end that."""
    ticket = object()
    with _MOVED:
        _QUEUE.append(ticket)
    try:
        while not _called(ticket):
            told(0)
        yield
    finally:
        with _MOVED:
            _QUEUE.remove(ticket)
            _MOVED.notify_all()


def _called(ticket: object) -> bool:
    """Whether it is a visitor's turn, now or before long."""
    with _MOVED:
        return _MOVED.wait_for(lambda: ticket in islice(_QUEUE, _AT_ONCE), timeout=_ASKS)
