"""How is a paper read back, so that what was written can be found in it?"""

from __future__ import annotations

import re
from html.parser import HTMLParser

from pypdf import PdfReader

NASTY = "=A1 #name *bold* <script>alert(1)</script> \u202egnp & $x$ \\ [b] \x00\x1b {{ 7*7 }}"
"""A name that is markup, formula, template and reversed text at once."""


def words_of(reader: PdfReader) -> str:
    """All words of a PDF, as `joined` leaves them."""
    return joined(" ".join(page.extract_text() for page in reader.pages))


def joined(text: str) -> str:
    """Without gaps, soft breaks and the hyphens that a line end adds: what is left is what was written."""
    return re.sub(r"[\s\u00a0\u00ad\u2010-]+", "", text)


class Page(HTMLParser):
    """The words and tags of a page for a browser."""

    def __init__(self, written: str) -> None:
        super().__init__()
        self.text: list[str] = []
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.feed(written)

    def handle_data(self, data: str) -> None:
        """Words between two tags."""
        self.text.append(data)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """A tag with its attributes."""
        self.tags.append((tag, dict(attrs)))


def harmless(page: Page) -> None:
    """Nothing in the page runs, and nothing is asked of anybody."""
    assert not any(tag in ("script", "iframe", "object", "link", "form") for tag, _ in page.tags)
    assert not any(name.startswith("on") for _, attributes in page.tags for name in attributes)
    asked = [value for _, attributes in page.tags for name, value in attributes.items() if name in ("src", "href")]
    assert asked == []
    policy = next(a["content"] for tag, a in page.tags if tag == "meta" and a.get("http-equiv"))
    assert (policy or "").startswith("default-src 'none'")
