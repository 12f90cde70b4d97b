"""What does the command that screens a stock of homes do, and what does it print?"""

from __future__ import annotations

import argparse
import sys

from estimator.climate.chosen import case_year
from estimator.errors import Fault, InputFaults
from estimator.inputs.case import Case
from estimator.inputs.casefile import read_case
from estimator.report.stock_summary import summary
from estimator.stock.chunk import PAYBACK_EDGES
from estimator.stock.columns import known_headings
from estimator.stock.demo import template
from estimator.stock.homes import base_case
from estimator.stock.reading import headings
from estimator.stock.run import Stock, screen, settings_for

ROWS_AT_FAULT = 1
"""Exit status where every row came out, some of them as faults."""
_BAR = 30


def run(options: argparse.Namespace) -> tuple[str, int]:
    """Print a template or headings, or screen a table; the text to print and the exit status."""
    case = read_case(options.case) if options.case else Case()
    if options.template:
        return template(), 0
    if options.headings:
        known = known_headings(base_case(case))
        return "\n".join(f"{head}: {item.spec.meaning}" for head, (_, item) in known.items()), 0
    stock = _screened(options, case)
    done = stock.settings
    text = summary(
        stock.counts,
        stock.errors,
        option=_label(case, done.recovery),
        baseline=_label(case, case.baseline),
        climate=done.hours.name + (" (invented)" if done.hours.invented else ""),
        currency=case.prices.currency,
        edges=PAYBACK_EDGES,
        strangers=stock.strangers,
        left_out=stock.left_out,
    )
    return text, ROWS_AT_FAULT if stock.faulty else 0


def _screened(options: argparse.Namespace, case: Case) -> Stock:
    if options.table is None or options.results is None:
        said = "name the table of homes and the table of results, or ask for --template."
        raise InputFaults([Fault("stock", said)])
    if options.workers is not None and options.workers < 1:
        raise InputFaults([Fault("--workers", f"{options.workers} is given; write 1 or more.")])
    if options.table.resolve() == options.results.resolve():
        raise InputFaults([Fault("stock", "the results would overwrite the homes; name another file.")])
    if not options.results.absolute().parent.is_dir():
        raise InputFaults([Fault(str(options.results.parent), "there is no such folder for the results.")])
    settings = settings_for(
        headings(options.table),
        case,
        case_year(case, reference=options.climate),
        recovery=judged(case, options.option),
        full_year=options.full_year,
        ranges=options.ranges,
    )
    stock = screen(options.table, options.results, settings, workers=options.workers, progress=_bar)
    print(file=sys.stderr)
    return stock


def judged(case: Case, name: str | None = None) -> str:
    """Name of the option to judge: the one asked for, else the first that is neither baseline nor in place."""
    others = [other for other in case.options if other not in (case.baseline, case.today)]
    if name is not None and name not in case.options:
        raise InputFaults([Fault("--option", f"{name} is no option of the case; there are {', '.join(case.options)}.")])
    if name is None and not others:
        raise InputFaults([Fault("options", "there is none beside the baseline and the one in place today.")])
    return name or others[0]


def _label(case: Case, name: str) -> str:
    return case.options[name].label or name


def _bar(done: int, total: int | None) -> None:
    """How far it is, on one line of the error stream."""
    known = f"{'#' * (_BAR * done // total):<{_BAR}} {done:,} of {total:,}" if total else f"{done:,}"
    print(f"\r{known} homes", end="", file=sys.stderr, flush=True)
