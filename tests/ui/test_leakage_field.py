"""Does the leakage stand on the first page as it was tested, and is a small one said?"""

from __future__ import annotations

from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

import estimator.ui
from estimator.leak_span import said
from estimator.ui.link import PARAMETER, to_link

SCRIPT = Path(estimator.ui.__file__).parent / "site" / "start.py"


@pytest.mark.parametrize(
    ("measure", "basis", "words", "label"),
    [
        ("n50", "measured", "Tested at 50 Pa", "Leakage, 1/h at 50 Pa"),
        ("q4", "measured", "Tested at 4 Pa", "Leakage, m³/(h m²) at 4 Pa"),
        ("q50", "assumed", "A figure, not tested", "Leakage, m³/(h m²)"),
    ],
)
def test_a_leakage_stands_there_as_it_was_entered(measure: str, basis: str, words: str, label: str) -> None:
    page = AppTest.from_file(str(SCRIPT), default_timeout=60)
    page.query_params[PARAMETER] = to_link(
        {"version": 1, "leakage": {"measure": measure, "value": 3.0, "basis": basis}}
    )
    page.run()
    assert not page.exception
    assert page.selectbox(key="tested").value == words
    assert [box.value for box in page.number_input if box.label == label] == [3.0]


def test_the_home_as_it_is_aired_is_no_option_to_change_to() -> None:
    kinds = {"extract": "continuous extract", "recovery": "heat recovery", "pairs": "room pairs"}
    options = {**kinds, "today": "intermittent fans"}
    page = AppTest.from_file(str(SCRIPT), default_timeout=60)
    page.query_params[PARAMETER] = to_link(
        {"version": 1, "options": {name: {"kind": kind} for name, kind in options.items()}}
    )
    page.run()
    assert not page.exception
    [asked] = [box.options for box in page.selectbox if box.label == "Option"]
    assert asked == ["heat recovery", "room pairs 1"]


def test_a_leakage_below_a_tenth_is_not_rounded_away() -> None:
    assert [said(q50) for q50 in (0.04, 0.1, 3.44)] == ["0.04", "0.1", "3.4"]


def words(page: AppTest) -> str:
    return " ".join(html.proto.body for html in page.get("html"))


@pytest.mark.parametrize(
    ("address", "key", "test"), [("", "tested", "Tested at 50 Pa"), ("tight", "tight:test", "Tested, q50")]
)
def test_an_estimate_is_no_test_until_a_figure_is_typed(address: str, key: str, test: str) -> None:
    page = AppTest.from_file(str(SCRIPT), default_timeout=60)
    page.run()
    if address:
        page.switch_page(f"{SCRIPT.parents[1] / 'pages' / address}.py").run()
    page.selectbox(key=key).select(test).run()
    assert page.selectbox(key=key).value == test
    assert "counts as not tested" in words(page)
    assert "as tested" not in words(page)
    assert "(tested)" not in words(page)
    [figure] = [box for box in page.number_input if box.label == "Leakage, m³/(h m²)"]
    figure.set_value(2.0).run()
    assert not page.exception
    assert page.selectbox(key=key).value == test
    assert "counts as not tested" not in words(page)
    assert ("as tested" if address else "(tested)") in words(page)


def test_a_figure_that_was_typed_may_turn_out_to_be_a_test() -> None:
    page = AppTest.from_file(str(SCRIPT), default_timeout=60)
    page.query_params[PARAMETER] = to_link(
        {"version": 1, "leakage": {"measure": "q50", "value": 3.0, "basis": "assumed"}}
    )
    page.run()
    assert "(tested)" not in words(page)
    page.selectbox(key="tested").select("Tested at 50 Pa").run()
    assert "(tested)" in words(page)
    assert "counts as not tested" not in words(page)
