"""What does a page say before its script has run, and of money that is another country's?"""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser

from estimator.ui.link import to_link
from estimator.ui.shell import TITLE
from tests.browser.harness import Server
from tests.browser.windows import visit


def test_the_question_stands_there_before_any_script_has_run(browser: Browser, server: Server) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{server.url}/sure")
    assert TITLE in page.locator("#root").inner_text()
    context.close()


@pytest.mark.parametrize("address", ["years", "many"])
def test_money_of_another_country_is_named_on_every_page(browser: Browser, server: Server, address: str) -> None:
    with visit(browser, server) as here:
        here.open(f"/{address}?case={to_link({'version': 1, 'prices': {'currency': 'kr'}})}")
        here.page.get_by_text("Money is written in kr, but these sums are those of Great Britain").wait_for()
        here.assert_quiet()
