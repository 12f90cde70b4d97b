"""How long does a stock of homes take, here and now? `python -m tests.bench_stock [rows ...]`, not part of the tests.

Whole processes from file to file, heat recovery against plain extract and against today, as the homes stand and sealed.
Beside them, in the same turns, a plain loop that takes one home at a time on the same shortened year, so that the ratio
holds on a slow or busy machine where the seconds do not; processor seconds are told as well, which a busy machine
stretches less. A median of three is taken up to 100,000 homes, larger tables once.
"""

from __future__ import annotations

import resource
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from statistics import median

import pyarrow.csv
import pyarrow.parquet as pq

from estimator import load_year, run
from estimator.climate.shorten import shortened
from estimator.stock.demo import invented
from estimator.stock.run import HOURS_PER_BLOCK
from tests.stock.alone import cases_of

ROWS = (10_000, 100_000, 1_000_000)
CLIMATE = "Sand Point"
ROUNDS, MANY = 3, 100_000
ALONE = 60  # homes of the plain loop
SECONDS = {".parquet": 60.0, ".csv": 75.0}  # that a million homes may take
MEBIBYTES = 1536.0  # that all processes together may hold
_LOOK = 0.1  # s between two looks at memory


@dataclass(frozen=True, kw_only=True)
class Round:
    """One run: seconds on the clock and of the processors, most memory of its processes [MiB], one home alone [s]."""

    wall: float
    cpu: float
    memory: float
    alone: float


def held_by(pid: int) -> float:
    """Memory of a process and of all that it started [MiB]; nil where no system tells it as Linux does."""
    total = 0.0
    todo = [pid]
    while todo:
        one = todo.pop()
        try:
            status = Path(f"/proc/{one}/status").read_text()
            total += float(status.split("VmRSS:")[1].split()[0]) / 1024.0
            for task in Path(f"/proc/{one}/task").iterdir():
                todo += [int(child) for child in (task / "children").read_text().split()]
        except (OSError, IndexError):
            continue
    return total


def alone(homes: int = ALONE) -> float:
    """Seconds that one home takes in a plain loop, on the same shortened year."""
    cases, year = cases_of(invented(homes)), shortened(load_year(CLIMATE), hours_per_block=HOURS_PER_BLOCK)
    began = time.perf_counter()
    for case in cases:
        run(case, year)
    return (time.perf_counter() - began) / homes


def one_round(source: Path, target: Path) -> Round:
    """Screen a table once in a process of its own."""
    target.unlink(missing_ok=True)
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    began = time.perf_counter()
    command = [sys.executable, "-m", "estimator", "stock", str(source), str(target), "--climate", CLIMATE]
    process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    most = [0.0]

    def look() -> None:
        while process.poll() is None:
            most[0] = max(most[0], held_by(process.pid))
            time.sleep(_LOOK)

    looking = threading.Thread(target=look)
    looking.start()
    status = process.wait()
    wall = time.perf_counter() - began
    looking.join()
    if status != 0 or not target.exists():
        raise RuntimeError(f"the run ended with status {status}")
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    cpu = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return Round(wall=wall, cpu=cpu, memory=most[0], alone=alone())


def measured(rows: int, ending: str, folder: Path) -> Iterator[Round]:
    """Every round of one size and form."""
    source, target = folder / f"homes{ending}", folder / f"results{ending}"
    table = invented(rows)
    pq.write_table(table, source) if ending == ".parquet" else pyarrow.csv.write_csv(table, source)
    for _ in range(ROUNDS if rows <= MANY else 1):
        yield one_round(source, target)


def line(rows: int, ending: str, rounds: list[Round]) -> str:
    """One line of the table."""
    wall, cpu, memory, each = (
        median(getattr(one, name) for one in rounds) for name in ("wall", "cpu", "memory", "alone")
    )
    limit = SECONDS[ending]
    held = "" if rows < max(ROWS) else ("holds" if wall <= limit and memory <= MEBIBYTES else "FAILS")
    return (
        f"| {rows:,} | {ending} | {wall:.1f} s | {cpu:.1f} s | {1e6 * wall / rows:.0f} µs | {memory:.0f} MiB "
        f"| {1e6 * each:.0f} µs | {each * rows / wall:.0f} | {held} |"
    )


def main() -> None:
    """Every size asked for, in both forms."""
    sizes = [int(word) for word in sys.argv[1:]] or ROWS
    print("| homes | file | clock | processors | a home | memory | a home alone | times faster | limit |")
    print("|---|---|---|---|---|---|---|---|---|")
    for rows in sizes:
        for ending in SECONDS:
            with tempfile.TemporaryDirectory() as folder:
                print(line(rows, ending, list(measured(rows, ending, Path(folder)))), flush=True)


if __name__ == "__main__":
    main()
