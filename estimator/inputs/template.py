"""What does a case file look like with every entry explained?

The commented file is made from the declarations of the entries, so it cannot fall behind them. Entries with
a default stand filled in, others commented out: it reads back to the case it was made from.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Mapping
from importlib import resources
from typing import Any

from estimator.inputs.case import Case
from estimator.inputs.catalogue import fuels, option_kinds
from estimator.inputs.faults import allowed, limits, listed, origin
from estimator.inputs.option import Option
from estimator.inputs.places import ANY_NAME, Place, first_sentence, general, own_entries, sections, value_at
from estimator.inputs.quantity import TAGS, Declared, Quantity
from estimator.inputs.writing import toml_heading, toml_key, toml_value

_WIDTH = 108  # characters of a comment line
_NOTHING_WORKED_OUT: Mapping[str, Any] = {}

_ROWS = {
    (("options", ANY_NAME), "kind"): option_kinds,
    (("heating",), "fuel"): fuels,
    (("heating", "second"), "fuel"): fuels,
}
"""Entries whose choices are the rows of a table."""

_HEAD = """\
A case for the estimator: a home, its air, its heating, prices, and the ways of ventilating it to compare.
Text stands in quotes, numbers without quotes and units, with a decimal point; behind # stands a remark.
An entry behind # is left out and worked out from the others: take the # away and write a value to set it.
An entry you change counts as measured unless [tags] says otherwise."""
_OPTIONS = """\
The ways of ventilating to compare, each in a table [options.NAME] under a name of your own.
The entries baseline and today at the top name two of them. One is explained in full; it stands for all."""
_TAGS = "What your entries rest on, where it is not a measurement, by dotted path in quotes: {tags}."
_TAG_SHOWN = '# "home.floor_area" = "assumed"'


def example_text() -> str:
    """Text of the example case file that comes with the package: an invented home."""
    return resources.files("estimator").joinpath("data", "example.toml").read_text(encoding="utf-8")


def commented_case(case: Case | None = None, *, worked_out: Mapping[str, Any] = _NOTHING_WORKED_OUT) -> str:
    """TOML text of a case, the default one unless another is given, with every entry explained.

    worked_out: by dotted path, values to show behind # for entries left out; the place stays empty without.
    """
    case = case or Case()
    lines = [*_remark(_HEAD), *_entries((), Case, case, worked_out)]
    for place, noun in sections().items():
        if place and ANY_NAME not in place:
            lines += [*_opening(place, noun), *_entries(place, noun, value_at(case, ".".join(place)), worked_out)]
    lines += ["", *_remark(_OPTIONS)]
    explained = _explained(case)
    for name, option in case.options.items():
        lines += list(_option(name, option, worked_out, in_full=name == explained))
    lines += ["", "[tags]", *_remark(_TAGS.format(tags=listed(TAGS)))]
    lines += [f"{toml_key(path)} = {toml_value(tag)}" for path, tag in case.tags.items()] or [_TAG_SHOWN]
    return "\n".join(lines) + "\n"


def _explained(case: Case) -> str:
    """The option that is neither the baseline nor in place today: the one the case is about."""
    others = [name for name in case.options if name not in (case.baseline, case.today)]
    return (others or list(case.options))[0]


def _option(name: str, option: Option, worked_out: Mapping[str, Any], *, in_full: bool) -> Iterator[str]:
    for section, noun in sections().items():
        if section[:2] != ("options", ANY_NAME):
            continue
        place = ("options", name, *section[2:])
        inside = getattr(option, section[2]) if section[2:] else option
        if in_full:
            yield from _opening(place, noun)
            yield from _entries(place, noun, inside, worked_out)
        else:
            given = [(item, getattr(inside, item.name)) for item in own_entries(noun)]
            lines = [f"{item.name} = {toml_value(value)}" for item, value in given if value is not None]
            yield from ("", toml_heading(place), *lines) if lines else ()


def _opening(place: Place, noun: type) -> Iterator[str]:
    yield ""
    yield toml_heading(place)
    yield from _remark(f"{first_sentence(noun)}.")


def _entries(place: Place, noun: type, inside: Any, worked_out: Mapping[str, Any]) -> Iterator[str]:
    for item in own_entries(noun):
        value = getattr(inside, item.name)
        yield ""
        yield from _remark(f"{item.spec.meaning}\n{_facts(place, item)}")
        if value is not None:
            yield f"{item.name} = {toml_value(value)}"
        else:
            shown = worked_out.get(".".join((*place, item.name)))
            yield f"# {item.name} = {'' if shown is None else toml_value(_rough(shown))}".rstrip()


def _facts(place: Place, item: Declared) -> str:
    rows = _ROWS.get((general(place), item.name))
    if rows:
        facts = f"one of {listed(rows())}"
    elif isinstance(item.spec, Quantity):
        facts = f"{'whole number, ' if item.kind is int else ''}{limits(item.spec)}"
    else:
        facts = allowed(item)
    if item.optional:
        return f"{facts}; left out: {origin(item)}"
    if item.default is None or len(item.choices) == 1:
        return facts
    rests = f" ({item.spec.tag}: {item.spec.source})" if item.spec.source else ""
    return f"{facts}; default {toml_value(item.default)}{rests}"


def _rough(value: Any) -> Any:
    return float(f"{value:.4g}") if isinstance(value, float) else value


def _remark(text: str) -> Iterator[str]:
    for line in text.split("\n"):
        yield from (f"# {part}" for part in textwrap.wrap(line, _WIDTH, break_long_words=False, break_on_hyphens=False))
