"""Does whoever waits for a turn of trying all cases get one, or give it up?"""

from __future__ import annotations

from threading import BoundedSemaphore

import pytest

from estimator.ui import sureness
from estimator.ui.overtaken import Overtaken


def never(_: int) -> None:
    raise Overtaken


def test_a_turn_is_waited_for_given_up_and_given_back(monkeypatch: pytest.MonkeyPatch) -> None:
    turns = BoundedSemaphore(1)
    monkeypatch.setattr(sureness, "_TURNS", turns)
    monkeypatch.setattr(sureness, "_ASKS", 0.001)
    with sureness._turn(never), pytest.raises(Overtaken), sureness._turn(never):
        raise AssertionError("a second one was let in")
    with pytest.raises(ValueError, match="released too many"):
        turns.release()  # both have left it as it was


def test_whoever_waits_is_let_in_when_a_turn_is_free(monkeypatch: pytest.MonkeyPatch) -> None:
    turns, asked = BoundedSemaphore(1), []
    monkeypatch.setattr(sureness, "_TURNS", turns)
    monkeypatch.setattr(sureness, "_ASKS", 0.001)
    turns.acquire()

    def told(tried: int) -> None:
        asked.append(tried)
        turns.release()

    with sureness._turn(told):
        assert not turns.acquire(blocking=False)
    assert asked == [0]
