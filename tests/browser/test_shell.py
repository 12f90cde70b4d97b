"""Does every address open by itself, and is a page that fails a page that says so?"""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser

from estimator.ui.link import to_link
from estimator.ui.shell import PAGES, TITLE
from tests.browser.harness import Server
from tests.browser.windows import visit


@pytest.mark.parametrize(("_file", "label", "address"), PAGES, ids=[label for _, label, _ in PAGES])
def test_every_page_opens_by_its_own_address_without_a_failed_request(
    browser: Browser, server: Server, _file: str, label: str, address: str
) -> None:
    with visit(browser, server) as here:
        failed: list[str] = []
        here.hear("response", lambda answer: failed.append(answer.url) if answer.status >= 400 else None)
        here.open(f"/{address}")
        assert here.page.title() == TITLE
        assert here.page.locator("h1").inner_text().endswith("?")
        assert (
            here.page.get_by_role("navigation", name="Questions")
            .get_by_role("link", name=label, exact=True)
            .is_visible()
        )
        assert failed == []
        here.assert_quiet()


def test_the_question_stands_there_before_any_script_has_run(browser: Browser, server: Server) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{server.url}/sure")
    assert TITLE in page.locator("#root").inner_text()
    context.close()


@pytest.mark.parametrize("address", ["compare", "years", "sure", "many"])
def test_money_of_another_country_is_named_on_every_page(browser: Browser, server: Server, address: str) -> None:
    with visit(browser, server) as here:
        here.open(f"/{address}?case={to_link({'version': 1, 'prices': {'currency': 'kr'}})}")
        here.page.get_by_text("Money is written in kr, but these sums are those of Great Britain").wait_for()
        here.assert_quiet()
