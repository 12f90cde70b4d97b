"""How are the workings shown: grouped under the headline figures that people ask about, each as a small table?"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from types import MappingProxyType

from estimator.report.cash import money
from estimator.report.figures import borne, carbon, energy, quantity
from estimator.report.rows import Rows
from estimator.report.working import Working
from estimator.sure import Sure

HEADLINES: tuple[tuple[str, ...], ...] = (
    ("net_saving", "heat_bill_saving", "extra_ventilation_bill", "electricity"),
    ("heat_saved", "fuel_saved", "heating_demand"),
    ("carbon_saving",),
    ("simple_payback",),
    ("air_delivered",),
)
"""Headline figures in the order in which people ask, each with the workings it rests on."""


def grouped(found: Iterable[Working]) -> tuple[tuple[Working, ...], ...]:
    """The workings under their headlines, the headline's own first."""
    every = tuple(found)
    return tuple(
        tuple(each for name in names for each in every if each.key.partition(":")[0] == name) for names in HEADLINES
    )


_COARSE = 2  # significant figures where no range says how many are borne


def headline(found: Sequence[Working], sure: Sure, currency: str) -> str:
    """A headline figure and its result, no finer than its range bears, to stand above its exact working."""
    first = found[0]
    if ":" in first.key:
        flows = [quantity(each.value, "m³/h", figures=_COARSE) for each in found]
        titles = [each.title.lower() if number else each.title for number, each in enumerate(found)]
        return "; ".join(f"{title}: about {flow}" for title, flow in zip(titles, flows, strict=True))
    if first.key not in _SAID:
        return f"{first.title}: {first.result}"
    spread = getattr(sure, first.key)
    said = _SAID[first.key](borne(first.value, low=spread.low, high=spread.high), currency)
    return f"{first.title}: about {said}"


_SAID: Mapping[str, Callable[[float, str], str]] = MappingProxyType(
    {
        "net_saving": money,
        "heat_saved": lambda value, _: energy(value),
        "carbon_saving": lambda value, _: carbon(value),
    }
)
"""Headline figures that have a range of their own."""


def as_rows(found: Working) -> Rows:
    """The working as a table: what was put in, and what came out."""
    put = tuple((each.words, each.number, each.source) for each in found.put)
    return Rows(
        caption=found.title,
        note=found.formula[:1].upper() + found.formula[1:] + ".",
        head=("put in", "number", "where it comes from"),
        rows=(*put, ("comes to", found.result, "")),
        words=frozenset({0, 2}),
    )
