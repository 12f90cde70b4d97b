"""Which cases are tried, and what does every option come to in each of them?

Drawn once, a sample answers for every option against every baseline. Whoever asks for one waits, in the order of
coming, for a few threads that all of a process share: NumPy lets several work at once, more than there are processors
gain nothing, and what the allocator of a system keeps for each thread is kept for these alone.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Mapping
from concurrent.futures import Future, ThreadPoolExecutor, wait
from dataclasses import dataclass
from functools import cache

import numpy as np

from estimator.drawn import Difference, Outcome, difference, joined
from estimator.draws import Ground, outcomes
from estimator.tries import place_of_rank, places
from estimator.units import Array

MANY = 2000
FEW = 64  # for an answer while somebody types
LOW, HIGH = 0.10, 0.90
AT_ONCE = 250  # cases between two words to whoever waits
MOST_THREADS = 4
_ASKS = 0.2  # s between two words to whoever waits for others' cases
ERROR_CASES = 8  # the best guess and the first cases drawn, on the full year too

Outcomes = Mapping[str, Outcome]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Sample:
    """Cases tried of one home, and the outcomes of its options in them.

    where: places of the inputs (cases, inputs); cases: drawn; alone: the best guess, then each input alone where a
    tenth of the cases lie below, then each where a tenth lie above; short, full: a few cases on the shortened and on
    the full year.
    """

    place: Ground
    where: Array
    start: int
    cases: Outcomes
    alone: Outcomes
    short: Outcomes
    full: Outcomes

    def drawn(self, option: str, *, baseline: str) -> Difference:
        """An option against a baseline in all cases drawn."""
        return difference(self.cases[option], baseline=self.cases[baseline])

    def one_at_a_time(self, option: str, *, baseline: str) -> Difference:
        """An option against a baseline at the best guess and with each input alone at either end."""
        return difference(self.alone[option], baseline=self.alone[baseline])

    def block_errors(self, option: str, *, baseline: str) -> tuple[Difference, Difference]:
        """An option against a baseline in the same few cases, on the shortened and on the full year."""
        return (
            difference(self.short[option], baseline=self.short[baseline]),
            difference(self.full[option], baseline=self.full[baseline]),
        )


def sample(
    place: Ground,
    *,
    names: Iterable[str] | None = None,
    count: int = MANY,
    start: int = 1,
    widening: float = 1.0,
    told: Callable[[int], None] = lambda _: None,
) -> Sample:
    """The options named (all of them otherwise) in `count` cases; `start` as in `places`, all ranges made wider.

    told: called now and then with the number of cases tried so far, nil while others' are; what it raises ends the
    trying.
    """
    inputs = len(place.inputs)
    where = widening * places(inputs, count=count, start=start)
    best = np.zeros((1, inputs))
    low, high = (widening * place_of_rank(share) * np.eye(inputs) for share in (LOW, HIGH))
    some = np.vstack((best, where[: ERROR_CASES - 1]))
    wanted = None if names is None else tuple(names)
    parts = [where[first : first + AT_ONCE] for first in range(0, count, AT_ONCE)]
    asked = [_threads().submit(outcomes, place, part, names=wanted) for part in parts]
    asked += [
        _threads().submit(outcomes, place, np.vstack((best, low, high)), names=wanted),
        _threads().submit(outcomes, place, some, names=wanted),
        _threads().submit(outcomes, place, some, names=wanted, full_year=True),
    ]
    *cases, alone, short, full = _done(asked, lambda part: told(min(part * AT_ONCE, count)))
    together = {name: joined([part[name] for part in cases]) for name in cases[0]}
    return Sample(place=place, where=where, start=start, cases=together, alone=alone, short=short, full=full)


def _done(asked: list[Future[dict[str, Outcome]]], told: Callable[[int], None]) -> list[dict[str, Outcome]]:
    """What was asked for, in that order; told: with the number of parts done, and none is begun once it raises."""
    try:
        for number, part in enumerate(asked):
            while not wait((part,), timeout=_ASKS).done:
                told(number)
            part.result()
            told(number + 1)
    finally:
        for part in asked:
            part.cancel()
    return [part.result() for part in asked]


@cache
def _threads() -> ThreadPoolExecutor:
    return ThreadPoolExecutor(min(os.cpu_count() or 1, MOST_THREADS), thread_name_prefix="cases")
