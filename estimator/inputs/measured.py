"""Which entries of a commissioning cannot be, or contradict each other?"""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date

from estimator.inputs.commissioned import Commissioned
from estimator.inputs.faults import shown
from estimator.inputs.room_lines import room_flows

_FORM = re.compile(r"\d{4}-\d{2}-\d{2}")

Said = tuple[str, str]
"""Name of the entry at fault, and what is wrong with it."""


def calendar_day(text: str) -> date:
    """The day written as year, month, day with hyphens. Raises ValueError, in words."""
    if not _FORM.fullmatch(text):
        raise ValueError(f"{shown(text)} is no date. Write year, month and day as in 2026-11-25.")
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise ValueError(f"{shown(text)} is no day of the calendar. Correct month or day.") from None


def commissioning_faults(given: Commissioned) -> Iterator[Said]:
    """What is wrong with the entries of a commissioning, each by the name of its entry."""
    for name in ("fed", "drawn"):
        try:
            room_flows(getattr(given, name))
        except ValueError as unreadable:
            yield name, str(unreadable)
    for name in ("date", "leakage_date"):
        try:
            if text := getattr(given, name):
                calendar_day(text)
        except ValueError as impossible:
            yield name, str(impossible)
    if given.leakage_value is not None and given.leakage_measure is None:
        yield "leakage_measure", "missing: a leakage is given; name what the test measured, q50, n50 or q4."
    if given.leakage_value is None and given.leakage_measure is not None:
        yield "leakage_value", f"missing: the measure is {shown(given.leakage_measure)}; enter its figure or delete it."


def anything(given: Commissioned) -> bool:
    """Whether anything was measured."""
    return bool(given.fed or given.drawn or given.power is not None or given.leakage_value is not None)
