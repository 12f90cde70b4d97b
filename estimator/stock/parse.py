"""How does a column of a table become numbers or words, and which rows cannot be taken as they stand?

Only doubts are found here, quickly and for whole columns. What is wrong with a doubtful row is said by the same reader
as for a case file.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
import pyarrow as pa
import pyarrow.compute as pc
from numpy.typing import NDArray

from estimator.inputs.catalogue import fuels, option_kinds
from estimator.inputs.quantity import Declared, Quantity
from estimator.units import Array

# A plain number as a case file has it: no blank, no thousands mark, no decimal comma.
_NUMBER = r"^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$"
_ROWS_OF = {"heating.fuel": fuels, "kind": option_kinds}

Mask = NDArray[np.bool_]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Column:
    """One entry of n homes: numbers with NaN for a gap, or codes into words with -1 for a gap; and doubtful rows."""

    path: str
    item: Declared
    numbers: Array | None
    codes: NDArray[np.intp] | None
    words: tuple[str, ...]
    doubtful: Mask

    @property
    def given(self) -> Mask:
        """Rows in which something stands."""
        return self.codes >= 0 if self.codes is not None else ~np.isnan(np.asarray(self.numbers))


def read_column(values: Any, path: str, item: Declared) -> Column:
    """An Arrow array of one entry as numbers or words."""
    plain = _plain(values)
    if isinstance(item.spec, Quantity):
        return _numbers(plain, path, item)
    return _words(plain, path, item)


def raw_value(values: Any, row: int, item: Declared) -> Any:
    """What stands in one row, as a case file would have it: a number where it reads as one, else the text; or None."""
    given = values[row].as_py()
    if isinstance(given, str):
        given = given.strip()
        if not given:
            return None
        if isinstance(item.spec, Quantity):
            given = _number_or_text(given)
    if isinstance(given, float) and np.isnan(given):
        return None
    if item.kind is int and isinstance(given, float) and given.is_integer():
        return int(given)
    if item.kind is float and type(given) is int:
        return float(given)
    return given


def text_column(values: Any) -> Any:
    """A column of names as text."""
    plain = _plain(values)
    return plain if pa.types.is_string(plain.type) else pc.cast(plain, pa.string())


def _number_or_text(text: str) -> Any:
    if not pc.match_substring_regex(pa.scalar(text), _NUMBER).as_py():
        return text
    return float(text)


def _plain(values: Any) -> Any:
    if isinstance(values, pa.ChunkedArray):
        values = values.combine_chunks()
    if pa.types.is_dictionary(values.type):
        values = values.dictionary_decode()
    return values


def _numbers(values: Any, path: str, item: Declared) -> Column:
    spec = item.spec
    assert isinstance(spec, Quantity)
    count = len(values)
    unread = np.zeros(count, dtype=bool)
    if pa.types.is_string(values.type) or pa.types.is_large_string(values.type):
        values = pc.utf8_trim_whitespace(values)
        values = pc.if_else(pc.equal(values, ""), pa.scalar(None, values.type), values)
        reads = pc.match_substring_regex(values, _NUMBER)
        unread = ~_mask(pc.fill_null(reads, True))
        if unread.any():
            values = pc.if_else(pa.array(~unread), values, pa.scalar(None, values.type))
        values = pc.cast(values, pa.float64())
    elif pa.types.is_integer(values.type) or pa.types.is_floating(values.type):
        values = pc.cast(values, pa.float64(), safe=False)
    elif pa.types.is_null(values.type):
        values = pa.nulls(count, pa.float64())
    else:
        unread = ~_mask(values.is_null())
        values = pa.nulls(count, pa.float64())
    numbers = values.to_numpy(zero_copy_only=False)
    gap = np.isnan(numbers)
    bad = unread | (~gap & ~((numbers >= spec.low) & (numbers <= spec.high)))
    if item.kind is int:
        bad |= ~gap & (numbers != np.floor(numbers))
    return Column(path=path, item=item, numbers=numbers, codes=None, words=(), doubtful=bad)


def _words(values: Any, path: str, item: Declared) -> Column:
    count = len(values)
    if not (pa.types.is_string(values.type) or pa.types.is_large_string(values.type)):
        given = ~_mask(values.is_null())
        codes = np.full(count, -1, dtype=np.intp)
        return Column(path=path, item=item, numbers=None, codes=codes, words=(), doubtful=given)
    values = pc.utf8_trim_whitespace(values)
    values = pc.if_else(pc.equal(values, ""), pa.scalar(None, values.type), values)
    coded = pc.dictionary_encode(values)
    words = tuple(coded.dictionary.to_pylist())
    codes = pc.fill_null(coded.indices, -1).to_numpy(zero_copy_only=False).astype(np.intp)
    rows = next((found for key, found in _ROWS_OF.items() if path == key or item.name == key), None)
    legal = item.choices or (rows() if rows is not None else None)
    if legal is not None:
        odd = np.array([word not in legal for word in words], dtype=bool)
    else:
        longest = getattr(item.spec, "longest", None) or np.inf
        odd = np.array([len(word) > longest or not word.isprintable() for word in words], dtype=bool)
    doubtful = np.append(odd, False)[codes]
    return Column(path=path, item=item, numbers=None, codes=codes, words=words, doubtful=doubtful)


def _mask(values: Any) -> Mask:
    return np.asarray(values.to_numpy(zero_copy_only=False), dtype=bool)
