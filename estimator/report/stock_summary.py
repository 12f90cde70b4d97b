"""What does a whole stock come to, in a page of plain text?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

import numpy as np

from estimator.cautions import preface
from estimator.report.cash import money
from estimator.report.figures import number
from estimator.report.stock_said import today, untested
from estimator.report.stock_words import ANSWERS, ERROR_OF, TIGHTNESS
from estimator.routes import LABELS
from estimator.units import Array, to_percent

MOST_FAULTS = 12
_WIDTH = 58
_MONEY = "money"


def summary(
    counts: Mapping[str, int],
    errors: Array,
    *,
    option: str,
    baseline: str,
    climate: str,
    currency: str,
    edges: Sequence[float],
    strangers: Sequence[str] = (),
    left_out: Sequence[str] = (),
) -> str:
    """The stock in words: what is dangerous first, then counts, what they rest on, and what could not be read.

    counts: as a screening counts; errors: shortened and full year in turn, (homes, 8); edges: of the paybacks counted.
    """
    return "\n".join(
        _lines(
            counts,
            errors,
            option,
            baseline,
            climate,
            currency=currency,
            edges=edges,
            strangers=strangers,
            left_out=left_out,
        )
    )


def _lines(
    counts: Mapping[str, int],
    errors: Array,
    option: str,
    baseline: str,
    climate: str,
    *,
    currency: str,
    edges: Sequence[float],
    strangers: Sequence[str],
    left_out: Sequence[str],
) -> Iterator[str]:
    rows, faulty = counts.get("rows", 0), counts.get("faulty", 0)
    sound = rows - faulty
    yield preface()
    yield ""
    yield f"{rows:,} rows: {sound:,} homes screened, {faulty:,} with faults, which stand beside them."
    yield f"{option} against {baseline}, weather of {climate}. Every saving is baseline minus option."
    for title, kind, words in (
        ("Does it pay back?", "answer", ANSWERS.values()),
        ("Is the home tight enough?", "tightness", TIGHTNESS.values()),
        ("Which way leaves most money over the life?", "route", LABELS.values()),
    ):
        yield f"\n{title}"
        yield from (_counted(word, counts.get(f"{kind}: {word}", 0), sound) for word in words)
    yield "\nAfter how many years?"
    yield from (_counted(words, many, sound) for words, many in paybacks(counts, edges))
    yield ""
    yield today(counts, option=option)
    if said := untested(counts):
        yield said
    yield ""
    yield from error_lines(errors, currency=currency)
    if faulty:
        yield "\nRows with faults, by the entry at fault"
        found = {name.removeprefix("fault: "): many for name, many in counts.items() if name.startswith("fault: ")}
        most = sorted(found.items(), key=lambda item: -item[1])
        yield from (_counted(where, many, rows) for where, many in most[:MOST_FAULTS])
        if most[MOST_FAULTS:]:
            yield f"  and {len(most) - MOST_FAULTS} entries more"
    if left_out:
        yield f"\nNo column for {', '.join(left_out)}: worked out, or the same usual value for every home."
    if strangers:
        yield f"\nNo field of a home, and not carried into the results: {', '.join(strangers)}."


def paybacks(counts: Mapping[str, int], edges: Sequence[float]) -> list[tuple[str, int]]:
    """How many homes pay back within which years, and how many never."""
    names = [f"up to {edges[0]:g} years"]
    names += [f"{low:g} to {high:g} years" for low, high in pairwise(edges)]
    names.append(f"more than {edges[-1]:g} years")
    found = [(name, counts.get(f"payback: {place}", 0)) for place, name in enumerate(names)]
    never = counts.get(f"answer: {ANSWERS['loses']}", 0)
    return [*found, ("never", never)]


def error_lines(errors: Array, *, currency: str) -> list[str]:
    """By how much the shortened year errs in the homes of this very stock that took the full year as well."""

    def said(value: float, unit: str) -> str:
        return money(value, currency) if unit.startswith(_MONEY) else number(value, figures=2)

    if not len(errors):
        return ["Every home took the full year of hours."]
    lines = [f"Shortened year against all 8,760 hours, in {len(errors):,} homes of this table (half / 99% / worst):"]
    for place, (name, unit) in enumerate(ERROR_OF):
        short, full = errors[:, 2 * place], errors[:, 2 * place + 1]
        away = np.abs(short - full)
        half, most, worst = (said(float(np.quantile(away, share)), unit) for share in (0.5, 0.99, 1.0))
        shares = np.divide(away, np.abs(full), out=np.zeros_like(away), where=np.abs(full) > 0.0)
        part = "" if place else f", {number(to_percent(float(np.quantile(shares, 0.99))))}% of it in 99% of homes"
        lines.append(f"  {name}: {half} / {most} / {worst} {unit.removeprefix(_MONEY).strip()}{part}")
    return lines


def _counted(words: str, many: int, whole: int) -> str:
    share = f"{to_percent(many / whole):.0f}%" if whole else ""
    return f"  {words:<{_WIDTH}}{many:>12,}{share:>7}"
