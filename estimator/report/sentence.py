"""How does a case read as one plain sentence?"""

from __future__ import annotations

from html import escape

from estimator.estimate import Estimate
from estimator.inputs.catalogue import is_electric, is_heat_pump
from estimator.leak_span import LeakageSpan
from estimator.report import cash, figures


def case_sentence(done: Estimate, span: LeakageSpan) -> tuple[tuple[str, str], ...]:
    """The sentence in pieces: words, and the entry that stands after them ("" where none does)."""
    case, home = done.case, done.case.home
    rests = {"measured": "tested", "typical": "typical of its age", "assumed": "entered, without a test said"}[span.tag]
    leaks = figures.quantity(span.middle, "m³/(h m²)") if span.tested else f"an estimated {span.ends}"
    price = cash.unit_price(case.prices.fuel, case.prices.currency)
    weather = f"{done.year.name}, an invented climate" if done.year.invented else done.year.name
    return (
        ("A home of ", figures.quantity(home.floor_area, "m²")),
        (" with ", f"{home.bedrooms} bedroom{'' if home.bedrooms == 1 else 's'}"),
        (" in the weather of ", weather),
        (", leaking ", f"{leaks} at 50 Pa ({rests})"),
        (", kept at ", figures.temperature(home.indoor_temperature)),
        (", heated by ", f"{_heat(case.heating.fuel)} at {price}"),
        (", ventilated today by ", case.options[case.today].kind),
        (".", ""),
    )


def _heat(fuel: str) -> str:
    """What heats the home and what is paid for: a heat pump has no price of its own."""
    if is_heat_pump(fuel):
        return "a heat pump, electricity"
    return "electricity" if is_electric(fuel) else fuel


def as_html(pieces: tuple[tuple[str, str], ...]) -> str:
    """The sentence with its entries marked."""
    return "".join(f"{escape(words)}<b>{escape(entry)}</b>" if entry else escape(words) for words, entry in pieces)
