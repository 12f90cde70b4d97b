"""How does a case read as one plain sentence?"""

from __future__ import annotations

from html import escape

from estimator.estimate import Estimate
from estimator.inputs.catalogue import is_electric, is_heat_pump
from estimator.leak_span import LeakageSpan
from estimator.report import cash, figures, leakage_said


def case_sentence(done: Estimate, span: LeakageSpan, *, plain: bool = False) -> tuple[tuple[str, str], ...]:
    """The sentence in pieces: words, and the entry that stands after them ("" where none does).

    plain: the leakage in words, for those to whom its unit says nothing.
    """
    case, home = done.case, done.case.home
    rests = {"measured": "tested", "typical": "typical of its age", "assumed": "entered, without a test said"}[span.tag]
    tested = figures.quantity(span.middle, leakage_said.LEAKAGE_UNIT)
    leaks = tested if span.tested else f"an estimated {leakage_said.span_words(span)}"
    price = cash.unit_price(case.prices.fuel, case.prices.currency)
    weather = f"{done.year.name}, an invented climate" if done.year.invented else done.year.name
    return (
        ("A home of ", figures.quantity(home.floor_area, "m²")),
        (" with ", f"{home.bedrooms} bedroom{'' if home.bedrooms == 1 else 's'}"),
        (" in the weather of ", weather),
        (", leaking ", _PLAINLY[span.tag] if plain else f"{leaks} at 50 Pa ({rests})"),
        (", kept at ", figures.temperature(home.indoor_temperature)),
        (", heated by ", f"{_heat(case.heating.fuel)} at {price}"),
        (", ventilated today by ", case.options[case.today].kind),
        (".", ""),
    )


_PLAINLY = {
    "measured": "as much as its test found",
    "typical": "as homes of its age do (not tested)",
    "assumed": "as entered (no test said)",
}


def _heat(fuel: str) -> str:
    """What heats the home and what is paid for: a heat pump has no price of its own."""
    if is_heat_pump(fuel):
        return "a heat pump, electricity"
    return "electricity" if is_electric(fuel) else fuel


def as_html(pieces: tuple[tuple[str, str], ...]) -> str:
    """The sentence with its entries marked."""
    return "".join(f"{escape(words)}<b>{escape(entry)}</b>" if entry else escape(words) for words, entry in pieces)
