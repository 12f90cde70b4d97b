"""Is the home that the dashboard opens with worked out before its first visitor needs it, and once for both?"""

from __future__ import annotations

from collections import OrderedDict
from pathlib import Path
from threading import Thread
from typing import Any

import pytest
from streamlit.testing.v1 import AppTest

import estimator.ui
from estimator.sample import Sample, sample
from estimator.ui import sureness

START = Path(estimator.ui.__file__).parent / "site" / "start.py"


@pytest.fixture
def times(monkeypatch: pytest.MonkeyPatch) -> list[Sample]:
    """What has been tried since nobody had been here."""
    done: list[Sample] = []

    def counted(place: Any, **rest: Any) -> Sample:
        done.append(sample(place, **rest))
        return done[-1]

    monkeypatch.setattr(sureness, "_LAST", OrderedDict())
    monkeypatch.setattr(sureness, "sample", counted)
    return done


def test_a_visitor_is_shown_what_was_tried_ahead(times: list[Sample]) -> None:
    sureness.ahead()
    assert len(times) == 1
    page = AppTest.from_file(str(START), default_timeout=60).run()
    assert any("Eight of ten of 2,000 cases" in html.proto.body for html in page.get("html"))
    assert len(times) == 1


def test_who_comes_meanwhile_waits_for_it(times: list[Sample]) -> None:
    both = [Thread(target=sureness.ahead) for _ in range(2)]
    for one in both:
        one.start()
    for one in both:
        one.join()
    assert len(times) == 1
