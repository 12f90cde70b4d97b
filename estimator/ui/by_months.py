"""How are twelve monthly means typed in, and become the weather of the case?"""

from __future__ import annotations

import dataclasses

import streamlit as st

from estimator.errors import Fault, InputFaults
from estimator.inputs.case import Case
from estimator.inputs.month_lines import as_line, twelve
from estimator.inputs.months import MONTHLY, QUANTITIES, Months
from estimator.inputs.quantity import Quantity, declared
from estimator.ui import state, style
from estimator.ui.tree import entry
from estimator.ui.typed import typed_number
from estimator.units import MONTH_NAMES

_CASE = {item.path: item for item in declared(Case)}
_PLACE = {"latitude": "Latitude, °", "longitude": "Longitude, °", "altitude": "Altitude, m"}
_TITLES = {
    "temperature": "Mean temperature",
    "wind": "Mean wind at 10 m",
    "sun": "Mean sun on the flat, day and night",
    "swing": "Mean daily swing, highest less lowest",
    "spread": "Spread of daily means, standard deviation",
}
_WIDEST = 1000.0  # of anything typed here; what can be weather is judged with the whole table
_ALSO, _SHOWN = "where:also", "where:months"


def draw() -> None:
    """A small table to type in: temperature, and what else is known."""
    style.small(
        "Twelve figures a quantity become a year of hours: its months are exactly those typed, its days are made up "
        "within them. Only the temperature is needed. Twelve figures pasted into January fill the row."
    )
    _follow(state.case().months)
    given = [name for name in QUANTITIES if entry(state.tree(), f"months.{name}")]
    if _ALSO not in st.session_state:
        st.session_state[_ALSO] = [name for name in given if name != "temperature"]
    also = st.multiselect(
        "Also known", [name for name in QUANTITIES if name != "temperature"], format_func=_TITLES.get, key=_ALSO
    )
    with st.form("where:typed", border=False):
        with st.grid(3, min_column_width=110, gap="small"):
            for name, label in _PLACE.items():
                _field(f"months.{name}", label, _plain(getattr(state.case().months, name)))
        for name in ("temperature", *also):
            values = twelve(getattr(state.case().months, name)) or [None] * len(MONTH_NAMES)
            st.markdown(f"**{_TITLES[name]}**, {QUANTITIES[name]}")
            with st.grid(12, min_column_width=64, gap="small"):
                for month, value in zip(MONTH_NAMES, values, strict=True):
                    _field(f"months.{name}.{month}", month, "" if value is None else _plain(value))
        st.form_submit_button("Use these means", type="primary", on_click=_use)


def _follow(months: Months) -> None:
    """Where the case has other figures than before, by undoing or by a link, the fields show those."""
    now = dataclasses.astuple(months)
    if st.session_state.get(_SHOWN) != now:
        for key in [key for key in st.session_state if str(key).startswith("where:months.") or key == _ALSO]:
            del st.session_state[key]
        st.session_state[_SHOWN] = now


def _field(path: str, label: str, shown: str) -> None:
    key = f"where:{path}"
    if key not in st.session_state:
        st.session_state[key] = shown
    st.text_input(label, key=key, max_chars=120)


def _plain(value: float) -> str:
    return f"{value:.10g}"


def _use() -> None:
    faults: list[Fault] = []
    changes: dict[str, object] = {"place.climate": MONTHLY}
    for name, label in _PLACE.items():
        spec = _CASE[f"months.{name}"].spec
        assert isinstance(spec, Quantity)
        try:
            changes[f"months.{name}"] = typed_number(
                st.session_state[f"where:months.{name}"], where=label, low=spec.low, high=spec.high, unit=spec.unit
            )
        except InputFaults as wrong:
            faults += wrong.faults
    for name in QUANTITIES:
        try:
            known = name == "temperature" or name in st.session_state[_ALSO]
            changes[f"months.{name}"] = _row(name) if known else None
        except InputFaults as wrong:
            faults += wrong.faults
    if faults:
        state.refuse(*faults)
        return
    state.put(changes, done="Weather from monthly means")


def _row(name: str) -> str:
    """The line of a row; InputFaults with every month that is no number."""
    texts = [st.session_state[f"where:months.{name}.{month}"] for month in MONTH_NAMES]
    pasted = texts[0].replace(";", " ").split()
    if len(pasted) == len(MONTH_NAMES):
        texts = pasted
        st.session_state.update(
            {f"where:months.{name}.{month}": text for month, text in zip(MONTH_NAMES, texts, strict=True)}
        )
    values, faults = [], []
    for month, text in zip(MONTH_NAMES, texts, strict=True):
        try:
            where = f"{_TITLES[name]}, {month}"
            values.append(typed_number(text, where=where, low=-_WIDEST, high=_WIDEST, unit=QUANTITIES[name]))
        except InputFaults as wrong:
            faults += wrong.faults
    if faults:
        raise InputFaults(faults)
    return as_line(values)
