"""What is a published check, and is its file in order?

One check is one file of `checks/`, in TOML, without code:

    group = "Air needed"                      what it supports
    title = "Whole-dwelling rate by bedrooms"
    source = "Approved Document F, volume 1"
    edition = "2021"
    locator = "table 1.3"
    sureness = "seen in a secondary text"     one of `SURENESS`
    function = "air.requirement.england_2021" inside the package; a constant will do
    pick = ["carbon", "value"]                optional: key, attribute, index or "method()" of the result
    reference = "evidence.heat_questions..."  optional: another method, held apart from the estimate, that is asked with
                                              the same inputs for the value to compare with
    note = "..."                              optional, for the reader

    [[case]]
    inputs = { floor_area = "77 m²", bedrooms = 3, people = 4, habitable_rooms = 5 }
    pick = 0                                  optional, in place of the check's own
    printed = "31 l/s"                        as printed: half of the last digit is the tolerance
    within = 1.0                              optional, wider, in the printed unit, and then
    why = "..."                               the reason

Beside a `reference`, `printed` is the unit alone, and every case says how far the two methods may part, and why.
Inputs are the function's arguments by name: a bare number, an amount with its unit, words, a list, or a table:
`{ repeat = "7.5 °C", times = 48 }` for an array, and `{ from = "air.infiltration.Setting", storeys = 1 }` for what
another function (or constant) of the package returns, itself with its arguments and, where needed, `pick`.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from importlib import import_module, resources
from pathlib import Path
from typing import Any

from estimator.errors import Fault, InputFaults
from estimator.evidence.amounts import UNITS, half_last_digit, is_amount, number_and_unit

SURENESS = (
    "seen in the primary text",
    "seen in a secondary text",
    "from memory",
    "common practice, no source",
    "arithmetic pin",
    "worked out by another method",
)
Steps = tuple[str | int, ...]
_WORDS = ("group", "title", "source", "edition", "locator", "sureness", "function")
_FIELDS = {*_WORDS, "pick", "reference", "note", "case"}
_CASE_FIELDS = {"inputs", "pick", "printed", "within", "why"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One line of a published table."""

    number: int
    inputs: Mapping[str, Any]
    pick: Steps
    printed: str
    within: float | None = None
    why: str = ""

    @property
    def tolerance(self) -> float:
        """In the printed unit."""
        return half_last_digit(self.printed) if self.within is None else self.within


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """One published table, equation or example; fields as in the file."""

    file: str
    group: str
    title: str
    source: str
    edition: str
    locator: str
    sureness: str
    function: str
    reference: str
    note: str
    cases: tuple[Case, ...]


def named(path: str) -> Any:
    """What a dotted path inside the package names."""
    module, _, name = path.rpartition(".")
    return getattr(import_module(f"estimator.{module}" if module else "estimator"), name)


def checks(folder: Path | None = None) -> tuple[Check, ...]:
    """All checks of a folder, the package's own unless given, by file name; InputFaults with every fault."""
    place = resources.files("estimator.evidence").joinpath("checks") if folder is None else folder
    files = sorted((file for file in place.iterdir() if file.name.endswith(".toml")), key=lambda file: file.name)
    found: list[Check] = []
    faults: list[Fault] = []
    for file in files:
        try:
            content = tomllib.loads(file.read_text(encoding="utf-8"))
        except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
            faults.append(Fault(file.name, f"this is not TOML: {error}."))
            continue
        wrong = list(_faults(file.name, content))
        faults.extend(wrong)
        if not wrong:
            found.append(_check(file.name, content))
    if faults:
        raise InputFaults(faults)
    return tuple(found)


def _check(file: str, content: Mapping[str, Any]) -> Check:
    usual = content.get("pick", [])
    cases = tuple(
        Case(number=number, **{**case, "pick": steps(case.get("pick", usual))})
        for number, case in enumerate(content["case"], start=1)
    )
    return Check(
        file=file,
        reference=content.get("reference", ""),
        note=content.get("note", ""),
        cases=cases,
        **{word: content[word] for word in _WORDS},
    )


def steps(pick: Any) -> Steps:
    """`pick` as written, one step or several, as a tuple."""
    return tuple(pick) if isinstance(pick, list) else (pick,)


def _faults(file: str, content: Mapping[str, Any]) -> Iterator[Fault]:
    for name in sorted(content.keys() - _FIELDS):
        yield Fault(f"{file}, {name}", f"no such field; a check has {', '.join(sorted(_FIELDS))}.")
    for name in _WORDS:
        if not isinstance(content.get(name), str) or not content[name].strip():
            yield Fault(f"{file}, {name}", "must be given in words.")
    if content.get("sureness", SURENESS[0]) not in SURENESS:
        yield Fault(f"{file}, sureness", f"'{content['sureness']}' is none of: {'; '.join(SURENESS)}.")
    yield from _path_faults(f"{file}, function", content.get("function"))
    if "reference" in content:
        yield from _path_faults(f"{file}, reference", content["reference"])
    cases = content.get("case")
    if not isinstance(cases, list) or not cases:
        yield Fault(f"{file}, case", "at least one [[case]] must be given.")
        return
    for number, case in enumerate(cases, start=1):
        yield from _case_faults(f"{file}, case {number}", case, worked_out="reference" in content)


def _case_faults(where: str, case: Mapping[str, Any], *, worked_out: bool) -> Iterator[Fault]:
    for name in sorted(case.keys() - _CASE_FIELDS):
        yield Fault(f"{where}, {name}", f"no such field; a case has {', '.join(sorted(_CASE_FIELDS))}.")
    if not isinstance(case.get("inputs"), dict):
        yield Fault(f"{where}, inputs", "must be a table of arguments; {} for a constant.")
    else:
        yield from _input_faults(f"{where}, inputs", case["inputs"])
    printed = case.get("printed")
    if not isinstance(printed, str):
        yield Fault(f"{where}, printed", "must be text, the value as printed with its unit, such as '872.6 Pa'.")
        return
    if worked_out and printed not in UNITS:
        yield Fault(f"{where}, printed", f"beside a reference this is the unit alone, not '{printed}'.")
        return
    try:
        narrow = 0.0 if worked_out else half_last_digit(printed)
    except ValueError as error:
        yield Fault(f"{where}, printed", f"{error}.")
        return
    if not worked_out and "within" not in case and "why" not in case:
        return
    within, why = case.get("within"), case.get("why")
    if not isinstance(within, int | float) or within <= narrow:
        yield Fault(f"{where}, within", f"must be a number above half of the last printed digit, {narrow:g}.")
    if not isinstance(why, str) or not why.strip():
        yield Fault(f"{where}, why", "a wider tolerance must say why.")


def _input_faults(where: str, written: Any) -> Iterator[Fault]:
    if isinstance(written, dict):
        if "from" in written:
            yield from _path_faults(f"{where}.from", written["from"])
        for name, value in written.items():
            if name not in ("from", "pick"):
                yield from _input_faults(f"{where}.{name}", value)
    elif isinstance(written, list):
        for value in written:
            yield from _input_faults(where, value)
    elif isinstance(written, str) and is_amount(written):
        try:
            number_and_unit(written)
        except ValueError as error:
            yield Fault(where, f"{error}.")


def _path_faults(where: str, path: Any) -> Iterator[Fault]:
    try:
        named(path)
    except (ImportError, AttributeError, TypeError):
        yield Fault(where, f"the package has nothing named '{path}'; write it as 'air.moist.dew_point'.")
