"""How is what could not be used said on a page?"""

from __future__ import annotations

from collections.abc import Iterable

import streamlit as st

from estimator.errors import Fault
from estimator.ui.fields import escaped


def show(faults: Iterable[Fault]) -> None:
    """Each fault in a box of its own, with the place it is in."""
    for fault in faults:
        st.error(escaped(begun(str(fault))))


def begun(words: str) -> str:
    """A sentence as it stands by itself; an entry or a file that it begins with stays as it is spelled."""
    first = words.partition(" ")[0].rstrip(".,:")
    return words if "." in first else f"{words[:1].upper()}{words[1:]}"
