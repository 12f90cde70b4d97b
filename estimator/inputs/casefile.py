"""How does a file or a plain dict become a case, or a list of everything that is wrong with it?

A case file is TOML, for hands, or JSON, for machines, with the same keys either way; its `version` is looked
at before anything else, and what is left out keeps its default. Reading goes from text to plain tree, newest
version, strict validation and checks between entries, and gathers the faults of all of them.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Mapping
from functools import cache
from typing import TYPE_CHECKING, Any, cast

from estimator.errors import Fault, InputFaults
from estimator.inputs import check
from estimator.inputs.case import CASE_VERSION, Case
from estimator.inputs.catalogue import option_kinds
from estimator.inputs.faults import (
    did_you_mean,
    listed,
    missing_entry,
    not_a_section,
    shown,
    unknown_key,
    why_not,
)
from estimator.inputs.places import Place, entry_at
from estimator.inputs.plaintext import as_json, branches, plain, text_of_file, tree_of_text
from estimator.inputs.quantity import TAGS
from estimator.inputs.writing import case_to_dict, case_to_toml

if TYPE_CHECKING:
    from pydantic import TypeAdapter
    from pydantic_core import ErrorDetails

__all__ = ["MIGRATIONS", "case_from_dict", "case_from_text", "case_to_dict", "case_to_toml", "read_case"]

Tree = dict[str, Any]

MIGRATIONS: dict[int, Callable[[Tree], Tree]] = {}
"""From each older version, a pure function on plain dicts that gives the next one."""


def read_case(path: str | os.PathLike[str]) -> Case:
    """The case in a TOML or JSON file; raises InputFaults with every fault found."""
    return case_from_text(text_of_file(path), name=str(path))


def case_from_text(text: str, *, name: str) -> Case:
    """The case in a text; `name` stands in messages and its ending (.toml, .json) tells the form.

    Raises InputFaults with every fault found.
    """
    return case_from_dict(tree_of_text(text, name=name))


def case_from_dict(tree: Mapping[str, Any]) -> Case:
    """The case in a plain dict of the form of a file; raises InputFaults with every fault found."""
    found: list[Fault] = []
    clean = newest(plain(tree, found))
    if isinstance(clean.get("tags"), dict):
        clean["tags"] = _flat(clean["tags"])
    unreadable = {fault.where for fault in found}
    case, refused, refused_paths = _validated(clean)
    found += refused
    if case is not None:
        found += check.faults(case, unreadable=unreadable | refused_paths)
    if found or case is None:
        raise InputFaults(found)
    return case


def newest(tree: Tree, *, migrations: Mapping[int, Callable[[Tree], Tree]] = MIGRATIONS) -> Tree:
    """The tree in this release's version, migrated step by step; raises InputFaults where its own is not known."""
    version = tree.get("version")
    right = f"write version = {CASE_VERSION} at the top of the file."
    if "version" not in tree:
        raise InputFaults([Fault("version", f"missing; {right}")])
    if type(version) is not int or version < 1:
        raise InputFaults([Fault("version", f"{shown(version)} is not a version; {right}")])
    if version > CASE_VERSION:
        newer = f"the file comes from a newer release; this one reads up to {CASE_VERSION}, not {shown(version)}"
        raise InputFaults([Fault("version", f"{newer}. Update the estimator to read it.")])
    while tree["version"] < CASE_VERSION:
        tree = migrations[tree["version"]](tree)
    return tree


def _flat(tags: Tree) -> Tree:
    """Tags by dotted path, also where TOML has read an unquoted dotted key as tables."""
    return {".".join(place): value for place, value in branches(tags)}


@cache
def _adapter() -> TypeAdapter[Case]:
    from pydantic import TypeAdapter  # here, since a case written in Python needs none of it

    return TypeAdapter(Case)


def _errors(tree: Tree) -> tuple[Case | None, list[ErrorDetails]]:
    from pydantic import ValidationError

    text = as_json(tree)  # since strict rules let a table become a noun only from JSON
    try:
        return _adapter().validate_json(text), []
    except ValidationError as error:
        return None, error.errors(include_url=False)


def _validated(tree: Tree) -> tuple[Case | None, list[Fault], set[str]]:
    """The case, its faults and their paths; with faults, the case that is left without those entries."""
    case, errors = _errors(tree)
    found: list[Fault] = []
    unreadable: set[Place] = set()
    order = {place: number for number, place in enumerate(_every_place(tree))}
    errors.sort(key=lambda error: _in_file_order(order, error["loc"]))
    for error in errors:
        place = tuple(str(key) for key in error["loc"])
        fault, meant = _fault(error, place, _value_at(tree, place))
        found.append(fault)
        if meant:
            unreadable.add((*place[:-1], meant))
    if errors:
        unreadable |= {_left_out(tree, tuple(str(key) for key in error["loc"])) for error in errors}
        case, _ = _errors(tree)
    return case, found, {".".join(place) for place in unreadable}


def _left_out(tree: Tree, place: Place) -> Place:
    """The place of an entry at fault, now left out so that the rest can be judged; a kind gets a stand-in."""
    section = cast(Tree, _value_at(tree, place[:-1]))
    section.pop(place[-1], None)
    if place[:1] != ("options",):
        return place
    if place[2:] == ("kind",):
        section["kind"] = option_kinds()[0]
    return place if len(place) > 2 else ("options",)


def _every_place(tree: Tree, place: Place = ()) -> Iterator[Place]:
    for key, value in tree.items():
        yield (*place, key)
        if isinstance(value, dict):
            yield from _every_place(value, (*place, key))


def _in_file_order(order: Mapping[Place, int], place: tuple[Any, ...]) -> int:
    return order[place] if place in order else order.get(place[:-1], 0)


def _fault(error: ErrorDetails, place: Place, value: Any) -> tuple[Fault, str | None]:
    """One refusal in plain words, and the key that a misspelt one probably means."""
    kind, above, key = error["type"], place[:-1], place[-1]
    item = entry_at(above, key)
    meant = None
    if kind == "unexpected_keyword_argument":
        said, meant = unknown_key(above, key, value)
    elif kind == "missing":
        said = missing_entry(above, key, option_kinds())
    elif kind in ("dataclass_type", "dict_type"):
        said = not_a_section(place, value)
    elif above == ("tags",):
        said = f"{shown(value)} is no tag; write one of {listed(TAGS)}.{did_you_mean(value, TAGS)}"
    else:
        said = f"{shown(value)} cannot stand here ({error['msg']})."
        said = (why_not(item, value) if item else None) or said
    return Fault(".".join(place), said), meant


def _value_at(tree: Any, place: Place) -> Any:
    for key in place:
        tree = tree.get(key) if isinstance(tree, Mapping) else None
    return tree
