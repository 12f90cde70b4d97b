"""Does somebody at work lose nothing when the server ends and begins anew?"""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, expect

from tests.browser.harness import Server
from tests.browser.windows import visit


@pytest.fixture(scope="module")
def own() -> Iterator[Server]:
    """A server of these tests alone, to be started anew by each."""
    running = Server()
    running.start()
    yield running
    running.stop()


def test_the_server_may_restart_while_somebody_is_at_work(browser: Browser, own: Server) -> None:
    with visit(browser, own) as here:
        here.open()
        here.type("Floor area, m²", "200")
        said = here.answer()
        here.restarted(own)
        assert here.answer() == said
        here.go("Which way?")
        here.go("Worth it?")
        assert here.answer() == said
        here.restarted(own)  # and the first change after it is not lost
        box = here.page.get_by_label("Floor area, m²", exact=True)
        box.fill("60")
        box.press("Enter")
        here.page.locator(".undone", has_text="Floor area, m²: 60").wait_for()
        here.page.wait_for_function("words => document.querySelector('p.answer').innerText !== words", arg=said)
        expect(box).to_have_value("60")
        expect(here.page.locator("p.sentence")).to_contain_text("60 m²")
        expect(here.page.locator(".basis")).to_contain_text("Eight of ten")
        said = here.answer()
        own.stop()
        own.start()
        here.after(here.page.reload)
        assert here.answer() == said
