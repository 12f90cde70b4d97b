"""How is a table of homes read in batches, so that no row of it is lost?"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

import pyarrow as pa
import pyarrow.csv
import pyarrow.parquet as pq

from estimator.errors import Fault, InputFaults

CSV, PARQUET = ".csv", ".parquet"
CELLS = "\0cells"
"""Column that the reader adds: how many cells a broken line has, empty for every other row."""
_BYTES_AT_ONCE = 4 << 20  # of a CSV file
_LONGEST_HEAD = 1 << 20
_MARK = "\ufeff"  # which some programs write before a text


def kind_of(path: Path) -> str:
    """CSV or Parquet, by the ending of a file's name; raises InputFaults for any other."""
    ending = path.suffix.lower()
    if ending not in (CSV, PARQUET):
        given = f'ends in "{ending}"' if ending else "has no ending"
        raise InputFaults([Fault(path.name, f"the name {given}; a table of homes is a .csv or a .parquet file.")])
    return ending


def headings(path: Path) -> list[str]:
    """Headings of the columns of a table; raises InputFaults where it cannot be read."""
    if not path.is_file():
        raise InputFaults([Fault(str(path), "there is no such file.")])
    try:
        if kind_of(path) == PARQUET:
            return list(pq.ParquetFile(path).schema_arrow.names)
        return _Text(path).names
    except (pa.ArrowException, OSError, csv.Error, StopIteration) as unreadable:
        raise InputFaults([Fault(path.name, f"it cannot be read as a table{_why(unreadable)}.")]) from None


def row_count(path: Path) -> int | None:
    """Rows of a table, where that is known without reading it."""
    return int(pq.ParquetFile(path).metadata.num_rows) if kind_of(path) == PARQUET else None


def batches(path: Path, names: Sequence[str], rows: int) -> Iterator[Any]:
    """The named columns of a table in Arrow tables of exactly `rows` rows, the last one shorter, in order.

    Cells of a CSV file come as text; a line with a wrong number of cells comes as a row without any, counted in the
    column `CELLS`. Raises InputFaults where the file breaks off or is no such table.
    """
    waiting: list[Any] = []
    held = 0
    try:
        for piece in _pieces(path, names, rows):
            waiting.append(piece)
            held += piece.num_rows
            while held >= rows:
                table = pa.concat_tables(waiting)
                yield table.slice(0, rows).combine_chunks()
                waiting, held = [table.slice(rows)], held - rows
    except (pa.ArrowException, OSError) as unreadable:
        raise InputFaults([Fault(path.name, f"it cannot be read to its end{_why(unreadable)}.")]) from None
    if held:
        yield pa.concat_tables(waiting).combine_chunks()


def _pieces(path: Path, names: Sequence[str], rows: int) -> Iterator[Any]:
    if kind_of(path) == PARQUET:
        for batch in pq.ParquetFile(path).iter_batches(batch_size=rows, columns=list(names), use_threads=False):
            yield pa.Table.from_batches([batch])
    else:
        yield from _Text(path).pieces(names)


class _Text:
    """A CSV file: its headings, and its rows with every cell as text."""

    def __init__(self, path: Path) -> None:
        self._path = path
        with path.open("rb") as file:
            head = file.readline(_LONGEST_HEAD)
        self._encoding = "utf-16" if head[:2] in (b"\xff\xfe", b"\xfe\xff") else "utf-8"
        if self._encoding == "utf-16":
            with path.open(encoding="utf-16", errors="replace") as text:
                line = text.readline(_LONGEST_HEAD)
        else:
            try:
                line = head.decode()
            except UnicodeDecodeError:
                self._encoding = "cp1252"  # what spreadsheets write where they do not write Unicode
                line = head.decode("cp1252", errors="replace")
        self._only_head = path.stat().st_size <= len(head)
        self._separator = max(",;\t", key=line.count)
        self._raw = next(csv.reader([line.removeprefix(_MARK)], delimiter=self._separator))
        self._broken: list[tuple[int, int]] = []

    @property
    def names(self) -> list[str]:
        """Headings, blanks and marks around them left out."""
        return [name.strip().strip(_MARK).strip() for name in self._raw]

    def pieces(self, names: Sequence[str]) -> Iterator[Any]:
        """The rows of the named columns, broken lines in their places."""
        if self._only_head:
            return
        wanted = [self.names.index(name) for name in names]
        cells = [str(place) for place in range(len(self._raw))]  # headings may repeat; places do not
        reader = pyarrow.csv.open_csv(
            pa.PythonFile(io.BufferedReader(_Unicode(self._path, self._encoding), _Unicode.AT_ONCE)),
            read_options=pyarrow.csv.ReadOptions(
                block_size=_BYTES_AT_ONCE, use_threads=False, column_names=cells, skip_rows=1
            ),
            parse_options=pyarrow.csv.ParseOptions(
                delimiter=self._separator,
                newlines_in_values=True,
                ignore_empty_lines=False,
                invalid_row_handler=self._break,
            ),
            convert_options=pyarrow.csv.ConvertOptions(
                column_types=dict.fromkeys(cells, pa.binary()), include_columns=[cells[place] for place in wanted]
            ),
        )
        told = 0
        none = pa.table([*(pa.nulls(0, pa.string()) for _ in names), pa.nulls(0, pa.int32())], names=[*names, CELLS])
        with reader:
            for batch in reader:
                columns = [_as_text(column) for column in batch.columns]
                whole = pa.table([*columns, pa.nulls(batch.num_rows, pa.int32())], names=[*names, CELLS])
                for piece in self._mended(whole, told):
                    told += piece.num_rows
                    yield piece
        yield from self._mended(none, told) if self._broken else ()  # lines behind the last whole one

    def _break(self, row: Any) -> str:
        self._broken.append((row.number - 2, row.actual_columns))  # counted from 1, the headings with it
        return "skip"

    def _mended(self, table: Any, told: int) -> Iterator[Any]:
        """The rows of a table with the broken lines between them, the first row standing at `told`."""
        done = 0
        while self._broken and self._broken[0][0] <= told + table.num_rows - done:
            at, cells = self._broken.pop(0)
            piece = table.slice(done, at - told)
            yield piece
            done, told = done + piece.num_rows, at + 1
            empty = [pa.nulls(1, field.type) for field in table.schema][:-1]
            yield pa.table([*empty, pa.array([cells], pa.int32())], schema=table.schema)
        yield table.slice(done)


class _Unicode(io.RawIOBase):
    """A file of any encoding as UTF-8, with a sign in place of what is not of that encoding.

    The reader of tables stumbles over a broken line that is also no Unicode: it would refuse the file for one line.
    """

    AT_ONCE = 1 << 20

    def __init__(self, path: Path, encoding: str) -> None:
        self._text = path.open(encoding=encoding, errors="replace", newline="")
        self._rest = b""

    def readable(self) -> bool:
        return True

    def readinto(self, into: Any) -> int:
        if not self._rest:
            self._rest = self._text.read(self.AT_ONCE).encode("utf-8", errors="replace")
        part, self._rest = self._rest[: len(into)], self._rest[len(into) :]
        into[: len(part)] = part
        return len(part)

    def close(self) -> None:
        self._text.close()
        super().close()


def _as_text(column: Any) -> Any:
    """Bytes as text; what is not Unicode in them is replaced by a sign that says so."""
    try:
        return column.cast(pa.string())
    except pa.ArrowInvalid:
        cells = column.to_pylist()
        return pa.array([None if cell is None else cell.decode("utf-8", errors="replace") for cell in cells])


def _why(error: Exception) -> str:
    first = str(error).split("\n", 1)[0].rstrip(".")
    return f" ({first})" if first else ""
