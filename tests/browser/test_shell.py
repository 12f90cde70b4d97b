"""What does a page say before its script has run, and of money that is another country's?"""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from estimator.ui.link import to_link
from estimator.ui.shell import TITLE
from tests.browser.axe import findings
from tests.browser.harness import Server
from tests.browser.windows import DESK, newcomer, visit


@pytest.fixture
def bare(browser: Browser) -> Iterator[Page]:
    """A window of a desk in which no script runs."""
    context = browser.new_context(java_script_enabled=False, viewport=DESK)  # type: ignore[arg-type]
    yield context.new_page()
    context.close()


def test_the_question_stands_there_before_any_script_has_run(bare: Page, server: Server) -> None:
    bare.goto(f"{server.url}/sure")
    assert TITLE in bare.locator("#root").inner_text()


def test_the_first_page_s_answer_stands_there_too_and_where_the_dashboard_draws_it(
    browser: Browser, bare: Page, server: Server
) -> None:
    with visit(browser, server) as here:
        here.open(f"/?case={to_link({'version': 1, 'home': {'floor_area': 137.0}})}")
        answer = here.page.locator("p.answer").bounding_box()
        bare.goto(here.page.url)
        at_sight = bare.locator("#at-sight p.answer")
        assert at_sight.inner_text() == here.answer()
        there = at_sight.bounding_box()
        assert answer
        assert there
        assert abs(there["y"] - answer["y"]) < 12.0  # pixels: nobody loses the line being read
        assert bare.locator("#at-sight .picture img:visible").get_attribute("alt") == here.page.locator(
            ".picture img:visible"
        ).first.get_attribute("alt")
        assert here.page.locator("#root").evaluate("root => root.inert") is False
        here.assert_quiet()


@pytest.mark.parametrize(("dark", "phone"), [(False, False), (True, True)], ids=["light-desk", "dark-phone"])
def test_everybody_can_read_what_stands_there_first(browser: Browser, server: Server, dark: bool, phone: bool) -> None:
    with newcomer(browser, server, phone=phone) as here:  # whose scripts never come
        here.page.emulate_media(color_scheme="dark" if dark else "light")
        here.page.route("**/static/js/**", lambda asked: asked.abort())
        answer = here.page.locator("#at-sight p.answer")
        while not (here.page.goto(server.url) and answer.count()):  # in its first moments a server does not give it
            here.page.wait_for_timeout(200.0)
        assert findings(here.page) == []
        assert here.sideways() <= 0


@pytest.mark.parametrize("address", ["years", "many"])
def test_money_of_another_country_is_named_on_every_page(browser: Browser, server: Server, address: str) -> None:
    with visit(browser, server) as here:
        here.open(f"/{address}?case={to_link({'version': 1, 'prices': {'currency': 'kr'}})}")
        here.page.get_by_text("Money is written in kr, but these sums are those of Great Britain").wait_for()
        here.assert_quiet()
