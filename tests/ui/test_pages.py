"""Do the pages only show, and does each of them come up without a fault?"""

from __future__ import annotations

import ast
from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

import estimator.ui

UI = Path(estimator.ui.__file__).parent
PAGES = sorted((UI / "pages").glob("*.py"))
COUNTING = (ast.Add, ast.Sub, ast.Mult, ast.Div, ast.FloorDiv, ast.Mod, ast.Pow, ast.MatMult)


@pytest.mark.parametrize("page", PAGES, ids=lambda path: path.stem)
def test_no_page_does_arithmetic(page: Path) -> None:
    found = [
        node.lineno
        for node in ast.walk(ast.parse(page.read_text("utf-8")))
        if isinstance(node, ast.BinOp | ast.AugAssign) and isinstance(node.op, COUNTING)
    ]
    assert found == []


@pytest.fixture
def dashboard() -> AppTest:
    return AppTest.from_file(str(UI / "site" / "start.py"), default_timeout=60)


def test_the_dashboard_comes_up_with_its_answer(dashboard: AppTest) -> None:
    dashboard.run()
    assert not dashboard.exception
    assert any("against new plain extract" in html.proto.body for html in dashboard.get("html"))
    assert not dashboard.get("plotly_chart")  # the first answer does not wait for a library of charts


@pytest.mark.parametrize(
    ("who", "words", "absent"),
    [
        ("advice", "Still to ask: the floor area, a pressure test", "the unit would keep"),
        ("home", "Of the heat that warms your fresh air, the unit would keep", "More air than the"),
        ("fitting", "air permeability q50 estimated", "Still to ask"),
    ],
)
def test_each_reader_meets_words_of_their_own_over_the_same_answer(
    dashboard: AppTest, who: str, words: str, absent: str
) -> None:
    dashboard.query_params["for"] = who
    dashboard.run()
    said = " ".join(html.proto.body for html in dashboard.get("html")).replace("\u00a0", " ")
    assert not dashboard.exception
    assert "against new plain extract" in said
    assert words in said
    assert absent not in said


def test_money_of_another_country_is_named_to_every_reader(dashboard: AppTest) -> None:
    dashboard.query_params["for"] = "home"
    dashboard.query_params["case"] = _packed({"version": 1, "prices": {"currency": "kr"}})
    dashboard.run()
    said = " ".join(html.proto.body for html in dashboard.get("html"))
    assert said.count("Money is written in kr") == 1


def test_a_change_in_a_field_becomes_a_change_of_the_case(dashboard: AppTest) -> None:
    dashboard.run()
    area = next(box for box in dashboard.number_input if box.label.startswith("Floor area"))
    area.set_value(200.0).run()
    assert dashboard.session_state["case_history"].now == {"version": 1, "home": {"floor_area": 200.0}}
    assert dashboard.session_state["case_read"].case.home.floor_area == 200.0
    dashboard.button(key="undo").click().run()
    assert dashboard.session_state["case_history"].now == {"version": 1}


def test_what_makes_no_case_is_refused_in_words_and_changes_nothing(dashboard: AppTest) -> None:
    dashboard.query_params["case"] = "1.nonsense"
    dashboard.run()
    assert not dashboard.exception
    assert len(dashboard.error) == 1
    assert dashboard.session_state["case_history"].now == {"version": 1}


def test_a_link_with_a_file_of_the_server_reads_nothing(dashboard: AppTest) -> None:
    from estimator.ui.link import to_link
    from estimator.ui.tree import EMPTY, with_entry

    honest = with_entry(EMPTY, "place.climate", "Upland")
    forged = _packed({**honest, "place": {"climate": str(UI / "site" / "start.py")}})
    assert to_link(honest)
    dashboard.query_params["case"] = forged
    dashboard.run()
    assert "not at hand" in dashboard.error[0].value
    assert dashboard.session_state["case_history"].now == {"version": 1}


def _packed(tree: object) -> str:
    import base64
    import json
    import zlib

    return "1." + base64.urlsafe_b64encode(zlib.compress(json.dumps(tree).encode())).decode().rstrip("=")


def test_weather_that_is_not_at_hand_is_named_and_never_replaced(dashboard: AppTest) -> None:
    dashboard.query_params["case"] = _packed({"version": 1, "place": {"climate": "kept:" + "0" * 24}})
    dashboard.run()
    assert not dashboard.exception
    assert any("nothing is worked out" in html.proto.body for html in dashboard.get("html"))
    assert "file that somebody gave" in dashboard.error[0].value
    assert not dashboard.get("plotly_chart")
    assert dashboard.session_state["case_history"].now["place"] == {"climate": "kept:" + "0" * 24}
