"""How is a field declared, once, so that everything else can be read from it?

A field of a noun is written ``Annotated[float, Quantity("m²", 15, 1000, "heated floor area", ...)]``. From that one
line come validation, the widget, the table header, the case-file comment, the schema and the documentation.
"""

from __future__ import annotations

import dataclasses
import types
import typing
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cache
from typing import Any, Literal

from annotated_types import Ge, GroupedMetadata, Le, Len

Tag = Literal["measured", "typical", "assumed"]
TAGS: tuple[Tag, ...] = typing.get_args(Tag)

STRICT: dict[str, Any] = {"extra": "forbid", "strict": True, "allow_inf_nan": False}
"""How a file is read: unknown keys, text for numbers and infinite numbers are refused."""


@dataclass(frozen=True, slots=True)
class Quantity(GroupedMetadata):
    """A number a person can enter.

    unit: as written beside the number; "" for a pure number.
    low, high: limits, both allowed.
    meaning: what it is, in one plain line.
    tag, source: what the *default* rests on.
    derived: where the default is worked out from other entries, how, in words.
    plain: the question in a homeowner's words, where the trade's term needs a twin.
    """

    unit: str
    low: float
    high: float
    meaning: str
    tag: Tag = "typical"
    source: str = ""
    derived: str = ""
    plain: str = ""

    def __iter__(self) -> Iterator[object]:
        yield Ge(self.low)
        yield Le(self.high)


@dataclass(frozen=True, slots=True)
class Entry(GroupedMetadata):
    """A choice, a yes/no or a short text a person can enter; same fields as `Quantity` where they apply."""

    meaning: str
    tag: Tag = "typical"
    source: str = ""
    derived: str = ""
    plain: str = ""
    longest: int | None = None

    def __iter__(self) -> Iterator[object]:
        if self.longest is not None:
            yield Len(0, self.longest)


@dataclass(frozen=True, slots=True)
class Declared:
    """One field as found on its noun."""

    path: str
    name: str
    kind: type
    spec: Quantity | Entry
    default: Any
    choices: tuple[Any, ...] = field(default=())
    optional: bool = False

    @property
    def unit(self) -> str:
        """Unit as written beside the number; "" for a pure number and for what is no number."""
        return self.spec.unit if isinstance(self.spec, Quantity) else ""


def _without_none(hint: Any) -> tuple[Any, bool]:
    if typing.get_origin(hint) in (typing.Union, types.UnionType):
        rest = [part for part in typing.get_args(hint) if part is not type(None)]
        return (rest[0] if len(rest) == 1 else hint), len(rest) < len(typing.get_args(hint))
    return hint, False


def _default(item: dataclasses.Field[Any]) -> Any:
    if item.default is not dataclasses.MISSING:
        return item.default
    if item.default_factory is not dataclasses.MISSING:
        return item.default_factory()
    return None


@cache
def declared(noun: type, prefix: str = "") -> tuple[Declared, ...]:
    """Every declared field of a noun and of the nouns inside it, with dotted paths, in writing order."""
    hints = typing.get_type_hints(noun, include_extras=True)
    found: list[Declared] = []
    for item in dataclasses.fields(noun):
        hint = hints[item.name]
        path = f"{prefix}{item.name}"
        if dataclasses.is_dataclass(hint):
            found.extend(declared(typing.cast(type, hint), f"{path}."))
            continue
        spec = next(
            (extra for extra in getattr(hint, "__metadata__", ()) if isinstance(extra, Quantity | Entry)),
            None,
        )
        if spec is None:
            continue
        base, optional = _without_none(typing.get_args(hint)[0])
        choices = typing.get_args(base) if typing.get_origin(base) is Literal else ()
        kind = type(choices[0]) if choices else base
        found.append(Declared(path, item.name, kind, spec, _default(item), choices, optional))
    return tuple(found)
