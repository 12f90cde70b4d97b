"""How long does an estimate take, here and now? `python -m tests.bench`, not part of the tests.

Every time is the median of five, taken turn and turn about with a baseline of plain numpy (or of a bare Python
process), so that the ratio holds on a slow or busy machine where the milliseconds do not.
"""

from __future__ import annotations

import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from statistics import median

import numpy as np

from estimator import Case, estimate, load_year, names, run
from estimator.at_leakage import difference_at, ground
from estimator.corridor import heat_demand, home_year
from estimator.match_bill import match
from estimator.metered import Bill
from estimator.sample import MANY
from estimator.sure import sure
from estimator.survey.fill import filled
from estimator.survey.numbers import home_numbers
from estimator.sweep import LEAKAGES
from tests.laws.settings import default_option

ROUNDS = 5
CLIMATE = "Sand Point"


@dataclass(frozen=True, kw_only=True)
class Timed:
    """Seconds of a task and of its baseline, medians of `ROUNDS`, and what the task may take."""

    name: str
    seconds: float
    baseline: float
    limit: float

    def __str__(self) -> str:
        held = "holds" if self.seconds <= self.limit else "FAILS"
        ratio = self.seconds / self.baseline
        return (
            f"| {self.name} | {_clock(self.seconds)} | {_clock(self.baseline)} | {ratio:.1f} "
            f"| {_clock(self.limit)}: {held} |"
        )


def _clock(seconds: float) -> str:
    return f"{seconds:.2f} s" if seconds >= 0.1 else f"{1000.0 * seconds:.2f} ms"


def _once(task: Callable[[], object], repeats: int) -> float:
    began = time.perf_counter()
    for _ in range(repeats):
        task()
    return (time.perf_counter() - began) / repeats


def timed(
    name: str, task: Callable[[], object], *, baseline: Callable[[], object], limit: float, repeats: int = 1
) -> Timed:
    """Task and baseline in turns; one round of each first, to warm up."""
    task()
    baseline()
    pairs = [(_once(task, repeats), _once(baseline, repeats)) for _ in range(ROUNDS)]
    return Timed(name=name, seconds=median(p[0] for p in pairs), baseline=median(p[1] for p in pairs), limit=limit)


def plain_numpy() -> float:
    """The baseline: ten products, square roots and sums over the hours of a year, and one filter by FFT."""
    hours = np.linspace(-10.0, 30.0, 8760)
    total = 0.0
    for _ in range(10):
        total += float(np.sqrt(hours * hours + 1.0).sum())
    return total + float(np.fft.irfft(np.fft.rfft(hours) * 0.5, n=8760)[0])


def process(*arguments: str) -> Callable[[], object]:
    """A whole Python process, from start to exit."""

    def task() -> object:
        return subprocess.run([sys.executable, *arguments], check=True, capture_output=True)

    return task


def library() -> Iterator[Timed]:
    """One estimate, its lean form and the sweep over leakages, climate and sun already loaded."""
    year, case = load_year(CLIMATE), Case()
    home = home_numbers(filled(case).case)
    options = [default_option(name) for name in case.options]
    shared = home_year(home, year)
    tasks: dict[str, tuple[Callable[[], object], float]] = {
        "three options, estimate": (lambda: estimate(case, year), 0.010),
        "three options, both comparisons": (lambda: run(case, year), 0.010),
        "three options, lean heat demand": (
            lambda: [heat_demand(home, option, shared, step=1.0, top_up=True) for option in options],
            0.002,
        ),
    }
    for name, (task, limit) in tasks.items():
        yield timed(name, task, baseline=plain_numpy, limit=limit, repeats=20)
    place = ground(case, year)
    yield timed(
        f"{LEAKAGES.size} leakages over {year.rows:,} hours",
        lambda: difference_at(place, LEAKAGES, option="recovery", baseline=case.baseline),
        baseline=plain_numpy,
        limit=0.3,
    )
    yield timed(
        f"two options in {MANY:,} cases",
        lambda: sure(case, year, option="recovery", baseline=case.baseline),
        baseline=plain_numpy,
        limit=1.0,
    )
    yield timed(
        "the house of a bill", lambda: match(case, year, Bill(energy=18_000.0)), baseline=plain_numpy, limit=0.5
    )


def command_line() -> Iterator[Timed]:
    """The shipped example as a whole process, on every included climate, as a table and as JSON."""
    bare = process("-c", "import numpy")
    for climate in names():
        for form in ((), ("--json",)):
            task = process("-m", "estimator", "estimate", "example", "--climate", climate, *form)
            yield timed(f"command line, {climate}{' as JSON' if form else ''}", task, baseline=bare, limit=2.0)


def main() -> None:
    print("| task | median of five | baseline | ratio | limit |\n|---|---|---|---|---|")
    for measured in library():
        print(measured, flush=True)
    if "--library" not in sys.argv[1:]:
        for measured in command_line():
            print(measured, flush=True)


if __name__ == "__main__":
    main()
