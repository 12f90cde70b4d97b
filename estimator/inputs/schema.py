"""What may another program write into a case file?

A JSON Schema (2020-12) of the case: what validation enforces, with unit, meaning, tag and source of every
entry added from the same declarations, under keys that begin with `x-`.
"""

from __future__ import annotations

from typing import Any

from estimator.inputs.case import CASE_VERSION, Case
from estimator.inputs.faults import origin
from estimator.inputs.places import first_sentence, own_entries, sections
from estimator.inputs.quantity import Declared, Quantity


def case_schema() -> dict[str, Any]:
    """JSON Schema of a case file: numbers with `x-unit`, entries with `x-tag`, `x-source` or `x-default`."""
    from pydantic import TypeAdapter  # here, since only files and schemas need it

    schema = TypeAdapter(Case).json_schema()
    parts = {**schema["$defs"], Case.__name__: schema}
    for noun in dict.fromkeys(sections().values()):
        part = parts[noun.__name__]
        part["description"] = f"{first_sentence(noun)}."
        for item in own_entries(noun):
            described = part["properties"][item.name]
            described.pop("title", None)
            described.update(_facts(item))
    schema["properties"]["tags"]["description"] = "what entries rest on, by dotted path"
    schema["properties"]["options"]["description"] = "the ways of ventilating to compare, by name"
    schema["required"] = ["version"]
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": f"Case, version {CASE_VERSION}",
        **{key: value for key, value in schema.items() if key != "title"},
    }


def _facts(item: Declared) -> dict[str, Any]:
    facts: dict[str, Any] = {"description": item.spec.meaning}
    if isinstance(item.spec, Quantity):
        facts |= {"x-unit": item.unit, "x-low": item.spec.low, "x-high": item.spec.high}
    if item.optional:
        return facts | {"x-default": origin(item)}
    if item.default is None:
        return facts
    return facts | {"x-tag": item.spec.tag, "x-source": item.spec.source}
