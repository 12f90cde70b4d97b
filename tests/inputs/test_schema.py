"""Does the published schema say what validation enforces?"""

from __future__ import annotations

import json
from typing import Any

import jsonschema  # type: ignore[import-untyped]
import pytest
from hypothesis import given

from estimator.inputs.case import Case
from estimator.inputs.casefile import case_from_text, case_to_dict
from estimator.inputs.places import own_entries, sections
from estimator.inputs.quantity import Quantity
from estimator.inputs.schema import case_schema
from estimator.inputs.template import example_text
from tests.inputs.cases import legal_cases

SCHEMA = case_schema()
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)


def test_it_is_a_schema_and_plain_json() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    assert json.loads(json.dumps(SCHEMA, allow_nan=False)) == SCHEMA


@given(legal_cases())
def test_every_legal_case_satisfies_it(case: Case) -> None:
    assert list(VALIDATOR.iter_errors(case_to_dict(case))) == []


def test_the_example_satisfies_it() -> None:
    assert VALIDATOR.is_valid(case_to_dict(case_from_text(example_text(), name="x")))


@pytest.mark.parametrize(
    "tree",
    [
        {},
        {"version": 2},
        {"version": 1, "colour": "red"},
        {"version": 1, "home": {"floor_area": 5}},
        {"version": 1, "home": {"floor_area": "110"}},
        {"version": 1, "home": {"form": "semi"}},
        {"version": 1, "title": "x" * 121},
        {"version": 1, "options": {"a": {}}},
        {"version": 1, "options": {"a": {"kind": "heat recovery", "flows": {"supply": -1}}}},
        {"version": 1, "tags": {"home.floor_area": "sure"}},
    ],
)
def test_what_reading_refuses_it_refuses(tree: dict[str, Any]) -> None:
    assert not VALIDATOR.is_valid(tree)


def test_every_entry_carries_its_facts() -> None:
    parts = {**SCHEMA["$defs"], "Case": SCHEMA}
    for noun in set(sections().values()):
        for item in own_entries(noun):
            said = parts[noun.__name__]["properties"][item.name]
            assert said["description"] == item.spec.meaning
            if isinstance(item.spec, Quantity):
                assert (said["x-unit"], said["x-low"], said["x-high"]) == (item.unit, item.spec.low, item.spec.high)
                limits = said["anyOf"][0] if item.optional else said
                assert (limits["minimum"], limits["maximum"]) == (item.spec.low, item.spec.high)
            if item.optional:
                assert item.spec.derived in said["x-default"]
            elif item.default is not None:
                assert (said["default"], said["x-tag"]) == (item.default, item.spec.tag)
