"""Does every page show a hostile name as mere words, wherever it turns up?"""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

import estimator.ui
from estimator.ui.shell import PAGES
from tests.hostile.words import ANCHOR, IMAGE, SCRIPT, TREE, harm_in_html, live_markdown, packed, texts_in

START = Path(estimator.ui.__file__).parent / "site" / "start.py"
SPOKEN = ("markdown", "error", "warning", "info", "success", "caption", "exception", "header", "title", "subheader")


@pytest.fixture(scope="module")
def dashboard() -> AppTest:
    """The dashboard on the hostile case, brought by a forged link."""
    test = AppTest.from_file(str(START), default_timeout=120)
    test.query_params["case"] = packed(TREE)
    return test.run()


@pytest.fixture(scope="module", params=[file for file, _, _ in PAGES])
def page(request: pytest.FixtureRequest, dashboard: AppTest) -> AppTest:
    """One page after the other, by the same visitor."""
    shown = dashboard.switch_page(f"../pages/{request.param}").run()
    assert not shown.exception
    assert shown.session_state["case_read"].case.options["today"].label.startswith(SCRIPT)
    return shown


def test_our_own_html_runs_and_fetches_nothing(page: AppTest) -> None:
    bodies = [element.proto.body for element in page.get("html")]
    assert bodies
    for body in bodies:
        assert harm_in_html(body, allowed=frozenset({"link"})) == []
        assert SCRIPT not in body


def test_markdown_shows_marks_as_marks(page: AppTest) -> None:
    for kind in SPOKEN:
        for element in page.get(kind):
            assert not live_markdown(str(getattr(element, "value", ""))), element


def test_labels_of_widgets_are_not_read_as_markdown(page: AppTest) -> None:
    for kind in ("selectbox", "number_input", "text_input", "button", "radio", "checkbox", "expander", "tab"):
        for element in page.get(kind):
            assert not live_markdown(str(getattr(element, "label", "")))


def test_charts_have_no_tags_of_others(page: AppTest) -> None:
    """Plotly reads tags in any text of a figure, links among them."""
    for chart in page.get("plotly_chart"):
        for text in texts_in(json.loads(chart.proto.spec)):
            assert ANCHOR not in text
            assert IMAGE not in text
            assert "<a " not in text
            assert "<img" not in text
