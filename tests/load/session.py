"""How does a program visit the dashboard as a browser does, without a browser?

It speaks the dashboard's own messages over its WebSocket: it sends the address with a case in it, and reads what the
page would draw until the server says that the run is over.
"""

from __future__ import annotations

import re
import time
from contextlib import ExitStack, suppress
from html import unescape
from typing import Any

from streamlit.proto.BackMsg_pb2 import BackMsg
from streamlit.proto.ForwardMsg_pb2 import ForwardMsg
from websockets.sync.client import ClientConnection, connect

PATIENCE = 120.0  # s
LARGEST = 50_000_000  # bytes of one message
_ANSWER = '<p class="answer">'
_TAGS = re.compile(r"<[^>]+>")


class Session:
    """One visitor on one connection."""

    def __init__(self, port: int, *, origin: str | None = None, host: str | None = None) -> None:
        headers = {} if host is None else {"Host": host}
        self._held = ExitStack()
        opening: Any = connect(
            f"ws://127.0.0.1:{port}/_stcore/stream",
            subprotocols=["streamlit"],  # type: ignore[list-item]
            origin=origin,  # type: ignore[arg-type]
            additional_headers=headers,
            max_size=LARGEST,
            open_timeout=PATIENCE,
        )
        self.channel: ClientConnection = self._held.enter_context(opening)
        self._kept: dict[str, Any] = {}
        self.first = 0.0  # s from asking until the first look at the answer, of what was asked last

    def close(self) -> None:
        """Leave."""
        with suppress(Exception):
            self._held.close()

    def opened(self, case: str, page: str = "") -> list[str]:
        """The pieces of HTML that the page draws for the case of a link, in the order of drawing; page: its address."""
        wanted = BackMsg()
        wanted.rerun_script.query_string = f"case={case}" if case else ""
        wanted.rerun_script.page_name = page
        self.channel.send(wanted.SerializeToString())
        begun, self.first = time.monotonic(), 0.0
        drawn: list[str] = []
        while True:
            message = ForwardMsg()
            message.ParseFromString(self.channel.recv(timeout=PATIENCE, decode=False))
            if message.WhichOneof("type") == "ref_hash":
                message = self._kept[message.ref_hash]
            elif message.hash:
                self._kept[message.hash] = message
            kind = message.WhichOneof("type")
            if kind == "delta":
                drawn += _html(message)
                if not self.first and drawn and _ANSWER in drawn[-1]:
                    self.first = time.monotonic() - begun
            elif kind == "session_event" and message.session_event.WhichOneof("type") == "script_compilation_exception":
                raise RuntimeError("the page's script does not compile")
            elif kind == "script_finished":
                if message.script_finished == ForwardMsg.FINISHED_SUCCESSFULLY:
                    return drawn
                if message.script_finished == ForwardMsg.FINISHED_WITH_COMPILE_ERROR:
                    raise RuntimeError("the page's script does not compile")


def _html(message: ForwardMsg) -> list[str]:
    element = message.delta.new_element
    kind = element.WhichOneof("type")
    if kind == "exception":
        raise RuntimeError(f"the page shows a traceback: {element.exception.message}")
    return [element.html.body] if kind == "html" else []


def answer_in(drawn: list[str]) -> str:
    """The page's last answer, as words: the one that stands once all cases have been tried."""
    body = [body for body in drawn if 'class="answer"' in body][-1]
    return unescape(_TAGS.sub("", body)).strip()
