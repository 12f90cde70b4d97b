"""In which units does this reader think?

Every figure in words comes from one formatter and every field asks it, so that one choice turns both; the case itself
stays metric, and its currency is an entry of its own.
"""

from __future__ import annotations

import streamlit as st

from estimator.report import figures
from estimator.ui.outside import Said

_WORDS = {"metric": "metric", "imperial": "imperial: ft², cfm, °F, in"}
UNITS = Said("units", "metric", tuple(_WORDS))


def begin() -> None:
    """At the start of every run."""
    UNITS.begin()
    figures.THINKS_IMPERIAL.set(UNITS.now() == "imperial")


def choose() -> None:
    """The choice itself."""
    st.session_state["measure:choice"] = UNITS.now()
    st.selectbox(
        "Units",
        list(_WORDS),
        format_func=_WORDS.__getitem__,
        key="measure:choice",
        filter_mode=None,
        on_change=lambda: UNITS.say(st.session_state["measure:choice"]),
    )
