"""Which columns may a table of homes have, and how is each headed?"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from estimator.errors import Fault, InputFaults
from estimator.inputs.case import Case
from estimator.inputs.faults import listed, nearest, shown
from estimator.inputs.places import every_entry
from estimator.inputs.quantity import Declared

ID = "id"
MOST_COLUMNS = 300
LONGEST_NAMED = 40  # characters of a stranger's heading that a message repeats
_SECTIONS = ("home", "leakage", "air", "heating", "prices", "worth", "sealing", "options")
# One of each holds for the whole table: the case file beside it says which.
_ONE_FOR_ALL = (
    *("prices.currency", "prices.dated", "prices.tariff.", "prices.carbon_", "prices.export"),
    *("prices.electricity_growth", "prices.fuel_growth", "heating.pump.", "heating.second."),
    *("worth.horizon", "worth.discount", "worth.terms", "worth.inflation"),
)
_LABEL = "label"


@dataclass(frozen=True, slots=True, kw_only=True)
class Columns:
    """Columns of a table by what they are: entries of a case by heading, the column of names, and strangers."""

    entries: Mapping[str, tuple[str, Declared]]
    id: str | None
    strangers: tuple[str, ...]
    written: tuple[str, ...]

    @property
    def names(self) -> tuple[str, ...]:
        """Headings of the columns that are read."""
        return (*self.entries, *(() if self.id is None else (self.id,)))


def heading(path: str, item: Declared) -> str:
    """How the column of an entry is headed: its dotted path, and its unit in brackets where it has one."""
    return f"{path} [{item.unit}]" if item.unit else path


def known_headings(case: Case) -> dict[str, tuple[str, Declared]]:
    """Every heading that a table may have beside a case, with the dotted path and the declaration of its entry."""
    return {
        heading(path, item): (path, item)
        for path, item in every_entry(case)
        if path.split(".")[0] in _SECTIONS and not path.startswith(_ONE_FOR_ALL) and item.name != _LABEL
    }


def read_columns(headings: Iterable[str], case: Case) -> Columns:
    """What each column of a table is; raises InputFaults where a heading is a field's but wrongly written.

    Columns that are nobody's field (a name, an address) are strangers: told, and never carried into the results.
    """
    known = known_headings(case)
    written = [str(name) for name in headings]  # letter by letter, since columns are found again by them
    found, strangers, faults = {}, [], []
    if len(written) > MOST_COLUMNS:
        faults.append(Fault("columns", f"{len(written)} are given; at most {MOST_COLUMNS} are read."))
    for place, name in enumerate(written):
        where = f"column {place + 1}"
        if name in written[:place]:
            faults.append(Fault(where, f"{shown(name)} stands twice; delete one of the two."))
        elif name in known:
            found[name] = known[name]
        elif name.lower() == ID:
            continue
        elif said := _mistaken(name, known):
            faults.append(Fault(where, said))
        else:
            strangers.append(name[:LONGEST_NAMED])
    if not found and not faults:
        first = ", ".join(shown(name) for name in list(known)[:3])
        said = f"no column is a field of a home. Headings look like {first}; stock --template prints them all."
        faults.append(Fault("columns", said))
    if faults:
        raise InputFaults(faults)
    names = [name for name in written if name.lower() == ID]
    return Columns(entries=found, id=names[0] if names else None, strangers=tuple(strangers), written=tuple(written))


def _mistaken(name: str, known: Mapping[str, tuple[str, Declared]]) -> str | None:
    """Why a heading that means a field is not one; None for a stranger."""
    path, _, unit = (part.strip() for part in name.partition("["))
    right = {where: head for head, (where, _) in known.items()}
    if path in right:
        given = f"[{unit[:LONGEST_NAMED]}" if unit else "no unit"
        return f"{shown(name)} has {given}; its heading is {shown(right[path])}. Convert the column if need be."
    section = path.split(".")[0]
    if "." not in path or section not in _SECTIONS:
        return None
    if path.startswith(_ONE_FOR_ALL):
        return f"{shown(name)} holds for the whole table; delete the column and enter it in the case file beside it."
    close = nearest(path, right)
    meant = f" Did you mean {shown(right[close])}?" if close else f" Sections are {listed(_SECTIONS)}."
    return f"{shown(name)} is no field of a table of homes.{meant}"
