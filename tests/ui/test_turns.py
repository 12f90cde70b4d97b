"""Does whoever waits for a turn of trying all cases get one in the order they came, or give it up?"""

from __future__ import annotations

import time
from collections import deque
from threading import Thread

import pytest

from estimator.ui import turns
from estimator.ui.overtaken import Overtaken


def never(_: int) -> None:
    raise Overtaken


def patiently(_: int) -> None:
    """Ask on."""


@pytest.fixture(autouse=True)
def one_at_a_time(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(turns, "_QUEUE", deque())
    monkeypatch.setattr(turns, "_AT_ONCE", 1)
    monkeypatch.setattr(turns, "_ASKS", 0.001)


def test_a_turn_is_waited_for_given_up_and_given_back() -> None:
    with turns.turn(never), pytest.raises(Overtaken), turns.turn(never):
        raise AssertionError("a second one was let in")
    assert not turns._QUEUE  # both have left it as it was


def test_whoever_waits_is_let_in_when_a_turn_is_free() -> None:
    first = turns.turn(never)
    asked = []

    def told(tried: int) -> None:
        asked.append(tried)
        first.__exit__(None, None, None)

    first.__enter__()
    with turns.turn(told):
        assert len(turns._QUEUE) == 1
    assert asked == [0]


def test_those_who_wait_come_in_the_order_they_came() -> None:
    came: list[int] = []

    def visitor(number: int) -> None:
        with turns.turn(patiently):
            came.append(number)

    visitors = [Thread(target=visitor, args=(number,)) for number in range(6)]
    with turns.turn(never):
        for waiting, one in enumerate(visitors, start=2):
            one.start()
            while len(turns._QUEUE) < waiting:
                time.sleep(0.001)
    for one in visitors:
        one.join()
    assert came == list(range(6))
