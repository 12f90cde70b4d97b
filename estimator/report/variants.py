"""Which way to ventilate comes out best against a chosen baseline, and in what do the ways differ?"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from estimator.compare import Comparison, compared
from estimator.estimate import Estimate
from estimator.inputs.option import Option
from estimator.inputs.places import value_at
from estimator.inputs.quantity import Quantity, declared
from estimator.reach import Reach, reach
from estimator.report import cash, paper_charts
from estimator.report.figures import GAP, borne, carbon, energy, joined, number, share
from estimator.report.first_page import years_back
from estimator.report.rows import Rows
from estimator.sample import Outcomes
from estimator.sure import Spread

QUESTION = "Which way to ventilate?"

_SHORT = 0.02  # of all hours without enough air, below which a way counts as giving enough
_MOST_DIFFERENCES = 6
_WORDS = ("kind", "label")  # entries of an option that are told by its name


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Way:
    """One way of ventilating against the baseline: its figures at the best guess, and over all cases tried."""

    comparison: Comparison
    reach: Reach
    short: float  # share of all hours without enough air, windows shut

    @property
    def enough(self) -> bool:
        """Whether it gives the air the home needs."""
        return self.short < _SHORT


def ways(done: Estimate, outcomes: Outcomes, *, baseline: str) -> tuple[Way, ...]:
    """Every other option against the baseline, the one that saves most in the middle of the cases first."""
    base = done.options[baseline]
    found = []
    for name, option in done.options.items():
        if name != baseline:
            comparison = compared(done, base, option)
            far = reach(outcomes, option=name, baseline=baseline, years=comparison.life)
            found.append(Way(comparison=comparison, reach=far, short=float(np.mean(option.air.short))))
    return tuple(sorted(found, key=lambda way: -way.reach.net_saving.middle))


def sentence(found: Sequence[Way], *, baseline: str, currency: str) -> str:
    """The answer: the best of the ways that give enough air, with its range."""
    fair = [way for way in found if way.enough] or list(found)
    if not fair:
        return f"There is only one way here, {baseline}: save a variant to have something to compare."
    best = fair[0]
    said = cash.saving(best.reach.net_saving.low, best.reach.net_saving.high, currency)
    name = best.comparison.option_label
    if "cannot be told" in said:
        _, _, between = said.partition(": ")
        return f"Whether any way is cheaper to run than {baseline} cannot be told: {name} comes closest, {between}."
    if said.startswith("would save"):
        return f"{name[:1].upper()}{name[1:]} is the cheapest to run: it {said} against {baseline}."
    return f"No way here is cheaper to run than {baseline}: even {name} {said}."


def then(found: Sequence[Way], *, baseline: str) -> str:
    """What the answer leaves out: ways short of air, and what they cost to fit."""
    short = [way for way in found if not way.enough]
    said = [
        f"{way.comparison.option_label[:1].upper()}{way.comparison.option_label[1:]} is left out of it: "
        f"it is short of air in {share(way.short)} of all hours."
        for way in short
    ]
    return " ".join([*said, f"Every figure is counted from {baseline}, fans, filters and service included."])


def picture(found: Sequence[Way], *, currency: str) -> tuple[str, str, str]:
    """The ranges of all ways on one scale, for a desk and for a phone, and in words."""
    rows = [
        paper_charts.Span(
            words=way.comparison.option_label, low=saved.low, best=way.comparison.net_saving, high=saved.high
        )
        for way in found
        for saved in (way.reach.net_saving,)
    ]
    said, title = "; ".join(row.said(currency) for row in rows), paper_charts.SPANS
    desk, phone = (
        paper_charts.spans(rows, currency, title=title, words=said, look="auto", width=width, before="")
        for width in (paper_charts.DESK, paper_charts.PHONE)
    )
    return desk, phone, f"{title}: {said}."


def side_by_side(found: Sequence[Way], *, baseline: str, currency: str) -> Rows:
    """All ways in one table, a column each."""

    def between(spread: Spread, unit: str = "") -> str:
        low, high = (borne(end, low=spread.low, high=spread.high) for end in (spread.low, spread.high))
        ends = (number(low), joined(number(high), unit)) if unit else (money(low), money(high))
        return f"{ends[0]} to {ends[1]}".replace(" ", GAP)

    def best(value: float, spread: Spread, said: Callable[[float], str]) -> str:
        return said(borne(value, low=spread.low, high=spread.high))

    def money(value: float) -> str:
        return cash.money(value, currency)

    def row(words: str, *cells: str) -> tuple[str, ...]:
        return (words, *cells)

    return Rows(
        caption=f"Side by side, counted from {baseline}",
        head=("", *(way.comparison.option_label for way in found)),
        rows=(
            row("Saved a year", *(between(w.reach.net_saving) for w in found)),
            row("at the best guess", *(best(w.comparison.net_saving, w.reach.net_saving, money) for w in found)),
            row("Heat saved", *(energy(w.comparison.heat_saved) for w in found)),
            row("More electricity", *(energy(w.comparison.extra_electricity) for w in found)),
            row("Carbon saved a year", *(between(w.reach.carbon_saving, "kg") for w in found)),
            row("at the best guess", *(best(w.comparison.carbon_saving, w.reach.carbon_saving, carbon) for w in found)),
            row("Extra cost of fitting", *(money(w.comparison.net_capital) for w in found)),
            row("Years until that has come back", *(years_back(w.comparison) for w in found)),
            row("Hours short of air", *(share(w.short) for w in found)),
        ),
        note="Ranges: eight of ten cases tried lie between. Money, heat and carbon of a year; a minus costs more.",
    )


def differences(done: Estimate, name: str) -> str:
    """In what an option differs from the first of its kind, in words; one that is the first is told by its kind."""
    options, label, currency = done.case.options, done.options[name].label, done.case.prices.currency
    one = options[name]
    other = next(found for found, option in options.items() if option.kind == one.kind)
    if other == name:
        return f"{label[:1].upper()}{label[1:]}: {'as usual for its kind' if label == one.kind else one.kind}."
    two = options[other]
    told = []
    for item in declared(Option):
        if item.path in _WORDS:
            continue
        now, then_ = value_at(one, item.path), value_at(two, item.path)
        if now != then_:
            words = item.spec.meaning.partition(",")[0]
            told.append(f"{words} {_said(now, item.spec, currency)}, not {_said(then_, item.spec, currency)}")
    more = f"; and {len(told) - _MOST_DIFFERENCES} more" if len(told) > _MOST_DIFFERENCES else ""
    listed = "; ".join(told[:_MOST_DIFFERENCES])
    beside = f"{label[:1].upper()}{label[1:]}, beside {done.options[other].label}"
    return f"{beside}: {listed}{more}." if told else f"{beside}: the same in every entry."


def _said(value: object, spec: object, currency: str) -> str:
    if isinstance(value, int | float) and isinstance(spec, Quantity):
        if spec.unit == "money":
            return cash.exact_money(float(value), currency)
        if spec.unit == "money/year":
            return f"{cash.exact_money(float(value), currency)} a year"
        return joined(number(float(value)), spec.unit)
    return str(value) if value is not None else "none"
