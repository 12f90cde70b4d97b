"""Does each of a few visitors at once get its own figures, also after the server was killed?

The long run with fifty is `python -m tests.load`.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.browser.harness import Server
from tests.load.cases import Asked, asked
from tests.load.session import Session, answer_in
from tests.load.visitors import all_at_once

VISITORS = 4


@pytest.fixture(scope="module")
def server() -> Iterator[Server]:
    one = Server()
    one.start()
    yield one
    one.stop()


@pytest.mark.slow
def test_no_visitor_is_told_another_s_figures(server: Server) -> None:
    cases = [asked(number, count=2) for number in range(VISITORS)]
    assert len({one.answer for own in cases for one in own}) == sum(len(own) for own in cases)
    seen, threads = all_at_once(server.port, cases, seconds=6.0, thinking=(0.0, 0.1))
    for thread in threads:
        thread.join()
    assert seen.wrong == []
    assert len(seen.took) >= VISITORS


@pytest.mark.slow
def test_a_killed_server_gives_the_same_figures_to_the_same_link(server: Server) -> None:
    [first] = asked(7, count=1)
    assert _told(server, first) == first.answer
    server.kill()
    server.start()
    assert _told(server, first) == first.answer


def _told(server: Server, one: Asked) -> str:
    session = Session(server.port)
    try:
        return answer_in(session.opened(one.link))
    finally:
        session.close()
