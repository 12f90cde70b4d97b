"""What may somebody write where a name is asked for, to harm whoever opens it?"""

from __future__ import annotations

import base64
import json
import re
import zlib
from collections.abc import Iterator
from html.parser import HTMLParser
from typing import Any

SCRIPT = "<script>alert(1)</script>"
IMAGE = "<img src=x onerror=alert(1)>"
ANCHOR = '<a href="https://evil.example">prize</a>'
MARKDOWN = "[prize](https://evil.example) :material/home: $x^2$ **b**"
FORMULA = "=HYPERLINK(A1)"
LABELS = {"today": SCRIPT + IMAGE, "extract": FORMULA + " |pipe", "recovery": ANCHOR + " [x](https://evil.example)"}
TREE: dict[str, Any] = {
    "version": 1,
    "title": SCRIPT,
    "options": {
        "today": {"kind": "intermittent fans", "label": LABELS["today"]},
        "extract": {"kind": "continuous extract", "label": LABELS["extract"]},
        "recovery": {"kind": "heat recovery", "label": LABELS["recovery"]},
    },
    "prices": {"dated": f"{ANCHOR} {IMAGE}"},
}
HARMFUL_TAGS = {"script", "iframe", "object", "embed", "form", "base", "meta", "link"}
OURS = ("data:image/svg+xml", "#")


class Tags(HTMLParser):
    """Every tag and what it carries."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[tuple[str, dict[str, str | None]]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, dict(attrs)))


def harm_in_html(body: str, *, allowed: frozenset[str] = frozenset()) -> list[str]:
    """What a browser would run or fetch, or where it would send a reader, in our own HTML."""
    parser = Tags()
    parser.feed(body)
    found = [tag for tag, _ in parser.found if tag in HARMFUL_TAGS - allowed]
    for tag, carried in parser.found:
        found += [f"{tag} {name}" for name in carried if name.startswith("on")]
        found += [
            f"{tag} {name}={value}"
            for name, value in carried.items()
            if name in ("src", "href", "action", "xlink:href") and not (value or "").startswith(OURS)
        ]
    return found


def texts_in(value: Any) -> Iterator[str]:
    """Every text in a tree of JSON."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for inner in value.values():
            yield from texts_in(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from texts_in(inner)


def live_markdown(text: str) -> bool:
    """Whether a link, a picture or a tag in it would be read as one: a mark without a backslash before it."""
    return re.search(r"(?<!\\)\]\(https?://evil|(?<!\\)<(script|img|a)\b", text) is not None


def packed(tree: object) -> str:
    """A link as a forger would make it, private words and all."""
    return "1." + base64.urlsafe_b64encode(zlib.compress(json.dumps(tree).encode())).decode().rstrip("=")
