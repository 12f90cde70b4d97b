"""What if a browser's first request on a new connection is for a part of the page that the server has never drawn?

So it is after the server was started anew: the page in the browser still stands, its field asks for the parts that
follow it, and the framework drops a request for parts it does not know, the change with it. The first request of every
connection is therefore one for the whole page; what the fields hold comes with it all the same.
"""

from __future__ import annotations

from typing import Any

from google.protobuf.message import DecodeError
from streamlit.proto.BackMsg_pb2 import BackMsg


class WholePageFirst:
    """Widens the first request of every connection, and passes everything else as it is."""

    def __init__(self, app: Any) -> None:
        self.app = app

    async def __call__(self, scope: Any, receive: Any, send: Any) -> None:
        if scope["type"] != "websocket":
            await self.app(scope, receive, send)
            return
        drawn = False

        async def receiving() -> Any:
            nonlocal drawn
            message = await receive()
            said = message.get("bytes") if message["type"] == "websocket.receive" else None
            if drawn or said is None:
                return message
            wide = widened(said)
            drawn = wide is not None
            return message if wide is None else {**message, "bytes": wide}

        await self.app(scope, receiving, send)


def widened(said: bytes) -> bytes | None:
    """The same request for the whole page; None where nothing is asked to be drawn. said: as the browser sends it."""
    message = BackMsg()
    try:
        message.ParseFromString(said)
    except DecodeError:
        return None  # the framework says what is wrong with it
    if message.WhichOneof("type") != "rerun_script":
        return None
    message.rerun_script.ClearField("fragment_id")
    return message.SerializeToString()
