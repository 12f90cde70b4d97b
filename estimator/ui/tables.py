"""How does a small table stand in the page, readable on a phone and to those who do not see it?

As a real table with caption and headers; where it is wider than the screen it scrolls by itself, also by keyboard.
"""

from __future__ import annotations

from collections.abc import Iterable
from html import escape

import streamlit as st

from estimator.report.figures import MINUS
from estimator.report.palette import DARK, LIGHT
from estimator.report.rows import Rows

_RULE = f"border-bottom:1px solid {LIGHT.rule};border-bottom-color:light-dark({LIGHT.rule},{DARK.rule})"
_QUIET = f"color:{LIGHT.quiet};color:light-dark({LIGHT.quiet},{DARK.quiet})"

RULES = f"""\
.rows{{margin:0 0 1.4rem;max-width:72rem}}
.rows div{{overflow-x:auto}}
.rows table{{border-collapse:collapse;width:100%;font-size:.875rem;line-height:1.4;font-variant-numeric:tabular-nums}}
.rows figcaption{{font-size:1rem;line-height:1.4;font-weight:600;padding:0 0 .15rem}}
.rows figcaption span{{display:block;font-size:.875rem;font-weight:400;max-width:60em;{_QUIET}}}
.rows th,.rows td{{text-align:right;vertical-align:top;padding:.3rem 0 .3rem 1rem;border:0;{_RULE}}}
.rows th{{font-weight:400;{_QUIET}}}
.rows td{{white-space:nowrap}}
.rows .words{{text-align:left;padding:.3rem .5rem .3rem 0;white-space:normal}}
.rows .words:not(:first-child){{padding-left:1rem}}
.rows td.words{{min-width:9rem}}
@media (max-width:640px){{
 .rows th,.rows td{{padding-left:.45rem;white-space:normal}}
 .rows .words:not(:first-child){{padding-left:.7rem}}
 .rows td.words{{min-width:4.2rem}}
 .rows td.words:first-child{{min-width:5.5rem}}
}}"""
"""Of style, for every page once."""


def show(*tables: Rows) -> None:
    """Draw tables one below the other."""
    st.html(many_as_html(*tables))


def many_as_html(*tables: Rows) -> str:
    """The same, to be sent with more of its kind."""
    return "".join(as_html(table) for table in tables)


def as_html(table: Rows) -> str:
    """One table; the first column names the row."""
    note = f"<span>{escape(table.note)}</span>" if table.note else ""
    head = _row(table, "th", table.head, scope="col")
    body = "".join(_row(table, "td", cells) for cells in table.rows)
    name = escape(table.caption, quote=True)
    return (
        f'<figure class="rows"><figcaption>{escape(table.caption)}{note}</figcaption>'
        f'<div role="region" tabindex="0" aria-label="{name}, scrolls sideways"><table aria-label="{name}">'
        f"<thead>{head}</thead><tbody>{body}</tbody></table></div></figure>"
    )


def unbroken(entry: str) -> str:
    """An entry whose minus sign stays with its number at the end of a line."""
    return escape(entry).replace(MINUS, f"{MINUS}&NoBreak;")


def _row(table: Rows, tag: str, cells: Iterable[str], *, scope: str = "") -> str:
    told = f' scope="{scope}"' if scope else ""
    made = (
        f"<{tag}{told} class=words>{unbroken(cell)}</{tag}>"
        if column in table.words
        else f"<{tag}{told}>{escape(cell)}</{tag}>"
        for column, cell in enumerate(cells)
    )
    return f"<tr>{''.join(made)}</tr>"
