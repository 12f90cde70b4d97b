"""How is a small table screened in memory, step by step, so that others get their turn in between?"""

from __future__ import annotations

import io
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pyarrow as pa
import pyarrow.csv
import pyarrow.parquet as pq

from estimator.errors import Fault, InputFaults
from estimator.stock.chunk import Settings, screened, summary_of
from estimator.stock.columns import ID
from estimator.stock.parse import raw_value
from estimator.stock.reading import PARQUET, batches, headings, kind_of
from estimator.stock.results import ROW
from estimator.stock.run import Stock, gathered
from estimator.stock.writing import harmless

MOST_ROWS = 20_000
MOST_BYTES = 200 << 20  # of a Parquet file once unpacked
_ROWS_PER_STEP = 500


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Held:
    """A small table of homes, its results row by row, and what they come to."""

    homes: Any
    results: Any
    stock: Stock

    def entries(self, row: int) -> Mapping[str, Any]:
        """What the table says of the home of a row (from 1), by dotted path, as a case file would have it."""
        columns = self.stock.settings.columns.entries
        given = {path: raw_value(self.homes.column(name), row - 1, item) for name, (path, item) in columns.items()}
        return {path: value for path, value in given.items() if value is not None}

    def name(self, row: int) -> str:
        """What the table calls the home of a row (from 1)."""
        named = self.stock.settings.columns.id
        found = self.results.column(ID)[row - 1].as_py() if named is not None else None
        return found or f"row {row}"

    def as_csv(self) -> bytes:
        """The results as CSV, safe to open in a spreadsheet."""
        page = io.BytesIO()
        options = pyarrow.csv.WriteOptions(quoting_style="needed")
        pyarrow.csv.write_csv(harmless(self.results), page, write_options=options)
        return page.getvalue()

    def columns(self, names: Sequence[str]) -> dict[str, Any]:
        """Columns of the results by heading, as arrays; gaps as NaN or None."""
        return {name: self.results.column(name).to_numpy(zero_copy_only=False) for name in (ROW, *names)}


def table_of(content: bytes, name: str) -> Any:
    """The rows of an uploaded CSV or Parquet file; raises InputFaults where it is none, or has too many of them."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / f"homes{Path(name).suffix.lower()}"
        path.write_bytes(content)
        names = headings(path)
        if kind_of(path) == PARQUET:
            _bounded(path)
        rows = 0
        parts = []
        for part in batches(path, list(dict.fromkeys(names)), MOST_ROWS):
            rows += part.num_rows
            if rows > MOST_ROWS:
                raise _too_many()
            parts.append(part)
        if not parts:
            raise InputFaults([Fault(Path(name).name, "it has headings but no homes under them.")])
        return parts[0]


def in_steps(homes: Any, settings: Settings) -> Iterator[tuple[int, Any]]:
    """Rows done so far and the results of the last of them, a few hundred rows at a time."""
    for first in range(0, homes.num_rows, _ROWS_PER_STEP):
        part = homes.slice(first, _ROWS_PER_STEP).combine_chunks()
        yield first + part.num_rows, screened(settings, part, first + 1)


def held(homes: Any, settings: Settings, parts: Sequence[Any]) -> Held:
    """What all steps together come to."""
    stock = gathered(settings, (summary_of(part) for part in parts))
    return Held(
        homes=homes, results=pa.concat_tables([part.replace_schema_metadata(None) for part in parts]), stock=stock
    )


def _bounded(path: Path) -> None:
    """What a small Parquet file unpacks to, by its own account, before anything of it is unpacked."""
    told = pq.ParquetFile(path).metadata
    size = sum(told.row_group(group).total_byte_size for group in range(told.num_row_groups))
    if told.num_rows > MOST_ROWS or size > MOST_BYTES:
        raise _too_many()


def _too_many() -> InputFaults:
    said = f"it has more than the {MOST_ROWS:,} homes that this page takes. The command stock takes any number."
    return InputFaults([Fault("the table", said)])
