"""What is a small table, before anybody decides how it is drawn?"""

from __future__ import annotations

from dataclasses import dataclass

_GAP = "  "


@dataclass(frozen=True, slots=True, kw_only=True)
class Rows:
    """Cells as text, with a caption that says what the table is and a note on what it rests on."""

    caption: str
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str = ""
    words: frozenset[int] = frozenset({0})
    """Columns of words, set to the left; all others are figures and set to the right."""

    def __post_init__(self) -> None:
        wrong = [row for row in self.rows if len(row) != len(self.head)]
        if wrong:
            raise ValueError(f"{self.caption}: {wrong[0]} has not the {len(self.head)} cells of the head")


def as_text(table: Rows) -> list[str]:
    """Lines for a terminal: head, rule, rows."""
    cells = (table.head, *table.rows)
    widths = [max(len(row[column]) for row in cells) for column in range(len(table.head))]
    lines = [
        _GAP.join(
            cell.ljust(width) if column in table.words else cell.rjust(width)
            for column, (cell, width) in enumerate(zip(row, widths, strict=True))
        ).rstrip()
        for row in cells
    ]
    return [lines[0], "-" * sum(widths, len(_GAP) * (len(widths) - 1)), *lines[1:]]
