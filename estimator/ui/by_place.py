"""How is weather fetched for a latitude and longitude, once the user knows what leaves the machine?"""

from __future__ import annotations

import streamlit as st

from estimator.climate.nearby import positions
from estimator.climate.online import TIMEOUT, Point, is_point, kept_year, online_year, point_of, what_leaves
from estimator.errors import ClimateFault
from estimator.report import weather_source
from estimator.ui import at_hand, faults, state, style
from estimator.ui.fields import escaped

_TYPED, _FAILED, _NEAR = "where:point", "where:failed", "where:near"


def draw() -> None:
    """The place, what a request tells of it and to whom, the button that starts it, and what came of it."""
    present = state.case().place.climate
    if _TYPED not in st.session_state:
        st.session_state[_TYPED] = present if is_point(present) else ""
    left, right = st.columns(2, gap="small")
    with left:
        st.text_input(
            "Latitude, longitude",
            key=_TYPED,
            max_chars=60,
            placeholder="52.2, 0.1",
            help="Degrees, north and east positive, or with letters: 52.2° N, 0.1° W. Standard time follows the "
            "longitude; where the land keeps another, add it: 40.4, -3.7, UTC+1.",
        )
    with right:
        st.selectbox("Or the position of", list(positions()), index=None, key=_NEAR, on_change=_placed)
    typed = st.session_state[_TYPED].strip()
    if not typed:
        style.small("Nothing is asked of any network until you press a button that says so.")
        return
    try:
        point = point_of(typed)
    except ClimateFault as wrong:
        faults.show(wrong.faults)
        return
    fetch(point)


def fetch(point: Point) -> None:
    """What leaves the machine for a place, the button, progress, and where it failed, what else there is."""
    style.small(what_leaves(point))
    here = kept_year(point.reference) is not None
    words = f"Use the kept weather of {point.name}" if here else f"Fetch the weather of {point.name}"
    failed = st.session_state.get(_FAILED)
    if st.button(words, type="primary", key="where:fetch"):
        failed = _fetched(point)
        if failed is None:
            st.rerun()
    if failed is not None and failed[0] == point:
        st.error(escaped(failed[1]))
        instead(point)


def instead(point: Point) -> None:
    """The nearest included climates as buttons, for want of the one that was wanted."""
    with st.container(horizontal=True):
        for name, words in weather_source.nearest(point.latitude, point.longitude):
            st.button(words, on_click=_instead, args=(name,), key=f"where:instead:{name}")


def _fetched(point: Point) -> tuple[Point, str] | None:
    bar = st.progress(0.0, text="Asking …")

    def waiting(seconds: float) -> None:
        bar.progress(min(seconds / TIMEOUT, 1.0), text=f"Waiting {seconds:.0f} s of at most {TIMEOUT:.0f} s")

    try:
        year = online_year(point.reference, tell=lambda _: None, waiting=waiting)  # told already, above the button
    except ClimateFault as fault:
        failed = point, " ".join(faults.begun(one.what) for one in fault.faults)
        st.session_state[_FAILED] = failed
        return failed
    finally:
        bar.empty()
    st.session_state.pop(_FAILED, None)
    at_hand.hold(point.reference, year)
    state.put({"place.climate": point.reference}, done=f"Weather of {point.name}")
    return None


def _placed() -> None:
    name = st.session_state[_NEAR]
    if name is not None:
        north, east = positions()[name]
        st.session_state[_TYPED] = f"{north:.2f}, {east:.2f}"


def _instead(name: str) -> None:
    st.session_state.pop(_FAILED, None)
    state.put({"place.climate": name}, done=f"Weather like: {name}")
