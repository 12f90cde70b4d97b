"""How are the workings shown: grouped under the headline figures that people ask about, each as a small table?"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from estimator.report.rows import Rows
from estimator.report.working import Working

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


def headline(found: Sequence[Working]) -> str:
    """A headline figure and its result, to stand above its working."""
    first = found[0]
    if ":" not in first.key:
        return f"{first.title}: {first.result}"
    return "; ".join(f"{each.title.lower() if number else each.title}: {each.result}"
                     for number, each in enumerate(found))  # fmt: skip


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
