"""What stands on the paper of the case on screen, made once for each case, option and name?"""

from __future__ import annotations

import datetime

import streamlit as st

from estimator.report.leave import LONGEST_NAME, Names, Paper, paper
from estimator.ui.results import outcome
from estimator.ui.sureness import shown

_FIELDS = {"prepared_for": "paper:for", "prepared_by": "paper:by", "note": "paper:note"}


def names_typed() -> Names:
    """Whom the paper is for and from: in the session alone, never in link, cache or log."""
    return Names(**{name: st.session_state.get(f"kept:{key}", "") for name, key in _FIELDS.items()})


def typed(key: str, label: str, **settings: str) -> None:
    """A field for a name. A page that does not draw it would forget what was typed: a copy stays in the session."""
    if key not in st.session_state:
        st.session_state[key] = st.session_state.get(f"kept:{key}", "")
    st.session_state[f"kept:{key}"] = st.text_input(label, max_chars=LONGEST_NAME, key=key, **settings)


def paper_of(option: str, names: Names | None = None) -> Paper:
    """The paper of one option of the case on screen."""
    found = outcome()
    return paper(found.middle, shown(option), found.span, names=names or Names(), today=datetime.date.today())
