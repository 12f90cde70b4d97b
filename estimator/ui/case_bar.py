"""How is the case kept, opened, taken back and passed on, from every page?"""

from __future__ import annotations

from html import escape
from pathlib import Path

import streamlit as st

from estimator.errors import InputFaults
from estimator.inputs.casefile import case_from_text, case_to_dict, case_to_toml
from estimator.inputs.plaintext import text_of_bytes
from estimator.ui import faults, live, measure, readers, state
from estimator.ui.fields import escaped
from estimator.ui.tree import EMPTY

_OPENED = "case_bar:opened"  # counts files, so that each finds an empty field
_LONGEST_TITLE = 120

_KEEPS = "The address of this page holds the whole case: keep it, or send it."
_LEAVES_OUT = (
    "Names stay out of the address: the title, names of your own for options and rooms, the instrument and the date of "
    "your prices are only in the file. In the address they are numbered."
)
_SITE = Path(__file__).parent / "site"
_COPY = st.components.v2.component(
    "copy",
    js=(_SITE / "copy_link.js").read_text(encoding="utf-8"),
    css=(_SITE / "copy_link.css").read_text(encoding="utf-8"),
    isolate_styles=False,
)


def draw() -> None:
    """Reader, undo, and what can be done with the whole case."""
    with st.container(horizontal=True, gap="small", vertical_alignment="center", key="bar", width="content"):
        readers.choose()
        undo()
        with st.popover("Case", key="case", type="secondary"):
            st.markdown(escaped(_KEEPS))
            _COPY(key="copy")
            _title()
            _file()
            st.markdown(escaped(_LEAVES_OUT))
            measure.choose()
            live.standing(_is_empty)
            st.button("Begin anew", on_click=_anew, disabled=_is_empty(), key="case:anew")


def tell() -> None:
    """Show what was refused."""
    faults.show(state.told())


def undo() -> None:
    """Take back the last change, said by its name."""
    live.standing(_can_undo)
    st.button("Undo", on_click=state.undo, disabled=not _can_undo(), type="tertiary", key="undo")
    live.part(_last_change, last=True)


def _can_undo() -> bool:
    return bool(state.history().steps)


def _last_change() -> str:
    """Its name; the browser takes the case into the address from here, when it has drawn what was asked for."""
    steps = state.history().steps
    if not steps:
        return ""
    return f'<p class="undone" data-case="{escape(state.link_to_show())}">{escape(steps[-1].done)}</p>'


def _title() -> None:
    st.session_state["case:title"] = state.case().title
    live.standing(lambda: state.case().title)
    st.text_input("Title, for the file", key="case:title", max_chars=_LONGEST_TITLE, on_change=_titled)


def _titled() -> None:
    state.put({"title": st.session_state["case:title"] or None}, done="title")


def _file() -> None:
    held = state.held()  # here, since the file is written where no session is
    st.download_button(
        "Save as a file",
        data=lambda: case_to_toml(held.case),
        file_name="case.toml",
        mime="application/toml",
        on_click="ignore",
        key="case:save",
    )
    key = f"case:open:{st.session_state.get(_OPENED, 0)}"
    st.file_uploader("Open a case file", type=["toml", "json"], key=key, on_change=_open, args=(key,))


def _open(key: str) -> None:
    """Take the file's case, or say everything that is wrong with it and change nothing."""
    brought = st.session_state[key]
    if brought is None:
        return
    st.session_state[_OPENED] = st.session_state.get(_OPENED, 0) + 1
    try:
        read = case_from_text(text_of_bytes(brought.getvalue(), name=brought.name), name=brought.name)
    except InputFaults as error:
        state.refuse(*error.faults, whole=True)
        return
    state.replace(case_to_dict(read, only_changes=True), done="opened a file", whole=True)


def _is_empty() -> bool:
    return state.tree() == EMPTY


def _anew() -> None:
    state.replace(EMPTY, done="began anew")
