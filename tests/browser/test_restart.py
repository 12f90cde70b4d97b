"""Does somebody at work lose nothing when the server ends and begins anew?"""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, expect

from tests.browser.harness import Server
from tests.browser.windows import visit


@pytest.fixture
def restarting(server: Server) -> Iterator[Server]:
    """The server of all tests, which runs again afterwards whatever became of this one."""
    yield server
    if server.process is None:
        server.start()


def test_the_server_may_restart_while_somebody_is_at_work(browser: Browser, restarting: Server) -> None:
    with visit(browser, restarting) as here:
        here.open()
        here.type("Floor area, m²", "200")
        said = here.answer()
        here.restarted(restarting)
        assert here.answer() == said
        here.go("Which way?")
        here.go("Worth it?")
        assert here.answer() == said
        here.restarted(restarting)  # and the first change after it is not lost
        box = here.page.get_by_label("Floor area, m²", exact=True)
        box.fill("60")
        box.press("Enter")
        here.page.locator(".undone", has_text="Floor area, m²: 60").wait_for()
        here.page.wait_for_function("words => document.querySelector('p.answer').innerText !== words", arg=said)
        expect(box).to_have_value("60")
        expect(here.page.locator("p.sentence")).to_contain_text("60 m²")
        expect(here.page.locator(".basis")).to_contain_text("Eight of ten")
        said = here.answer()
        restarting.stop()
        restarting.start()
        here.after(here.page.reload)
        assert here.answer() == said
