"""What does the accessibility engine axe-core find on a page?

The script is the one that the PyPI package axe-playwright-python carries (axe-core, MPL 2.0); nothing is fetched.
"""

from __future__ import annotations

from importlib.resources import files
from typing import Any

from playwright.sync_api import Page

from tests.browser.harness import STILL

RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
SERIOUS = ("serious", "critical")


def findings(page: Page) -> list[str]:
    """Serious and critical findings, one line each: rule, what it means, where."""
    page.mouse.move(0, 0)
    page.wait_for_function(STILL)  # half faded in, words have less contrast than they will have
    script = (files("axe_playwright_python") / "axe.min.js").read_text(encoding="utf-8")
    page.evaluate(script)
    result: dict[str, Any] = page.evaluate(
        "rules => axe.run(document, {runOnly: {type: 'tag', values: rules}, resultTypes: ['violations']})", RULES
    )
    return [
        f"{found['id']}: {found['help']}: {node['target']} {node.get('failureSummary', '')}"
        for found in result["violations"]
        if found["impact"] in SERIOUS
        for node in found["nodes"]
    ]
