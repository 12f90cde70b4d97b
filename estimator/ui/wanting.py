"""What stands in the place of a page while the weather of its case is not at hand?"""

from __future__ import annotations

import streamlit as st

from estimator.ui import at_hand, elsewhere, faults, state, style
from estimator.ui.fields import escaped

WITHOUT_WEATHER = ("trust",)
"""Addresses of pages that show no case."""


def stands_in(address: str) -> bool:
    """Whether the weather is wanting on a page that needs it; if so, what to do about it has been drawn."""
    if address in WITHOUT_WEATHER or not (wrong := at_hand.missing(state.case())):
        return False
    style.question("Where is the weather of this case?")
    style.answer("The weather of this case is not at hand here, so nothing is worked out.")
    for fault in wrong:
        st.error(escaped(faults.begun(fault.what)))
    elsewhere.draw()
    return True
