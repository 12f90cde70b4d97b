"""How does a reader get from one question to the next?

One row of links above every page, wrapped on a phone. Each carries what the address of the page says at the moment it
is used, also into another window; so the row stands while figures change, and costs nothing when they do.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import streamlit as st

from estimator.ui.readers import READERS, reader

_SITE = Path(__file__).parent / "site"
_ROW = st.components.v2.component(
    "questions",
    js=(_SITE / "questions.js").read_text(encoding="utf-8"),
    css=(_SITE / "questions.css").read_text(encoding="utf-8"),
    isolate_styles=False,
)


def links(pages: Mapping[str, st.Page], *, now: str) -> str | None:
    """The links of this reader, and behind one word those of the others; the address that was just asked for.

    now: address of the page that is shown.
    """
    first = READERS[reader()].pages
    near = [address for address in first if address in pages]
    near += [now] if now not in near else []
    far = [address for address in pages if address not in near]
    row = _ROW(
        data={"near": _named(pages, near), "far": _named(pages, far), "now": now},
        key="questions",
        on_to_change=lambda: None,
    )
    wanted = str(row.to)[1:] if row.to else None  # the first page has no address: a stroke stands before each
    return wanted if wanted in pages else None


def _named(pages: Mapping[str, st.Page], addresses: list[str]) -> list[tuple[str, str]]:
    return [(address, pages[address].title) for address in addresses]
