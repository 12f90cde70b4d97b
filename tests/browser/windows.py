"""In which window of the browser does a visitor sit, and what do others find in it afterwards?

A window in which the dashboard has stood before opens it in a third of the time: the fixed files it consists of are
fetched and read. Visitors therefore sit down where others have left, and find nothing of theirs.
"""

from __future__ import annotations

import contextlib
from collections.abc import Iterator
from weakref import WeakKeyDictionary

from playwright.sync_api import Browser, Page

from tests.browser.harness import PATIENCE, Server, Visit

PHONE = {"width": 390, "height": 844}
DESK = {"width": 1440, "height": 900}
_free: WeakKeyDictionary[Browser, dict[bool, list[Page]]] = WeakKeyDictionary()
"""Tidy windows that nobody sits in, of the desk and of the phone."""


@contextlib.contextmanager
def visit(browser: Browser, server: Server, *, dark: bool = False, phone: bool = False) -> Iterator[Visit]:
    """A visitor without memory of others.

    Whoever comes while another is there has another window, with a storage of its own. After a failure nobody uses the
    window again.
    """
    free = _free.setdefault(browser, {True: [], False: []})[phone]
    page = free.pop() if free else _window(browser, phone=phone)
    try:
        page.emulate_media(color_scheme="dark" if dark else "light")
        here = Visit(page, server.url)
        yield here
        here.leave()
        _tidy(page)
    except BaseException:
        page.context.close()
        raise
    free.append(page)


@contextlib.contextmanager
def newcomer(browser: Browser, server: Server, *, phone: bool = False) -> Iterator[Visit]:
    """A visitor whose browser has never seen the dashboard."""
    page = _window(browser, phone=phone)
    try:
        yield Visit(page, server.url)
    finally:
        page.context.close()


def _window(browser: Browser, *, phone: bool) -> Page:
    context = browser.new_context(
        viewport=PHONE if phone else DESK,  # type: ignore[arg-type]
        color_scheme="light",
        reduced_motion="reduce",
        is_mobile=phone,
        has_touch=phone,
    )
    context.set_default_timeout(1e3 * PATIENCE)
    return context.new_page()


def _tidy(page: Page) -> None:
    """Take away all that a visitor may have left: what was stored, where it has been, where the mouse stands."""
    context = page.context
    for other in context.pages:
        if other != page:
            other.close()
    line = context.new_cdp_session(page)
    origin = page.evaluate("() => (sessionStorage.clear(), origin)")
    page.goto("about:blank")
    line.send("Storage.clearDataForOrigin", {"origin": origin, "storageTypes": "all"})
    line.send("Page.resetNavigationHistory")
    line.detach()
    context.clear_cookies()
    page.mouse.move(0, 0)
