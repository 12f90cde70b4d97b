"""How do results and hours leave as tables that a spreadsheet opens without running anything?

Comma-separated text in UTF-8. A cell that a spreadsheet would take for a formula is written behind an apostrophe.
"""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Iterable, Mapping
from typing import Any

from estimator.compare import Comparison, Result
from estimator.estimate import Estimate
from estimator.report import hours
from estimator.report.leave import Paper
from estimator.report.quantities import COMPARED, MONEY, YEARLY
from estimator.report.sure_words import Tried
from estimator.sure import Spread
from estimator.units import Array

_FORMULA = ("=", "+", "-", "@", "\t", "\r")
_SPREAD = {"net_saving": "net_saving", "heat_saved": "heat_saved", "carbon_saving": "carbon_saving",
           "simple_payback": "payback"}  # fmt: skip
HEAD = ("what", "option", "against", "figure", "value", "a tenth below", "middle", "a tenth above", "unit", "source")


def harmless(cell: Any) -> Any:
    """A cell that no spreadsheet takes for a formula; numbers stay numbers, what is not finite becomes a word."""
    if isinstance(cell, float) and not math.isfinite(cell):
        return "never" if cell > 0 else ""
    if isinstance(cell, str) and cell.startswith(_FORMULA):
        return f"'{cell}"
    return cell


def results(result: Result, found: Tried, paper: Paper) -> str:
    """Every figure of every option and comparison, every input, and all that must stand beside them."""
    done = result.estimate
    currency = done.case.prices.currency
    rows: list[tuple[Any, ...]] = [("note", "", "", words, "", "", "", "", "", "") for words in _notes(paper)]
    for option in done.options.values():
        for item in YEARLY:
            rows.append(_row("a year", option.label, "", item.meaning, item.read(option), _unit(item.unit, currency)))
    spreads = {(each.words, name): getattr(each.sure, field) for each in found.against
               for name, field in _SPREAD.items()}  # fmt: skip
    both = (result.against_baseline, result.against_today)[: len(found.against)]
    for comparisons, words in zip(both, (each.words for each in found.against), strict=True):
        rows += _compared(comparisons[found.option], words, spreads, currency)
    for origin in done.origins.values():
        rows.append(_row("input", origin.path, "", origin.meaning, origin.value, _unit(origin.unit, currency),
                         source=f"{origin.tag}: {origin.source}"))  # fmt: skip
    return _written(HEAD, rows)


def _notes(paper: Paper) -> Iterable[str]:
    yield paper.answer
    yield from paper.then
    yield from paper.rests_on
    yield f"Made {paper.made}, use until {paper.valid}."
    yield paper.preface
    yield from (f"{caution.title}. {caution.words} Ask: {caution.ask}." for caution in paper.cautions)
    yield from (f"Not counted: {words}" for words in paper.not_counted)
    yield paper.statement


def _compared(
    comparison: Comparison, words: str, spreads: Mapping[tuple[str, str], Spread], currency: str
) -> Iterable[tuple[Any, ...]]:
    for item in COMPARED:
        spread = spreads.get((words, item.key))
        ends = (spread.low, spread.middle, spread.high) if spread else ("", "", "")
        yield _row("saving", comparison.option_label, comparison.baseline_label, item.meaning, item.read(comparison),
                   _unit(item.unit, currency), ends=ends)  # fmt: skip


def _row(
    what: str, option: str, against: str, figure: str, value: Any, unit: str, *,
    ends: tuple[Any, Any, Any] = ("", "", ""), source: str = "",
) -> tuple[Any, ...]:  # fmt: skip
    return (what, option, against, figure, value, *ends, unit, source)


def _unit(unit: str, currency: str) -> str:
    return currency if unit == MONEY else unit


def hourly(done: Estimate, comparison: Comparison, paper: Paper) -> str:
    """Every hour of the year with the option and with its baseline; the notes stand below the last hour."""
    columns = hours.table(done, comparison)
    rows: list[tuple[Any, ...]] = list(zip(*(_plain(values) for values in columns.values()), strict=True))
    rows += [(words,) for words in _notes(paper)]
    return _written(tuple(columns), rows)


def _plain(values: Array) -> list[Any]:
    return [int(value) if float(value).is_integer() else round(float(value), 6) for value in values]


def _written(head: tuple[str, ...], rows: Iterable[tuple[Any, ...]]) -> str:
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow([harmless(cell) for cell in head])
    writer.writerows([harmless(cell) for cell in row] for row in rows)
    return "\ufeff" + text.getvalue()  # the mark by which a spreadsheet knows UTF-8
