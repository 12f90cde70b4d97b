"""Does a visitor find nothing of others in the window that they have left?"""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser

from tests.browser.harness import Server
from tests.browser.windows import newcomer, visit

LEAVE = """() => new Promise(done => {
  localStorage.setItem('left', 'behind');
  sessionStorage.setItem('left', 'behind');
  document.cookie = 'left=behind';
  caches.open('left').then(() => { indexedDB.open('left').onsuccess = done; });
}).then(() => null)"""
FOUND = """async () => [
  localStorage.getItem('left'), sessionStorage.getItem('left'), document.cookie.includes('left'),
  await caches.has('left'), (await indexedDB.databases()).some(one => one.name === 'left'), scrollY, history.length]"""
PLAIN = "/paper"  # a page soon drawn
NOTHING = "/_stcore/health"  # of the same server, with nothing to draw
DARK = "() => matchMedia('(prefers-color-scheme: dark)').matches"


def test_the_next_visitor_finds_nothing(browser: Browser, server: Server) -> None:
    with newcomer(browser, server, phone=True) as here:
        here.open(PLAIN)
        unused = here.page.evaluate(FOUND)
        assert unused[:6] == [None, None, False, False, False, 0]
    with visit(browser, server, phone=True, dark=True) as here:
        here.open(PLAIN)
        here.go("Trust?")
        here.page.evaluate(LEAVE)
        left = here.page.evaluate(FOUND)
        assert left[:5] == ["behind", "behind", True, True, True]
        assert left[6] > unused[6]
        assert here.page.evaluate(DARK)
        here.page.mouse.wheel(0, 300)
    with visit(browser, server, phone=True) as there:
        assert there.page is here.page
        assert there.page.context.cookies() == []
        there.open(PLAIN)
        assert there.page.evaluate(FOUND) == unused
        assert not there.page.evaluate(DARK)
        there.page.evaluate("() => console.error('spilt milk')")
        there.page.wait_for_function("() => true")
        assert there.errors == ["spilt milk"]
        assert here.errors == []


def test_visitors_at_the_same_time_have_windows_of_their_own(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here, visit(browser, server) as there:
        assert here.page.context != there.page.context
        here.page.goto(server.url + NOTHING)
        here.page.evaluate(LEAVE)
        there.page.goto(server.url + NOTHING)
        assert there.page.evaluate(FOUND)[:5] == [None, None, False, False, False]


def test_after_a_failure_nobody_uses_the_window_again(browser: Browser, server: Server) -> None:
    with pytest.raises(ZeroDivisionError), visit(browser, server) as here:
        raise ZeroDivisionError
    assert here.page.is_closed()
    with visit(browser, server) as there:
        assert there.page is not here.page
        there.page.goto(server.url + NOTHING)
