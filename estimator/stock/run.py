"""How does a whole table of homes become a table of results, interrupted or not?

Chunks go to the workers a few at a time and their results to parts beside the table wanted; when the last part is there
they become one file, which is renamed into its place. A run that was cut off finds its parts again by what they depend
on, so that nothing is done twice and nothing doubled.
"""

from __future__ import annotations

import hashlib
import json
import multiprocessing
import os
import shutil
import threading
from collections import Counter
from collections.abc import Callable, Iterator
from concurrent.futures import FIRST_COMPLETED, Future, ProcessPoolExecutor, wait
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from estimator.climate.shorten import shortened
from estimator.climate.year import ClimateYear
from estimator.inputs.case import Case
from estimator.inputs.casefile import case_to_dict
from estimator.stock.chunk import Settings, screened, summary_of
from estimator.stock.columns import read_columns
from estimator.stock.homes import base_case
from estimator.stock.reading import batches, kind_of, row_count
from estimator.stock.writing import in_order, read_part, write_part, write_table
from estimator.units import Array

HOURS_PER_BLOCK = 4
ROWS_PER_CHUNK = 25_000
_WAITING = 2  # chunks for each worker that are read ahead, so that memory stays bounded

Progress = Callable[[int, int | None], None]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Stock:
    """A whole table screened: counts by name, and shortened against full year in a sample, (homes, 8) as in a chunk."""

    counts: Counter[str]
    errors: Array
    strangers: tuple[str, ...]
    left_out: tuple[str, ...]  # entries that no column gives, so that every home takes the same or a derived value
    settings: Settings

    @property
    def faulty(self) -> int:
        """Rows that could not be screened."""
        return self.counts["faulty"]


def settings_for(
    names: list[str], case: Case, year: ClimateYear, *, recovery: str, full_year: bool = False, ranges: bool = False
) -> Settings:
    """What holds for every chunk of a table with these headings; raises InputFaults where a heading is wrong."""
    base = base_case(case)
    return Settings(
        case=base,
        columns=read_columns(names, base),
        year=year if full_year else shortened(year, hours_per_block=HOURS_PER_BLOCK),
        hours=year,
        recovery=recovery,
        ranges=ranges,
    )


def screen(
    source: Path, target: Path, settings: Settings, *, workers: int | None = None, progress: Progress | None = None
) -> Stock:
    """The table of homes `source` screened into the table of results `target`; both CSV or Parquet by their names.

    workers: processes, as many as the machine has cores unless said; 1 stays in this one. progress: told after each
    chunk how many rows are done, and of how many where that is known. Raises InputFaults where a file cannot be used.
    """
    kind_of(target)
    parts = target.with_name(f"{target.name}.parts-{_digest(source, settings)}")
    parts.mkdir(parents=True, exist_ok=True)
    total, done = row_count(source), 0
    made: list[Path] = []
    for path, rows in _parts(source, settings, parts, workers or os.cpu_count() or 1):
        made.append(path)
        done += rows
        if progress is not None:
            progress(done, total)
    stock = gathered(settings, (summary_of(read_part(path)) for path in sorted(made)))
    write_table(in_order(sorted(made)), settings.schema, target, beside=parts / f"whole.{os.getpid()}")
    for old in target.parent.glob(f"{target.name}.parts-*"):
        shutil.rmtree(old, ignore_errors=True)
    return stock


def gathered(settings: Settings, summaries: Iterator[Any]) -> Stock:
    """One summary of many."""
    counts: Counter[str] = Counter()
    errors: list[list[float]] = []
    for summary in summaries:
        counts.update(summary["counts"])
        errors += summary["errors"]
    given = {path for path, _ in settings.columns.entries.values()}
    return Stock(
        counts=counts,
        errors=np.array(errors, dtype=float).reshape(-1, 8),
        strangers=settings.columns.strangers,
        left_out=tuple(path for path in _WEIGHTY if path not in given),
        settings=settings,
    )


_WEIGHTY = ("home.storeys", "home.form", "home.bedrooms", "home.age", "home.construction", "leakage.value")


def _parts(source: Path, settings: Settings, parts: Path, workers: int) -> Iterator[tuple[Path, int]]:
    """Path and rows of each part, as they are finished: parts found first, the others made."""
    tables = enumerate(batches(source, settings.columns.names, ROWS_PER_CHUNK))
    if workers == 1:
        for number, table in tables:
            path = _path(parts, number)
            if not path.exists():
                make_part(settings, table, number * ROWS_PER_CHUNK + 1, path)
            yield path, table.num_rows
        return
    context = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(workers, mp_context=context, initializer=_end_with_parent) as pool:
        running: dict[Future[None], tuple[Path, int]] = {}
        for number, table in tables:
            path = _path(parts, number)
            if path.exists():
                yield path, table.num_rows
                continue
            running[pool.submit(make_part, settings, table, number * ROWS_PER_CHUNK + 1, path)] = (path, table.num_rows)
            if len(running) >= workers * _WAITING:
                yield from _finished(running, FIRST_COMPLETED)
        while running:
            yield from _finished(running, FIRST_COMPLETED)


def _finished(running: dict[Future[None], tuple[Path, int]], when: str) -> Iterator[tuple[Path, int]]:
    ready, _ = wait(running, return_when=when)
    for future in ready:
        future.result()
        yield running.pop(future)


def make_part(settings: Settings, table: Any, first_row: int, path: Path) -> None:
    """One chunk screened and kept on disk."""
    write_part(screened(settings, table, first_row), path)


def _path(parts: Path, number: int) -> Path:
    return parts / f"{number:08d}.arrow"


def _end_with_parent() -> None:
    """A worker whose parent was killed ends too, rather than wait for ever."""
    parent = multiprocessing.parent_process()

    def watch() -> None:
        if parent is not None:
            parent.join()
            os._exit(1)

    threading.Thread(target=watch, daemon=True).start()


def _digest(source: Path, settings: Settings) -> str:
    """What the parts depend on: the table, the case, the weather, and what was asked."""
    with source.open("rb") as file:
        found = hashlib.file_digest(file, "blake2b")
    asked = [case_to_dict(settings.case), settings.recovery, settings.ranges, settings.full_year, ROWS_PER_CHUNK]
    found.update(json.dumps(asked, sort_keys=True, default=str).encode())
    for name in ("temp_air", "wind_speed", "pressure", "facades"):
        found.update(np.ascontiguousarray(getattr(settings.year, name)).tobytes())
    return found.hexdigest()[:16]
