"""How is a result read on a terminal?"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from estimator.cautions import cautions, preface
from estimator.compare import Comparison, Result
from estimator.estimate import OptionYear
from estimator.leak_range import leakage_span
from estimator.reach import reach
from estimator.report.answer import TODAY, carbon, reached, rests_on
from estimator.report.cash import payback, price_unit
from estimator.report.document import STATEMENT
from estimator.report.method_words import method_error_in_words
from estimator.report.quantities import COMPARED, YEARLY, Reported
from estimator.report.remarks import remarks
from estimator.sample import Outcomes

_SHOWN_INPUTS = (
    "home.floor_area", "home.fabric_loss", "home.indoor_temperature", "leakage.value", "air.entered", "heating.fuel",
    "heating.efficiency", "prices.fuel", "prices.electricity",
)  # fmt: skip
_DECIMALS = {"years": 1, "money/kWh": 2, "W/(m³/h)": 2, "kWh/kWh": 1, "°C": 1}


def text(result: Result, tried: Outcomes) -> str:
    """The result as a readable text: cautions, the answer with its range, then what it rests on.

    `tried` are the options of the same case in all cases tried.
    """
    done = result.estimate
    currency = done.case.prices.currency
    warned = cautions(done.case, place="command line")
    leakage, count = leakage_span(done.case), tried[done.case.baseline].bill.size
    baseline, today = (done.options[name].label for name in (done.case.baseline, done.case.today))
    estimated = "" if leakage.tested else " (estimated: leakage not tested)"
    parts = [
        f"Safety before money: {'; '.join(caution.title for caution in warned)}. {preface()}",
        "",
        *answers(result, tried),
        rests_on(count, whole=count),
        f"Leakage: {leakage.words}.",
        *remarks(result),
        "",
        *(f"- {caution.title}. {caution.words} Ask: {caution.ask}." for caution in warned),
        "",
        *_yearly_grid(f"a year{estimated}", list(done.options.values()), currency),
        "",
        *_comparison_grid(f"against {baseline}{estimated}", result.against_baseline, currency),
        "",
        *_comparison_grid(f"against {today}{estimated}", result.against_today, currency),
        "",
        "The inputs that decide most (all of them: --json)",
        *_grid(
            ("input", "value", "unit", "rests on", "source"),
            ([o.meaning, leakage.stated if o.path == "leakage.value" else _value(o.value),
              "at 50 Pa" if o.path == "leakage.value" else o.unit, o.tag, o.source]
             for o in (done.origins[path] for path in _SHOWN_INPUTS)),
        ),
        "",
        f"Weather: {done.year.name}. {done.year.source}.",
        *(f"Repaired: {repair}" for repair in done.year.repairs),
        *(f"{found.option_label}: {method_error_in_words(done, found)}" for found in result.against_baseline.values()),
        f"Prices: {done.case.prices.dated}.",
        "",
        STATEMENT,
    ]  # fmt: skip
    return "\n".join(parts)


def answers(result: Result, tried: Outcomes) -> Iterable[str]:
    """Every comparison as a sentence with its range and its baseline, and what follows from it."""
    done = result.estimate
    for found, words in (
        *((found, None) for found in result.against_baseline.values()),
        *((found, TODAY) for found in result.against_today.values()),
    ):
        so_far = reach(tried, option=found.option, baseline=found.baseline, years=found.life)
        said = reached(found, so_far, done.case.prices.currency, baseline=words)
        yield f"{said.sentence} {said.then} {carbon(found, so_far, baseline=words)}"


def _yearly_grid(title: str, options: Sequence[OptionYear], currency: str) -> Sequence[str]:
    rows = _rows(YEARLY, options, currency)
    return _grid((title, *[option.label for option in options], "unit"), rows)


def _comparison_grid(title: str, found: dict[str, Comparison], currency: str) -> Sequence[str]:
    rows = _rows(COMPARED, list(found.values()), currency)
    rows.append(["payback in words", *[payback(c.simple_payback, life=c.life) for c in found.values()], ""])
    return _grid((title, *[c.option_label for c in found.values()], "unit"), rows)


def _rows(items: Sequence[Reported], nouns: Sequence[OptionYear | Comparison], currency: str) -> list[list[str]]:
    """A row for each figure; one that none of the nouns has is left out."""
    read = [(item, [item.read(noun) for noun in nouns]) for item in items]
    return [
        [item.meaning, *[_shown(item, value) for value in values], price_unit(item.unit, currency)]
        for item, values in read
        if not all(math.isnan(value) for value in values)
    ]


def _shown(item: Reported, value: float) -> str:
    if not math.isfinite(value):
        return "never" if item.unit == "years" else "-"
    return f"{value:,.{_DECIMALS.get(item.unit, 0)}f}"


def _value(value: object) -> str:
    return f"{value:,.4g}" if isinstance(value, float) else str(value)


def _grid(head: Sequence[str], rows: Iterable[Sequence[str]]) -> list[str]:
    cells = [list(head), *[list(row) for row in rows]]
    widths = [max(len(row[column]) for row in cells) for column in range(len(head))]
    numeric = range(1, len(head) - 1)
    lines = [
        "  ".join(
            cell.rjust(widths[column]) if column in numeric else cell.ljust(widths[column])
            for column, cell in enumerate(row)
        ).rstrip()
        for row in cells
    ]
    return [lines[0], "-" * len(lines[0]), *lines[1:]]
