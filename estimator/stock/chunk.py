"""What comes out for one chunk of a table of homes?

A pure function of plain values that can be pickled: any engine may map it over the chunks of a table.
"""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np
import pyarrow as pa

from estimator.climate.year import ClimateYear
from estimator.inputs.case import Case
from estimator.report import stock_words
from estimator.routes import LABELS
from estimator.stock.columns import Columns
from estimator.stock.homes import Group, read_homes
from estimator.stock.outcome import ROUTES, Outcome, outcome
from estimator.stock.parse import text_column
from estimator.stock.pick import part_of
from estimator.stock.ranges import spread
from estimator.stock.results import FAULTS, FAULTY, STATUS, Sheet, figures, schema, spreads, words_of
from estimator.stock.verdict import ANSWERS, TIGHTNESS, verdict
from estimator.units import Array

SUMMARY = b"summary"
PER_CHUNK = 16  # homes of each chunk that take the full year as well
PAYBACK_EDGES = (5.0, 10.0, 15.0, 20.0, 30.0)  # years, for counting


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Settings:
    """What holds for every chunk of one screening. `year` in blocks (or in hours), `hours` always in hours."""

    case: Case
    columns: Columns
    year: ClimateYear
    hours: ClimateYear
    recovery: str
    ranges: bool

    @property
    def full_year(self) -> bool:
        """Whether every home takes the full year."""
        return self.year.rows == self.hours.rows

    @property
    def schema(self) -> pa.Schema:
        """Columns of the results."""
        return schema(self.case.prices.currency, named=self.columns.id is not None, ranges=self.ranges)


def screened(settings: Settings, table: Any, first_row: int) -> pa.Table:
    """Results of a chunk (an Arrow table or batch), one row for every row, in order; counted from `first_row`.

    Its schema carries a summary of the chunk, as JSON under `SUMMARY`; `summary_of` reads it.
    """
    read = read_homes(table, settings.columns, settings.case)
    sheet = Sheet(table.num_rows, settings.schema)
    heads = figures(settings.case.prices.currency)
    counts: Counter[str] = Counter(rows=table.num_rows, faulty=len(read.faults))
    errors: list[list[float]] = []
    for group in read.groups:
        found = outcome(
            group.case,
            settings.year,
            hours=settings.hours,
            recovery=settings.recovery,
            full_year=settings.full_year,
        )
        said = verdict(found)
        sheet.put(group.rows, {head: getattr(found, name) for name, head in heads.items()})
        sheet.say(group.rows, words_of(found, said))
        if settings.ranges:
            ends = spreads(settings.case.prices.currency)
            drawn = spread(group.case, settings.hours, recovery=settings.recovery)
            sheet.put(group.rows, {head: drawn[name] for name, head in ends.items()})
        for kind, words, codes in (
            ("answer", [stock_words.ANSWERS[key] for key in ANSWERS], said.answer),
            ("tightness", [stock_words.TIGHTNESS[key] for key in TIGHTNESS], said.tightness),
            ("route", [LABELS[name] for name in ROUTES], said.route),
        ):
            counts.update({f"{kind}: {word}": int(np.sum(codes == place)) for place, word in enumerate(words)})
        counts["not tested"] += 0 if found.basis == "measured" else group.rows.size
        counts["saves against today"] += int(np.sum(found.net_saving_today > 0.0))
        paid = np.searchsorted(PAYBACK_EDGES, found.payback[np.isfinite(found.payback)])
        counts.update({f"payback: {place}": int(number) for place, number in enumerate(np.bincount(paid)) if number})
        share = max(1, PER_CHUNK * group.rows.size // table.num_rows)
        if not settings.full_year and len(errors) < PER_CHUNK:
            errors += _errors(group, found, settings, share)
    for row, faults in read.faults.items():
        sheet.say(row, {STATUS: FAULTY, FAULTS: " ".join(str(fault) for fault in faults)})
        counts.update({f"fault: {where}": 1 for where in dict.fromkeys(fault.where for fault in faults)})
    names = text_column(table.column(settings.columns.id)) if settings.columns.id is not None else None
    summary = {"counts": {name: number for name, number in counts.items() if number}, "errors": errors}
    done = sheet.table(first_row, names)
    return done.replace_schema_metadata({SUMMARY: json.dumps(summary).encode()})


def _errors(group: Group, found: Outcome, settings: Settings, count: int) -> list[list[float]]:
    """Of some homes evenly spread over a group: figures of the shortened and of the full year, in turn.

    Heat saved [kWh], net saving [money], frost protection [kWh], payback [years]; no payback as nil.
    """
    places = np.unique(np.linspace(0, group.rows.size - 1, count).round().astype(int))
    part, year = part_of(group.case, places), settings.hours
    exact = outcome(part, year, hours=year, recovery=settings.recovery, full_year=True)
    pairs: list[Array] = []
    for name in ("heat_saved", "net_saving", "frost", "payback"):
        for values in (getattr(found, name)[places], getattr(exact, name)):
            pairs.append(np.where(np.isfinite(values), values, 0.0))
    return [[float(value) for value in row] for row in np.transpose(pairs)]


def summary_of(table: pa.Table) -> Mapping[str, Any]:
    """The summary that a chunk of results carries."""
    held: Mapping[str, Any] = json.loads(table.schema.metadata[SUMMARY])
    return held
