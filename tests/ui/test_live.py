"""Does a page that cannot be drawn leave everything around it in its place?"""

from __future__ import annotations

import json
import logging
from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

import estimator.ui
from estimator.ui import first_words, sureness
from estimator.ui.shell import PAGES

START = Path(estimator.ui.__file__).parent / "site" / "start.py"


@pytest.mark.parametrize(("where", "name"), [(first_words, "rests_on"), (sureness, "chosen")])
def test_the_ways_on_stay(monkeypatch: pytest.MonkeyPatch, where: object, name: str) -> None:
    """rests_on: a part of the page fails once all places are kept. chosen: the page fails before its first part."""

    def broken(*_: object, **__: object) -> None:
        raise RuntimeError("broken for the test")

    monkeypatch.setattr(where, name, broken)
    logging.getLogger("estimator.ui.shell").setLevel(logging.CRITICAL)
    shown = AppTest.from_file(str(START), default_timeout=60).run()
    assert not shown.exception
    words = [html.proto.body for html in shown.get("html")]
    assert any("This page could not be drawn" in said for said in words)
    held = [json.loads(one.proto.json or "{}") for one in shown.get("bidi_component")]
    (row,) = (one for one in held if "near" in one)
    assert [address for address, _ in row["near"]] == [address for _, _, address in PAGES]
    assert shown.button(key="undo").disabled
