"""What does the installer's page say about a leaky house: the verdict in words, and the figures it rests on?"""

from __future__ import annotations

from collections.abc import Iterable
from textwrap import wrap

from estimator.cautions import cautions, preface
from estimator.report import figures
from estimator.report.cash import price_unit
from estimator.report.document import STATEMENT
from estimator.report.leakage_said import span_words
from estimator.report.rows import Rows
from estimator.report.tight import Tightness, explained, verdict
from estimator.report.tight_routes import first_step, four_routes, short_of_air, targets
from estimator.report.tight_sheets import house
from estimator.survey.fill import Filled

_WIDTH = 96
_SHOWN = {
    "home": ("floor_area", "envelope_area", "volume", "fabric_loss", "indoor_temperature"),
    "leakage": ("exponent", "model", "shelter"),
    "heating": ("fuel", "efficiency"),
    "prices": ("fuel", "electricity"),
    "sealing": ("target", "tightest", "step_low", "step", "step_high"),
    "worth": ("life",),
}

TITLE = "Is this house tight enough for heat recovery?"


def page(found: Tightness, survey: Filled) -> str:
    """One page of plain text, cautions before money; survey: the case with the origin of every entry."""
    said, span = verdict(found), found.span
    held = cautions(found.case, place="tight")
    parts = [
        TITLE,
        "=" * len(TITLE),
        "",
        *_paragraphs(said.sentence),
        "",
        *_paragraphs(f"Before money. {preface()}"),
        *(line for one in held for line in _item(f"{one.title}. {one.words} Ask: {one.ask}.")),
        "",
        *_paragraphs(said.then, said.today),
        *_paragraphs(first_step(found.baseline), first_step(found.today)),
        *_paragraphs(*filter(None, (short_of_air(found.baseline), short_of_air(found.today)))),
        "",
        *_written(house(found)),
        *_written(four_routes(found, found.baseline)),
        *_written(four_routes(found, found.today)),
        *_written(targets(found)),
        "Figures used",
        *_item(f"leakage: {span_words(span)} at 50 Pa ({span.tag}: {span.source})"),
        *(line for group, paths in _SHOWN.items() for line in _item(_used(survey, group, paths, found.currency))),
        *_item(f"weather: {found.place.year.name}, {found.place.year.source}"),
        *_item(f"prices: {found.case.prices.dated}; money is in {found.currency}"),
        "",
        *_paragraphs(explained(), STATEMENT),
    ]
    return "\n".join(parts) + "\n"


def _used(survey: Filled, group: str, names: Iterable[str], currency: str) -> str:
    """The entries of a section in one line, each with what it rests on."""
    said = []
    for name in names:
        origin = survey.origins[f"{group}.{name}"]
        value = figures.number(origin.value) if isinstance(origin.value, int | float) else str(origin.value)
        shown = figures.joined(value, price_unit(origin.unit, currency))
        said.append(f"{name.replace('_', ' ')} {shown} ({origin.tag})")
    return f"{group}: {', '.join(said)}"


def _written(sheet: Rows) -> Iterable[str]:
    """A table as lines, every figure with its heading."""
    yield sheet.caption
    for name, *entries in sheet.rows:
        said = "; ".join(f"{head}: {entry}" for head, entry in zip(sheet.head[1:], entries, strict=True))
        yield from _item(f"{name}. {said}.")
    yield ""


def _item(text: str) -> list[str]:
    return wrap(text, _WIDTH, initial_indent="- ", subsequent_indent="  ", break_long_words=False)


def _paragraphs(*texts: str) -> list[str]:
    return [line for text in texts for line in wrap(text, _WIDTH, break_long_words=False)]
