"""What would it take for the option on screen to pay back within the years somebody asks for?

Who asks it on another page finds it right under the answer. The years are this visitor's, no entry of the case: until
somebody says otherwise they are the life of the kit.
"""

from __future__ import annotations

import streamlit as st

from estimator.levers import LONGEST
from estimator.report import lever_words
from estimator.report.rows import Rows
from estimator.report.sure_words import Tried
from estimator.ui import style
from estimator.ui.sheets import table

_ASKED, _KEPT = "takes:asked", "takes:kept"


def ask() -> None:
    """Somebody goes on to this question."""
    st.session_state[_ASKED] = True


def asked() -> bool:
    """Whether somebody came for this question."""
    return st.session_state.get(_ASKED, False)


def forget() -> None:
    """Somebody goes on to another question."""
    st.session_state.pop(_ASKED, None)


def takes_part(found: Tried) -> None:
    """The question, its years, and what each lever alone would have to be."""
    life = found.place.case.worth.life
    style.finding("What would it take?")
    years = st.number_input(
        "To pay back within, years",
        min_value=1,
        max_value=int(LONGEST),
        value=round(life),
        key=f"takes:{life}",
        width=220,
    )
    levers, never = _said(found, float(years) if years is not None else life)
    if levers.rows:
        table(levers)
    style.then(*filter(None, [never]))


def _said(found: Tried, years: float) -> tuple[Rows, str]:
    kept = st.session_state.get(_KEPT)
    if kept is None or kept[0] is not found or kept[1] != years:
        said = lever_words.levers(found, within=years), lever_words.no_use(found, within=years)
        kept = st.session_state[_KEPT] = (found, years, said)
    return kept[2]
