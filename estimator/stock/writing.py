"""How do the results of chunks become one table, complete or not at all?"""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any

import pyarrow as pa
import pyarrow.compute as pc
import pyarrow.csv
import pyarrow.ipc
import pyarrow.parquet as pq

from estimator.stock.reading import CSV, kind_of

# A cell that begins like this is run as a formula by a spreadsheet; a quote before it makes it text.
_FORMULA = r"^[\t\r\n ]*[=+\-@]"
_QUOTE = "'"


def write_part(table: Any, path: Path) -> None:
    """Results of a chunk on disk, there as a whole or not at all."""
    beside = path.with_name(f"{path.name}.{os.getpid()}")
    with pa.OSFile(str(beside), "wb") as file, pa.ipc.new_file(file, table.schema) as writer:
        writer.write_table(table)
    beside.replace(path)


def read_part(path: Path) -> pa.Table:
    """Results of a chunk as they were written."""
    with pa.memory_map(str(path)) as file:
        return pa.ipc.open_file(file).read_all()


def write_table(parts: Iterable[Any], schema: pa.Schema, path: Path, *, beside: Path) -> None:
    """All results as one CSV or Parquet file: written to `beside`, on the same disk, then renamed."""
    if kind_of(path) == CSV:
        options = pa.csv.WriteOptions(quoting_style="needed")
        with pa.csv.CSVWriter(str(beside), schema, write_options=options) as writer:
            for table in parts:
                writer.write_table(harmless(table.replace_schema_metadata(None)))
    else:
        with pq.ParquetWriter(str(beside), schema, compression="zstd", compression_level=1) as writer:
            for table in parts:
                writer.write_table(table.replace_schema_metadata(None))
    beside.replace(path)


def harmless(table: Any) -> Any:
    """The same table with every text that a spreadsheet would run as a formula made plain text."""
    for place, field in enumerate(table.schema):
        if pa.types.is_string(field.type):
            column = table.column(place)
            risky = pc.fill_null(pc.match_substring_regex(column, _FORMULA), False)
            if pc.any(risky).as_py():
                quoted = pc.binary_join_element_wise(_QUOTE, column, "")
                table = table.set_column(place, field, pc.if_else(risky, quoted, column))
    return table


def in_order(paths: Iterable[Path]) -> Iterator[Any]:
    """Parts one after the other, only one of them in hand."""
    for path in paths:
        yield read_part(path)
