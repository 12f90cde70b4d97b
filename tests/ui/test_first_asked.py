"""What does a server that was started anew make of the first request of a page that still stands in a browser?"""

from __future__ import annotations

from typing import Any

import pytest
from streamlit.proto.BackMsg_pb2 import BackMsg

from estimator.ui.first_asked import WholePageFirst


def _request(part: str = "", area: float = 60.0) -> bytes:
    message = BackMsg()
    message.rerun_script.fragment_id = part
    message.rerun_script.query_string = "case=1.x"
    message.rerun_script.widget_states.widgets.add(id="area", double_value=area)
    return bytes(message.SerializeToString())


def _other() -> bytes:
    message = BackMsg()
    message.app_heartbeat = True
    return bytes(message.SerializeToString())


def _reached(*sent: dict[str, Any], kind: str = "websocket") -> list[dict[str, Any]]:
    """What arrives behind the door of what is sent before it."""
    waiting, arrived = list(sent), []

    async def receive() -> dict[str, Any]:
        return waiting.pop(0)

    async def app(scope: Any, receive: Any, send: Any) -> None:
        arrived.extend([await receive() for _ in sent])

    with pytest.raises(StopIteration):  # nothing here waits for anything: it ends at the first step
        WholePageFirst(app)({"type": kind}, receive, None).send(None)
    return arrived


def _bytes(said: bytes) -> dict[str, Any]:
    return {"type": "websocket.receive", "bytes": said}


def test_the_first_request_is_for_the_whole_page_and_keeps_what_the_fields_hold() -> None:
    (first,) = _reached(_bytes(_request("part")))
    assert first["bytes"] == _request()


def test_every_later_request_is_as_it_was() -> None:
    sent = [_bytes(_request("part")), _bytes(_request("part", 70.0)), _bytes(_request())]
    assert _reached(*sent)[1:] == sent[1:]


def test_what_asks_for_nothing_to_be_drawn_does_not_count_as_a_request() -> None:
    before = [
        {"type": "websocket.connect"},
        {"type": "websocket.receive", "text": "x"},
        _bytes(b"\xff\xff"),
        _bytes(_other()),
    ]
    arrived = _reached(*before, _bytes(_request("part")))
    assert arrived[:-1] == before
    assert arrived[-1]["bytes"] == _request()


def test_nothing_but_that_connection_is_touched() -> None:
    sent = [_bytes(_request("part"))]
    assert _reached(*sent, kind="http") == sent
