"""Does what somebody looks for among all entries come first, typed as it is shown or as a word of it?"""

from __future__ import annotations

import pytest
from streamlit.testing.v1 import AppTest

PAGE = """
from estimator.ui import drawer, state
from estimator.ui.results import outcome
state.begin()
drawer.draw(outcome().middle.estimate)
"""


@pytest.fixture(scope="module")
def drawer() -> AppTest:
    page = AppTest.from_string(PAGE, default_timeout=60)
    page.session_state["details"] = True
    return page.run()


@pytest.mark.parametrize(
    ("typed", "first"),
    [("age", "Home: age"), ("Home: age", "Home: age"), ("FORM", "Home: form"), ("built", "Home: age")],
)
def test_what_is_looked_for_comes_first(drawer: AppTest, typed: str, first: str) -> None:
    next(box for box in drawer.text_input if box.label == "Find an entry").set_value(typed).run()
    assert not drawer.exception
    found = [box.label for box in drawer.selectbox if box.label != "Group"]
    assert found[0] == first
