"""How does a wide table of ranges stand in the page, readable on a phone and by those who only hear it?

On a narrow screen each row becomes a block of its own, every entry under its heading.
"""

from __future__ import annotations

from html import escape

import streamlit as st

from estimator.report.rows import Rows
from estimator.ui.tables import unbroken


def table(*sheets: Rows) -> None:
    """Draw tables one below the other."""
    st.html("".join(as_html(sheet) for sheet in sheets))


def as_html(sheet: Rows) -> str:
    """One table; its roles are said as well, since a block on a phone would lose them."""
    heads = "".join(f'<th scope="col" role="columnheader">{escape(head)}</th>' for head in sheet.head)
    rows = "".join(_row(sheet.head, row) for row in sheet.rows)
    return (
        f'<div class="sheet"><table role="table"><caption>{escape(sheet.caption)}</caption>'
        f'<thead role="rowgroup"><tr role="row">{heads}</tr></thead><tbody role="rowgroup">{rows}</tbody></table></div>'
    )


def _row(heads: tuple[str, ...], row: tuple[str, ...]) -> str:
    name, *entries = row
    cells = "".join(
        f'<td role="cell" data-head="{escape(head)}">{unbroken(entry)}</td>'
        for head, entry in zip(heads[1:], entries, strict=True)
    )
    return f'<tr role="row"><th scope="row" role="rowheader">{escape(name)}</th>{cells}</tr>'
