"""Which two climates are compared, and below which temperature does cold count?"""

from __future__ import annotations

from dataclasses import dataclass

import streamlit as st

from estimator.climate.sources import DEMO_CLIMATES, names
from estimator.estimate import Estimate, estimate
from estimator.report.figures import entered as as_shown
from estimator.report.figures import to_metric, unit_shown
from estimator.report.weather import Weather, balance, weather
from estimator.ui import at_hand
from estimator.ui.results import outcome

_LOWEST, _HIGHEST = 5.0, 25.0  # °C
_BASE = "weather:base"


@dataclass(frozen=True, slots=True, eq=False)
class Pair:
    """The climate of the case, and the one beside it."""

    here: Weather
    other: Weather


def choose() -> Pair:
    """Draw the two widgets and work out both years for what they say."""
    found = outcome()
    done = found.middle.estimate
    option = found.options()[0]
    own = found.case.place.climate
    beside, right, _ = st.columns([1, 1, 1.4], gap="large", vertical_alignment="bottom")
    with beside:
        others = [name for name in names() if name != own]
        usual = next((at for at, name in enumerate(others) if name == list(DEMO_CLIMATES)[2]), 0)
        other = st.selectbox("Beside the weather of", others, index=usual, key="weather:other")
    shown = unit_shown("°C")
    key = f"{_BASE}:{shown}"  # a figure of one unit is none of another
    _follow(as_shown(min(max(balance(done, option), _LOWEST), _HIGHEST), "°C"), key=key)
    with right:
        typed = st.number_input(
            f"Cold counts below, {shown}",
            min_value=as_shown(_LOWEST, "°C"),
            max_value=as_shown(_HIGHEST, "°C"),
            step=0.5,
            format="%.1f",
            key=key,
            help="Until changed, the outdoor temperature below which this home needs heat. It changes these pictures, "
            "not the estimate.",
        )
    base = to_metric("°C")(typed)
    return Pair(
        weather(done, option=option, base=base),
        weather(_elsewhere(done, other), option=option, base=base),
    )


def _follow(usual: float, *, key: str) -> None:
    """The base is that of the case until somebody chooses another."""
    last = f"{key}:usual"
    if st.session_state.get(key) in (None, st.session_state.get(last)):
        st.session_state[key] = usual
    st.session_state[last] = usual


def _elsewhere(done: Estimate, name: str) -> Estimate:
    """The same case in another year, worked out once."""
    kept = st.session_state.get("weather_elsewhere")
    if kept is None or kept[0] is not done or kept[1] != name:
        kept = (done, name, estimate(done.case, at_hand.included(name)))
        st.session_state["weather_elsewhere"] = kept
    return kept[2]
