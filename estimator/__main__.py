"""What can be asked on the command line?

Exit status 0, or 2 with every fault on the error stream and nothing on the other. `evidence` always prints, and ends
with 2 where a published value does not come out.
"""

from __future__ import annotations

import argparse
import json
import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import NoReturn

from estimator.errors import Fault, InputFaults
from estimator.inputs.case import Case
from estimator.inputs.casefile import case_from_text, read_case
from estimator.inputs.schema import case_schema
from estimator.inputs.template import commented_case, example_text
from estimator.leak_range import over_leakage_range
from estimator.stock.arguments import add_arguments

FAULT_STATUS = 2


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns the exit status."""
    for stream in (sys.stdout, sys.stderr):
        # A Windows console may not be set to UTF-8; m³ and °C are.
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8")
    options = _parser().parse_args(arguments)
    status = 0
    try:
        answer = options.command(options)
    except InputFaults as faults:
        print(*faults.faults, sep="\n", file=sys.stderr)
        return FAULT_STATUS
    if isinstance(answer, tuple):
        answer, status = answer
    try:
        print(answer, flush=True)
    except BrokenPipeError:
        # The reader of a pipe had enough: no fault of ours. What is left to flush goes nowhere.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    return status


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="python -m estimator",
        description="Is heat recovery worth it in this home? Savings, carbon and payback of ways to ventilate.",
    )
    commands = parser.add_subparsers(required=True, metavar="command")
    estimate = commands.add_parser("estimate", help="estimate a case file and print a table, or JSON")
    estimate.add_argument("case", help="a case file (TOML or JSON), or 'example' for the shipped one")
    estimate.add_argument(
        "--climate",
        help="weather instead of the case's own: "
        "an included climate by name, a weather file, a place as in 52.2,0.1, or a table of monthly means (TOML)",
    )
    estimate.add_argument("--json", action="store_true", help="one JSON document with every input and figure")
    estimate.set_defaults(command=_estimate)
    form = commands.add_parser("form", help="print a commented case file with every field, unit, limit and default")
    form.set_defaults(command=lambda _: commented_case())
    example = commands.add_parser("example", help="print the shipped example case")
    example.set_defaults(command=lambda _: example_text())
    schema = commands.add_parser("schema", help="print the JSON schema of a case file")
    schema.set_defaults(command=lambda _: json.dumps(case_schema(), ensure_ascii=False, indent=1))
    climates = commands.add_parser("climates", help="list the included climates")
    climates.set_defaults(command=_climates)
    evidence = commands.add_parser(
        "evidence", help="work out every published value and print it beside what was printed"
    )
    evidence.set_defaults(command=_evidence)
    dashboard = commands.add_parser("dashboard", help="start the dashboard, on this machine alone")
    dashboard.add_argument("--port", type=int, help="port to serve it on, 8501 where none is named")
    dashboard.set_defaults(command=_dashboard)
    stock = commands.add_parser("stock", help="screen a table of many homes: in which does it pay, which to seal first")
    add_arguments(stock)
    stock.set_defaults(command=_stock)
    return parser


def _estimate(options: argparse.Namespace) -> str:
    from estimator.climate.chosen import case_year
    from estimator.draws import ground
    from estimator.reach import full_look
    from estimator.report import document, table

    faults: list[Fault] = []
    case, year = Case(), None
    try:
        case = _case(options.case)
    except InputFaults as found:
        faults.extend(found.faults)
    # A climate named on the command line is looked at even when the case is faulty, so that all faults show at once.
    if options.climate or not faults:
        try:
            year = case_year(case, reference=options.climate or "")
        except InputFaults as found:
            faults.extend(found.faults)
    if faults or year is None:
        raise InputFaults(faults)
    low, result, high = over_leakage_range(case, year)
    return document.as_json(result, (low, high)) if options.json else table.text(result, full_look(ground(case, year)))


def _case(name: str) -> Case:
    if name == "example" and not Path(name).exists():
        return case_from_text(example_text(), name="example.toml")
    return read_case(name)


def _climates(_: argparse.Namespace) -> str:
    from estimator.climate.sources import names

    return "\n".join(names())


def _evidence(_: argparse.Namespace) -> tuple[str, int]:
    from estimator.evidence.method import method_run
    from estimator.evidence.run import run_all
    from estimator.report import trust

    results = run_all()
    return trust.text(results, method_run()), FAULT_STATUS if trust.failing(results) else 0


def _dashboard(options: argparse.Namespace) -> NoReturn:
    from estimator.ui.starting import start

    start(options.port)


def _stock(options: argparse.Namespace) -> tuple[str, int]:
    from estimator.stock.command import run

    return run(options)


if __name__ == "__main__":
    sys.exit(main())
