"""How is a case written down, so that it reads back the same?

Entries left out (None) are left out of the file: it says what was entered, and the rest is worked out anew.
"""

from __future__ import annotations

import dataclasses
import math
import re
from collections.abc import Iterator, Mapping
from typing import Any

import numpy as np

from estimator.inputs.case import Case
from estimator.inputs.option import Option

_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")
_ESCAPES = {'"': '\\"', "\\": "\\\\", "\b": "\\b", "\t": "\\t", "\n": "\\n", "\f": "\\f", "\r": "\\r"}


def case_to_dict(case: Case, *, only_changes: bool = False) -> dict[str, Any]:
    """The case as a plain dict of the form of a file.

    only_changes: leave out what equals the default; `version` always stands, all options once one differs.
    """
    tree = _tree(case)
    if not only_changes:
        return tree
    usual = _tree(Case())
    changes = {key: _changes(value, usual[key]) for key, value in tree.items() if key not in ("version", "options")}
    written = {
        "version": case.version,
        **{key: value for key, value in changes.items() if value not in (None, {})},
    }
    if tree["options"] != usual["options"] or list(tree["options"]) != list(usual["options"]):
        bare = _tree(Option(kind=""))
        written["options"] = {
            name: {"kind": option["kind"], **_changes({**option, "kind": ""}, bare)}
            for name, option in tree["options"].items()
        }
    return written


def _tree(noun: Any) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for item in dataclasses.fields(noun):
        value = getattr(noun, item.name)
        if dataclasses.is_dataclass(value):
            found[item.name] = _tree(value)
        elif isinstance(value, Mapping):
            found[item.name] = {
                key: _tree(inner) if dataclasses.is_dataclass(inner) else inner for key, inner in value.items()
            }
        elif isinstance(value, np.ndarray) and value.size > 1:
            raise TypeError(f"{item.name} holds {value.size} homes; a case file holds one")
        elif value is not None:
            found[item.name] = value.item() if isinstance(value, np.generic | np.ndarray) else value
    return found


def _changes(value: Any, usual: Any) -> Any:
    if isinstance(value, dict) and isinstance(usual, dict):
        inner = {key: _changes(part, usual.get(key)) for key, part in value.items()}
        return {key: part for key, part in inner.items() if part not in (None, {})}
    return None if value == usual and type(value) is type(usual) else value


def case_to_toml(case: Case, *, only_changes: bool = False) -> str:
    """The case as the text of a TOML file, without comments; arguments as for `case_to_dict`."""
    return "\n".join(_lines(case_to_dict(case, only_changes=only_changes), ())).strip() + "\n"


def _lines(table: Mapping[str, Any], place: tuple[str, ...]) -> Iterator[str]:
    entries = {key: value for key, value in table.items() if not isinstance(value, Mapping)}
    if place and (entries or not table):
        yield f"\n{toml_heading(place)}"
    for key, value in entries.items():
        yield f"{toml_key(key)} = {toml_value(value)}"
    for key, value in table.items():
        if isinstance(value, Mapping):
            yield from _lines(value, (*place, key))


def toml_heading(place: tuple[str, ...]) -> str:
    """Heading of a table in TOML."""
    return f"[{'.'.join(toml_key(key) for key in place)}]"


def toml_key(key: str) -> str:
    """A key in TOML, in quotes where it needs them."""
    return key if _BARE_KEY.fullmatch(key) else toml_text(key)


def toml_value(value: Any) -> str:
    """A text or finite number in TOML; raises TypeError for anything else."""
    if isinstance(value, str):
        return toml_text(value)
    if isinstance(value, bool) or not isinstance(value, int | float) or not math.isfinite(value):
        raise TypeError(f"a case holds texts and finite numbers, not {value!r}")
    return repr(int(value) if isinstance(value, int) else float(value))  # without the names of array libraries


def toml_text(text: str) -> str:
    """A text in TOML quotes."""
    return '"' + "".join(_ESCAPES.get(character, _safe(character)) for character in text) + '"'


def _safe(character: str) -> str:
    return f"\\u{ord(character):04X}" if ord(character) < 0x20 or ord(character) == 0x7F else character
