"""How long until a page has drawn itself anew, beside the least that a page can be? Not part of the tests.

`python -m tests.redraw` moves the house's own leakage; `python -m tests.redraw / "Floor area, m²" 100 120` moves
another input of another page between two values. Both pages stand open in one browser and take turns, so that the
ratio holds on a slow or busy machine where the milliseconds do not. A redraw lasts from Enter until the server has
finished, the page says so and two frames have passed; the address of the page, which follows by itself a moment later,
is not waited for.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Sequence
from itertools import cycle
from statistics import median

from playwright.sync_api import sync_playwright

from estimator.ui.link import PARAMETER, to_link
from estimator.ui.tree import EMPTY, Tree
from tests.browser.harness import FLAGS, Server, Visit, chromium
from tests.browser.windows import newcomer

ROUNDS = 5
LIMIT = 1.5  # times the least page
TRIVIAL = "tests/browser/one_chart.py"
LEAST = ("Size", ("10", "20"))
TESTED: Tree = {**EMPTY, "leakage": {"measure": "q50", "value": 5.0, "basis": "measured"}}
USUAL = (f"/tight?{PARAMETER}={to_link(TESTED)}", "Leakage, m³/(h m²)", "4", "7")


def redraw(here: Visit, label: str, value: str) -> float:
    """Seconds from Enter until the page stands still."""
    box = here.page.get_by_label(label, exact=True)
    box.fill(value)
    began = time.perf_counter()
    here.drawn(lambda: box.press("Enter"))
    return time.perf_counter() - began


def side_by_side(address: str, label: str, values: Sequence[str]) -> list[tuple[float, float]]:
    """Seconds of the page and of the least page, in turns; one round of each first, to warm up."""
    ours, least = Server(), Server(script=TRIVIAL)
    try:
        ours.start()
        least.start()
        with sync_playwright() as playwright:
            browser = playwright.chromium.launch(executable_path=chromium(), args=list(FLAGS))
            with newcomer(browser, ours) as page, newcomer(browser, least) as trivial:
                page.open(address)
                trivial.drawn(lambda: trivial.page.goto(trivial.url))
                taken = [
                    (redraw(page, label, value), redraw(trivial, LEAST[0], small))
                    for _, value, small in zip(range(ROUNDS + 2), cycle(values), cycle(LEAST[1]), strict=False)
                ]
            browser.close()
    finally:
        ours.stop()
        least.stop()
    return taken[2:]


def main() -> None:
    address, label, *values = sys.argv[1:] or USUAL
    taken = side_by_side(address, label, values)
    page, least = (median(pair[i] for pair in taken) for i in (0, 1))
    held = "holds" if page <= LIMIT * least else "FAILS"
    print("| page | input | median of five | least page | ratio | limit |\n|---|---|---|---|---|---|")
    print(
        f"| {address.partition('?')[0]} | {label} | {1000.0 * page:.0f} ms | {1000.0 * least:.0f} ms "
        f"| {page / least:.2f} | {LIMIT:g}: {held} |"
    )


if __name__ == "__main__":
    main()
