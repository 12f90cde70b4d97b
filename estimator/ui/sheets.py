"""How does a wide table of ranges stand in the page, readable on a phone and by those who only hear it?

On a narrow screen each row becomes a block of its own, every entry under its heading.
"""

from __future__ import annotations

from html import escape

import streamlit as st

from estimator.report.figures import MINUS
from estimator.report.palette import DARK, LIGHT
from estimator.report.rows import Rows

_RULE = f"border-color:{LIGHT.rule};border-color:light-dark({LIGHT.rule},{DARK.rule})"
_QUIET = f"color:{LIGHT.quiet};color:light-dark({LIGHT.quiet},{DARK.quiet})"

_STYLE = f"""<style>
.sheet{{container-type:inline-size}}
.sheet table{{border-collapse:collapse;table-layout:fixed;width:100%;margin-top:.6rem;
 font-size:.95rem;line-height:1.4;font-variant-numeric:tabular-nums}}
.sheet caption{{text-align:left;font-weight:600;padding:.2rem 0 .4rem}}
.sheet th,.sheet td{{text-align:left;vertical-align:top;font-weight:400;padding:.4rem .9rem .4rem 0;border:0 solid;
 border-bottom-width:1px;{_RULE}}}
.sheet thead th{{font-size:.875rem;vertical-align:bottom;{_QUIET}}}
.sheet tbody th{{font-weight:600}}
.sheet .head{{display:none}}
@container (max-width:860px){{
 .sheet table,.sheet caption,.sheet tbody,.sheet tr,.sheet th,.sheet td{{display:block}}
 .sheet thead{{position:absolute;clip-path:inset(50%);width:1px;height:1px;overflow:hidden}}
 .sheet tr{{border:0 solid;border-bottom-width:1px;padding:.4rem 0;{_RULE}}}
 .sheet th,.sheet td{{border:0;padding:.1rem 0}}
 .sheet td{{display:grid;grid-template-columns:11em 1fr;gap:.6rem}}
 .sheet .head{{display:inline;{_QUIET}}}
}}
</style>"""


def table(sheet: Rows) -> None:
    """Draw one table; its roles are said as well, since a block on a phone would lose them."""
    heads = "".join(f'<th scope="col" role="columnheader">{escape(head)}</th>' for head in sheet.head)
    rows = "".join(_row(sheet.head, row) for row in sheet.rows)
    st.html(
        f'{_STYLE}<div class="sheet"><table role="table"><caption>{escape(sheet.caption)}</caption>'
        f'<thead role="rowgroup"><tr role="row">{heads}</tr></thead><tbody role="rowgroup">{rows}</tbody></table></div>'
    )


def _row(heads: tuple[str, ...], row: tuple[str, ...]) -> str:
    name, *entries = row
    cells = "".join(
        f'<td role="cell"><span class="head" aria-hidden="true">{escape(head)}</span>'
        f"<span>{_unbroken(entry)}</span></td>"
        for head, entry in zip(heads[1:], entries, strict=True)
    )
    return f'<tr role="row"><th scope="row" role="rowheader">{escape(name)}</th>{cells}</tr>'


def _unbroken(entry: str) -> str:
    """A minus sign stays with its number at the end of a line."""
    return escape(entry).replace(MINUS, f"{MINUS}&NoBreak;")
