"""How does a page lead on to another question that its reader is likely to ask next?"""

from __future__ import annotations

from pathlib import Path

import streamlit as st

from estimator.ui import measure, readers, state, takes

_PAGES = Path(__file__).parent / "pages"
WHAT_IT_TAKES = "What would it take to pay back?"


def carried() -> dict[str, str]:
    """What the address of every page says."""
    return {**state.address(), **readers.WHO.carried(), **measure.UNITS.carried()}


def onward() -> None:
    """The question, to be pressed; it takes along the case as it is then, also where only parts of a page are drawn."""
    if st.button(WHAT_IT_TAKES, key="onward:takes", type="tertiary"):
        takes.ask()
        st.switch_page(_PAGES / "sure.py", query_params=carried())
