"""Does a run killed at random moments end as one that nobody disturbed? `python -m tests.kill_stock [times]`.

Each time a run is started, killed outright at a random moment, and started again on what it left; the results must be
the same to the last byte, and nothing may be left beside them. Not part of the tests, since it takes minutes.
"""

from __future__ import annotations

import random
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import pyarrow.parquet as pq

from estimator.stock.demo import invented

TIMES = 10
HOMES = 60_000


def command(source: Path, target: Path) -> list[str]:
    """The run, as somebody would type it."""
    return [sys.executable, "-m", "estimator", "stock", str(source), str(target), "--climate", "Upland"]


def main() -> None:
    """Kill as often as asked, and say what came of it."""
    times = int(sys.argv[1]) if len(sys.argv) > 1 else TIMES
    chance = random.Random()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        source, whole = folder / "homes.parquet", folder / "whole.csv"
        pq.write_table(invented(HOMES), source)
        began = time.perf_counter()
        subprocess.run(command(source, whole), check=True, capture_output=True)
        length = time.perf_counter() - began
        wrong = 0
        for number in range(times):
            target = folder / f"killed-{number}.csv"
            moment = chance.uniform(0.0, length)
            running = subprocess.Popen(command(source, target), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            time.sleep(moment)
            running.send_signal(signal.SIGKILL)
            running.wait()
            parts = len(list(folder.glob(f"{target.name}.parts-*/*.arrow")))
            there = target.exists()
            subprocess.run(command(source, target), check=True, capture_output=True)
            same = target.read_bytes() == whole.read_bytes()
            left = [path.name for path in folder.glob(f"{target.name}.*")]
            wrong += not same or bool(left)
            state = "finished" if there else f"{parts} parts done"
            print(
                f"killed after {moment:.1f} s, {state}: {'the same' if same else 'NOT the same'}, left {left}",
                flush=True,
            )
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
