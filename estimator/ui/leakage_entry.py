"""Whose figure stands in the field of the leakage: that of a test, or ours until somebody types one?

Whoever says that the house was tested is offered the estimate to write over. Until then it is no test.
"""

from __future__ import annotations

from typing import Any

import streamlit as st

from estimator.ui import live, state, style
from estimator.ui.tree import entry

_OFFERED = "leakage:offered"  # measure, value, and whether a test was spoken of
TYPED: dict[str, Any] = {"leakage.basis": "measured"}
"""What else a figure says that is typed where a test is spoken of."""


def offer(measure: str, value: float, *, tested: bool) -> dict[str, Any]:
    """Changes of the case that put a figure of ours into the field."""
    st.session_state[_OFFERED] = (measure, value, tested)
    return {"leakage.measure": measure, "leakage.value": value, "leakage.basis": "assumed"}


def is_ours() -> bool:
    """Whether the figure in the field was offered, not typed."""
    measure, value, _ = st.session_state.get(_OFFERED, (None, None, False))
    tree = state.tree()
    return measure is not None and (entry(tree, "leakage.measure"), entry(tree, "leakage.value")) == (measure, value)


def awaited() -> bool:
    """Whether a test was spoken of and its figure has not been typed."""
    return is_ours() and st.session_state[_OFFERED][2] and entry(state.tree(), "leakage.basis") != "measured"


def say() -> None:
    """Under the field: what an offered figure counts as."""
    live.standing(awaited)
    if awaited():
        style.small("Type the figure of the test: until then, this one counts as not tested.")
