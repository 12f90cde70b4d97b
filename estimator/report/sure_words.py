"""How sure is the answer, in words: the range, the cases that pay back, and which input moves it most?

Every share is one of cases tried with stated ranges, and is said so; nothing here is a chance promised.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import isinf

import numpy as np

from estimator.compare import Comparison
from estimator.draws import Ground
from estimator.inputs.case import Case
from estimator.levers import Needed, what_would_it_take
from estimator.report import cash
from estimator.report.answer import TODAY, often
from estimator.report.figures import borne, carbon, energy, quantity, share, years
from estimator.report.rows import Rows
from estimator.report.sure_ends import ends_said, span_said
from estimator.sample import HIGH, LOW, Sample
from estimator.sure import Spread, Sure, Swing, sure_of
from estimator.tries import place_of_rank

_MOST_SWINGS = 10
_WORTH_DRAWING = 0.03  # of the widest swing
_TENTHS = 10.0
_TENTH_SAID = 0.05  # less rounds to none of ten, which would say too much
_BEYOND = 100.0  # years; nobody can use a longer figure

EXPLAINED = (
    "Each line moves one input alone and leaves all others at their best guess: from the open end, below which the "
    "input lies in a tenth of the cases, to the full one, above which it lies in a tenth."
)


@dataclass(frozen=True, kw_only=True, eq=False)
class Against:
    """One option against one baseline: what that is called, how sure it is, and what it would take."""

    words: str
    sure: Sure
    place: Ground

    @cached_property
    def needed(self) -> tuple[Needed, ...]:
        """What it would take, worked out once somebody asks: it takes longer than all the words of a first answer."""
        return self.needed_within(self.place.case.worth.life)

    def needed_within(self, years: float) -> tuple[Needed, ...]:
        """What it would take to pay back within so many years, worked out each time."""
        place, sure = self.place, self.sure
        return what_would_it_take(place.case, place.year, option=sure.option, baseline=sure.baseline, years=years)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Tried:
    """An option in all cases tried, against the baseline and, where that is another, against today."""

    place: Ground
    option: str
    label: str
    against: tuple[Against, ...]

    @property
    def currency(self) -> str:
        """Of every sum."""
        return self.place.case.prices.currency


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One swing as drawn: the input, its own two ends in words, and the net saving at each."""

    words: str
    low: str
    high: str
    at_low: float
    at_high: float


def tried(drawn: Sample, *, option: str) -> Tried:
    """One option of a sample, asked whether it pays back within the life of the kit."""
    case = drawn.place.case
    names = {case.baseline: _label(case, case.baseline)}
    if case.today not in (case.baseline, option):
        names[case.today] = TODAY
    return Tried(
        place=drawn.place,
        option=option,
        label=_label(case, option),
        against=tuple(
            Against(
                words=words,
                sure=sure_of(drawn, option=option, baseline=name),
                place=drawn.place,
            )
            for name, words in names.items()
        ),
    )


def sentence(found: Tried, against: Against) -> str:
    """The answer: the range between which eight of ten cases lie, the baseline, and how often it pays back."""
    low, high = against.sure.net_saving.low, against.sure.net_saving.high
    said, option = cash.saving(low, high, found.currency), found.label
    if "cannot be told" in said:
        head = f"Whether {option} would save anything here {said}, against {against.words}"
    else:
        head = f"{_begun(option)} here {said} after its fans and filters, against {against.words}"
    return f"{head}; {paid_back(against.sure)}."


def paid_back(sure: Sure) -> str:
    """How often it pays back, as a share of the cases tried."""
    said = often(sure.paid_back(sure.years), sure.count)
    return f"in {said} tried with these ranges it pays back within its life of {years(sure.years)}"


def best(found: Tried, against: Against, comparison: Comparison) -> str:
    """The best guess beside the range of the cases tried."""
    said = cash.change(comparison.net_saving, found.currency)
    return f"Eight of ten cases lie within that range, one below it and one above. At the best guess it {said}."


def middle(found: Tried, against: Against) -> str:
    """Best guess and middle of the cases, and why they are two."""
    sure, currency = against.sure, found.currency
    best, half = (cash.change(each, currency) for each in (float(sure.best.net_saving[0]), sure.net_saving.middle))
    first = "Eight of ten cases lie within that range, one below it and one above."
    if best == half:
        return f"{first} The best guess is the middle of them: it {best}."
    return (
        f"{first} At the best guess it {best}; in the middle case it {half}, since some ranges reach further to one "
        "side than to the other."
    )


def lines(found: Tried, against: Against) -> tuple[Line, ...]:
    """The swings worth drawing, longest first."""
    swings = against.sure.swings
    widest = max((swing.width for swing in swings), default=0.0)
    worth = [swing for swing in swings if swing.width > 0.0 and swing.width >= _WORTH_DRAWING * widest]
    return tuple(_line(found, swing) for swing in worth[:_MOST_SWINGS])


def swings_title(against: Against, currency: str) -> str:
    """What the picture of the swings shows."""
    first = against.sure.swings[0]
    if first.width <= 0.0:
        return f"Against {against.words}, no input alone moves the saving"
    return (
        f"Against {against.words}, most depends on {first.input.words}: "
        f"{cash.money(first.width, currency, within=_ends(against))} a year from end to end"
    )


def swings_in_words(found: Tried, against: Against) -> str:
    """The picture told to those who do not see it."""
    currency, ends = found.currency, _ends(against)
    told = "; ".join(
        f"{line.words} from {line.low} ({cash.money(line.at_low, currency, within=ends)} a year) "
        f"to {line.high} ({cash.money(line.at_high, currency, within=ends)})"
        for line in lines(found, against)
    )
    return f"{swings_title(against, currency)}. Net saving with one input alone at either end, longest first: {told}."


def spreads(found: Tried, against: Against) -> Rows:
    """Every headline figure below which a tenth, a half and nine tenths of the cases lie."""
    sure, currency = against.sure, found.currency

    def row(words: str, spread: Spread, said: Callable[[float], str]) -> tuple[str, ...]:
        ends = (spread.low, spread.middle, spread.high)
        return (words, *(said(borne(end, low=spread.low, high=spread.high)) for end in ends))

    return Rows(
        caption=f"Against {against.words}",
        head=("Figure", "A tenth of the cases below", "Half below", "Nine tenths below"),
        rows=(
            row("Net saving a year", sure.net_saving, lambda value: cash.exact_money(value, currency)),
            row("Heat saved a year", sure.heat_saved, energy),
            row("Carbon saved a year", sure.carbon_saving, carbon),
            row("Payback", sure.payback, payback_said),
            row("Worth today", sure.net_present_value, lambda value: cash.exact_money(value, currency)),
            row("Discounted payback", sure.discounted_payback, payback_said),
            row("Heat recovered in use", sure.efficiency, share),
        ),
    )


def ranges(found: Tried) -> Rows:
    """Every input that is drawn: from where to where, what it rests on, why so far, and where that comes from."""
    place, option = found.place, found.option
    head = ("Input", "From lowest to highest", "Rests on", "Why so wide", "Source", "What would settle it")
    return Rows(
        caption="The ranges tried",
        head=head,
        words=frozenset(range(len(head))),
        rows=tuple(
            (
                _begun(item.words),
                span_said(ends_said(place, item, option=option, at=(-1.0, 1.0))),
                " and ".join(sorted(set(item.tags.values()))),
                item.reason,
                item.source,
                item.settle or "nothing beforehand",
            )
            for item in place.inputs
        ),
    )


def rests_on(found: Tried) -> Sequence[str]:
    """Small print: how many cases, from where, on what year, and how far that errs."""
    sure, year = found.against[0].sure, found.place.year
    error = sure.error
    return (
        f"{sure.count:,} cases, spread evenly over all ranges at once; the same case is tried with every option, and "
        "the same cases come every time. Of each input half the values tried lie on either side of its best guess, "
        "most of them close to it.",
        f"Weather: {year.name}, {year.source}, in blocks of {quantity(error.hours_per_block, 'hours')}. In "
        f"{error.cases} cases that took every hour as well, this moved the net saving by at most "
        f"{cash.money(error.net_saving, found.currency)} a year.",
    )


def _ends(against: Against) -> cash.Ends:
    """The range that figures of the saving stand in."""
    return against.sure.net_saving.low, against.sure.net_saving.high


def _line(found: Tried, swing: Swing) -> Line:
    at = (float(np.asarray(place_of_rank(LOW))), float(np.asarray(place_of_rank(HIGH))))
    low, high = ends_said(found.place, swing.input, option=found.option, at=at)
    return Line(words=swing.input.words, low=low, high=high, at_low=swing.saving_at_low, at_high=swing.saving_at_high)


def payback_said(span: float) -> str:
    """Years to pay back, short enough for a table."""
    if isinf(span):
        return "never"
    if span <= 0.0:
        return "at once"
    return years(span) if span <= _BEYOND else f"more than {years(_BEYOND)}"


def _label(case: Case, name: str) -> str:
    return case.options[name].label or case.options[name].kind


def _begun(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}"
