"""How soon does the first page answer: after a change, after a start of the server, over a slow line? No part of tests.

`python -m tests.speed` prints a table. Page and least page (`tests/browser/one_chart.py`) take turns, so that ratios
hold on a busy machine where milliseconds do not. A change counts until the first frame with another answer in it.
"""

from __future__ import annotations

import time
from itertools import cycle
from statistics import median

from playwright.sync_api import Browser, CDPSession, Page, sync_playwright

from tests.browser.harness import FLAGS, Server, chromium
from tests.browser.windows import newcomer
from tests.redraw import TRIVIAL, redraw

ROUNDS = 7
LIMIT = 1.5
SLOW_ANSWER, SLOW_PAGE, SLOW_SIZE = 4.0, 8.0, 3.0  # s, s, MB
SLOW_ROUNDS = 5
LINE = {"latency": 60, "downloadThroughput": 10e6 / 8, "uploadThroughput": 10e6 / 8, "offline": False}
SLOWER = 4  # times
BYTES_PER_LETTER = 0.75  # of base64
SAID = "() => [...document.querySelectorAll('p.answer, p.spaced')].map(one => one.innerText).join()"
ANOTHER = f"""words => new Promise(done => {{ const said = {SAID}; const look = () => {{
  const now = said();
  now !== words ? requestAnimationFrame(() => done(performance.now())) : requestAnimationFrame(look); }}; look(); }})"""
WHOLE = "() => { const said = document.querySelector('.basis'); return said && !said.innerText.startsWith('About'); }"
PICTURE = """() => [document, document.getElementById('at-sight')?.shadowRoot].some(
  where => where?.querySelector('p.answer') && [...where.querySelectorAll('.picture img')].some(
    image => image.complete && image.naturalWidth && image.offsetWidth))"""

STOOD = """(() => { const wanted = %s; const look = () => requestAnimationFrame(
  () => wanted() ? requestAnimationFrame(() => { window.stood = performance.now(); }) : look()); look(); })()"""
"""Remembers when what is wanted had been painted [ms since the address was opened]."""

CHART = "() => document.querySelector('.main-svg .trace, .main-svg .plot')"


def change(page: Page, value: str) -> tuple[float, float]:
    """Seconds from Enter until another answer stands there, and until its range is that of all cases."""
    box = page.get_by_label("Floor area, m²", exact=True)
    box.fill(value)
    said, began = page.evaluate(SAID), time.perf_counter()
    box.press("Enter")
    page.evaluate(ANOTHER, said)
    first = time.perf_counter() - began
    page.wait_for_function(WHOLE)
    return first, time.perf_counter() - began


def changes(browser: Browser) -> list[tuple[float, float, float]]:
    """Answer, whole range, and redraw of the least page, in turns [s]."""
    ours, least = Server(), Server(script=TRIVIAL)
    try:
        ours.start()
        least.start()
        with newcomer(browser, ours) as here, newcomer(browser, least) as trivial:
            here.open()
            trivial.drawn(lambda: trivial.page.goto(trivial.url))
            areas = (str(60 + 40 * n + turn) for turn, n in enumerate(cycle((1, 4, 0, 5))))  # none asked for before
            return [
                (*change(here.page, area), redraw(trivial, "Size", size))
                for _, area, size in zip(range(ROUNDS + 1), areas, cycle(("10", "20")), strict=False)
            ][1:]
    finally:
        ours.stop()
        least.stop()


def after_start(browser: Browser, server: Server, wanted: str) -> float:
    """Seconds from the start of the server until the first visitor sees a complete answer."""
    began = time.perf_counter()
    server.start()
    try:
        with newcomer(browser, server) as here:
            here.page.goto(server.url)
            here.page.locator(wanted).first.wait_for()
            if wanted.startswith("p.answer"):
                here.page.wait_for_function(WHOLE)
            return time.perf_counter() - began
    finally:
        server.stop()


def slow_line(browser: Browser, server: Server, wanted: str) -> tuple[float, float, float]:
    """Seconds to what is wanted, seconds to the whole page, megabytes received, on a slow line and processor.

    wanted: what of the page, as a function of it, says that the answer stands there.
    """
    with newcomer(browser, server, phone=True) as here:
        line = here.page.context.new_cdp_session(here.page)
        received = _counted(line)
        line.send("Network.emulateNetworkConditions", LINE)
        line.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
        here.page.add_init_script(STOOD % wanted)
        began = time.perf_counter()
        here.after(lambda: here.page.goto(server.url, wait_until="commit"))
        whole = time.perf_counter() - began
        return here.page.evaluate("stood") / 1e3, whole, sum(received) / 1e6


def slow_lines(browser: Browser) -> tuple[tuple[float, float, float], float]:
    """Of our page the medians, and of the least page the median until its chart stands there, in turns."""
    ours, least = Server(), Server(script=TRIVIAL)
    try:
        for server, wanted in ((ours, PICTURE), (least, CHART)):
            server.start()
            slow_line(browser, server, wanted)
        pairs = [(slow_line(browser, ours, PICTURE), slow_line(browser, least, CHART)[0]) for _ in range(SLOW_ROUNDS)]
        answer, page, size = (median(found[i] for found, _ in pairs) for i in range(3))
        return (answer, page, size), median(beside for _, beside in pairs)
    finally:
        ours.stop()
        least.stop()


def _counted(line: CDPSession) -> list[float]:
    received: list[float] = []
    line.send("Network.enable")
    line.on("Network.loadingFinished", lambda event: received.append(event["encodedDataLength"]))
    line.on(
        "Network.webSocketFrameReceived", lambda event: received.append(len(event["response"]["payloadData"]) * 0.75)
    )
    return received


def main() -> None:
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium(), args=list(FLAGS))
        first, whole, least = (median(row[i] for row in changes(browser)) for i in range(3))
        starts = [
            (after_start(browser, Server(), "p.answer"), after_start(browser, Server(script=TRIVIAL), ".main-svg"))
            for _ in range(3)
        ]
        ours, trivial = (median(pair[i] for pair in starts) for i in (0, 1))
        (answer, page, size), beside_slow = slow_lines(browser)
        browser.close()
    rows = (
        ("another answer after a change", f"{1e3 * first:.0f} ms", f"{1e3 * least:.0f} ms", first / least, LIMIT),
        ("whole range after a change", f"{1e3 * whole:.0f} ms", "", whole, 1.5),
        ("complete answer after a start", f"{ours:.2f} s", f"{trivial:.2f} s", ours / trivial, LIMIT),
        ("slow line: answer and picture", f"{answer:.1f} s", f"{beside_slow:.1f} s", answer, SLOW_ANSWER),
        ("slow line: whole page", f"{page:.1f} s", "", page, SLOW_PAGE),
        ("slow line: received", f"{size:.2f} MB", "", size, SLOW_SIZE),
    )
    print("| what | first page | least page | counts as | limit |\n|---|---|---|---|---|")
    for what, measured, beside, counts, limit in rows:
        print(
            f"| {what} | {measured} | {beside} | {counts:.2f} | {limit:g}: {'holds' if counts <= limit else 'FAILS'} |"
        )


if __name__ == "__main__":
    main()
