"""How is the dashboard served: small on a slow line, and closed towards every other host?"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any

from starlette.middleware import Middleware
from starlette.middleware.gzip import GZipMiddleware

from estimator.ui import ahead
from estimator.ui.first_asked import WholePageFirst
from estimator.ui.front_door import FrontDoor
from estimator.ui.shell import PAGES, TITLE

SCRIPT = Path(__file__).parent / "site" / "start.py"

_HEADERS = {
    # Scripts of the framework need eval for their charts; nothing is ever asked of another host.
    "content-security-policy": (
        "default-src 'self'; script-src 'self' 'unsafe-inline' 'unsafe-eval' blob:; style-src 'self' 'unsafe-inline'; "
        "img-src 'self' data: blob:; font-src 'self' data:; connect-src 'self' ws: wss: data: blob:; "
        "worker-src 'self' blob:; frame-src 'self' blob: data:; object-src 'none'; base-uri 'self'; form-action 'self'"
    ),
    "x-content-type-options": "nosniff",
    "referrer-policy": "no-referrer",  # the case stands in the address
}


class Headers:
    """Adds the same headers to every answer."""

    def __init__(self, app: Any) -> None:
        self.app = app

    async def __call__(self, scope: Any, receive: Any, send: Any) -> None:
        async def sending(message: Any) -> None:
            if message["type"] == "http.response.start":
                added = [(name.encode(), value.encode()) for name, value in _HEADERS.items()]
                message = {**message, "headers": [*message.get("headers", []), *added]}
            await send(message)

        await self.app(scope, receive, sending)


_TURN = 0.0005  # s; a tenth of what is usual


def take_short_turns() -> None:
    """What is drawn goes to the browser while the rest of the page is worked out, where Python would let it wait."""
    sys.setswitchinterval(_TURN)


def middleware() -> list[Middleware]:
    """What stands between the network and the dashboard."""
    addresses = tuple(address for _, _, address in PAGES)
    return [
        Middleware(Headers),
        Middleware(GZipMiddleware, minimum_size=1024, compresslevel=6),
        Middleware(WholePageFirst),
        Middleware(FrontDoor, title=TITLE, addresses=addresses, came=ahead.begin, said=ahead.said),
    ]
