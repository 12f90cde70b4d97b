"""Does a run that was cut off go on where it stood, and is its result the same?"""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path
from types import ModuleType
from typing import Any

import pyarrow.parquet as pq
import pytest

from estimator import Case, load_year
from estimator.stock import run as runs
from estimator.stock.chunk import screened
from estimator.stock.demo import invented
from estimator.stock.reading import headings
from estimator.stock.run import screen, settings_for

SMALL_PARTS = """
import sys
from estimator.__main__ import main
from estimator.stock import run
if __name__ == "__main__":
    run.ROWS_PER_CHUNK = 200
    sys.exit(main(sys.argv[1:]))
"""


@pytest.fixture
def homes(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(runs, "ROWS_PER_CHUNK", 50)
    source = tmp_path / "homes.parquet"
    pq.write_table(invented(430, start=5), source)
    return source


def settings_of(source: Path) -> Any:
    return settings_for(headings(source), Case(), load_year("Upland"), recovery="recovery")


def test_what_was_done_is_not_done_again_and_the_result_is_the_same(
    homes: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    settings = settings_of(homes)
    screen(homes, tmp_path / "whole.parquet", settings, workers=1)
    done: list[int] = []

    def cut_off(settings: Any, table: Any, first_row: int) -> Any:
        if len(done) == 4:
            raise KeyboardInterrupt
        done.append(first_row)
        return screened(settings, table, first_row)

    monkeypatch.setattr(runs, "screened", cut_off)
    with pytest.raises(KeyboardInterrupt):
        screen(homes, tmp_path / "cut.parquet", settings, workers=1)
    assert not (tmp_path / "cut.parquet").exists()
    again: list[int] = []

    def watched(settings: Any, table: Any, first_row: int) -> Any:
        again.append(first_row)
        return screened(settings, table, first_row)

    monkeypatch.setattr(runs, "screened", watched)
    screen(homes, tmp_path / "cut.parquet", settings, workers=1)
    assert set(done) & set(again) == set()
    assert len(done) + len(again) == 9
    assert (tmp_path / "cut.parquet").read_bytes() == (tmp_path / "whole.parquet").read_bytes()
    assert not list(tmp_path.glob("*.parts-*"))


def test_parts_of_another_table_or_question_are_not_taken(homes: Path, tmp_path: Path) -> None:
    settings = settings_of(homes)
    first = runs._digest(homes, settings)
    other = settings_for(headings(homes), Case(), load_year("Mild coast"), recovery="recovery")
    assert runs._digest(homes, other) != first
    pq.write_table(invented(430, start=6), homes)
    assert runs._digest(homes, settings) != first


def test_two_workers_give_what_one_gives(homes: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    # A test of the dashboard in this process leaves its own script as the main module, which a worker would run.
    monkeypatch.setitem(sys.modules, "__main__", ModuleType("__main__"))
    settings = settings_of(homes)
    told: list[tuple[int, int | None]] = []
    one = screen(homes, tmp_path / "one.csv", settings, workers=1)
    two = screen(homes, tmp_path / "two.csv", settings, workers=2, progress=lambda *step: told.append(step))
    assert (tmp_path / "one.csv").read_bytes() == (tmp_path / "two.csv").read_bytes()
    assert one.counts == two.counts
    assert told[-1] == (430, 430)


@pytest.mark.slow
def test_a_killed_run_is_finished_by_the_next(tmp_path: Path) -> None:
    """Killed outright as soon as a first part stands; the script beside does so ten times at random moments."""
    source, target = tmp_path / "homes.parquet", tmp_path / "out.csv"
    pq.write_table(invented(1_400, start=7), source)
    command = [sys.executable, "-c", SMALL_PARTS, "stock", str(source), str(target), "--climate", "Upland"]
    running = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, start_new_session=True)
    while running.poll() is None and not list(tmp_path.glob("*.parts-*/*.arrow")):
        time.sleep(0.02)
    running.send_signal(signal.SIGKILL)
    running.wait()
    assert not target.exists()
    assert subprocess.run(command, capture_output=True, check=False).returncode == 0
    whole = tmp_path / "whole.csv"
    command[5] = str(whole)
    subprocess.run(command, capture_output=True, check=True, env={**os.environ})
    assert target.read_bytes() == whole.read_bytes()
