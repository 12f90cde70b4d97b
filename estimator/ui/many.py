"""Which table of homes is on screen, and what came out for it?

The table and its results live in the session alone: they stand in no link, cache or log.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import numpy as np
import streamlit as st

from estimator.inputs.casefile import case_to_dict
from estimator.report.stock_said import FILTERS
from estimator.stock.demo import invented
from estimator.stock.held import Held, held, in_steps, table_of
from estimator.stock.homes import base_case
from estimator.stock.reading import CELLS
from estimator.stock.results import figures
from estimator.stock.run import settings_for
from estimator.ui import at_hand, state, style
from estimator.ui.fields import escaped
from estimator.ui.sureness import chosen
from estimator.ui.tree import Tree, with_entry

DEMO_HOMES = 400
PER_PAGE = 10
_TABLE, _FOUND, _OPENED = "many_table", "many_found", "many_opened"
_OWN = ("home", "leakage", "draughts", "rooms", "commissioned", "measured", "tags", "title")


def take(content: bytes | None, name: str) -> None:
    """Another table: an uploaded file, or the invented homes where there is none.

    Raises InputFaults where a file cannot be used; the invented homes then stay.
    """
    mark = None if content is None else (name, hash(content))
    if _TABLE in st.session_state and st.session_state[_TABLE][0] == mark:
        return
    st.session_state[_TABLE] = (None, invented(DEMO_HOMES))
    if content is not None:
        table = table_of(content, name)
        case = state.case()
        settings_for(
            [n for n in table.column_names if n != CELLS], case, at_hand.year(case), recovery=case.baseline
        )  # are the headings right?
        st.session_state[_TABLE] = (mark, table)


def is_demo() -> bool:
    """Whether the homes on screen are the invented ones."""
    return st.session_state[_TABLE][0] is None


def screened() -> Held:
    """The results of the table on screen under the options, prices and weather of the case on screen."""
    case, option = state.case(), chosen("many")
    mark, table = st.session_state[_TABLE]
    year = at_hand.year(case)
    asked = (
        mark,
        option,
        year.temp_air.tobytes(),
        case_to_dict(base_case(case)),
    )  # whose home is on screen does not matter
    kept = st.session_state.get(_FOUND)
    if kept is not None and kept[0] == asked:
        return kept[1]
    names = [name for name in table.column_names if name != CELLS]
    settings = settings_for(names, case, year, recovery=option)
    bar = st.progress(0.0, text="Screening the homes")
    parts = []
    for done, part in in_steps(table, settings):
        parts.append(part)
        bar.progress(done / table.num_rows, text=f"Screening the homes: {done:,} of {table.num_rows:,}")
    bar.empty()
    found = held(table, settings, parts)
    st.session_state[_FOUND] = (asked, found)
    return found


def choose_home(found: Held, rows: list[int]) -> None:
    """One home of those listed to be opened as the case, and below it, aloud, which one was."""
    with st.container(horizontal=True, vertical_alignment="bottom", gap="small"):
        row = st.selectbox("Home to open", rows, format_func=found.name, key="many:home", filter_mode=None, width=260)
        st.button("Open it as the case", key="many:open", on_click=_open_home, args=(found, row))
    title = state.case().title
    if title and st.session_state.get(_OPENED) == title:
        style.aloud(f"{title} is the case now, on every page. Undo brings back the one before.")
        _link_to_case(f"See {escaped(title)}, now the case")


def _open_home(found: Held, row: int) -> None:
    """Open one home as the case: its own entries, with the options and prices of the case on screen."""
    name = found.name(row)
    state.replace(tree_of(state.tree(), found.entries(row), title=name), done=f"opened {name}")
    st.session_state[_OPENED] = name


def tree_of(now: Tree, entries: Mapping[str, Any], *, title: str) -> Tree:
    """The case that is on screen with another home in it."""
    wanted: Tree = {key: value for key, value in now.items() if key not in _OWN}
    for path, value in {"title": title[:120], **entries}.items():
        wanted = with_entry(wanted, path, value)
    return wanted


def listed(found: Held, narrowed: str, named: str) -> np.ndarray:
    """Rows (from 1) that the list shows, the largest net saving first."""
    column, words = FILTERS[narrowed]
    saving = figures(found.stock.settings.case.prices.currency)["net_saving"]
    held_columns = found.columns([column, saving])
    wanted = np.isin(held_columns[column].astype(object), words)
    rows = held_columns["row"][wanted]
    if named:
        rows = np.array([row for row in rows if named.casefold() in found.name(int(row)).casefold()], dtype=int)
    order = np.argsort(-np.nan_to_num(held_columns[saving][rows - 1], nan=-np.inf), kind="stable")
    return rows[order]


def _link_to_case(label: str) -> None:
    """The way from the list to the answer for the case on screen."""
    st.page_link(Path(__file__).parent / "pages" / "worth.py", label=label, query_params=state.address())


def page_of(count: int, *, key: str) -> slice:
    """Which rows of the list are shown: a page of it, chosen where there are several."""
    pages = -(-count // PER_PAGE)
    page = st.number_input(f"Page, of {pages:,}", 1, pages, key=key) if pages > 1 else 1
    return slice(PER_PAGE * (page - 1), PER_PAGE * page)
