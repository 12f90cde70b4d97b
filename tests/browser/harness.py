"""How is the dashboard opened in a real browser, and when has it finished drawing?

A run of the page's script has finished when the server says so on the WebSocket; attributes of the page alone report it
too early. Everything is read by what a person sees: labels, roles, words.
"""

from __future__ import annotations

import contextlib
import os
import shutil
import socket
import subprocess
import sys
import tempfile
import time
import urllib.request
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import IO

from google.protobuf.message import DecodeError  # type: ignore[import-untyped]
from playwright.sync_api import Page, WebSocket, expect
from streamlit.proto.ForwardMsg_pb2 import ForwardMsg

from estimator.ui.shell import TITLE

ROOT = Path(__file__).resolve().parents[2]
FLAGS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-sync",
    "--disable-background-networking",
    "--disable-component-update",
)
NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "msedge")
PATIENCE = 120.0  # s; how long a busy machine may take decides nothing
_LOOK = 30.0  # ms between two looks whether a page is drawn; each takes work from the drawing
WHOLE = (ForwardMsg.FINISHED_SUCCESSFULLY, ForwardMsg.FINISHED_FRAGMENT_RUN_SUCCESSFULLY)
"""Ends of a run after which no other follows by itself."""
SETTLED = """() => {
  const app = document.querySelector('[data-testid=stApp]');
  return app && app.dataset.testConnectionState === 'CONNECTED' && app.dataset.testScriptState === 'notRunning'
    && !document.querySelector('#at-sight,[data-testid=stElementContainer][data-stale=true],[data-testid=stSkeleton]');
}"""
TOLD = """() => {
  const line = document.querySelector('[data-case]');
  return !line || line.dataset.case === (new URLSearchParams(location.search).get('case') ?? '');
}"""
"""The address has the case that the page shows: it follows a moment after what was drawn."""
STILL = """() => document.getAnimations().every(
  one => one.playState !== 'running' || one.effect?.getComputedTiming().endTime === Infinity)"""
TWO_FRAMES = "() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))"


def chromium() -> str | None:
    """Path of the browser that is installed here, None where there is none."""
    named = os.environ.get("CHROMIUM")
    found = [shutil.which(name) for name in ([named] if named else NAMES)]
    return next((path for path in found if path), None)


def must_have_browser() -> bool:
    """Whether a missing browser is a failure here, as on the machine that decides what is accepted."""
    return bool(os.environ.get("CI")) or os.environ.get("ESTIMATOR_NEEDS_BROWSER") == "1"


@dataclass(slots=True)
class Server:
    """The dashboard on a port of its own; it can be stopped and started again on the same port.

    installed: the folder of an installed package, which starts it by its own command, from that folder.
    """

    script: str = "app.py"
    installed: Path | None = None
    port: int = field(default=0)
    process: subprocess.Popen[bytes] | None = None
    said: IO[bytes] | None = None

    @property
    def url(self) -> str:
        """Address of the dashboard."""
        return f"http://127.0.0.1:{self.port}"

    def start(self) -> None:
        """Start it in one of the ways of the README, and wait until it answers."""
        if not self.port:
            with socket.socket() as probe:
                probe.bind(("127.0.0.1", 0))
                self.port = probe.getsockname()[1]
        command = [sys.executable, "-m", "streamlit", "run", self.script, f"--server.port={self.port}"]
        folder, environment = ROOT, dict(os.environ)
        if self.installed is not None:
            command = [sys.executable, "-m", "estimator", "dashboard", f"--port={self.port}"]
            folder, environment["PYTHONPATH"] = self.installed, str(self.installed)
        self.said = tempfile.TemporaryFile()  # noqa: SIM115 -- open as long as the server writes
        self.process = subprocess.Popen(
            command, cwd=folder, env=environment, stdout=self.said, stderr=subprocess.STDOUT
        )
        end = time.monotonic() + PATIENCE
        while time.monotonic() < end:
            if self.process.poll() is not None:
                self.said.seek(0)
                raise RuntimeError(f"the dashboard stopped: {self.said.read().decode(errors='replace')[-2000:]}")
            with (
                contextlib.suppress(OSError),
                urllib.request.urlopen(f"{self.url}/_stcore/health", timeout=1) as answer,
            ):
                if answer.read() == b"ok":
                    return
            time.sleep(0.05)
        raise TimeoutError("the dashboard did not start")

    def kill(self) -> None:
        """End it at once, as a crash does."""
        if self.process is not None:
            self.process.kill()
        self.stop()

    def stop(self) -> None:
        """Stop it."""
        if self.process is not None:
            self.process.terminate()
            self.process.wait(15)
            self.process = None
        if self.said is not None:
            self.said.close()
            self.said = None


class Visit:
    """One page in the browser, with what it asked of the network and what went wrong."""

    def __init__(self, page: Page, url: str) -> None:
        self.page, self.url = page, url
        self.finished = 0
        self.errors: list[str] = []
        self.outside: list[str] = []
        self._heard: list[tuple[str, Callable[..., None]]] = []
        self.hear("websocket", self._listen)
        self.hear("pageerror", lambda error: self.errors.append(str(error)))
        self.hear("console", lambda said: self.errors.append(said.text) if said.type == "error" else None)
        self.hear("request", lambda asked: None if self._at_home(asked.url) else self.outside.append(asked.url))

    def hear(self, event: str, listener: Callable[..., None]) -> None:
        """Listen to the page until the visit ends."""
        self.page.on(event, listener)  # type: ignore[call-overload]
        self._heard.append((event, listener))

    def leave(self) -> None:
        """Hear of nothing more."""
        for event, listener in self._heard:
            self.page.remove_listener(event, listener)

    def _at_home(self, url: str) -> bool:
        return url.startswith((self.url, self.url.replace("http", "ws", 1), "data:", "blob:", "about:"))

    def _listen(self, channel: WebSocket) -> None:
        channel.on("framereceived", self._frame)

    def _frame(self, payload: bytes | str) -> None:
        if isinstance(payload, bytes):
            message = ForwardMsg()
            with contextlib.suppress(DecodeError):
                message.ParseFromString(payload)
                self.finished += message.WhichOneof("type") == "script_finished" and message.script_finished in WHOLE

    def after(self, action: Callable[[], object]) -> None:
        """Do something that makes the page draw anew, and wait until it has and the address says so."""
        self.drawn(action)
        self.page.wait_for_function(TOLD)

    def drawn(self, action: Callable[[], object]) -> None:
        """Do something that makes the page draw anew, and wait until it has."""
        before, end = self.finished, time.monotonic() + PATIENCE
        action()
        while self.finished <= before:
            if time.monotonic() > end:
                raise TimeoutError("the page did not finish drawing")
            self.page.wait_for_timeout(_LOOK)
        self.page.evaluate(TWO_FRAMES)
        self.page.wait_for_function(SETTLED)

    def open(self, path: str = "/") -> None:
        """Open an address of the dashboard: it is a question, and the one marked among all of them."""
        self.after(lambda: self.page.goto(self.url + path))
        assert self.page.title() == TITLE
        assert self.page.locator("h1").inner_text().endswith("?")
        assert self.page.locator("nav a[aria-current=page]").count() == 1

    def unfold(self, title: str) -> None:
        """Open a fold by the beginning of its headline, and wait until it stands open."""
        self.page.locator("summary", has_text=title).click()
        self.page.locator("details[open] > summary", has_text=title).wait_for()
        self.page.wait_for_function(STILL)

    def restarted(self, server: Server) -> None:
        """The server ends and begins anew, and the page comes back to it by itself."""
        server.stop()
        expect(self.page.get_by_test_id("stApp")).not_to_have_attribute("data-test-connection-state", "CONNECTED")
        server.start()
        self.page.wait_for_function(SETTLED)

    def go(self, label: str) -> None:
        """Go to a page by its link, as people do on a desk and on a phone."""
        link = self.page.get_by_role("navigation", name="Questions").get_by_role("link", name=label, exact=True)
        if not link.is_visible():
            self.page.get_by_role("button", name="More").click()
        self.after(link.click)

    def type(self, label: str, text: str) -> None:
        """Type into the field of that label and leave it by Enter."""
        box = self.page.get_by_label(label, exact=True)
        box.fill(text)
        self.after(lambda: box.press("Enter"))

    def choose(self, label: str, option: str) -> None:
        """Choose from the list of that label; a click as long as a person's, since the list opens under the pointer."""
        self.page.get_by_role("combobox", name=label).click(delay=100)
        self.after(lambda: self.page.get_by_role("option", name=option, exact=True).click())

    def undo(self, done: str) -> None:
        """Take back the last change, which the page names like this."""
        self.page.locator(".undone", has_text=done).wait_for()
        self.after(self.page.get_by_role("button", name="Undo", exact=True).click)

    def answer(self) -> str:
        """The page's answer, in its words."""
        return self.page.locator("p.answer").inner_text()

    def sideways(self) -> int:
        """By how many pixels the page is wider than the screen."""
        return int(self.page.evaluate("() => document.documentElement.scrollWidth - innerWidth"))

    def assert_quiet(self) -> None:
        """Nothing went wrong, nothing left this machine, no message of a fault is shown."""
        assert self.errors == []
        assert self.outside == []
        assert self.page.get_by_test_id("stException").count() == 0
        assert self.sideways() <= 0
