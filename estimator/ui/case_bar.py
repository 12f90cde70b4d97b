"""How is the case kept, opened, taken back and passed on, from every page?"""

from __future__ import annotations

import streamlit as st

from estimator.errors import InputFaults
from estimator.inputs.casefile import case_from_text, case_to_dict, case_to_toml
from estimator.inputs.plaintext import text_of_bytes
from estimator.ui import measure, readers, state
from estimator.ui.fields import escaped
from estimator.ui.tree import EMPTY

_OPENED = "case_bar:opened"  # counts files, so that each finds an empty field
_LONGEST_TITLE = 120

_KEEPS = (
    "The address of this page holds the whole case: keep it, or send it. Names stay out of it: the title, names of "
    "your own for options and rooms, the instrument and the date of your prices are only in the file. In the address "
    "they are numbered."
)


def draw() -> None:
    """Reader, undo, and what can be done with the whole case."""
    with st.container(horizontal=True, gap="small", vertical_alignment="center", key="bar", width="content"):
        readers.choose()
        undo()
        with st.popover("Case", key="case", type="secondary"):
            _title()
            _file()
            measure.choose()
            st.markdown(escaped(_KEEPS))
            st.button("Begin anew", on_click=_anew, disabled=state.tree() == EMPTY, key="case:anew")


def tell() -> None:
    """Show what was refused."""
    for fault in state.refused():
        st.error(escaped(str(fault)))


def undo() -> None:
    """Take back the last change, said by its name."""
    steps = state.history().steps
    last = f"Undo: {steps[-1].done}" if steps else "Undo"
    st.button(escaped(last), on_click=state.undo, disabled=not steps, type="tertiary", key="undo")


def _title() -> None:
    st.session_state["case:title"] = state.case().title
    st.text_input("Title, for the file", key="case:title", max_chars=_LONGEST_TITLE, on_change=_titled)


def _titled() -> None:
    state.put({"title": st.session_state["case:title"] or None}, done="title")


def _file() -> None:
    case = state.case()  # here, since the file is written where no session is
    st.download_button(
        "Save as a file",
        data=lambda: case_to_toml(case),
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
        state.refuse(*error.faults)
        return
    state.replace(case_to_dict(read, only_changes=True), done="opened a file")


def _anew() -> None:
    state.replace(EMPTY, done="began anew")
