"""What do tests in a browser share, and what becomes of them where there is none?"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from tests.browser.harness import FLAGS, PATIENCE, Server, chromium, must_have_browser


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Every test that uses the browser carries the mark."""
    for item in items:
        if "browser" in getattr(item, "fixturenames", ()):
            item.add_marker(pytest.mark.browser)


@pytest.fixture(scope="session")
def browser() -> Iterator[Any]:
    """Chromium as installed on this machine."""
    path = chromium()
    if path is None:
        said = "no Chromium here: install it (Debian: apt install chromium) or name it in CHROMIUM to run browser tests"
        if must_have_browser():
            pytest.fail(said)
        pytest.skip(said)
    from playwright.sync_api import expect, sync_playwright

    expect.set_options(timeout=1e3 * PATIENCE)

    with sync_playwright() as playwright:
        found = playwright.chromium.launch(executable_path=path, args=list(FLAGS))
        yield found
        found.close()


@pytest.fixture(scope="session")
def server() -> Iterator[Server]:
    """The dashboard, started once."""
    running = Server()
    running.start()
    yield running
    running.stop()
