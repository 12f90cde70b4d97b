"""Does the estimate fit the household's own bill, and what would the house have to be for it to fit?

Nothing that is typed here changes the case; the proposal does, once somebody takes it, as one step that can be undone.
"""

from __future__ import annotations

from typing import Any

import streamlit as st

from estimator.climate.year import ClimateYear
from estimator.errors import InputFaults
from estimator.inputs.case import Case
from estimator.inputs.quantity import Quantity
from estimator.match_bill import Match, match
from estimator.metered import COOKING, DEGREE_DAYS, ENERGY, MONEY, OTHER_HEAT, Bill
from estimator.report import match_words
from estimator.ui import state, style, tables
from estimator.ui.fields import escaped
from estimator.ui.typed import typed_number

_ENERGY, _MONEY = "In kWh", "In money"


def own_bill(case: Case, year: ClimateYear) -> None:
    """The fields of a bill, what it tells, and a button that takes it. case: filled."""
    currency = case.prices.currency
    style.then(f"Twelve months of {match_words.bought(case)} as the meter or the invoices say, aired as today.")
    with st.grid(2, min_column_width=150, gap="small"):
        counted = st.selectbox("The bill of a year is", (_ENERGY, _MONEY), key="bill:counted", filter_mode=None)
        by_money = counted == _MONEY
        limits, unit = (MONEY, currency) if by_money else (ENERGY, "kWh")
        main = _typed(f"Bill of a year, {unit}", limits, key="bill:main", unit=unit)
        cooking = _typed("Of it for cooking, kWh", COOKING, key="bill:cooking")
        other = _typed("Heat from a stove or else, kWh", OTHER_HEAT, key="bill:other")
        days = _typed("Degree-days of that year, if known", DEGREE_DAYS, key="bill:days")
        unknown = st.selectbox(
            "Find the", list(match_words.UNKNOWNS), key="bill:unknown", filter_mode=None, help=match_words.FABRIC
        )
    try:
        value = main()
        if value is None:
            return
        given = {"money" if by_money else "energy": value, "degree_days": days()}
        bill = Bill(cooking=cooking() or 0.0, other_heat=other() or 0.0, **given)
        found = match(state.case(), year, bill, unknown=match_words.UNKNOWNS[unknown])
    except InputFaults as error:
        for fault in error.faults:
            st.error(escaped(str(fault)))
        return
    _said(found, case)


def _typed(label: str, limits: Quantity, *, key: str, unit: str = "") -> Any:
    """A field, and how it is read once all fields stand there; empty means not known."""
    unit = unit or limits.unit
    meaning = f"{limits.meaning[:1].upper()}{limits.meaning[1:]}"
    text = st.text_input(label, key=key, max_chars=12, help=f"{meaning}; {limits.low:g} to {limits.high:g} {unit}.")

    def read() -> float | None:
        if not text.strip():
            return None
        return typed_number(text, where=label, low=limits.low, high=limits.high, unit=unit)

    return read


def _said(found: Match, case: Case) -> None:
    st.markdown(f"**{escaped(match_words.sentence(found))}**")
    style.then(match_words.held_against(found))
    st.button(
        "Take it into the case",
        key="bill:take",
        on_click=_take,
        args=(found.unknown, found.value, found.tag, match_words.done(found)),
    )
    style.small(match_words.EXPLAINED.format(tag=found.tag))
    with st.expander("How that was worked out"):
        tables.show(match_words.working(found, case), match_words.causes(found))


def _take(path: str, value: float, tag: str, done: str) -> None:
    state.take(path, float(f"{value:.4g}"), tag=tag, done=done)
