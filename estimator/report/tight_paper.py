"""What stands on the installer's one page about a leaky house: verdict, cautions, worth, routes, figures used?

Content only; `tight_page` sets it as text, as PDF and as HTML. No part of it can be left out by whoever makes it.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from dataclasses import dataclass

from estimator.cautions import Caution, cautions, preface
from estimator.report import figures
from estimator.report.cash import price_unit
from estimator.report.document import STATEMENT
from estimator.report.leakage_said import span_words
from estimator.report.leave import Names, dated, plain_names
from estimator.report.rows import Rows
from estimator.report.tight import Tightness, explained, verdict
from estimator.report.tight_routes import first_step, four_routes, short_of_air, targets
from estimator.report.tight_sheets import house
from estimator.survey.fill import Filled

_USED = {
    "home": ("floor_area", "envelope_area", "volume", "fabric_loss", "indoor_temperature"),
    "leakage": ("exponent", "model", "shelter"),
    "heating": ("fuel", "efficiency"),
    "prices": ("fuel", "electricity"),
    "sealing": ("target", "tightest", "step_low", "step", "step_high"),
    "worth": ("life",),
}

QUESTION = "Is this house tight enough for heat recovery?"


@dataclass(frozen=True, slots=True, kw_only=True)
class TightPaper:
    """Everything on the one page, as text."""

    question: str
    answer: str
    names: Names
    made: str
    valid: str
    preface: str
    cautions: tuple[Caution, ...]
    then: tuple[str, ...]
    house: Rows
    routes: tuple[Rows, ...]
    targets: Rows
    used: Rows
    rests_on: tuple[str, ...]
    statement: str


def tight_paper(found: Tightness, survey: Filled, *, names: Names, today: datetime.date) -> TightPaper:
    """The page of one case; survey: the case with the origin of every entry."""
    said, both = verdict(found), (found.baseline, found.today)
    made, valid = dated(today)
    told = (said.then, said.today, *map(first_step, both), *map(short_of_air, both))
    return TightPaper(
        question=QUESTION,
        answer=said.sentence,
        names=plain_names(names),
        made=made,
        valid=valid,
        preface=preface(),
        cautions=cautions(found.case, place="tight"),
        then=tuple(filter(None, told)),
        house=house(found),
        routes=tuple(four_routes(found, one) for one in both),
        targets=targets(found),
        used=_used(found, survey),
        rests_on=(explained(), f"The range is that of the home's leakage: {found.span.source}."),
        statement=STATEMENT,
    )


def _used(found: Tightness, survey: Filled) -> Rows:
    """The figures used in words, each with what it rests on."""
    span, year = found.span, found.place.year
    return Rows(
        caption="Figures used",
        head=("of", "figure, and what it rests on"),
        rows=(
            ("leakage", f"{span_words(span)} at 50 Pa ({span.tag}: {span.source})"),
            *((group, _entries(survey, group, names, found.currency)) for group, names in _USED.items()),
            ("weather", f"{year.name}{', an invented climate' if year.invented else ''}, {year.source}"),
            ("tariff", f"{found.case.prices.dated}; money is in {found.currency}"),
        ),
        words=frozenset({0, 1}),
    )


def _entries(survey: Filled, group: str, names: Iterable[str], currency: str) -> str:
    """The entries of a section in one line, each with its tag."""
    said = []
    for name in names:
        origin = survey.origins[f"{group}.{name}"]
        value = figures.number(origin.value) if isinstance(origin.value, int | float) else str(origin.value)
        shown = figures.joined(value, price_unit(origin.unit, currency))
        said.append(f"{name.replace('_', ' ')} {shown} ({origin.tag})")
    return ", ".join(said)
