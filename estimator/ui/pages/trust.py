"""Why trust this?"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

import streamlit as st

from estimator.evidence.method import method_run
from estimator.evidence.run import Result, run_all
from estimator.report import method_words, trust
from estimator.report.rows import Rows
from estimator.ui import style, tables
from estimator.ui.fields import escaped


@st.cache_resource(show_spinner="Working out every published value with this copy")
def _results() -> list[Result]:
    """Once in the life of this copy: the same functions on the same numbers give the same again."""
    return run_all()


def page() -> None:
    """How much agrees, what does not or is not known, and every value to be opened."""
    results, run = _results(), method_run()
    style.question(trust.QUESTION)
    style.answer(trust.answer(results))
    style.then(trust.rule(results))
    for words in trust.failing(results):
        st.error(escaped(words))
    beside, right = st.columns([1.6, 1], gap="large")
    with beside:
        tables.show(trust.few(results))
    with right:
        style.finding("What is not verified")
        style.small(*trust.NOT_VERIFIED)
    style.finding(method_words.method_answer(run))
    style.small(*method_words.method_notes(run))
    _folded(
        "Climate by climate, and by how much the heating has to do",
        lambda: (method_words.method_table(run), method_words.band_table(run)),
    )
    style.finding("Every value, and where it is printed")
    for name, members in trust.groups(results).items():
        _folded(trust.group_title(name, members), partial(trust.tables, members), key=f"trust:{name}")
    if st.button("Work them all out again"):
        _results.clear()
        st.rerun()
    style.small("The same on the command line: python -m estimator evidence")


@st.fragment
def _folded(title: str, tables_of: Callable[[], tuple[Rows, ...]], *, key: str = "trust:climates") -> None:
    """Tables that are drawn only once somebody opens them, and they alone: there are hundreds of rows."""
    with st.expander(title, on_change="rerun", key=key) as fold:
        if fold.open:
            tables.show(*tables_of())


page()
