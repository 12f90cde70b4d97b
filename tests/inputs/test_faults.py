"""Do the sentences agree with what strict validation refuses, and read well?"""

from __future__ import annotations

import json
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter, ValidationError

from estimator.inputs.case import Case
from estimator.inputs.faults import (
    allowed,
    nearest,
    number_words,
    rows_at_fault,
    shown,
    unknown_key,
    why_not,
    with_unit,
)
from estimator.inputs.places import Place, entry_at, own_entries, sections
from estimator.inputs.quantity import Declared, Quantity

ADAPTER = TypeAdapter(Case)
ENTRIES = [(place, item) for place, noun in sections().items() for item in own_entries(noun) if item.name != "version"]


def refused(place: Place, name: str, value: Any) -> bool:
    """Whether strict validation alone refuses a value at its place."""
    tree: dict[str, Any] = {name: value}
    if place[:1] == ("options",) and name != "kind":
        tree = {name: value, "kind": "heat recovery"} if len(place) == 2 else tree
    for depth in range(len(place) - 1, -1, -1):
        tree = {place[depth]: tree}
        if place[:1] == ("options",) and depth == 2:
            tree["kind"] = "heat recovery"
    try:
        ADAPTER.validate_json(json.dumps(tree))
    except ValidationError:
        return True
    return False


ANYTHING: st.SearchStrategy[Any] = (
    st.none()
    | st.booleans()
    | st.integers(-(10**6), 10**6)
    | st.floats()
    | st.text(st.characters(codec="utf-8"), max_size=130)
    | st.just([])
    | st.just({})
)


@given(st.data(), st.sampled_from(ENTRIES))
def test_a_value_has_a_sentence_exactly_where_validation_refuses_it(
    data: st.DataObject, entry: tuple[Place, Declared]
) -> None:
    place, item = entry
    near: st.SearchStrategy[Any] = st.sampled_from(item.choices) if item.choices else st.nothing()
    if isinstance(item.spec, Quantity):
        low, high = item.spec.low, item.spec.high
        edges = [low, high, np.nextafter(low, -np.inf).item(), np.nextafter(high, np.inf).item(), int(low), int(high)]
        near = st.floats(low, high) | st.sampled_from(edges) | st.integers(int(low) - 1, int(high) + 1)
    value: Any = data.draw(near | ANYTHING)
    assert (why_not(item, value) is not None) == refused(place, item.name, value)


def at(place: str, name: str) -> Declared:
    item = entry_at(tuple(place.split(".")), name)
    assert item is not None
    return item


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (2000.0, "2,000"),
        (0.015, "0.015"),
        (-3, "-3"),
        (12345678.0, "12,345,678"),
        (0.1 + 0.2, "0.3"),
        (10**400, "about 1e400"),
        (-(10**16), "about -1e16"),
    ],
)
def test_numbers_as_people_write_them(value: float, words: str) -> None:
    assert number_words(value) == words


def test_units_are_said_in_words_where_their_sign_is_ours_alone() -> None:
    assert with_unit("5", "m²") == "5 m²"
    assert with_unit("5", "") == "5"
    assert with_unit("5", "money") == "5 in the case's currency"
    assert "pence" in with_unit("5", "p/kWh")


def test_values_are_shown_as_their_writer_knows_them() -> None:
    assert shown("x" * 100) == f'"{"x" * 60}…"'
    assert shown(object()) == "a value of type object"
    assert (shown(True), shown(None), shown({}), shown(())) == ("true", "nothing (null)", "a table", "a list")


def test_what_is_allowed() -> None:
    assert allowed(at("home", "storeys")) == "a whole number from 1 to 3"
    assert allowed(at("prices", "currency")) == "text in quotes of at most 4 characters"
    assert allowed(at("home", "construction")) == 'one of "solid masonry", "cavity masonry", "timber frame"'


def test_one_whole_sentence() -> None:
    assert why_not(at("home", "floor_area"), 5) == (
        "5 m² is too small: allowed is a number from 15 to 2,000 m² (heated floor area, all storeys, inside the outer "
        "walls). Correct it; without the line it is 110 m²."
    )


def test_numbers_of_array_libraries_count_as_numbers() -> None:
    assert why_not(at("home", "floor_area"), np.float64(100.0)) is None
    assert why_not(at("home", "storeys"), np.int64(2)) is None
    assert why_not(at("home", "storeys"), np.int64(9)) is not None
    assert why_not(at("home", "floor_area"), np.asarray(5.0)) is not None


def test_rows_are_counted_only_where_there_are_many() -> None:
    assert rows_at_fault(np.array(True)) == rows_at_fault(np.array([[True]])) == ""
    assert rows_at_fault(np.array([[False], [True], [True]])) == " in 2 of 3 rows (first: row 2)"


@pytest.mark.parametrize(
    ("word", "words", "near"),
    [
        ("Floor Area", ["floor_area", "form"], "floor_area"),
        ("semi detached", ["detached", "semi-detached"], "semi-detached"),
        ("zzz", ["floor_area"], None),
        ("", ["floor_area"], None),
    ],
)
def test_the_nearest_word(word: str, words: list[str], near: str | None) -> None:
    assert nearest(word, words) == near


@pytest.mark.parametrize(
    ("place", "key", "meant", "part"),
    [
        (("home",), "bedroms", "bedrooms", "under [home]"),
        ((), "hoome", "home", "at the top of the file"),
        (("options", "mine", "ducts"), "effectiveness", None, "It stands under [options.mine.unit]."),
        (("options", "mine"), "fan_powr", None, '"fan_power" under [options.mine.unit]'),
        (("home",), "fan_powr", None, '"fan_power" under [options.NAME.unit]'),
    ],
)
def test_unknown_keys(place: Place, key: str, meant: str | None, part: str) -> None:
    said, near = unknown_key(place, key)
    assert near == meant
    assert part in said
