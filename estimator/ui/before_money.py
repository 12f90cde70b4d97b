"""Which cautions stand above a page's answer?"""

from __future__ import annotations

import streamlit as st

from estimator.cautions import cautions, preface
from estimator.inputs.case import Case
from estimator.ui.fields import escaped


def before_money(case: Case, *, place: str, about: str = "for this home") -> None:
    """Every caution of a filled case that belongs to this place, folded below a line that cannot be hidden."""
    held = cautions(case, place=place)
    if not held:
        return
    with st.expander(f"Before money: {len(held)} cautions {about}. First: {held[0].title}"):
        said = (f"**{escaped(one.title)}.** {escaped(one.words)} *Ask: {escaped(one.ask)}.*" for one in held)
        st.markdown("\n\n".join((escaped(preface()), *said)))
