"""Does a case that is written down read back the same?"""

from __future__ import annotations

import dataclasses
import json
import tomllib

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.errors import Fault, InputFaults
from estimator.inputs import check
from estimator.inputs.case import Case
from estimator.inputs.casefile import case_from_dict, case_from_text
from estimator.inputs.home import Home
from estimator.inputs.option import Option
from estimator.inputs.places import every_entry, value_at
from estimator.inputs.writing import case_to_dict, case_to_toml, toml_key, toml_text, toml_value
from tests.inputs.cases import legal_cases


def entries(case: Case) -> dict[str, object]:
    return {**{path: value_at(case, path) for path, _ in every_entry(case)}, "tags": case.tags}


def read_back(case: Case, *, form: str, only_changes: bool) -> tuple[Case | None, list[Fault]]:
    try:
        if form == "toml":
            return case_from_text(case_to_toml(case, only_changes=only_changes), name="x.toml"), []
        return case_from_text(json.dumps(case_to_dict(case, only_changes=only_changes)), name="x.json"), []
    except InputFaults as refused:
        return None, list(refused.faults)


@given(legal_cases(), st.sampled_from(["toml", "json"]), st.booleans())
def test_any_case_reads_back_or_is_refused_for_its_own_contradictions(
    case: Case, form: str, only_changes: bool
) -> None:
    back, faults = read_back(case, form=form, only_changes=only_changes)
    assert faults == check.faults(case)
    if back is not None:
        assert entries(back) == entries(case)
        assert list(back.options) == list(case.options)


def test_the_default_case_has_no_changes() -> None:
    assert case_to_dict(Case(), only_changes=True) == {"version": 1}
    assert case_to_toml(Case(), only_changes=True) == "version = 1\n"


def test_changes_of_an_option_bring_all_options_and_their_order() -> None:
    usual = Case().options
    changed = {**usual, "recovery": Option(kind="heat recovery", label="another")}
    written = case_to_dict(Case(options=changed), only_changes=True)
    assert list(written) == ["version", "options"]
    assert written["options"]["recovery"] == {"kind": "heat recovery", "label": "another"}
    turned = {name: usual[name] for name in reversed(usual)}
    assert list(case_to_dict(Case(options=turned), only_changes=True)["options"]) == list(turned)


def test_what_is_left_out_stays_left_out() -> None:
    assert "volume" not in case_to_dict(Case())["home"]
    assert "volume" not in case_to_toml(Case())


def test_numbers_of_array_libraries_are_written_as_plain_numbers() -> None:
    home = Home(floor_area=np.float64(88.25), people=np.asarray([2.0]), volume=np.asarray(211.5))  # type: ignore[arg-type]
    case = Case(home=home)
    assert case_to_dict(case, only_changes=True)["home"] == {"floor_area": 88.25, "people": 2.0, "volume": 211.5}
    assert case_from_text(case_to_toml(case), name="x").home.floor_area == 88.25
    assert toml_value(np.float64(0.5)) == "0.5"


def test_many_homes_are_no_case_file() -> None:
    home = Home(floor_area=np.asarray([[50.0], [60.0]]))  # type: ignore[arg-type]
    with pytest.raises(TypeError, match="floor_area holds 2 homes"):
        case_to_toml(Case(home=home))


@pytest.mark.parametrize("value", [float("nan"), float("inf"), True, None, [1]])
def test_what_no_file_holds_is_not_written(value: object) -> None:
    with pytest.raises(TypeError, match="finite numbers"):
        toml_value(value)


@given(st.text(st.characters(codec="utf-8")), st.text(st.characters(codec="utf-8")))
def test_any_text_and_key_reads_back_from_toml(key: str, text: str) -> None:
    assert tomllib.loads(f"{toml_key(key)} = {toml_text(text)}") == {key: text}


@given(st.floats(allow_nan=False, allow_infinity=False) | st.integers(-(2**62), 2**62))
def test_any_number_reads_back_from_toml_exactly(number: float) -> None:
    back = tomllib.loads(f"a = {toml_value(number)}")["a"]
    assert (type(back), back) == (type(number), number)


def test_a_dict_written_twice_is_the_same_dict() -> None:
    once = case_to_dict(Case(title="x"))
    assert case_to_dict(case_from_dict(once)) == once
    assert dataclasses.fields(Case)[0].name == next(iter(once)) == "version"
