"""What does the shipped example print, as README shows it?

`python -m tests.worked_block` prints it, and writes it between its markers with `--write`.
"""

from __future__ import annotations

from collections.abc import Callable

from estimator.climate.sources import load_year
from estimator.compare import Comparison, Result, run
from estimator.draws import ground
from estimator.inputs.casefile import case_from_text
from estimator.inputs.template import example_text
from estimator.leak_range import leakage_span
from estimator.reach import full_look
from estimator.report.cash import exact_money
from estimator.report.figures import fixed
from estimator.report.table import answers
from tests.marked import Block

COLUMNS: tuple[tuple[str, Callable[[Comparison], str]], ...] = (
    ("heat saved [kWh]", lambda c: fixed(c.heat_saved, decimals=0)),
    ("more electricity [kWh]", lambda c: fixed(c.extra_electricity, decimals=0)),
    ("net saving a year", lambda c: exact_money(c.net_saving, "£")),
    ("carbon saved [kg]", lambda c: fixed(c.carbon_saving, decimals=0)),
    ("net cost of fitting", lambda c: exact_money(c.net_capital, "£")),
)


def _rows(result: Result) -> list[str]:
    found: list[Comparison] = [*result.against_baseline.values(), *result.against_today.values()]
    head = ["", *[f"{c.option_label}, against {c.baseline_label}" for c in found]]
    lines = [head, ["---", *["---:" for _ in found]]]
    lines += [[name, *[read(c) for c in found]] for name, read in COLUMNS]
    return [f"| {' | '.join(cells)} |" for cells in lines]


def block() -> Block:
    """Answers and main figures of the example, in its own climate."""
    case = case_from_text(example_text(), name="example.toml")
    year = load_year(case.place.climate)
    result = run(case, year)
    body = [
        f"Weather: {case.place.climate}, invented. Leakage: {leakage_span(result.estimate.case).words}.",
        "",
        *(f"* {said}" for said in answers(result, full_look(ground(case, year)))),
        "",
        *_rows(result),
    ]
    return Block(document="README.md", name="worked", body="\n".join(body))


if __name__ == "__main__":
    block().main()
