"""What stands on the screen before the dashboard's scripts have come, and where do they find their server?

The framework's first page is changed in three places. It paints the question on our own ground at once. It does not
load letters that no page uses. And it says where the server is: opened at the address of a page, the scripts would else
ask for the server below that page first, and leave two failed requests in the browser's log.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from html import escape
from typing import Any

from estimator.report.palette import DARK, LIGHT, SERIF_STACK
from estimator.ui.link import PARAMETER

_PRELOAD = re.compile(r'<link\s+rel="preload"\s+href="\./static/media/SourceSans[^>]*>')
_TITLE = re.compile(r"<title>[^<]*</title>")
_BODY = re.compile(r'(<div id="root">)(</div>)')


def opened(page: str, *, title: str, addresses: tuple[str, ...]) -> str:
    """The framework's first page as ours. addresses: of all pages, without a stroke."""
    known = "|".join(re.escape(address) for address in addresses if address)
    where = f"location.origin+location.pathname.replace(new RegExp({json.dumps(f'({known})/?$')}),'')"
    colours = (
        f"body{{background:{LIGHT.ground};color:{LIGHT.ink}}}"
        f"@media(prefers-color-scheme:dark){{body{{background:{DARK.ground};color:{DARK.ink}}}}}"
        f".at-first{{font:500 1.6rem/1.3 {SERIF_STACK};padding:18vh 8vw;margin:0}}"
        ".at-first span{display:block;font:1rem/1.5 system-ui,sans-serif;opacity:.8;padding-top:.6rem}"
    )
    head = (
        f"<title>{escape(title)}</title><style>{colours}</style>"
        f"<script>window.__streamlit={{BACKEND_BASE_URL:{where}}}</script>"
    )
    first = f'<p class="at-first">{escape(title)}<span>Working it out.</span></p>'
    page = _TITLE.sub(lambda _: head, _PRELOAD.sub("", page), count=1)
    page = page.replace('<html lang="en">', '<html lang="en-GB">', 1)
    return _BODY.sub(lambda found: f"{found[1]}{first}{found[2]}", page, count=1)


class FrontDoor:
    """Changes the answer at the address of every page, and nothing else. came: told of whoever brings no case along."""

    def __init__(self, app: Any, *, title: str, addresses: tuple[str, ...], came: Callable[[], None]) -> None:
        self.app, self.title, self.addresses, self.came = app, title, addresses, came

    async def __call__(self, scope: Any, receive: Any, send: Any) -> None:
        if scope["type"] != "http" or scope["path"].rsplit("/", 1)[-1] not in ("", *self.addresses):
            await self.app(scope, receive, send)
            return
        if f"{PARAMETER}=".encode() not in scope["query_string"]:
            self.came()
        # Packed once, outside of here: what comes from within has to be readable.
        scope = {**scope, "headers": [pair for pair in scope["headers"] if pair[0] != b"accept-encoding"]}
        begun: dict[str, Any] | None = None
        held = b""

        async def sending(message: Any) -> None:
            nonlocal begun, held
            if message["type"] == "http.response.start" and _is_html(message):
                begun = message
                return
            if begun is None or message["type"] != "http.response.body":
                await send(message)
                return
            held += message.get("body", b"")
            if message.get("more_body"):
                return
            body = opened(held.decode("utf-8"), title=self.title, addresses=self.addresses).encode() if held else b""
            await send(_of_length(begun, len(body)) if body else begun)
            await send({"type": "http.response.body", "body": body})

        await self.app(scope, receive, sending)


def _is_html(message: Any) -> bool:
    headers = dict(message.get("headers", []))
    return message["status"] == 200 and headers.get(b"content-type", b"").startswith(b"text/html")


def _of_length(message: Any, length: int) -> Any:
    """The same answer of another length, without the marks by which a browser would keep the framework's own page."""
    dropped = (b"content-length", b"etag", b"last-modified", b"accept-ranges")
    kept = [(name, value) for name, value in message.get("headers", []) if name.lower() not in dropped]
    return {**message, "headers": [*kept, (b"content-length", str(length).encode())]}
