"""How does a weather file of the user's own come in, and what is told of it before it is used?"""

from __future__ import annotations

import streamlit as st

from estimator.climate.columns import Layout
from estimator.climate.kept_files import FileRead, file_read, keep, needs_layout
from estimator.errors import InputFaults
from estimator.report import weather_source
from estimator.ui import at_hand, by_columns, faults, state, style
from estimator.ui.fields import escaped

_READ, _REMARK = "where:read", "where:remark"


def draw() -> None:
    """The way in, what was read, and the button that uses it."""
    given = st.file_uploader(
        "Weather file: EPW, TMY3, TMY2, or any table of a year's hours",
        key="where:file",
        help="It is read on this machine and goes nowhere else. Once used, its content is kept here without its name.",
    )
    if remark := st.session_state.get(_REMARK):
        st.info(escaped(faults.begun(remark)))
    if given is None:
        return
    content = given.getvalue()
    try:
        table = needs_layout(content, name=given.name)
    except InputFaults as wrong:
        faults.show(wrong.faults)
        return
    layout = by_columns.layout(content, name=given.name) if table else None
    if table and layout is None:
        return
    try:
        read = _read(given.file_id, content, given.name, layout)
    except InputFaults as wrong:
        faults.show(wrong.faults)
        return
    _told(read)


def _read(file: str, content: bytes, name: str, layout: Layout | None) -> FileRead:
    """The file as read, once for each file and layout."""
    kept = st.session_state.get(_READ)
    if kept is None or kept[:2] != (file, layout):
        kept = (file, layout, file_read(content, name=name, layout=layout))
        st.session_state[_READ] = kept
    return kept[2]


def _told(read: FileRead) -> None:
    style.small(weather_source.place(read.year))
    report(read)
    case = state.case()
    if case.place.climate == read.reference and not at_hand.missing(case):
        style.small("This weather is in use for this home.")
    else:
        st.button("Use this weather", type="primary", on_click=_use, args=(read,), key="where:use")


def report(read: FileRead) -> None:
    """What was read, what was missing, repaired, implausible."""
    told = [
        f"**{heading}**\n\n" + "\n".join(f"- {escaped(line)}" for line in lines) if lines else f"**{heading}**: {none}"
        for heading, lines, none in weather_source.became(read.report)
    ]
    st.markdown("\n\n".join(told))


def _use(read: FileRead) -> None:
    said = keep(read)
    st.session_state[_REMARK] = f"{said} It is used until this page is closed." if said else ""
    at_hand.hold(read.reference, read.year)
    state.put({"place.climate": read.reference}, done="Weather from a file")
