"""What stands on the screen before the dashboard's scripts have come, and where do they find their server?

The framework's first page is changed in four places. It paints the question on our own ground at once. It does not
load letters that no page uses. It says where the server is: opened at the address of a page, the scripts would else ask
for the server below that page first, and leave two failed requests in the browser's log. And the page of the answer
comes with that answer (`estimator.ui.at_sight`), which a script takes away once the dashboard has drawn its own; the
framework's style sheet does not hold it back.
"""

from __future__ import annotations

import asyncio
import json
import re
from collections.abc import Callable, Mapping
from html import escape
from pathlib import Path
from typing import Any
from urllib.parse import parse_qsl

from starlette.concurrency import run_in_threadpool

from estimator.report.palette import DARK, LIGHT, SERIF_STACK
from estimator.ui.link import PARAMETER

_PRELOAD = re.compile(r'<link\s+rel="preload"\s+href="\./static/media/SourceSans[^>]*>')
_TITLE = re.compile(r"<title>[^<]*</title>")
_BODY = re.compile(r'(<div id="root">)(</div>)')
_SHEET = re.compile(r'(<link rel="stylesheet")([^>]*>)')
_LETTERS = {"Hanken Grotesk": "hanken-grotesk", "Newsreader": "newsreader"}
_SCRIPT = (Path(__file__).parent / "site" / "at_sight.js").read_text(encoding="utf-8")
_PATIENCE = 0.5  # s; what takes longer comes with the dashboard


def opened(page: str, *, title: str, addresses: tuple[str, ...], answer: str = "") -> str:
    """The framework's first page as ours. addresses: of all pages, without a stroke; answer: HTML before it."""
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
    after = ""
    if answer:
        page = page.replace("</title>", f"</title>{_letters()}", 1)
        page = _SHEET.sub(r"""\1 media="print" onload="this.media='all'"\2""", page)
        shadow = f'<template shadowrootmode="open">{answer}</template>'
        after = f'<div id="at-sight">{shadow}</div><script>{_SCRIPT}</script>'
    return _BODY.sub(lambda found: f"{found[1]}{first}{found[2]}{after}", page, count=1)


def _letters() -> str:
    """The letters of the theme, asked for before the scripts that would ask for them last."""
    said = [(name, f"./app/static/{file}.woff2") for name, file in _LETTERS.items()]
    faces = "".join(
        f'@font-face{{font-family:"{name}";src:url({url}) format("woff2");font-weight:400 700;font-display:swap}}'
        for name, url in said
    )
    links = "".join(f'<link rel="preload" href="{url}" as="font" type="font/woff2" crossorigin>' for _, url in said)
    return f"<style>{faces}</style>{links}"


class FrontDoor:
    """Changes the framework's page at the address of every page, and gives the first page's answer.

    came: told of whoever brings no case along; said: the answer as HTML to the words of an address.
    """

    def __init__(
        self,
        app: Any,
        *,
        title: str,
        addresses: tuple[str, ...],
        came: Callable[[], None],
        said: Callable[[Mapping[str, str]], str],
    ) -> None:
        self.app, self.title, self.addresses, self.came, self.said = app, title, addresses, came, said

    async def __call__(self, scope: Any, receive: Any, send: Any) -> None:
        address = scope["path"].rsplit("/", 1)[-1] if scope["type"] == "http" else None
        if address is None or address not in ("", *self.addresses):
            await self.app(scope, receive, send)
            return
        if f"{PARAMETER}=".encode() not in scope["query_string"]:
            self.came()
        answer = await self._answer(scope) if not address and scope["method"] == "GET" else ""
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
            page = held.decode("utf-8")
            page = page and opened(page, title=self.title, addresses=self.addresses, answer=answer)
            body = page.encode()
            await send(_of_length(begun, len(body)) if body else begun)
            await send({"type": "http.response.body", "body": body})

        await self.app(scope, receive, sending)

    async def _answer(self, scope: Any) -> str:
        """What the first page says; nothing where that takes too long, as when the server has just begun."""
        asked = dict(parse_qsl(scope["query_string"].decode("ascii", "replace")))
        work = asyncio.ensure_future(run_in_threadpool(self.said, asked))
        done, _ = await asyncio.wait((work,), timeout=_PATIENCE)
        return work.result() if done else ""


def _is_html(message: Any) -> bool:
    headers = dict(message.get("headers", []))
    return message["status"] == 200 and headers.get(b"content-type", b"").startswith(b"text/html")


def _of_length(message: Any, length: int) -> Any:
    """The same answer of another length, without the marks by which a browser would keep the framework's own page."""
    dropped = (b"content-length", b"etag", b"last-modified", b"accept-ranges")
    kept = [(name, value) for name, value in message.get("headers", []) if name.lower() not in dropped]
    return {**message, "headers": [*kept, (b"content-length", str(length).encode())]}
