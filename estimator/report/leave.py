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
from estimator.report import cash, figures, ledger, paper_charts, sure_words
from estimator.report.document import STATEMENT
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
from estimator.sure import Spread, Sure
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
    return Paper(
        question=QUESTION,
        answer=sure_words.sentence(found, first),
        then=(sure_words.middle(found, first), *(sure_words.sentence(found, other) for other in others)),
        names=Names(**{each: plain(getattr(names, each)) for each in ("prepared_for", "prepared_by", "note")}),
        made=_said(today),
        valid=_said(today + datetime.timedelta(days=valid_days)),
        sentence="".join(words + entry for words, entry in case_sentence(done, span)),
        pictures=_pictures(result, comparison, found),
        figures=_figures(found),
        assumptions=_assumptions(result, found),
        workings=workings(done, comparison),
        remarks=remarks(result),
        preface=preface(),
        cautions=cautions(done.case, place="report"),
        not_counted=NOT_COUNTED,
        rests_on=(
            f"Baseline: {comparison.baseline_label}. Prices: {done.case.prices.dated}.",
            f"Weather: {done.year.name}{', an invented climate' if done.year.invented else ''}; {done.year.source}.",
            f"Leakage: {span.words}.",
            *sure_words.rests_on(found),
            method_error_in_words(done, comparison),
        ),
        statement=STATEMENT,
    )


def plain(typed: str) -> str:
    """Typed words without control and direction marks, on one line, no longer than a name may be."""
    kept = "".join(" " if letter in "\r\n\t" else letter for letter in typed)
    kept = "".join(letter for letter in kept if unicodedata.category(letter) not in ("Cc", "Cf", "Cs", "Co", "Cn"))
    return " ".join(kept.split())[:LONGEST_NAME].strip()


def _said(day: datetime.date) -> str:
    return f"{day.day} {MONTH_NAMES[day.month - 1]} {day.year}"


def _pictures(result: Result, comparison: Comparison, found: Tried) -> tuple[Picture, ...]:
    account = ledger.fresh_air(result.estimate, comparison)
    drawn = Picture(title=RIBBON_TITLE, svg=ribbon(account, look="light", embed_font=False), words=in_words(account))
    first = found.against[0]
    return drawn, _range(found), _course(found, first)


def _range(found: Tried) -> Picture:
    rows = [paper_charts.Span(words=each.words, **_ends(each.sure.net_saving)) for each in found.against]
    title = "Saved a year: eight of ten cases tried lie within each bar"
    said = "; ".join(
        f"against {row.words} {cash.money(row.low, found.currency)} to {cash.money(row.high, found.currency)}, "
        f"middle {cash.money(row.middle, found.currency)}"
        for row in rows
    )
    return Picture(
        title=title, svg=paper_charts.spans(rows, found.currency, title=title, words=said), words=f"{title}: {said}."
    )


def _ends(spread: Spread) -> dict[str, float]:
    return {"low": spread.low, "middle": spread.middle, "high": spread.high}


def _course(found: Tried, against: Against) -> Picture:
    cases, life = against.sure.cases, against.sure.years
    years = np.arange(0.0, np.ceil(life) + 1.0)
    money = np.sort(cases.net_saving[:, None] * years - cases.net_capital[:, None], axis=0)
    count = money.shape[0]
    low, middle, high = (money[min(int(np.ceil(share * count)) - 1, count - 1)] for share in (LOW, 0.5, HIGH))
    currency = found.currency
    title = f"What comes back of the extra cost against {against.words}, at the prices of today"
    said = (
        f"after {figures.years(float(years[-1]))} between {cash.money(float(low[-1]), currency)} and "
        f"{cash.money(float(high[-1]), currency)}, middle {cash.money(float(middle[-1]), currency)}"
    )
    svg = paper_charts.course(paper_charts.Course(low=low, middle=middle, high=high), currency, title=title, words=said)
    return Picture(title=title, svg=svg, words=f"{title}: {said}.")


def _figures(found: Tried) -> Rows:
    currency, life = found.currency, found.place.case.worth.life

    def row(words: str, read: Callable[[Sure], Spread], said: Callable[[float], str]) -> tuple[str, ...]:
        return (words, *(_range_said(read(each.sure), said) for each in found.against))

    return Rows(
        caption="Every figure with its range",
        head=("figure", *(f"against {each.words}" for each in found.against)),
        rows=(
            row("net saving a year", lambda sure: sure.net_saving, lambda value: cash.money(value, currency)),
            row("heat saved a year", lambda sure: sure.heat_saved, figures.energy),
            row("carbon saved a year", lambda sure: sure.carbon_saving, figures.carbon),
            row("simple payback", lambda sure: sure.payback, lambda value: cash.payback(value, life=life)),
        ),
        note=f"Eight of ten of {found.against[0].sure.count:,} cases tried with the ranges of the inputs lie between.",
        words=frozenset(range(len(found.against) + 1)),
    )


def _range_said(spread: Spread, said: Callable[[float], str]) -> str:
    low, middle, high = said(spread.low), said(spread.middle), said(spread.high)
    if low == middle == high:
        return low
    if all(" " not in each for each in (low, middle, high)):
        return f"{low} to {high}, middle {middle}"
    return "; ".join(dict.fromkeys((low, middle, high)))


def _assumptions(result: Result, found: Tried) -> Rows:
    done = result.estimate
    paths = (*_ASSUMED, *(f"options.{found.option}.{path}" for path in _OF_OPTION))
    rows = []
    for path in paths:
        origin = done.origins[path]
        unit = cash.price_unit(origin.unit, done.case.prices.currency)
        said = origin.value if isinstance(origin.value, str) else figures.quantity(float(origin.value), unit)
        if path == "leakage.value":
            said = leakage_span(done.case).stated
        rows.append((origin.meaning, said, origin.tag, origin.source))
    return Rows(
        caption="What it rests on",
        head=("input", "value", "rests on", "source"),
        rows=tuple(rows),
        note=f"Prices: {done.case.prices.dated}.",
        words=frozenset({0, 2, 3}),
    )
