"""What stands below the first answer: the way from heat to money as a table, and what moves it most?"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import isinf

from estimator.compare import Comparison
from estimator.estimate import Estimate
from estimator.report import cash, ledger, paper_charts
from estimator.report.figures import carbon, energy, years
from estimator.report.rows import Rows
from estimator.report.sure_words import Against, Tried, lines

_MOST_LEVERS = 5
_BEYOND_TELLING = 100.0  # years; nobody can use a longer figure


def account(done: Estimate, found: Sequence[tuple[str, Comparison]]) -> Rows:
    """From the heat of the fresh air to what is left in a year, against each baseline. found: its name, comparison."""
    currency = done.case.prices.currency
    airs = [ledger.fresh_air(done, comparison) for _, comparison in found]
    air = airs[0]

    def money(words: str, read: Callable[[Comparison], float]) -> tuple[str, ...]:
        return (words, *(cash.exact_money(read(comparison), currency) for _, comparison in found))

    def same(words: str, heat: float) -> tuple[str, ...]:
        return (words, *([energy(heat)] * len(found)))

    return Rows(
        caption="From heat to money, in a year",
        head=("", *(f"against {name}" for name, _ in found)),
        rows=(
            same("Heat that warms the fresh air", air.total),
            same("of it, past the exchanger through leaks and windows", air.past),
            same("of it, kept by the exchanger", air.kept),
            ("Less heating", *(energy(comparison.heat_saved) for _, comparison in found)),
            money("Worth, as heat", lambda c: c.heat_bill_saving),
            money("Electricity of the fans and heaters", lambda c: -c.extra_ventilation_bill),
            money("Filters and service", lambda c: -c.extra_upkeep),
            money("Left in a year", lambda c: c.net_saving),
            ("Carbon saved", *(carbon(comparison.carbon_saving) for _, comparison in found)),
            ("Extra cost of fitting", *(cash.money(c.net_capital, currency) for _, c in found)),
            ("Years until that has come back", *(years_back(c) for _, c in found)),
        ),
        note="At the best guess of every input; the ranges stand in the answer.",
        words=frozenset({0}),
    )


def years_back(comparison: Comparison) -> str:
    """Years until the extra cost has come back, fit for a table."""
    span = comparison.simple_payback
    if span <= 0.0:
        return "at once"
    return "never" if isinf(span) else years(span) if span <= _BEYOND_TELLING else f"more than {years(_BEYOND_TELLING)}"


def levers(found: Tried, against: Against, *, plain: bool = False) -> Rows:
    """The inputs that move the yearly saving most, each alone at either end of its own range.

    plain: what comes out at either end, without the ends themselves and their units.
    """
    currency, saved = found.currency, against.sure.net_saving
    ends = (saved.low, saved.high)
    return Rows(
        caption="What moves it most",
        head=("", "at its low end", "at its high end"),
        rows=tuple(
            (
                f"{line.words[:1].upper()}{line.words[1:]}",
                f"{'' if plain else f'{line.low}: '}{cash.change(line.at_low, currency, of='', within=ends)}".strip(),
                f"{'' if plain else f'{line.high}: '}{cash.change(line.at_high, currency, of='', within=ends)}".strip(),
            )
            for line in lines(found, against)[:_MOST_LEVERS]
        ),
        note=f"Money a year against {against.words}, one input alone moved; below and above each end lies a tenth of "
        "the cases.",
        words=frozenset({0, 1, 2}),
    )


def spans_of(found: Tried, best: Sequence[Comparison]) -> tuple[paper_charts.Span, ...]:
    """The range of the saving against each baseline, with the best guess of the same comparisons."""
    return tuple(
        paper_charts.Span(words=each.words, low=cases.low, best=comparison.net_saving, high=cases.high)
        for each, comparison in zip(found.against, best, strict=False)
        for cases in (each.sure.net_saving,)
    )


def spans(found: Tried, best: Sequence[Comparison]) -> tuple[str, str, str]:
    """The ranges of the saving against each baseline as one picture for a desk and for a phone, and in words."""
    rows, currency, title = spans_of(found, best), found.currency, paper_charts.SPANS
    said = "; ".join(f"against {row.said(currency)}" for row in rows)
    desk, phone = (
        paper_charts.spans(rows, currency, title=title, words=said, look="auto", width=width)
        for width in (paper_charts.DESK, paper_charts.PHONE)
    )
    return desk, phone, f"{title}: {said}."
