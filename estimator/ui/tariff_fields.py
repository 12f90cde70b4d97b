"""How is a tariff of several prices entered, where its kind and its prices only make sense together?

The kind chosen waits in the session until its prices stand beside it; then both go into the case as one step.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import streamlit as st

from estimator.inputs.case import Case
from estimator.inputs.quantity import declared
from estimator.report.clock_strip import TITLE, clock_strip
from estimator.report.price_words import tariff_in_words
from estimator.ui import state, style
from estimator.ui.pictures import picture
from estimator.ui.tree import entry

_DECLARED = {item.path: item for item in declared(Case)}
_KIND = "prices.tariff.kind"
_CHOICE = "tariff:kind"


@dataclass(frozen=True, slots=True)
class _Line:
    """The entry that holds the prices of one kind, its name and an example."""

    path: str
    label: str
    example: str


_LINES: Mapping[str, _Line] = {
    "time of use": _Line(
        "prices.tariff.windows", "Hours with their own price", "9 at 0:30-5:30; 38 at 16:00-19:00 Mon-Fri"
    ),
    "block": _Line("prices.tariff.blocks", "Prices beyond so many kWh", "31 beyond 150; 45 beyond 330"),
}
_WORDS = {"flat": "One price at every hour", "time of use": "Prices by the hour", "block": "Prices by the amount"}


def tariff_fields(case: Case) -> None:
    """The tariff in words and drawn, then its kind and its prices. case: filled."""
    said, beside = st.columns([1.6, 1], gap="large")
    with said:
        style.then(tariff_in_words(case.prices))
        _kind_and_prices(case)
    if case.prices.tariff.kind == "time of use":
        with beside:
            svg = clock_strip(case.prices)
            style.small(f"{TITLE}:")
            picture(desk=svg, phone=svg, alt=tariff_in_words(case.prices))


def _kind_and_prices(case: Case) -> None:
    kinds = {words: kind for kind, words in _WORDS.items()}
    pending = st.session_state.get(_CHOICE)
    if pending is None or (case.prices.tariff.kind != "flat" and kinds[pending] == "flat"):
        st.session_state[_CHOICE] = _WORDS[case.prices.tariff.kind]
    chosen = kinds[st.selectbox("Kind of tariff", list(kinds), key=_CHOICE, filter_mode=None, on_change=_flat)]
    if chosen in _LINES:
        _prices(chosen, _LINES[chosen])


def _flat() -> None:
    """One price needs nothing else: it goes into the case at once."""
    if st.session_state[_CHOICE] == _WORDS["flat"]:
        _put("flat", "")


def _prices(kind: str, line: _Line) -> None:
    key, meaning = f"tariff:{line.path}", _DECLARED[line.path].spec.meaning
    now = entry(state.tree(), line.path) or ""
    if st.session_state.get(f"{key}:was") != now:
        st.session_state[key] = st.session_state[f"{key}:was"] = now
    st.text_input(
        line.label,
        key=key,
        placeholder=line.example,
        help=f"{meaning[:1].upper()}{meaning[1:]}.",
        on_change=lambda: _put(kind, st.session_state[key]),
    )
    if not now:
        style.small(f"Nothing changes until prices stand here, such as {line.example}.")


def _put(kind: str, prices: str) -> None:
    """Kind and prices of one tariff; the prices of every other kind go."""
    lines = {line.path: (prices.strip() or None) if other == kind else None for other, line in _LINES.items()}
    wanted = None if kind == "flat" or not prices.strip() else kind
    state.put({**lines, _KIND: wanted}, done=f"Tariff: {_WORDS[wanted or 'flat'].lower()}")
