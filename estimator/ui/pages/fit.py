"""What must be fitted, and how?"""

from __future__ import annotations

import streamlit as st

from estimator.report import fit_sheets, fit_words, site_words
from estimator.report.charts_fit import points
from estimator.report.charts_frame import CONFIG
from estimator.report.document import STATEMENT
from estimator.report.figures import retold
from estimator.report.fitting import Fitting
from estimator.report.site_list import site_rows
from estimator.ui import fitted, style
from estimator.ui.before_money import before_money
from estimator.ui.fields import escaped
from estimator.ui.results import outcome, palette
from estimator.ui.sheets import table
from estimator.ui.tables import show


def page() -> None:
    """From the answer down to the check-list."""
    options = fitted.options()
    before_money(outcome().middle.estimate.case, place="fit", about="on fitting")
    if not options:
        style.question("What must be fitted, and how?")
        style.answer("No way of ventilating in this case has a heat exchanger: there is none to fit.")
        return
    now = fitted.shown(_chosen(options))
    style.question("What must be fitted, and how?")
    style.answer(fit_words.answer(now))
    style.then(fit_words.ducts(now), site_words.frost(now))
    fitted.refusals()
    _points(now)
    for tab, words in zip(st.tabs(list(fitted.QUESTIONS)), fitted.QUESTIONS, strict=True):
        with tab:
            fitted.question(now, words)
    with st.expander(site_words.sheet_title(now), key="fit:site"):
        _site(now)
    with st.expander(site_words.ways_title(now), key="fit:ways"):
        _ways(now)
    _measured(now)
    rows = site_rows()
    with st.expander(f"On site: {len(rows.rows)} things to look at"):
        table(rows)
    _small_print(now)


def _chosen(options: dict[str, str]) -> str:
    names = list(options)
    if len(names) == 1:
        return names[0]
    return st.selectbox("Option", names, format_func=options.__getitem__, key="fit:option", filter_mode=None)


def _points(now: Fitting) -> None:
    left, right = st.columns([1.3, 1], gap="large")
    with left:
        style.finding(fit_words.steps_title(now))
        told = fit_words.steps_in_words(now)
        st.plotly_chart(points(fit_words.steps_drawn(now), palette=palette()), theme=None, config=CONFIG, alt=told)
        style.small(*filter(None, [fit_words.steps_note(now)]))
    with right:
        show(fit_sheets.changes(now))
        with st.expander("In numbers"):
            show(fit_sheets.points(now))
            st.markdown(escaped(told))


def _site(now: Fitting) -> None:
    style.then(*site_words.sheet(now))
    for column, sheet in zip(st.columns(2, gap="large"), fit_sheets.site_figures(now), strict=True):
        with column:
            show(sheet)
    frost = fit_sheets.frost_ways(now)
    table(frost)
    style.small(frost.note)
    fitted.entries(now, fitted.HOME)
    style.small("Moisture decides how much water the exchanger sheds, and how dry the rooms become in winter.")


def _ways(now: Fitting) -> None:
    if now.proposed:
        style.then(site_words.PROPOSED)
        st.button("Start from these rooms", on_click=fitted.take_plan, args=(now,), key="fit:plan")
    if now.paths is not None:
        style.then(*(map(retold, now.paths.words) if now.paths.words else (site_words.PATHS_IN_ORDER,)))
        left, right = st.columns(2, gap="large")
        with left:
            show(fit_sheets.ways(now.paths), fit_sheets.rooms(now.paths))
        with right:
            show(fit_sheets.doors(now.paths))
    fitted.entries(now, fitted.ROOMS)
    style.small(
        "Names of rooms stay in the case file: the address carries them numbered, unless any home might use them."
    )


def _measured(now: Fitting) -> None:
    found = fitted.on_site()
    with st.expander(site_words.measured_title(found, now.currency), key="fit:on-site"):
        if found is None:
            style.then(site_words.NOT_MEASURED)
        else:
            style.then(*site_words.commissioned(found, now.case))
            show(fit_sheets.measured(found, now.currency))
            if found.rooms:
                show(fit_sheets.measured_rooms(found))
        if now.case.commissioned.option != now.option:
            st.button(escaped(f"Measured: {now.label}"), on_click=fitted.take_option, args=(now,), key="fit:measured")
        fitted.entries(now, fitted.MEASURED)


def _small_print(now: Fitting) -> None:
    style.small(
        f"Prices: {now.case.prices.dated}. Weather: {now.done.year.name}, {now.done.year.source}.",
        "Ranges of money are those of the home's leakage. What a line costs is the difference of two full estimates.",
        STATEMENT,
    )


page()
