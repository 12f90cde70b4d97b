"""How sure is the case on screen, drawn once for each case?"""

from __future__ import annotations

from dataclasses import dataclass, field

import streamlit as st

from estimator.draws import ground
from estimator.inputs.case import Case
from estimator.report.sure_words import Tried, tried
from estimator.sample import Sample, sample
from estimator.ui import state
from estimator.ui.results import outcome

_KEPT = "sureness"


@dataclass(frozen=True, slots=True, eq=False)
class _Drawn:
    """A case, the one sample drawn of it, and what has been said of its options so far."""

    case: Case
    sample: Sample
    options: dict[str, Tried] = field(default_factory=dict)


def options() -> dict[str, str]:
    """Names and labels of the options that may be asked about."""
    found = outcome()
    return {name: found.comparison(name, "baseline").option_label for name in found.options()}


def shown(option: str) -> Tried:
    """One option of the case on screen, in all cases tried."""
    case = state.case()
    kept = st.session_state.get(_KEPT)
    if kept is None or kept.case is not case:
        with st.spinner("Trying many cases"):
            kept = _Drawn(case, sample(ground(case, outcome().middle.estimate.year)))
        st.session_state[_KEPT] = kept
    if option not in kept.options:
        kept.options[option] = tried(kept.sample, option=option)
    return kept.options[option]


def chosen(place: str) -> str:
    """The option asked about on a page; a choice only where there are several."""
    labels = options()
    if len(labels) == 1:
        return next(iter(labels))
    return st.selectbox("Option", list(labels), format_func=labels.__getitem__, key=f"{place}:option", filter_mode=None)
