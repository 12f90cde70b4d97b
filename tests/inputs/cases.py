"""What may stand in a case: random legal cases, and the texts that tests begin with?"""

from __future__ import annotations

import dataclasses
from typing import Any

import pytest
from hypothesis import strategies as st

from estimator.errors import InputFaults
from estimator.inputs.case import Case
from estimator.inputs.casefile import case_from_dict, case_from_text
from estimator.inputs.catalogue import fuels, option_kinds
from estimator.inputs.option import Option
from estimator.inputs.places import every_entry, with_value
from estimator.inputs.quantity import TAGS, Declared, Quantity

WORDS = st.text(st.characters(exclude_categories=("C", "Zl", "Zp")), max_size=12)
NAMES = st.text(st.characters(exclude_categories=("C", "Z"), exclude_characters="."), min_size=1, max_size=8)
ROWS = {"kind": option_kinds(), "heating.fuel": fuels()}


def legal_value(item: Declared) -> st.SearchStrategy[Any]:
    """Values within the limits of an entry, those left out included where it may be."""
    values: st.SearchStrategy[Any]
    if item.path in ROWS:
        values = st.sampled_from(ROWS[item.path])
    elif item.choices:
        values = st.sampled_from(item.choices)
    elif isinstance(item.spec, Quantity) and item.kind is int:
        values = st.integers(int(item.spec.low), int(item.spec.high))
    elif isinstance(item.spec, Quantity):
        values = st.floats(item.spec.low, item.spec.high)
    else:
        longest = min(12, item.spec.longest or 12)
        values = WORDS.filter(lambda text: len(text) <= longest)
    return st.none() | values if item.optional else values


@st.composite
def legal_cases(draw: st.DrawFn) -> Case:
    """Cases whose entries are each within its limits; together they may contradict each other."""
    names = draw(st.lists(NAMES, min_size=1, max_size=3, unique=True))
    case = Case(options={name: Option(kind="heat recovery", label=name) for name in names})
    entries = [(path, item) for path, item in every_entry(case) if path not in ("version", "baseline", "today")]
    for path, item in draw(st.lists(st.sampled_from(entries), max_size=12, unique_by=lambda pair: pair[0])):
        case = with_value(case, path, draw(legal_value(item)))
    for path in ("baseline", "today"):
        case = with_value(case, path, draw(st.sampled_from(names)))
    tagged = draw(st.lists(st.sampled_from([path for path, _ in entries]), max_size=3))
    return dataclasses.replace(case, tags={path: draw(st.sampled_from(TAGS)) for path in tagged})


def said_of(given: str | dict[str, Any], *, name: str = "case.toml") -> dict[str, str]:
    """Sentences by place for a case that must be refused, each place said once."""
    with pytest.raises(InputFaults) as refused:
        case_from_text(given, name=name) if isinstance(given, str) else case_from_dict(given)
    faults = refused.value.faults
    said = {fault.where: fault.what for fault in faults}
    assert len(said) == len(faults), faults
    return said
