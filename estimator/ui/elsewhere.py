"""Where is the home, and which of four ways brings its weather?"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable
from pathlib import Path

import streamlit as st

from estimator.climate.cache import standard_cache
from estimator.climate.chosen import kept_name
from estimator.climate.kept_files import is_kept_file
from estimator.climate.online import is_point
from estimator.climate.site import STATION_HEIGHT
from estimator.climate.sources import names
from estimator.inputs.case import Case
from estimator.inputs.months import MONTHLY
from estimator.inputs.quantity import declared
from estimator.report import weather_source
from estimator.survey.fill import filled
from estimator.ui import at_hand, by_file, by_months, by_place, faults, state, style, tables
from estimator.ui.fields import field

TITLE = "Where is the home? Any place, a file, or monthly means"
WAYS: dict[str, Callable[[], None]] = {
    "An included climate": lambda: included(),
    "A latitude and longitude": by_place.draw,
    "A file of mine": by_file.draw,
    "Twelve monthly means": by_months.draw,
}
_CASE = {item.path: item for item in declared(Case)}
_SITE = {
    "place.altitude": "Altitude of the home",
    "place.terrain": "Land around it",
    "place.wind_height": "Wind at a height of",
}
_WAY, _ASKED = "where:way", "where"
_SHOWN = 12


def draw() -> None:
    """The ways to bring weather, what is wrong with the last change, the site of the home, and what is kept here."""
    faults.show(state.refused())
    if _WAY not in st.session_state:
        st.session_state[_WAY] = _way_of(state.case().place.climate)
    chosen = st.radio("Weather from", list(WAYS), key=_WAY, horizontal=True)
    WAYS[chosen]()


def included() -> None:
    """One of the climates and regions in the package, by name."""
    present = state.case().place.climate
    shown = names()
    st.session_state["where:included"] = present if present in shown else None
    st.selectbox(
        "Included climate or UK region", shown, key="where:included", on_change=_included, placeholder="Choose one"
    )


def _included() -> None:
    name = st.session_state["where:included"]
    if name is not None:
        state.put({"place.climate": name}, done=f"Weather like: {name}")


def told() -> None:
    """Whose weather it is, and how the home's differs from the station's."""
    case = state.case()
    plain = dataclasses.replace(case.place, altitude=None, terrain="open", wind_height=STATION_HEIGHT)
    station, home = at_hand.year(dataclasses.replace(case, place=plain)), at_hand.year(case)
    style.small(weather_source.source(station), weather_source.site(station, home, case.place))


def site() -> None:
    """Altitude, terrain and height of the home."""
    case = state.case()
    common = {"origins": filled(case).origins, "currency": case.prices.currency, "place": "where"}
    with st.grid(3, min_column_width=140, gap="small"):
        for path, label in _SITE.items():
            field(_CASE[path], path=path, label=label, **common)


def link() -> None:
    """The way from another page to where the home is."""
    page = Path(__file__).parent / "pages" / "weather.py"
    with st.container(key="elsewhere"):
        st.page_link(page, label="Elsewhere, or weather of your own", query_params={_ASKED: "1"})


def asked_for() -> bool:
    """Whether somebody came by that link."""
    return _ASKED in st.query_params


def kept() -> None:
    """What is kept on this machine, and the way to throw it away."""
    cache = standard_cache()
    years = cache.kept()
    if not years:
        style.small("No weather is kept on this machine; what you fetch or upload will be, until you throw it away.")
        return
    tables.show(weather_source.kept(years[:_SHOWN], limit=cache.limit))
    with st.container(horizontal=True):
        one = st.selectbox("To throw away", years, format_func=lambda kept: kept_name(kept.key), key="where:kept")
        st.button("Throw this away", on_click=_clear, args=(one.key,), key="where:clear")
        st.button(f"Throw all {len(years)} away", on_click=_clear, args=(None,), key="where:clear_all")


def _clear(key: str | None) -> None:
    standard_cache().clear(key)
    at_hand.forget()


def _way_of(reference: str) -> str:
    included, place, file, months = WAYS
    if reference == MONTHLY:
        return months
    return file if is_kept_file(reference) else place if is_point(reference) else included
