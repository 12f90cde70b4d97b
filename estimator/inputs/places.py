"""Where in a case does each entry stand, and which keys are legal there?

A place is the tuple of keys that lead to a section: () is the top of the file, ("home",) a section, and
("options", "recovery", "flows") a section of one option, whose own name is free.
"""

from __future__ import annotations

import dataclasses
import typing
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

from estimator.inputs.case import Case
from estimator.inputs.option import Option
from estimator.inputs.quantity import Declared, declared

Place = tuple[str, ...]
ANY_NAME = "NAME"
"""Stands for the name of an option where no particular one is meant."""


@cache
def sections() -> dict[Place, type]:
    """Noun of every section in writing order, options under `ANY_NAME`."""
    return dict(_sections(Case, ()))


def _sections(noun: type, place: Place) -> Iterator[tuple[Place, type]]:
    yield place, noun
    hints = typing.get_type_hints(noun)
    for item in dataclasses.fields(noun):
        hint = hints[item.name]
        if dataclasses.is_dataclass(hint):
            yield from _sections(typing.cast(type, hint), (*place, item.name))
        elif hint == dict[str, Option]:
            yield from _sections(Option, (*place, item.name, ANY_NAME))


def general(place: Place) -> Place:
    """The place with the name of its option replaced by `ANY_NAME`."""
    return ("options", ANY_NAME, *place[2:]) if place[:1] == ("options",) and len(place) > 1 else place


def keys_at(place: Place) -> tuple[str, ...]:
    """Keys that may stand in a section; none where names are free (options, tags) or no section is."""
    noun = sections().get(general(place))
    return tuple(item.name for item in dataclasses.fields(noun)) if noun else ()


def places_of(key: str) -> tuple[Place, ...]:
    """Every section in which a key may stand."""
    return tuple(place for place in sections() if key in keys_at(place))


def every_key() -> tuple[str, ...]:
    """All keys of all sections, each once."""
    return tuple(dict.fromkeys(key for place in sections() for key in keys_at(place)))


def own_entries(noun: type) -> tuple[Declared, ...]:
    """Declared entries of a noun itself, not of the nouns inside it."""
    return tuple(item for item in declared(noun) if "." not in item.path)


def entry_at(place: Place, key: str) -> Declared | None:
    """The declaration of one entry, or None where no entry of that name stands."""
    noun = sections().get(general(place))
    return next((item for item in own_entries(noun) if item.name == key), None) if noun else None


def heading(place: Place) -> str:
    """How a person finds the section in a file."""
    return f"[{'.'.join(place)}]" if place else "the top of the file"


def every_entry(case: Case) -> Iterator[tuple[str, Declared]]:
    """Dotted path and declaration of every entry of a case, its options' included, in writing order."""
    for item in declared(Case):
        yield item.path, item
    for name in case.options:
        for item in declared(Option):
            yield f"options.{name}.{item.path}", item


def value_at(noun: Any, path: str) -> Any:
    """The value at a dotted path of a case, or of a noun inside one."""
    for key in path.split("."):
        noun = noun[key] if isinstance(noun, dict) else getattr(noun, key)
    return noun


def with_values(noun: Any, values: Mapping[str, Any]) -> Any:
    """The noun with the entries at the given dotted paths replaced."""
    here = {path: value for path, value in values.items() if "." not in path}
    below: dict[str, dict[str, Any]] = {}
    for path, value in values.items():
        key, _, rest = path.partition(".")
        if rest:
            below.setdefault(key, {})[rest] = value
    for key, inside in below.items():
        here[key] = with_values(noun[key] if isinstance(noun, dict) else getattr(noun, key), inside)
    return {**noun, **here} if isinstance(noun, dict) else dataclasses.replace(noun, **here)


def with_value(noun: Any, path: str, value: Any) -> Any:
    """The noun with the entry at a dotted path replaced."""
    return with_values(noun, {path: value})


def first_sentence(noun: type) -> str:
    """What a section is about: the first sentence of its docstring."""
    return (noun.__doc__ or "").split("\n", 1)[0].split(". ", 1)[0].rstrip(".")
