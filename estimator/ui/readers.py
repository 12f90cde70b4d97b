"""Who is reading, and which questions does each reader meet first?

The case and every figure are the same for all of them: a reader changes only what is shown, and in which order.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import streamlit as st

Who = Literal["advice", "home", "fitting"]

PARAMETER = "for"
_KEY, _SHOWN = "reader", "reader_address"


@dataclass(frozen=True, slots=True)
class Reader:
    """A reader: what they say of themselves, and the addresses of their pages in order; None for all of them."""

    words: str
    pages: tuple[str, ...] | None


READERS: dict[Who, Reader] = {
    "advice": Reader("I advise on it", None),
    "home": Reader("I live here", ("", "compare", "years", "sure", "paper", "trust")),
    "fitting": Reader("I fit it", ("tight", "fit", "weather", "", "worked")),
}
USUAL: Who = "advice"


def reader() -> Who:
    """Who is reading now."""
    return st.session_state.get(_KEY, USUAL)


def begin() -> None:
    """At the start of every run: take the reader that the address names, if it names another than the one shown."""
    named = st.query_params.get(PARAMETER)
    if named in READERS and named != st.session_state.get(_SHOWN):
        st.session_state[_KEY] = named
    st.session_state.setdefault(_KEY, USUAL)


def show_address() -> None:
    """At the end of every run: the address says who is reading, outside the case."""
    named = None if reader() == USUAL else reader()
    st.session_state[_SHOWN] = named
    if named and st.query_params.get(PARAMETER) != named:
        st.query_params[PARAMETER] = named
    elif not named and PARAMETER in st.query_params:
        del st.query_params[PARAMETER]


def choose() -> None:
    """The choice itself."""
    st.session_state["reader:choice"] = reader()
    st.selectbox(
        "Who is reading",
        list(READERS),
        format_func=lambda who: READERS[who].words,
        key="reader:choice",
        label_visibility="collapsed",
        filter_mode=None,
        width=150,
        on_change=_chosen,
    )


def _chosen() -> None:
    st.session_state[_KEY] = st.session_state["reader:choice"]
