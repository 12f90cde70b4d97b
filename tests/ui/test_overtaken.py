"""Does slow work give way to a change that waits for it, and to nothing else?"""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

import pytest
from streamlit.runtime.scriptrunner import RerunData
from streamlit.runtime.scriptrunner_utils.script_requests import ScriptRequests
from streamlit.testing.v1 import AppTest

import estimator.ui
from estimator import draws, sample
from estimator.drawn import Outcome
from estimator.draws import Ground
from estimator.ui import first_answer, overtaken, sureness
from estimator.units import Array

START = Path(estimator.ui.__file__).parent / "site" / "start.py"


class Running:
    """A run of the script, as far as is asked here."""

    def __init__(self) -> None:
        self.script_requests = ScriptRequests()


@pytest.fixture
def running(monkeypatch: pytest.MonkeyPatch) -> Running:
    run = Running()
    monkeypatch.setattr(overtaken, "get_script_run_ctx", lambda **_: run)
    return run


def test_a_change_that_only_a_part_of_the_page_follows_is_waited_for_by_nobody(running: Running) -> None:
    overtaken.give_way()
    assert running.script_requests.request_rerun(RerunData(fragment_id="a part"))
    assert running.script_requests.on_scriptrunner_yield() is None  # the framework itself would finish first
    with pytest.raises(overtaken.Overtaken):
        overtaken.give_way()


def test_without_a_run_there_is_nothing_to_give_way_to(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(overtaken, "get_script_run_ctx", lambda **_: None)
    overtaken.give_way()


def test_a_page_overtaken_after_its_first_cases_stands_with_its_first_answer(monkeypatch: pytest.MonkeyPatch) -> None:
    """The run ends as any other: no fault is shown, and what moves the answer most waits for the full range."""
    sureness._LAST.clear()
    tried: list[int] = []
    one_after_another = ThreadPoolExecutor(1)

    def counted(place: Ground, where: Array, **rest: Any) -> dict[str, Outcome]:
        tried.append(len(where))
        return draws.outcomes(place, where, **rest)

    def changed() -> None:
        raise overtaken.Overtaken

    monkeypatch.setattr(sample, "outcomes", counted)
    monkeypatch.setattr(sample, "_threads", lambda: one_after_another)
    monkeypatch.setattr(first_answer, "give_way", changed)
    page = AppTest.from_file(str(START), default_timeout=120).run()
    assert not page.exception
    words = " ".join(html.proto.body for html in page.get("html"))
    assert "What moves it most stands here once all cases have been tried." in words
    one_after_another.shutdown()
    assert set(tried[:2]) == {sample.AT_ONCE}
    assert len(tried) <= 2  # the one that is looked at, and one that has begun meanwhile
