"""How does a file become a plain tree of tables, or a plain statement of why it cannot?

Nothing here knows what a case is: only text, TOML, JSON, and the limits of a file that a person would write.
"""

from __future__ import annotations

import json
import os
import re
import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from estimator.errors import Fault, InputFaults

LARGEST_FILE = 1_000_000  # bytes
LONGEST_LINE = 1_000  # characters of a TOML line; keys of thousands of parts take the reader minutes
DEEPEST = 8  # tables inside tables; a case has four
LARGEST_INTEGER = 10**300  # beyond, no float holds it

_UTF16_MARKS = (b"\xff\xfe", b"\xfe\xff")
_TOML_PLACE = re.compile(r" \(at (?:line (?P<line>\d+), column (?P<column>\d+)|end of document)\)$")
_TOML_HINTS = (
    (re.compile(r"Expected newline"), "Write one entry a line, numbers with a decimal point and nothing behind them."),
    (re.compile(r"Expected '='|Invalid statement"), "Write each line as key = value, or start a remark with #."),
    (re.compile(r"Invalid value"), "Write a number, or text in quotes."),
    (re.compile(r"Cannot (overwrite|declare)"), "This key or table stands twice; keep one."),
    (re.compile(r"Illegal character"), "A quotation mark is missing, or the line holds a control character."),
    (re.compile(r"Unclosed|Expected"), "A bracket or quotation mark is opened and not closed."),
)


class Pairs(dict[str, Any]):
    """A JSON object that remembers which of its keys stood more than once."""

    repeated: tuple[str, ...] = ()


def text_of_file(path: str | os.PathLike[str]) -> str:
    """Text of a UTF-8 file of at most `LARGEST_FILE` bytes.

    Raises InputFaults where the file is missing, a folder, unreadable, too large or in another encoding.
    """
    name = str(path)
    file = Path(path)
    if file.is_dir():
        raise _refused(name, "this is a folder; name the case file inside it.")
    if not file.exists():
        raise _refused(name, "there is no such file; check its name and folder.")
    if not file.is_file():
        raise _refused(name, "this is not an ordinary file; name a case file.")
    try:
        with file.open("rb") as stream:
            raw = stream.read(LARGEST_FILE + 1)
    except OSError as error:
        raise _refused(name, f"the file cannot be read: {error.strerror}.") from error
    return text_of_bytes(raw, name=name)


def text_of_bytes(raw: bytes, *, name: str) -> str:
    """Text of the bytes of a file, without a UTF-8 byte order mark; raises InputFaults as for a file."""
    if len(raw) > LARGEST_FILE:
        raise _refused(name, f"the file is larger than {LARGEST_FILE:,} bytes; a case has a few thousand.")
    if raw.startswith(_UTF16_MARKS):
        raise _refused(name, "the file is saved as UTF-16; save it again with the encoding UTF-8.")
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw[: error.start].count(b"\n") + 1
        where = f"{name}, line {line}"
        raise _refused(where, "a character is not UTF-8; save the file again with the encoding UTF-8.") from error


def tree_of_text(text: str, *, name: str) -> dict[str, Any]:
    """Tables and values of a TOML or JSON text, told apart by the ending of its name or its first character.

    Raises InputFaults with line and column where the text is empty or not well formed.
    """
    text = text.removeprefix("\ufeff")
    if len(text.encode("utf-8", "surrogatepass")) > LARGEST_FILE:
        raise _refused(name, f"the text is larger than {LARGEST_FILE:,} bytes; a case has a few thousand.")
    if not text.strip():
        raise _refused(name, "the file is empty; print a commented case to start from.")
    ending = Path(name).suffix.lower()
    is_json = ending == ".json" or (ending != ".toml" and text.lstrip().startswith("{"))
    try:
        tree = _json_tree(text, name) if is_json else _toml_tree(text, name)
    except RecursionError as error:
        raise _refused(name, "brackets stand inside brackets too often; a case has four levels.") from error
    if not isinstance(tree, dict):
        raise _refused(name, "a case begins with { and holds keys and values; this file holds something else.")
    return tree


def _json_tree(text: str, name: str) -> Any:
    def pairs(items: list[tuple[str, Any]]) -> Pairs:
        table = Pairs(items)
        if len(table) < len(items):
            keys = [key for key, _ in items]
            table.repeated = tuple(key for key in table if keys.count(key) > 1)
        return table

    try:
        return json.loads(text, object_pairs_hook=pairs)
    except json.JSONDecodeError as error:
        where = f"{name}, line {error.lineno}, column {error.colno}"
        raise _refused(where, f"this is not well-formed JSON ({error.msg}).{_line(text, error.lineno)}") from error
    except ValueError as error:
        raise _refused(name, "a number has too many digits to be read.") from error


def _toml_tree(text: str, name: str) -> dict[str, Any]:
    lengths = [len(line) for line in text.split("\n")]
    if max(lengths) > LONGEST_LINE:
        where = f"{name}, line {lengths.index(max(lengths)) + 1}"
        raise _refused(where, f"the line is longer than {LONGEST_LINE:,} characters; write one entry a line.")
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise _toml_fault(text, name, str(error)) from error
    except ValueError as error:
        raise _refused(name, "a number has too many digits to be read.") from error


def _toml_fault(text: str, name: str, message: str) -> InputFaults:
    place = _TOML_PLACE.search(message)
    reason = message[: place.start()] if place else message
    hint = next((words for pattern, words in _TOML_HINTS if pattern.search(reason)), "Correct this line.")
    if place is None or place["line"] is None:
        return _refused(f"{name}, at its end", f"this is not well-formed TOML. {hint}")
    line, column = int(place["line"]), int(place["column"])
    return _refused(f"{name}, line {line}, column {column}", f"this is not well-formed TOML. {hint}{_line(text, line)}")


def _line(text: str, number: int) -> str:
    lines = text.split("\n")
    line = lines[number - 1].strip() if number <= len(lines) else ""
    return f" The line reads: {line[:80]}" if line else ""


def _refused(where: str, what: str) -> InputFaults:
    return InputFaults([Fault(where, what)])


def plain(tree: Mapping[Any, Any], found: list[Fault], *, path: str = "", depth: int = 1) -> dict[str, Any]:
    """A copy of a tree in plain dicts with text keys; what no case may hold is left out, and `found` says so."""
    clean: dict[str, Any] = {}
    for key in getattr(tree, "repeated", ()):
        found.append(Fault(f"{path}{key}", "this key stands more than once; keep one."))
    for key, value in tree.items():
        if not isinstance(key, str):
            found.append(Fault(f"{path}{key}", "a key must be text."))
        elif _broken(key) or _broken(value):
            shown = key.encode("utf-8", "replace").decode()
            found.append(Fault(f"{path}{shown}", "this holds half a character; type it again."))
        elif isinstance(value, Mapping) and depth >= DEEPEST:
            found.append(
                Fault(f"{path}{key}", f"tables stand {DEEPEST} deep inside each other; a case has four levels.")
            )
        elif isinstance(value, Mapping):
            clean[key] = plain(value, found, path=f"{path}{key}.", depth=depth + 1)
        else:
            clean[key] = value
    return clean


def _broken(value: Any) -> bool:
    return isinstance(value, str) and any("\ud800" <= character <= "\udfff" for character in value)


def as_json(tree: Mapping[str, Any]) -> str:
    """A plain tree as JSON; lists, dates and boundless numbers become an empty list, which no entry takes."""
    return json.dumps(_standing(tree))


def _standing(value: Any) -> Any:
    if isinstance(value, Mapping):
        return {key: _standing(inner) for key, inner in value.items()}
    if isinstance(value, int) and not isinstance(value, bool):
        return value if abs(value) < LARGEST_INTEGER else []
    return value if value is None or isinstance(value, str | float | bool) else []


def branches(tree: Mapping[str, Any], place: tuple[str, ...] = ()) -> Iterator[tuple[tuple[str, ...], Any]]:
    """Every value of a tree that is not itself a filled table, with its place."""
    for key, value in tree.items():
        if isinstance(value, Mapping) and value:
            yield from branches(value, (*place, key))
        else:
            yield (*place, key), value
