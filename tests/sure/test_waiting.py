"""Is whoever waits for all cases to be tried told so, served in the order of coming, and free to leave?"""

from __future__ import annotations

import time
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from threading import Event, Thread

import pytest

from estimator import Case, load_year, sample
from estimator.draws import Ground, ground
from estimator.sample import AT_ONCE

COUNT = 4 * AT_ONCE
TASKS = 4 + 3  # the cases, and three smaller ones beside them


@pytest.fixture(scope="module")
def place() -> Ground:
    return ground(Case(), load_year("Inland vale"))


@pytest.fixture
def one_thread(monkeypatch: pytest.MonkeyPatch) -> Iterator[ThreadPoolExecutor]:
    """All cases are tried one part after another."""
    pool = ThreadPoolExecutor(1)
    monkeypatch.setattr(sample, "_threads", lambda: pool)
    monkeypatch.setattr(sample, "_ASKS", 0.001)
    yield pool
    pool.shutdown(cancel_futures=True)


def test_who_waits_is_told_how_many_were_tried(place: Ground) -> None:
    heard: list[int] = []
    sample.sample(place, count=COUNT, told=heard.append)
    assert list(dict.fromkeys(heard))[-4:] == [250, 500, 750, 1000]
    assert heard == sorted(heard)


def test_who_leaves_ends_the_trying(place: Ground, one_thread: ThreadPoolExecutor) -> None:
    def told(tried: int) -> None:
        if tried >= 500:
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        sample.sample(place, count=100 * AT_ONCE, told=told)
    assert one_thread._work_queue.qsize() > 50  # most lie there, called off
    one_thread.submit(time.monotonic).result(60)  # and are not worked on


def test_those_who_wait_come_in_the_order_they_came(place: Ground, one_thread: ThreadPoolExecutor) -> None:
    busy, served = Event(), list[int]()
    one_thread.submit(busy.wait)

    def visitor(number: int) -> None:
        sample.sample(place, count=COUNT)
        served.append(number)

    visitors = [Thread(target=visitor, args=(number,)) for number in range(4)]
    for number, one in enumerate(visitors, start=1):
        one.start()
        while one_thread._work_queue.qsize() < number * TASKS:
            time.sleep(0.001)
    asked: list[int] = []

    def impatient(tried: int) -> None:
        asked.append(tried)
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        sample.sample(place, count=COUNT, told=impatient)
    assert asked == [0]
    busy.set()
    for one in visitors:
        one.join()
    assert served == list(range(4))
