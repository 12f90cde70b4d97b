"""What can hurt somebody or harm this house, and who must be asked first?

One table, `data/cautions.toml`, serves dashboard, command line and documents. A row is shown wherever its trigger
holds; no setting hides it, and what is not known counts as if it held.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

import numpy as np

from estimator.inputs.case import Case
from estimator.inputs.catalogue import option_fact, table
from estimator.inputs.option import Option

EVERYWHERE, PREFACE = "everywhere", "preface"
SOLID_FUEL_WORDS = ("wood", "pellet", "log", "coal", "coke", "peat", "solid", "biomass")


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """One caution in words.

    key, trigger: its name in the table, and that of the condition under which it is shown.
    when: that condition in words.
    title, words: heading, and what to do.
    ask: who must be asked.
    places: pages by the short name of their question, and documents, where it stands.
    """

    key: str
    trigger: str
    when: str
    title: str
    words: str
    ask: str
    places: tuple[str, ...]


def preface() -> str:
    """The sentence that stands above all cautions."""
    return str(table("cautions")[PREFACE])


@cache
def every_caution() -> tuple[Caution, ...]:
    """All rows of the table, in the order in which they are shown."""
    rows = table("cautions")
    everywhere = tuple(rows[EVERYWHERE])
    return tuple(
        Caution(
            key=key,
            trigger=row["trigger"],
            when=row["when"],
            title=row["title"],
            words=row["words"],
            ask=row["ask"],
            places=everywhere + tuple(row["also"]),
        )
        for key, row in rows.items()
        if isinstance(row, Mapping)
    )


def cautions(case: Case, *, place: str | None = None) -> tuple[Caution, ...]:
    """Every caution whose trigger holds for a filled case, most dangerous first.

    place: only those that stand on this page or in this document; None for all. ValueError for a place that the table
    does not know, so that a misspelt one shows nobody an empty list.

    For a column of homes a caution is shown where it concerns any of them. An entry still open counts as not known.
    """
    rows = every_caution()
    if place is not None and not any(place in row.places for row in rows):
        known = sorted({known for row in rows for known in row.places})
        raise ValueError(f"no caution stands at {place!r}; places are {', '.join(known)}")
    return tuple(row for row in rows if TRIGGERS[row.trigger](case) and (place is None or place in row.places))


def always(case: Case) -> bool:
    """Holds for every home."""
    return True


def flue_and_uneven_air(case: Case) -> bool:
    """A flue that takes its air from the room, or nobody has looked, and an option whose air flows differ or may."""
    return _flue_possible(case) and any(_uneven(option) for option in case.options.values())


def radon_possible(case: Case) -> bool:
    """A radon area, or nobody has looked."""
    return _any_but(case.home.radon_area, "no")


def old_boards_possible(case: Case) -> bool:
    """Any age but the youngest: "very low energy" describes a rebuilding and may hide older boards."""
    return _any_but(case.home.age, "2011 or later")


def work_in_lofts(case: Case) -> bool:
    """A unit, or warm ducts, outside the heated rooms."""
    return any(_outside(option) for option in case.options.values())


def air_from_lofts(case: Case) -> bool:
    """Air that may come from a loft: supply without extract, or a unit or ducts standing there."""
    return any(_outside(option) or _supplies_only(option) for option in case.options.values())


def is_flat(case: Case) -> bool:
    """A flat."""
    return _any(case.home.form, "flat")


TRIGGERS: Mapping[str, Callable[[Case], bool]] = {
    trigger.__name__: trigger
    for trigger in (
        always,
        flue_and_uneven_air,
        radon_possible,
        old_boards_possible,
        work_in_lofts,
        air_from_lofts,
        is_flat,
    )
}


def _any(value: Any, word: str) -> bool:
    return bool(np.any(np.asarray(value) == word))


def _any_but(value: Any, word: str) -> bool:
    return bool(np.any(np.asarray(value) != word))


def _flue_possible(case: Case) -> bool:
    fuels = np.ravel(np.asarray(case.heating.fuel)).tolist()
    solid = any(word in str(fuel).casefold() for fuel in fuels for word in SOLID_FUEL_WORDS)
    return solid or _any_but(case.home.open_flue, "no")


def _uneven(option: Option) -> bool:
    both = option_fact(option.kind, "supplies") and option_fact(option.kind, "extracts")
    flows = option.flows
    return (
        not both
        or option.unit.frost is None
        or _any(option.unit.frost, "throttle")
        or not _all_equal(flows.imbalance, 0.0)
        or not _all_equal(flows.supply, flows.extract)
    )


def _all_equal(one: Any, other: Any) -> bool:
    """Whether two entries are given and the same in every home."""
    return one is not None and other is not None and bool(np.all(np.asarray(one) == np.asarray(other)))


def _outside(option: Option) -> bool:
    ducts = option.ducts
    if ducts.standing is None or _any(ducts.standing, "outside"):
        return True
    return not (_all_equal(ducts.supply, 0.0) and _all_equal(ducts.extract, 0.0))


def _supplies_only(option: Option) -> bool:
    return bool(option_fact(option.kind, "supplies")) and not option_fact(option.kind, "extracts")
