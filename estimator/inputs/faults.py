"""What is wrong with an entry, said so that its writer can mend it?

Every sentence about an entry is made here, whoever found the fault: what was given, what is allowed and what
the entry means, what to do. Values may be columns (n, 1) of many homes: then the rows at fault are counted
and the first is named.
"""

from __future__ import annotations

import datetime
import difflib
import math
from collections.abc import Iterable
from typing import Any

import numpy as np

from estimator.inputs.places import (
    ANY_NAME,
    Place,
    entry_at,
    every_key,
    general,
    heading,
    keys_at,
    places_of,
)
from estimator.inputs.quantity import Declared, Quantity

LONGEST_SHOWN = 60  # characters of a text that a sentence repeats
LARGEST_PLAIN = 1e15  # numbers beyond are shown by their size alone
_UNIT_WORDS = {
    "money": "in the case's currency",
    "as named": "in the unit its measure names",
    "p/kWh": "hundredths (pence, cents) per kWh",
    "p/day": "hundredths (pence, cents) per day",
    "1/year": "a year",
    "money/year": "a year, in the case's currency",
    "%/year": "% a year",
    "money/m²": "per m², in the case's currency",
}


def number_words(value: float) -> str:
    """A number as people write it: thousands marked, no idle zeros."""
    if isinstance(value, int) and abs(value) >= LARGEST_PLAIN:
        return f"{'about -' if value < 0 else 'about '}1e{math.floor(math.log10(abs(value)))}"
    return f"{value:,.10g}"


def with_unit(words: str, unit: str) -> str:
    """A number in words with its unit in words."""
    return f"{words} {_UNIT_WORDS.get(unit, unit)}".rstrip()


def shown(value: Any) -> str:
    """A value as its writer would recognise it."""
    if value is None:
        return "nothing (null)"
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, int | float):
        return number_words(value)
    if isinstance(value, str):
        whole = value if len(value) <= LONGEST_SHOWN else value[:LONGEST_SHOWN] + "…"
        return f'"{whole}"'
    if isinstance(value, dict):
        return "a table"
    if isinstance(value, list | tuple):
        return "a list"
    if isinstance(value, datetime.date | datetime.time):
        return f"the date or time {value}"
    return f"a value of type {type(value).__name__}"


def listed(words: Iterable[Any]) -> str:
    """Choices side by side, texts in quotes."""
    return ", ".join(shown(word) for word in words)


def nearest(word: str, words: Iterable[str]) -> str | None:
    """The most similar of some words, blanks, hyphens and capitals aside; None where none is near."""

    def bare(text: str) -> str:
        return text.lower().replace("-", "_").replace(" ", "_")

    known = {bare(other): other for other in words}
    close = difflib.get_close_matches(bare(word), known, n=1, cutoff=0.6)
    return known[close[0]] if close else None


def did_you_mean(word: Any, words: Iterable[str]) -> str:
    """A question with the most similar of some words, with a leading blank; empty where none is near."""
    near = nearest(word, words) if isinstance(word, str) else None
    return f" Did you mean {shown(near)}?" if near is not None else ""


def limits(spec: Quantity) -> str:
    """Both limits of a quantity and its unit."""
    return with_unit(f"{number_words(spec.low)} to {number_words(spec.high)}", spec.unit)


def allowed(item: Declared) -> str:
    """What an entry may be: its limits and unit, its choices, or its length."""
    if isinstance(item.spec, Quantity):
        return f"a {'whole ' if item.kind is int else ''}number from {limits(item.spec)}"
    if item.choices:
        return ("one of " if len(item.choices) > 1 else "") + listed(item.choices)
    return "text in quotes" + (f" of at most {item.spec.longest} characters" if item.spec.longest else "")


def origin(item: Declared) -> str:
    """How an entry left out comes by its value."""
    taken = item.spec.derived.startswith(("the row", "the table"))
    return f"{'taken' if taken else 'worked out'} from {item.spec.derived}"


def without_the_line(item: Declared) -> str:
    """What holds where an entry is left out."""
    if item.optional:
        return f"without the line it is {origin(item)}"
    if item.default is None:
        return "it cannot be left out"
    if isinstance(item.spec, Quantity):
        return f"without the line it is {with_unit(number_words(item.default), item.unit)}"
    return f"without the line it is {shown(item.default)}"


def rows_at_fault(bad: Any) -> str:
    """Which rows of a column are at fault, with a leading blank; empty for a single case."""
    column = np.ravel(bad)
    if column.size < 2:
        return ""
    return f" in {int(column.sum())} of {column.size} rows (first: row {int(column.argmax()) + 1})"


def why_not(item: Declared, given: Any) -> str | None:
    """Why a value cannot stand in an entry, as a sentence; None where it can."""
    problem, hint = _problem(item, given)
    if problem is None:
        return None
    legal = f"allowed is {allowed(item)} ({item.spec.meaning})"
    return f"{problem}: {legal}.{hint} Correct it; {without_the_line(item)}."


def _problem(item: Declared, given: Any) -> tuple[str | None, str]:
    if isinstance(given, np.ndarray) and given.ndim:
        return _column_problem(item, given)
    if isinstance(given, np.generic):
        given = given.item()
    if given is None:
        return (None, "") if item.optional else ("nothing (null) is given", "")
    if item.choices:
        if type(given) is item.kind and given in item.choices:
            return None, ""
        return f"{shown(given)} is not known here", did_you_mean(given, [str(word) for word in item.choices])
    if isinstance(item.spec, Quantity):
        return _number_problem(item.spec, item.kind, given)
    return _text_problem(item, given)


def _column_problem(item: Declared, given: Any) -> tuple[str | None, str]:
    problems = [_problem(item, value) for value in given.ravel().tolist()]
    bad = np.array([problem is not None for problem, _ in problems])
    if not bad.any():
        return None, ""
    problem, hint = problems[int(bad.argmax())]
    return f"{problem}{rows_at_fault(bad)}", hint


def _number_problem(spec: Quantity, kind: type, given: Any) -> tuple[str | None, str]:
    if isinstance(given, bool) or not isinstance(given, int | float):
        return f"{shown(given)} is not a number", _number_hint(given)
    if isinstance(given, float) and not math.isfinite(given):
        return f"{given} is not a finite number", ""
    if kind is int and not isinstance(given, int):
        whole = f" Write it without a decimal point: {int(given)}." if given.is_integer() else ""
        return f"{given} is not a whole number", whole
    if given < spec.low:
        return f"{with_unit(number_words(given), spec.unit)} is too small", ""
    if given > spec.high:
        return f"{with_unit(number_words(given), spec.unit)} is too large", ""
    return None, ""


def _number_hint(given: Any) -> str:
    if not isinstance(given, str):
        return ""
    try:
        float(given)
    except ValueError:
        return " Write the number alone, with a decimal point, without unit and quotes." if given[:1].isdigit() else ""
    return " Write it without quotes."


def _text_problem(item: Declared, given: Any) -> tuple[str | None, str]:
    if not isinstance(given, str):
        return f"{shown(given)} is not text", " Write it in quotes." if not isinstance(given, dict | list) else ""
    longest = getattr(item.spec, "longest", None)
    if longest is not None and len(given) > longest:
        return f"a text of {len(given)} characters is too long", ""
    return None, ""


def unknown_key(place: Place, key: str, value: Any = None) -> tuple[str, str | None]:
    """The sentence for a key that no section knows there, and the legal key it probably stands for."""
    here = keys_at(place)
    near = nearest(key, here)
    said = f'"{key}" is not known {"under " if place else "at "}{heading(place)}.'
    if not place and isinstance(value, dict) and "kind" in value:
        return f"{said} An option stands under [options.{key}].", "options"
    elsewhere = [_beside(place, other) for other in places_of(key) if other != general(place)]
    if elsewhere:
        said += f" It stands under {' and '.join(elsewhere)}."
    if near:
        said += f' Did you mean "{near}"?'
    elif not elsewhere and (far := nearest(key, every_key())):
        said += f' Did you mean "{far}" under {" or ".join(_beside(place, other) for other in places_of(far))}?'
    elif not elsewhere:
        said += f" Known here: {', '.join(here)}."
    return f"{said} Correct or delete the line.", near


def _beside(place: Place, other: Place) -> str:
    """Heading of another section, with the name of the option at hand where both stand in one."""
    named = place[1] if place[:1] == ("options",) and len(place) > 1 else ANY_NAME
    return heading(tuple(named if key == ANY_NAME else key for key in other))


def not_a_section(place: Place, given: Any) -> str:
    """The sentence for a value that stands where a table of keys belongs."""
    if place[-1:] == ("options",):
        return f"{shown(given)} is given; write one table for each option, [options.{ANY_NAME}]."
    if place == ("tags",):
        return f'{shown(given)} is given; write a table [tags] of lines such as "home.floor_area" = "measured".'
    keys = keys_at(place)
    return f"{shown(given)} is given; write a table {heading(place)} with keys such as {', '.join(keys[:3])}."


def missing_entry(place: Place, key: str, rows: Iterable[str]) -> str:
    """The sentence for an entry that cannot be left out and must name one of some rows."""
    item = entry_at(place, key)
    meaning = f" ({item.spec.meaning})" if item else ""
    return f"missing under {heading(place)}; write {key} = and one of {listed(rows)}{meaning}."
