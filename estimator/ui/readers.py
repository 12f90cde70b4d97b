"""Who is reading, and which questions does each reader meet first?

The case and every figure are the same for all of them: a reader changes only what is shown, and in which order.
"""

from __future__ import annotations

from dataclasses import dataclass

import streamlit as st

from estimator.ui.outside import Said


@dataclass(frozen=True, slots=True)
class Reader:
    """A reader: what they say of themselves, and the addresses of their first pages in order."""

    words: str
    pages: tuple[str, ...]


_EVERY = ("", "compare", "tight", "years", "sure", "fit", "weather", "many", "worked", "paper", "trust")
READERS = {
    "advice": Reader("I advise on it", _EVERY),
    "home": Reader("I live here", ("", "compare", "years", "sure", "paper", "trust")),
    "fitting": Reader("I fit it", ("tight", "fit", "weather", "", "worked")),
}
WHO = Said("for", "advice", tuple(READERS))


def reader() -> str:
    """Who is reading now."""
    return WHO.now()


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
        on_change=lambda: WHO.say(st.session_state["reader:choice"]),
    )
