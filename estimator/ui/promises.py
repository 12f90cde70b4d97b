"""Was a figure promised, and where does it lie among the cases tried?

What is typed here is held against the case on screen and stays with this visitor: it is no entry of the case.
"""

from __future__ import annotations

import streamlit as st

from estimator.claims import QUESTIONS, Kind, Promise, judgement
from estimator.errors import InputFaults
from estimator.report import claim_words
from estimator.report.sure_words import Against, Tried
from estimator.ui import style
from estimator.ui.fields import escaped
from estimator.ui.typed import typed_number


def promise_part(found: Tried) -> None:
    """The question, its fields, and the judgement once a figure stands in them."""
    style.finding("Were you promised a figure?")
    style.then("A saving, a payback or an efficiency is held against the cases tried, whoever named it.")
    kinds = claim_words.KINDS
    units: dict[Kind, str] = {"saving": f"{found.currency}/year", "payback": "years", "efficiency": "%"}
    with st.grid(4, min_column_width=200, gap="small"):
        kind = kinds[st.selectbox("What was promised", list(kinds), key="promise:kind", filter_mode=None)]
        against = _baseline(found)
        value = st.text_input(f"The figure, {units[kind]}", key="promise:value", max_chars=12)
        price = st.text_input(
            f"Price of all of it, {found.currency}, if named",
            key="promise:price",
            max_chars=12,
            disabled=kind == "efficiency",
        )
    if not value.strip():
        return
    try:
        promise = _read(kind, value, "" if kind == "efficiency" else price, units[kind], found.currency)
    except InputFaults as error:
        for fault in error.faults:
            st.error(escaped(str(fault)))
        return
    _said(found, against, promise)


def _baseline(found: Tried) -> Against:
    words = {against.words: against for against in found.against}
    chosen = st.selectbox("Counted against", list(words), key="promise:against", filter_mode=None)
    return words[chosen]


def _read(kind: Kind, value: str, price: str, unit: str, currency: str) -> Promise:
    low, high = claim_words.LIMITS[kind]
    least, most = claim_words.PRICES
    return Promise(
        kind=kind,
        value=typed_number(value, where="The figure", low=low, high=high, unit=unit),
        price=typed_number(price, where="Price", low=least, high=most, unit=currency) if price.strip() else None,
    )


def _said(found: Tried, against: Against, promise: Promise) -> None:
    kept = st.session_state.get("promise:judged")
    asked = (found, against.words, promise)
    if kept is None or kept[0] != asked:
        with st.spinner("Looking for what would give it"):
            kept = (asked, judgement(found.place, against.sure, promise))
        st.session_state["promise:judged"] = kept
    judged = kept[1]
    st.markdown(f"**{escaped(claim_words.verdict(judged, found.currency, baseline=against.words))}**")
    if said := claim_words.price_said(judged, found.currency):
        style.then(said)
    st.markdown("\n".join(f"- {escaped(line)}" for line in claim_words.needs(judged, found.currency)))
    with st.expander("Five questions to ask whoever named it"):
        st.markdown("\n".join(f"{number}. {escaped(words)}" for number, words in enumerate(QUESTIONS, start=1)))
