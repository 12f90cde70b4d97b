"""Which column of an uploaded table is which quantity, in which unit, where, and by which clock?"""

from __future__ import annotations

import streamlit as st

from estimator.climate.clock import zone_of
from estimator.climate.columns import DATE_COLUMNS, TIME_COLUMN, UNITS, Layout, layout_faults
from estimator.climate.guess import guessed_columns, guessed_unit
from estimator.climate.plain import headers
from estimator.climate.raw import TITLES, Place
from estimator.errors import InputFaults
from estimator.ui import faults
from estimator.ui.typed import typed_number

_NONE = "not in the file"
_START, _END = "the start of its hour", "the end of its hour"
_READ_AS = "where:layout"
_PLACE = {
    "latitude": ("Latitude, °", -90.0, 90.0),
    "longitude": ("Longitude, °", -180.0, 180.0),
    "altitude": ("Altitude, m", -400.0, 6000.0),
}
_CLOCK = "Clock of the table, hours before UTC"
_NUMBERS = {**_PLACE, "clock": (_CLOCK, -12.0, 14.0)}
_WHEN = {TIME_COLUMN: "Date and time", "month": "Month", "day": "Day", "hour": "Hour"}


def layout(content: bytes, *, name: str) -> Layout | None:
    """What somebody said of a table's columns; None until they have."""
    try:
        found = headers(content, name=name)
    except InputFaults as wrong:
        faults.show(wrong.faults)
        return None
    guess = guessed_columns(found)
    with st.form("where:columns", border=False):
        st.markdown("This is a table. Say which column is what; only the temperature is needed.")
        with st.grid(2, min_column_width=160, gap="small"):
            for quantity, title in TITLES.items():
                _column(quantity, f"{title[:1].upper()}{title[1:]}", found, guess)
                unit = guessed_unit(quantity, guess.get(quantity, ""))
                units = list(UNITS[quantity])
                st.selectbox(f"Unit of {title}", units, index=units.index(unit), key=f"where:unit:{quantity}")
        st.markdown("When is each row? One column of date and time, or month, day and hour.")
        with st.grid(4, min_column_width=140, gap="small"):
            for quantity, title in _WHEN.items():
                _column(quantity, title, found, guess)
        with st.grid(4, min_column_width=140, gap="small"):
            for entry, (title, _, _) in _PLACE.items():
                st.text_input(title, key=f"where:table:{entry}", max_chars=20)
            st.text_input(
                _CLOCK,
                key="where:table:clock",
                max_chars=10,
                placeholder="by the longitude",
                help="Nil for a table in UTC. Left empty, the clock is standard time by the longitude.",
            )
        st.radio("A row's time is", (_START, _END), key="where:stamp", horizontal=True)
        read = st.form_submit_button("Read the table", type="primary")
    if read:
        try:
            st.session_state[_READ_AS] = (tuple(found), _said())
        except InputFaults as wrong:
            st.session_state.pop(_READ_AS, None)
            faults.show(wrong.faults)
    kept = st.session_state.get(_READ_AS)
    return kept[1] if kept and kept[0] == tuple(found) else None


def _column(quantity: str, title: str, found: list[str], guess: dict[str, str]) -> None:
    choices = [_NONE, *dict.fromkeys(header for header in found if header)]
    chosen = guess.get(quantity, _NONE)
    st.selectbox(title, choices, index=choices.index(chosen), key=f"where:column:{quantity}")


def _said() -> Layout:
    """The layout that the form says; InputFaults with everything that is wrong with it."""
    said, wrong = st.session_state, []
    numbers: dict[str, float] = {}
    for entry, (title, low, high) in _NUMBERS.items():
        text = said[f"where:table:{entry}"]
        if entry in _PLACE or text.strip():
            try:
                numbers[entry] = typed_number(text, where=title, low=low, high=high, unit="")
            except InputFaults as unread:
                wrong += unread.faults
    if wrong:
        raise InputFaults(wrong)
    columns = {name: said[f"where:column:{name}"] for name in (*TITLES, *_WHEN)}
    columns = {name: header for name, header in columns.items() if header != _NONE}
    if TIME_COLUMN in columns:
        columns = {name: header for name, header in columns.items() if name not in DATE_COLUMNS}
    layout = Layout(
        place=Place(
            name="a table of your own",
            source="a table that somebody gave",
            licence="as its publisher states",
            utc_offset=zone_of(numbers["longitude"]),
            **{entry: numbers[entry] for entry in _PLACE},
        ),
        columns=columns,
        units={name: said[f"where:unit:{name}"] for name in TITLES if name in columns},
        stamp="end" if said["where:stamp"] == _END else "start",
        utc_offset=numbers.get("clock"),
    )
    if unfit := layout_faults(layout):
        raise InputFaults(unfit)
    return layout
