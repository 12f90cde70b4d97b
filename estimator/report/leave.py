"""What does a customer take home: answer with range, assumptions, pictures, working, cautions, and what is not counted?

Content only; `leave_pdf` and `leave_html` set it. No part of it can be left out by whoever makes it.
"""

from __future__ import annotations

import datetime
import unicodedata
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from estimator.cautions import Caution, cautions, preface
from estimator.compare import Comparison, Result
from estimator.leak_range import leakage_span
from estimator.leak_span import LeakageSpan
from estimator.report import cash, figures, leakage_said, ledger, paper_charts, sure_words
from estimator.report.document import STATEMENT
from estimator.report.first_page import spans_of
from estimator.report.fresh_air import in_words
from estimator.report.method_words import method_error_in_words
from estimator.report.remarks import remarks
from estimator.report.ribbon import TITLE as RIBBON_TITLE
from estimator.report.ribbon import ribbon
from estimator.report.rows import Rows
from estimator.report.sentence import case_sentence
from estimator.report.sure_words import Against, Tried
from estimator.report.working import Working, workings
from estimator.sample import HIGH, LOW
from estimator.sure import Spread
from estimator.units import MONTH_NAMES

VALID_DAYS = 60  # price caps and quotations rarely hold for longer; common practice, no source
LONGEST_NAME = 80
QUESTION = "Is heat recovery worth it here?"
NOT_COUNTED = (
    "Comfort, noise, cleaner air and fewer draughts: they have no price here.",
    "Damp and mould: this estimate says nothing about repairs they cause.",
    "Room by room differences, and what people change once they have it.",
    "Changes of price, climate or use of the home, beyond the ranges named.",
)
"""What stays out of every figure."""

# Written last into a paper: the entries that decide most and are asked about first.
_ASSUMED = (
    "home.floor_area", "home.fabric_loss", "home.indoor_temperature", "home.people", "home.internal_gains",
    "leakage.value", "air.entered", "heating.fuel", "heating.efficiency", "prices.fuel", "prices.electricity",
    "prices.fuel_carbon", "prices.electricity_carbon", "worth.life",
)  # fmt: skip
_OF_OPTION = ("unit.effectiveness", "unit.fan_power", "flows.supply", "flows.extract", "unit.frost")


@dataclass(frozen=True, slots=True, kw_only=True)
class Names:
    """Who it is for and from, as typed by the user; they go into the paper and nowhere else."""

    prepared_for: str = ""
    prepared_by: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A drawing with what it shows, in one line and in full."""

    title: str
    svg: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """Everything on the two pages, as text and drawings."""

    question: str
    answer: str
    then: tuple[str, ...]
    names: Names
    made: str
    valid: str
    sentence: str
    pictures: tuple[Picture, ...]
    figures: Rows
    assumptions: Rows
    workings: tuple[Working, ...]
    remarks: tuple[str, ...]
    preface: str
    cautions: tuple[Caution, ...]
    not_counted: tuple[str, ...]
    rests_on: tuple[str, ...]
    statement: str


def paper(
    result: Result, found: Tried, span: LeakageSpan, *, names: Names, today: datetime.date, valid_days: int = VALID_DAYS
) -> Paper:
    """The paper of one option of a result, with the ranges of the cases tried.

    ValueError where `found` was drawn of another case than the result's: an old range never stands beside a new figure.
    """
    done = result.estimate
    comparison = result.against_baseline.get(found.option)
    if comparison is None:
        raise ValueError(f"no comparison of {found.option} with the baseline")
    if not np.isclose(float(found.against[0].sure.best.net_capital[0]), comparison.net_capital):
        raise ValueError("the ranges belong to another case than the figures")
    first, *others = found.against
    made, valid = dated(today, valid_days=valid_days)
    return Paper(
        question=QUESTION,
        answer=sure_words.sentence(found, first),
        then=(sure_words.best(found, first, comparison), *(sure_words.sentence(found, other) for other in others)),
        names=plain_names(names),
        made=made,
        valid=valid,
        sentence="".join(words + entry for words, entry in case_sentence(done, span)),
        pictures=_pictures(result, comparison, found),
        figures=_figures(result, found),
        assumptions=_assumptions(result, found),
        workings=workings(done, comparison),
        remarks=remarks(result),
        preface=preface(),
        cautions=cautions(done.case, place="report"),
        not_counted=NOT_COUNTED,
        rests_on=(
            f"Baseline: {comparison.baseline_label}. Prices: {done.case.prices.dated}.",
            f"Weather: {done.year.name}{', an invented climate' if done.year.invented else ''}; {done.year.source}.",
            f"Leakage: {leakage_said.words(span)}.",
            *sure_words.rests_on(found),
            method_error_in_words(done, comparison),
        ),
        statement=STATEMENT,
    )


def plain(typed: str) -> str:
    """Typed words without control and direction marks, on one line, no longer than a name may be."""
    kept = "".join(" " if letter in "\r\n\t" else letter for letter in typed)
    return " ".join(visible(kept).split())[:LONGEST_NAME].strip()


def visible(text: str) -> str:
    """Text without control and direction marks, which no paper can show; lines stay lines."""
    hidden = ("Cc", "Cf", "Cs", "Co", "Cn")
    return "".join(letter for letter in text if letter == "\n" or unicodedata.category(letter) not in hidden)


def plain_names(names: Names) -> Names:
    """Names and note as `plain` leaves them."""
    return Names(**{each: plain(getattr(names, each)) for each in ("prepared_for", "prepared_by", "note")})


def dated(today: datetime.date, *, valid_days: int = VALID_DAYS) -> tuple[str, str]:
    """The day on which a paper is made, and that until which it may be used, in words."""
    return _said(today), _said(today + datetime.timedelta(days=valid_days))


def _said(day: datetime.date) -> str:
    return f"{day.day} {MONTH_NAMES[day.month - 1]} {day.year}"


def _pictures(result: Result, comparison: Comparison, found: Tried) -> tuple[Picture, ...]:
    account = ledger.fresh_air(result.estimate, comparison)
    drawn = Picture(title=RIBBON_TITLE, svg=ribbon(account, look="light", embed_font=False), words=in_words(account))
    return drawn, _range(result, found), _course(found, found.against[0], comparison)


def _range(result: Result, found: Tried) -> Picture:
    rows, title = spans_of(found, _best(result, found)), paper_charts.SPANS
    said = "; ".join(f"against {row.said(found.currency)}" for row in rows)
    return Picture(
        title=title, svg=paper_charts.spans(rows, found.currency, title=title, words=said), words=f"{title}: {said}."
    )


def _best(result: Result, found: Tried) -> tuple[Comparison, ...]:
    """At the best guess, against each baseline of the cases tried."""
    both = (result.against_baseline, result.against_today)
    return tuple(each[found.option] for each, _ in zip(both, found.against, strict=False))


def _course(found: Tried, against: Against, comparison: Comparison) -> Picture:
    cases, life = against.sure.cases, against.sure.years
    years = np.arange(0.0, np.ceil(life) + 1.0)
    money = np.sort(cases.net_saving[:, None] * years - cases.net_capital[:, None], axis=0)
    count = money.shape[0]
    low, high = (money[min(int(np.ceil(share * count)) - 1, count - 1)] for share in (LOW, HIGH))
    best = comparison.net_saving * years - comparison.net_capital
    end = (float(low[-1]), float(high[-1]))
    currency = found.currency
    title = f"What comes back of the extra cost against {against.words}, at the prices of today"
    said = (
        f"after {figures.years(float(years[-1]))} between {cash.money(end[0], currency, within=end)} and "
        f"{cash.money(end[1], currency, within=end)}, best guess {cash.money(float(best[-1]), currency, within=end)}"
    )
    svg = paper_charts.course(paper_charts.Course(low=low, best=best, high=high), currency, title=title, words=said)
    return Picture(title=title, svg=svg, words=f"{title}: {said}.")


def _figures(result: Result, found: Tried) -> Rows:
    currency, best = found.currency, _best(result, found)

    def row(words: str, name: str, said: Callable[[float], str], of_sure: str = "") -> tuple[str, ...]:
        both = zip(found.against, best, strict=False)
        told = (_range_said(getattr(a.sure, of_sure or name), float(getattr(b, name)), said) for a, b in both)
        return (words, *told)

    return Rows(
        caption="Every figure with its range",
        head=("figure", *(f"against {each.words}" for each in found.against)),
        rows=(
            row("net saving a year", "net_saving", lambda value: cash.money(value, currency)),
            row("heat saved a year", "heat_saved", figures.energy),
            row("carbon saved a year", "carbon_saving", figures.carbon),
            row("simple payback", "simple_payback", sure_words.payback_said, "payback"),
        ),
        note=f"Eight of ten of {found.against[0].sure.count:,} cases tried with the ranges of the inputs lie between.",
        words=frozenset(range(len(found.against) + 1)),
    )


def _range_said(spread: Spread, guess: float, said: Callable[[float], str]) -> str:
    """A range with the best guess, each no finer than the range bears."""
    low, best, high = (
        said(figures.borne(each, low=spread.low, high=spread.high)) for each in (spread.low, guess, spread.high)
    )
    if low == best == high:
        return low
    return f"{low} to {high}, best guess {best}"


def _assumptions(result: Result, found: Tried) -> Rows:
    done = result.estimate
    paths = (*_ASSUMED, *(f"options.{found.option}.{path}" for path in _OF_OPTION))
    rows = []
    for path in paths:
        origin = done.origins[path]
        unit = cash.price_unit(origin.unit, done.case.prices.currency)
        said = origin.value if isinstance(origin.value, str) else figures.quantity(float(origin.value), unit)
        if path == "leakage.value":
            said = leakage_said.stated(leakage_span(done.case))
        rows.append((origin.meaning, said, origin.tag, origin.source))
    return Rows(
        caption="What it rests on",
        head=("input", "value", "rests on", "source"),
        rows=tuple(rows),
        note=f"Prices: {done.case.prices.dated}.",
        words=frozenset({0, 2, 3}),
    )
