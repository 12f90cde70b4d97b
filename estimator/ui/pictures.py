"""How does an SVG picture stand in the page, sharp, named, and in the form that fits its width?

Each picture is sent as an image in two forms; the page shows the one for its own width, and the picture takes the
colours of the scheme around it by itself.
"""

from __future__ import annotations

import base64
from html import escape

import streamlit as st

RULES = """\
.picture{container-type:inline-size}
.picture img{width:100%;height:auto;display:block}
.picture .desk{max-width:1080px}
.picture .phone{display:none;max-width:420px}
@container (max-width:600px){.picture .desk{display:none}.picture .phone{display:block}}"""
"""Of style, for every page once: a stylesheet that comes with a picture has the browser style the whole page anew."""


def picture(*, desk: str, phone: str, alt: str, widest: int | None = None) -> None:
    """Show one picture in the form for a desk or for a phone; widest: in pixels, so that its letters stay letters."""
    st.html(as_html(desk=desk, phone=phone, alt=alt, widest=widest))


def as_html(*, desk: str, phone: str, alt: str, widest: int | None = None) -> str:
    """The same, to be sent with more of its kind."""
    held = f' style="max-width:{widest}px"' if widest else ""
    images = "".join(
        f'<img class="{form}"{held} alt="{escape(alt, quote=True)}" src="data:image/svg+xml;base64,{_packed(svg)}">'
        for form, svg in (("desk", desk), ("phone", phone))
    )
    return f'<div class="picture">{images}</div>'


def _packed(svg: str) -> str:
    return base64.b64encode(svg.encode()).decode()
