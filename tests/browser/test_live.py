"""Does a changed figure bring everything with it that depends on it, although only that is drawn anew?"""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, Page
from streamlit.proto.ForwardMsg_pb2 import ForwardMsg

from estimator.ui.link import PARAMETER, to_link
from estimator.ui.tree import EMPTY, Tree
from tests.browser.harness import TOLD, Server, Visit
from tests.browser.windows import newcomer, visit

WORDS = """() => { const last = document.querySelector('.undone')?.innerText;
  return document.querySelector('[data-testid=stMain]').innerText.split('\\n').filter(line => line !== last); }"""
LINKS = """() => { const row = document.querySelector('.st-key-questions nav');
  row.dispatchEvent(new Event('pointerover'));  // a link is made ready by whoever comes near it
  return [...row.querySelectorAll('a')].map(one => one.href); }"""
PICTURES = "() => [...document.querySelectorAll('.picture img')].map(one => one.alt + one.src)"
TESTED: Tree = {**EMPTY, "leakage": {"measure": "q50", "value": 5.0, "basis": "measured"}}
BEGUN = f"?{PARAMETER}={to_link(TESTED)}"

NO_MOMENT = """(() => { const usual = setTimeout;  // the moment after which an address follows by itself never ends
  window.setTimeout = (then, wait, ...more) => wait === 60 ? 0 : usual(then, wait, ...more); })()"""

FIGURES = (
    ("/" + BEGUN, "Floor area, m²", "64"),
    ("/" + BEGUN, "Leakage, m³/(h m²)", "2.25"),
    ("/" + BEGUN, "Price of natural gas, p/kWh", "31.5"),
    ("/tight" + BEGUN, "Leakage, m³/(h m²)", "2.25"),
    ("/tight" + BEGUN, "Leakage, m³/(h m²)", "17"),
)


def seen(page: Page) -> tuple[object, ...]:
    """Everything to be read, every link and every picture; the name of the last change is the session's own."""
    return (page.evaluate(WORDS), page.evaluate(LINKS), page.evaluate(PICTURES))


class Whole:
    """How often the whole page was drawn."""

    def __init__(self, here: Visit) -> None:
        self.times = 0
        here.hear("websocket", lambda channel: channel.on("framereceived", self._frame))

    def _frame(self, payload: bytes | str) -> None:
        if isinstance(payload, bytes):
            message = ForwardMsg()
            message.ParseFromString(payload)
            self.times += message.WhichOneof("type") == "navigation"


@pytest.mark.parametrize(("address", "label", "value"), FIGURES)
def test_nothing_is_left_behind(browser: Browser, server: Server, address: str, label: str, value: str) -> None:
    with visit(browser, server) as here:
        drawn = Whole(here)
        here.open(address)
        before, times = seen(here.page), drawn.times
        here.type(label, value)
        followed = seen(here.page)
        assert drawn.times == times
        assert followed != before
        here.after(here.page.reload)
        assert seen(here.page) == followed
        here.assert_quiet()


def test_only_that_is_drawn_too_where_all_cases_had_been_tried_before(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        drawn = Whole(here)
        here.open("/" + BEGUN)
        here.after(here.page.reload)
        times = drawn.times
        here.type("Floor area, m²", "64")
        assert drawn.times == times
        here.assert_quiet()


def test_what_stands_outside_is_drawn_with_the_whole_page(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        drawn = Whole(here)
        here.open("/" + BEGUN)
        here.after(here.page.get_by_text("All details").click)
        times = drawn.times
        here.type("Price of natural gas, p/kWh", "9.5")
        assert drawn.times == times + 1
        here.assert_quiet()


def test_what_cannot_be_used_is_said_and_undone(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        here.open("/" + BEGUN)
        before = here.answer()
        here.type("Price of natural gas, p/kWh", "dear")
        assert "dear" in here.page.get_by_test_id("stAlert").inner_text()
        assert here.answer() == before
        here.type("Price of natural gas, p/kWh", "31.5")
        assert here.page.get_by_test_id("stAlert").count() == 0
        assert here.answer() != before
        here.after(here.page.get_by_role("button", name="Undo").click)
        assert here.answer() == before
        here.assert_quiet()


def test_a_saved_file_and_another_window_have_the_figure(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        here.open("/tight" + BEGUN)
        here.type("Leakage, m³/(h m²)", "6.5")
        here.page.get_by_role("button", name="Case").click()
        with here.page.expect_download() as file:
            here.page.get_by_role("button", name="Save as a file").click()
        assert "value = 6.5" in file.value.path().read_text("utf-8")
        link = here.page.get_by_role("link", name="Worth it?", exact=True)
        link.hover()
        other = link.evaluate("one => one.href")
        with visit(browser, server) as window:
            window.open(str(other).removeprefix(server.url))
            assert window.page.get_by_label("Leakage, m³/(h m²)", exact=True).input_value() == "6.5"


def test_the_address_follows_and_goes_back(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        here.open("/" + BEGUN)
        first, address = here.answer(), here.page.url
        here.type("Floor area, m²", "64")
        second, another = here.answer(), here.page.url
        assert first != second
        assert address != another
        here.after(here.page.go_back)
        assert (here.answer(), here.page.url) == (first, address)
        here.after(here.page.go_forward)
        assert (here.answer(), here.page.url) == (second, another)
        here.assert_quiet()


def test_who_does_anything_more_has_the_change_in_the_address(browser: Browser, server: Server) -> None:
    """The keys that reload a page, and every pointer, reach the page first."""
    with newcomer(browser, server) as here:  # what is done to this window stays in it
        here.page.add_init_script(NO_MOMENT)
        here.open("/" + BEGUN)
        box = here.page.get_by_label("Floor area, m²", exact=True)
        for value in ("64", "65"):
            box.fill(value)
            here.drawn(lambda: box.press("Enter"))
            assert not here.page.evaluate(TOLD)
            if value == "64":
                here.page.keyboard.press("F5")
            else:
                here.page.mouse.down()
            assert here.page.evaluate(TOLD)
        here.assert_quiet()
