"""How sure is this?"""

from __future__ import annotations

import streamlit as st

from estimator.report import charts_sure, leakage_said, lever_words, sure_words
from estimator.report.charts_frame import CONFIG
from estimator.report.document import STATEMENT
from estimator.report.sure_words import Tried
from estimator.ui import style, takes
from estimator.ui.before_money import before_money
from estimator.ui.fields import escaped
from estimator.ui.promises import promise_part
from estimator.ui.results import outcome, palette
from estimator.ui.sureness import chosen, shown
from estimator.ui.tables import show


def page() -> None:
    """From the range down to what it rests on."""
    found = shown(chosen("sure"))
    before_money(outcome().middle.estimate.case, place="sure")
    came_for_it = takes.asked()
    _answer(found, takes_first=came_for_it)
    _swings(found)
    style.finding("What should be measured first?")
    for against in found.against:
        style.then(lever_words.measure_first(against))
    if not came_for_it:
        takes.takes_part(found)
    promise_part(found)
    _folded(found)
    leakage = f"Leakage: {leakage_said.words(outcome().span)}."
    style.small(f"Prices: {found.place.case.prices.dated}.", leakage, *sure_words.rests_on(found), STATEMENT)


def _answer(found: Tried, *, takes_first: bool) -> None:
    first, *others = found.against
    style.question("How sure is this?")
    style.answer(sure_words.sentence(found, first))
    if takes_first:
        takes.takes_part(found)
        style.finding("How the cases lie")
    style.then(sure_words.middle(found, first))
    for other in others:
        style.then(sure_words.sentence(found, other))


def _swings(found: Tried) -> None:
    for column, against in zip(st.columns(len(found.against), gap="large"), found.against, strict=True):
        with column:
            style.finding(sure_words.swings_title(against, found.currency))
            figure = charts_sure.swings(
                sure_words.lines(found, against),
                best=float(against.sure.best.net_saving[0]),
                currency=found.currency,
                palette=palette(),
            )
            st.plotly_chart(figure, theme=None, config=CONFIG, alt=sure_words.swings_in_words(found, against))
    style.small(sure_words.EXPLAINED)


def _folded(found: Tried) -> None:
    with st.expander("The ranges tried, with reason and source"):
        show(sure_words.ranges(found))
    with st.expander("In numbers: every figure"):
        for against in found.against:
            show(sure_words.spreads(found, against))
    with st.expander("In numbers: the swings"):
        for against in found.against:
            st.markdown(escaped(sure_words.swings_in_words(found, against)))


page()
