"""What is the weather here?"""

from __future__ import annotations

import streamlit as st

from estimator.report import charts_weather, weather_words
from estimator.report.charts_frame import CONFIG
from estimator.ui import elsewhere, style, tables
from estimator.ui.fields import escaped
from estimator.ui.results import palette
from estimator.ui.two_climates import Pair, choose


def page() -> None:
    """What it means for heat recovery, then the year beside another one."""
    style.question(weather_words.QUESTION)
    answer = st.container()
    pair = choose()
    with answer:
        style.answer(weather_words.answer(pair.here, pair.other))
        style.then(weather_words.then(pair.here, pair.other))
    elsewhere.told()
    with st.expander(elsewhere.TITLE, key="where:open", expanded=elsewhere.asked_for()):
        elsewhere.draw()
        elsewhere.site()
    _charts(pair)
    with st.expander("Every month in numbers"):
        tables.show(weather_words.months(pair.here), weather_words.months(pair.other))
    with st.expander("Weather kept on this machine"):
        elsewhere.kept()


def _charts(pair: Pair) -> None:
    here, other, colours = pair.here, pair.other, palette()
    told = weather_words.in_words
    drawn = (
        (weather_words.season(here), charts_weather.temperature,
         told("Mean temperature", "°C", here, other, field="temp")),
        (weather_words.cold(here, other), charts_weather.cold,
         told("Degree-hours below the base", "K h", here, other, field="degree_hours")),
        (weather_words.frost(here, other), charts_weather.frost,
         told("Hours below the pre-heater's set point", "h", here, other, field="frost")),
        (weather_words.wind(here, other), charts_weather.wind, told("Wind", "m/s of wind", here, other, field="wind")),
        (weather_words.bases(here), charts_weather.bases, weather_words.bases_in_words(here, other)),
        (weather_words.sun(here), charts_weather.sun, weather_words.sun_in_words(here, other)),
    )  # fmt: skip
    with st.container(key="pairs"):
        columns = [*st.columns(2, gap="large"), *st.columns(2, gap="large"), *st.columns(2, gap="large")]
    for column, (title, draw, words) in zip(columns, drawn, strict=True):
        with column:
            style.finding(title)
            st.plotly_chart(draw(here, other, palette=colours), theme=None, config=CONFIG, alt=words)
            with st.expander("In numbers"):
                st.markdown(escaped(words))


page()
