"""How do the rows of a table become homes in columns, and what is wrong with the others?

Rows are gathered into groups that say the same entries in the same words, so that the survey of one home fills a whole
group at once. A row in doubt goes the way of a case file by itself and gets its sentences.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from estimator.errors import Fault, InputFaults
from estimator.inputs import check
from estimator.inputs.case import Case
from estimator.inputs.casefile import case_from_dict, case_to_dict
from estimator.inputs.home import Home, Leakage
from estimator.inputs.places import value_at, with_values
from estimator.stock.columns import Columns
from estimator.stock.parse import Column, Mask, raw_value, read_column
from estimator.stock.reading import CELLS

# Words that the survey reads from an array, one for each home; any other word decides which way a home goes, so that
# homes of one group share it.
_FREE_WORDS = frozenset(
    {"home.age", "home.form", "home.construction", "home.mass", "home.open_flue", "leakage.shelter", "leakage.ground"}
)
FLOOR = "home.floor_area"
_NO_FLOOR = Fault(FLOOR, "missing: nothing can be said of a home without its heated floor area [m²]; enter it.")

Rows = NDArray[np.intp]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Group:
    """Homes that take one way through the survey: their rows, and one case whose entries are columns (n, 1)."""

    rows: Rows
    case: Case


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Read:
    """What the rows of a table say: groups of sound homes, and the faults of every other row."""

    groups: tuple[Group, ...]
    faults: Mapping[int, tuple[Fault, ...]]


def base_case(case: Case) -> Case:
    """What holds for every home of a table: the case without its own home, leakage, rooms and tags."""
    usual = Case()
    return dataclasses.replace(
        case, home=Home(), leakage=Leakage(), draughts=usual.draughts, rooms=usual.rooms, tags={}, title=""
    )


def read_homes(table: Any, columns: Columns, base: Case) -> Read:
    """The homes of an Arrow table or batch whose columns were looked at before; `base` as `base_case` gives it."""
    read = [read_column(table.column(name), path, item) for name, (path, item) in columns.entries.items()]
    doubtful = np.zeros(table.num_rows, dtype=bool)
    for column in read:
        doubtful |= column.doubtful
        if column.path == FLOOR:
            doubtful |= ~column.given
    if not any(column.path == FLOOR for column in read):
        doubtful[:] = True
    broken = table.column(CELLS).to_pylist() if CELLS in table.column_names else [None] * table.num_rows
    groups = []
    for rows in _alike(read, np.flatnonzero(~doubtful)):
        case, bad = _weighed(read, rows, base)
        if bad.any():
            doubtful[rows[bad]] = True
            rows = rows[~bad]
            case, _ = _weighed(read, rows, base)
        if rows.size:
            groups.append(Group(rows=rows, case=case))
    faults: dict[int, tuple[Fault, ...]] = {}
    for row in np.flatnonzero(doubtful).tolist():
        cells = broken[row]
        if cells is not None:
            faults[row] = (_broken_line(cells, len(columns.written)),)
            continue
        found, alone = _alone(table, columns, row, base)
        if found:
            faults[row] = found
        elif alone is not None:
            groups.append(Group(rows=np.array([row]), case=alone))
    return Read(groups=tuple(groups), faults=faults)


def _alike(read: Sequence[Column], rows: Rows) -> Iterator[Rows]:
    """Rows, in parts within which every entry is given or left out together, and deciding words are one."""
    key = np.zeros(rows.size, dtype=np.intp)
    for column in read:
        decides = column.codes is not None and column.path not in _FREE_WORDS
        mark = column.codes[rows] + 1 if decides and column.codes is not None else column.given[rows].astype(np.intp)
        if mark.size and mark.min() != mark.max():
            _, key = np.unique(key * (int(mark.max()) + 1) + mark, return_inverse=True)
    order = np.argsort(key, kind="stable")
    edges = np.flatnonzero(np.diff(key[order])) + 1
    yield from (rows[part] for part in np.split(order, edges) if part.size)


def _weighed(read: Sequence[Column], rows: Rows, base: Case) -> tuple[Case, Mask]:
    """The case of a group, and which of its rows hold a contradiction between entries."""
    bad = np.zeros(rows.size, dtype=bool)
    if not rows.size:
        return base, bad
    case = with_values(base, {column.path: _values(column, rows) for column in read if column.given[rows[0]]})
    for rule in check.RULES:
        for finding in rule(case):
            bad |= True if finding.rows is None else np.broadcast_to(finding.rows, (rows.size, 1))[:, 0]
    return case, bad


def _values(column: Column, rows: Rows) -> Any:
    """Numbers of a group as a column (n, 1); words as an array of them, or as one word where they are all the same."""
    if column.codes is None:
        assert column.numbers is not None
        return column.numbers[rows, None].astype(column.item.kind)
    codes = column.codes[rows]
    if codes.min() == codes.max():
        return column.words[codes[0]]
    return np.array(column.words, dtype=object)[codes][:, None]


def _broken_line(cells: int, wanted: int) -> Fault:
    said = f"it has {cells} {'cell' if cells == 1 else 'cells'} under {wanted} headings; a separator stands in a text"
    return Fault("the line", f"{said} or number, or cells are missing. Put such texts in quotes, or mend the line.")


def _alone(table: Any, columns: Columns, row: int, base: Case) -> tuple[tuple[Fault, ...], Case | None]:
    """Faults of one row, in the words of a case file, or else its case with columns of one home."""
    values = {path: raw_value(table.column(name), row, item) for name, (path, item) in columns.entries.items()}
    given = {path: value for path, value in values.items() if value is not None}
    missing = () if FLOOR in given else (_NO_FLOOR,)
    tree = case_to_dict(base)
    for path, value in given.items():
        *above, key = path.split(".")
        section = tree
        for name in above:
            section = section.setdefault(name, {})
        section[key] = value
    try:
        case = case_from_dict(tree)
    except InputFaults as faults:
        return (*missing, *faults.faults), None
    if missing:
        return missing, None
    numbers = {path: value_at(case, path) for path, value in given.items() if not isinstance(value, str)}
    return (), with_values(case, {path: np.array([[value]]) for path, value in numbers.items()})
