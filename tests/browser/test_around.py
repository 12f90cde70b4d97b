"""Does what stands around a page stay where it is, and is what was refused said before any figure?"""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser

from tests.browser.harness import Server
from tests.browser.test_live import BEGUN
from tests.browser.test_worth import expected, plain
from tests.browser.windows import visit


@pytest.mark.parametrize("phone", [False, True], ids=["desk", "phone"])
def test_naming_the_last_change_moves_nothing(browser: Browser, server: Server, phone: bool) -> None:
    with visit(browser, server, phone=phone) as here:
        here.open("/tight" + BEGUN)
        answer = here.page.locator(".st-key-answer")
        before = answer.bounding_box()
        here.type("Leakage, m³/(h m²)", "6.5")
        here.page.locator(".undone", has_text="Leakage, m³/(h m²): 6.5").wait_for()
        here.page.evaluate("() => document.querySelector('[data-testid=stMain]').scrollTo(0, 0)")
        after = answer.bounding_box()
        assert before
        assert after
        assert before["y"] == after["y"]
        row = here.page.locator(".st-key-bar").bounding_box()
        assert row
        assert row["height"] < 60  # one line
        here.assert_quiet()


@pytest.mark.parametrize("address", ["", "tight", "paper"])
def test_a_link_that_was_not_used_is_said_above_the_answer(browser: Browser, server: Server, address: str) -> None:
    with visit(browser, server, phone=True) as here:
        here.open(f"/{address}?case=1.broken")
        alert = here.page.get_by_role("alert").filter(has_text="was not used")
        assert alert.count() == 1
        said, answer = alert.bounding_box(), here.page.locator("p.answer").bounding_box()
        assert said
        assert answer
        assert said["y"] < answer["y"]
        if not address:
            assert plain(here.answer()) == plain(expected())  # the demo home's
        here.assert_quiet()


def test_a_phone_shows_two_lines_of_questions_and_all_behind_one_word(browser: Browser, server: Server) -> None:
    with visit(browser, server, phone=True) as here:
        here.open("/")
        row = here.page.get_by_role("navigation", name="Questions")
        shown = row.get_by_role("link")
        assert shown.count() == 7
        assert len({round((one.bounding_box() or {"y": 0.0})["y"]) for one in shown.all()}) == 2
        row.get_by_role("button", name="More").click()
        assert shown.count() == 11
        here.go("Trust?")
        assert row.get_by_role("link", name="Trust?").get_attribute("aria-current") == "page"
        assert shown.count() == 7
        here.assert_quiet()


OPENED = """fold => { fold.click(); return new Promise(done => requestAnimationFrame(() => requestAnimationFrame(
  () => done(document.getAnimations().some(one => one.effect.target.matches('details')))))); }"""
CLIPBOARD = """put => Object.defineProperty(navigator, 'clipboard', { configurable: true, get: () => ({
  writeText: put ? text => { window.put = text; return Promise.resolve(); } : undefined }) })"""


def test_the_link_is_copied_or_stands_marked_to_be_copied(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        here.open()
        here.type("Floor area, m²", "200")
        answer = here.answer()
        here.page.get_by_role("button", name="Case", exact=True).click()
        here.page.evaluate(CLIPBOARD, False)
        here.page.get_by_role("button", name="Copy the link").click()
        assert here.page.get_by_label("Address of this page").input_value() == here.page.url
        here.page.evaluate(CLIPBOARD, True)
        here.page.get_by_role("button", name="Copy the link").click()
        here.page.get_by_role("status").filter(has_text="Copied").wait_for()
        copied = here.page.evaluate("() => window.put")
        assert copied == here.page.url
        assert "case=" in copied
        here.after(lambda: here.page.goto(copied))
        assert here.answer() == answer
        here.assert_quiet()


def test_nothing_moves_where_somebody_asks_for_that(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        here.open("/trust")
        moved = []
        for wish in ("no-preference", "reduce"):
            here.page.emulate_media(reduced_motion=wish)
            moved.append(here.page.locator("summary").last.evaluate(OPENED))
        assert moved == [True, False]
        here.assert_quiet()
