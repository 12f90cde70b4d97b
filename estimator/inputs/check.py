"""Do the entries of a case make sense, each within its limits and all of them together?

Only contradictions and impossibilities are faults; what is merely unusual is not. Values may be columns
(n, 1) of many homes: the same rules then count the rows at fault and name the first.
"""

from __future__ import annotations

import dataclasses
import unicodedata
from collections.abc import Callable, Collection, Iterator
from typing import Any

import numpy as np

from estimator.errors import Fault
from estimator.inputs import money_relations, relations
from estimator.inputs.case import Case
from estimator.inputs.catalogue import fuels, option_kinds
from estimator.inputs.faults import did_you_mean, listed, shown, why_not
from estimator.inputs.finding import Finding
from estimator.inputs.places import every_entry, value_at, with_value

MOST_OPTIONS = 20  # beside each other; more cannot be read
LONGEST_OPTION_NAME = 40  # characters

# Marks of reading direction (Unicode, bidirectional algorithm): what follows them reads as something else.
_DIRECTION = "\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
_OF_A_CURRENCY = ("Sc", "Lu", "Ll", "Lo")

Rule = Callable[[Case], Iterator[Finding]]


def faults(case: Case, *, unreadable: Collection[str] = ()) -> list[Fault]:
    """Every fault of a case, none where it can be estimated.

    unreadable: paths that a file gave but that could not be read; what depends on them is not judged.
    """
    found = [finding for finding in _option_names(case) if not _within(finding.where, unreadable)]
    usable = {name: option for name, option in case.options.items() if _usable(name)}
    case = dataclasses.replace(case, options=usable)  # dotted paths reach no option whose name has a full stop
    for finding in list(_each_entry(case)):
        found.append(finding)
        case = with_value(case, finding.where, _usual(case, finding.where))  # so that no rule trips over it
    silent = {*unreadable, *(finding.where for finding in found)}
    found += [
        finding
        for rule in RULES
        for finding in rule(case)
        if not any(_within(path, silent) for path in (finding.where, *finding.others))
    ]
    return [Fault(finding.where, finding.what) for finding in found]


def _usual(case: Case, path: str) -> Any:
    return next(item.default for known, item in every_entry(case) if known == path)


def _within(path: str, places: Collection[str]) -> bool:
    return any(path == place or path.startswith(f"{place}.") for place in places)


def _each_entry(case: Case) -> Iterator[Finding]:
    for path, item in every_entry(case):
        value = value_at(case, path)
        if said := why_not(item, value):
            yield Finding(path, said)
        elif isinstance(value, str) and any(map(_steers, value)):
            said = (
                f"a line break, control character or direction mark stands in it ({item.spec.meaning}); write one line."
            )
            yield Finding(path, said)


def _steers(character: str) -> bool:
    """Whether it would break the line, steer a terminal, or turn the words after it."""
    return character in _DIRECTION or unicodedata.category(character) in ("Cc", "Zl", "Zp")


def _currency(case: Case) -> Iterator[Finding]:
    sign = case.prices.currency
    if not all(letter in ". " or unicodedata.category(letter) in _OF_A_CURRENCY for letter in sign):
        said = f"{shown(sign)} is no sign or code of a currency; write letters or a sign alone, such as £, EUR or kr."
        yield Finding("prices.currency", said)


def _usable(name: str) -> bool:
    return bool(name.strip()) and len(name) <= LONGEST_OPTION_NAME and "." not in name and name.isprintable()


def _option_names(case: Case) -> Iterator[Finding]:
    for name in case.options:
        if not _usable(name):
            said = f"an option needs a name of 1 to {LONGEST_OPTION_NAME} plain characters without a full stop."
            yield Finding(f"options.{name}", said)
    if not case.options:
        said = "none is given; write at least one, or delete the heading to have the usual three."
        yield Finding("options", said)


def _number_of_options(case: Case) -> Iterator[Finding]:
    if len(case.options) > MOST_OPTIONS:
        said = f"{len(case.options)} options are given; at most {MOST_OPTIONS} can be compared at once."
        yield Finding("options", said)


def _chosen_options(case: Case) -> Iterator[Finding]:
    for path, name in (("baseline", case.baseline), ("today", case.today)):
        if name not in case.options:
            said = f"{shown(name)} is the name of no option; write one of {listed(case.options)}."
            yield Finding(path, said + did_you_mean(name, case.options), (f"options.{name}",))


def _labels(case: Case) -> Iterator[Finding]:
    taken: dict[str, str] = {}
    for name, option in case.options.items():
        label = option.label or name
        if label in taken:
            said = f"{shown(label)} is also the label of {taken[label]}; give each option a label of its own."
            yield Finding(f"options.{name}.label", said)
        taken.setdefault(label, name)


def _rows_of_tables(case: Case) -> Iterator[Finding]:
    for name, option in case.options.items():
        yield from _known(f"options.{name}.kind", option.kind, option_kinds(), "the catalogue of options")
    for path, fuel in (("heating.fuel", case.heating.fuel), ("heating.second.fuel", case.heating.second.fuel)):
        yield from _known(path, fuel, fuels(), "the table of fuels")


def _known(path: str, given: Any, rows: Collection[str], table: str) -> Iterator[Finding]:
    for word in dict.fromkeys(np.ravel(np.asarray(given, dtype=object)).tolist()):
        if isinstance(word, str) and word not in rows:
            said = f"{shown(word)} is no row of {table}; write one of {listed(rows)}."
            yield Finding(path, said + did_you_mean(word, rows))


def _tags(case: Case) -> Iterator[Finding]:
    paths = {path for path, _ in every_entry(case) if "." in path}
    for path, tag in case.tags.items():
        where = f"tags.{path}"
        if path not in paths:
            yield Finding(where, f"no entry stands at this path.{did_you_mean(path, paths)}", (path,))
        elif value_at(case, path) is None:
            yield Finding(where, "nothing is entered at this path; enter a value or delete the tag.", (path,))
        elif path == "leakage.value" and case.leakage.basis not in (None, tag):
            said = f"{shown(tag)} contradicts leakage.basis, which says {shown(case.leakage.basis)}; delete one."
            yield Finding(where, said, ("leakage.basis",))


RULES: tuple[Rule, ...] = (
    _number_of_options,
    _chosen_options,
    _labels,
    _rows_of_tables,
    _tags,
    _currency,
    *relations.RULES,
    *money_relations.RULES,
)
