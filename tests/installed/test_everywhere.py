"""Does every quantity of a unit as fitted stand in the case file, in the JSON document, and on its page?"""

from __future__ import annotations

import json
import re
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from streamlit.testing.v1 import AppTest

import estimator.ui
from estimator import Case, case_from_dict
from estimator.inputs.places import entry_at
from estimator.inputs.template import commented_case
from estimator.leak_range import over_leakage_range
from estimator.report.document import as_json
from estimator.ui.tree import History
from tests.installed.quantities import TABLE, Stands
from tests.laws.settings import year_of

PAGE = Path(estimator.ui.__file__).parent / "pages" / "fit.py"
TREE: dict[str, Any] = {
    "version": 1,
    "commissioned": {
        "fed": "bedroom 50; living room 52",
        "drawn": "kitchen 60; bathroom 52",
        "power": 44.0,
        "instrument": "vane anemometer",
        "date": "2026-11-20",
        "leakage_measure": "q50",
        "leakage_value": 5.0,
        "leakage_date": "2026-11-18",
    },
}


@cache
def document() -> Any:
    low, middle, high = over_leakage_range(case_from_dict(TREE), year_of("Inland vale"))
    return json.loads(as_json(middle, (low, high)))


@cache
def page() -> str:
    """Every word that the page shows: its own, labels of its fields, and tables."""
    shown = AppTest.from_file(str(PAGE), default_timeout=60)
    shown.session_state["case_history"] = History(TREE)
    shown.run()
    assert not shown.exception
    words = [re.sub(r"<[^>]+>", " ", re.sub(r"<style>.*?</style>", "", html.proto.body, flags=re.S))
             for html in shown.get("html")]  # fmt: skip
    labels = [
        str(getattr(box, "label", ""))
        for kind in ("number_input", "text_input", "selectbox", "button")
        for box in shown.get(kind)
    ]
    return " ".join((" ".join((*words, *labels))).replace("\u00a0", " ").split())


def found(path: str) -> Any:
    """What stands at a path of the document; a slash begins a key that has full stops in it."""
    here: Any = document()
    head, _, rest = path.partition("/")
    key, _, after = rest.partition(".money")
    for part in head.split("."):
        here = here[int(part)] if isinstance(here, list) else here[part]
    return here[key]["money"]["value"] if key and not after else here


@pytest.mark.parametrize("stands", TABLE, ids=[stands.quantity for stands in TABLE])
def test_it_stands_in_all_three(stands: Stands) -> None:
    form = commented_case(Case())
    inputs = {entry["path"] for entry in document()["inputs"]}
    for path in stands.entries:
        *place, key = path.split(".")
        assert entry_at(tuple(place), key), path
        assert re.search(rf"^(# )?{key} =", form, re.M), path
        assert path.replace("NAME", "recovery") in inputs
    for path in stands.document:
        assert found(path) is not None, path
    for words in stands.page:
        assert words in page(), words
