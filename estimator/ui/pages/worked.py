"""How was this worked out?"""

from __future__ import annotations

import streamlit as st

from estimator.compare import Comparison
from estimator.report import charts_year, hours, sheet_files, working, working_rows
from estimator.report.charts_frame import CONFIG
from estimator.report.document import STATEMENT
from estimator.ui import style
from estimator.ui.before_money import before_money
from estimator.ui.fields import escaped
from estimator.ui.papers import paper_of
from estimator.ui.results import Outcome, outcome, palette
from estimator.ui.sureness import chosen, shown
from estimator.ui.tables import show
from estimator.units import MONTH_DAYS, MONTH_NAMES


def page() -> None:
    """From the headline down to one hour."""
    found = outcome()
    option = chosen("worked")
    comparison = found.comparison(option, "baseline")
    before_money(found.middle.estimate.case, place="report")
    paper = paper_of(option)
    style.question("How was this worked out?")
    style.answer(paper.answer)
    style.then("Each figure below opens its working, at the best guess: formula, numbers put in, where they come from.")
    _workings(found, comparison, option)
    _map(found, comparison)
    _hour(found, comparison)
    st.download_button(
        "Every hour as a table (CSV)",
        data=lambda: sheet_files.hourly(found.middle.estimate, comparison, paper),
        file_name="hours.csv",
        mime="text/csv",
        on_click="ignore",
        key="worked:hours",
    )
    style.small(*paper.rests_on, STATEMENT)


def _workings(found: Outcome, comparison: Comparison, option: str) -> None:
    sure, currency = shown(option).against[0].sure, found.case.prices.currency
    for group in working_rows.grouped(working.workings(found.middle.estimate, comparison)):
        with st.expander(escaped(working_rows.headline(group, sure, currency))):
            show(*(working_rows.as_rows(each) for each in group))


def _map(found: Outcome, comparison: Comparison) -> None:
    drawn = hours.heat_saved_map(found.middle.estimate, comparison)
    style.finding(drawn.finding)
    st.plotly_chart(
        charts_year.year_map(drawn, palette=palette()), theme=None, config=CONFIG, alt=hours.in_words(drawn)
    )
    with st.expander("In numbers: heat saved by month and time of day"):
        show(hours.quarters(drawn))


def _hour(found: Outcome, comparison: Comparison) -> None:
    style.finding("One hour in full")
    first, second, third = st.columns(3)
    month = first.selectbox("Month", MONTH_NAMES, key="worked:month", filter_mode=None)
    number = MONTH_NAMES.index(month)
    day = second.number_input("Day", 1, MONTH_DAYS[number], 1, key=f"worked:day:{number}")
    hour = third.number_input("Hour, 0 to 23", 0, 23, 6, key="worked:hour")
    told = hours.told(found.middle.estimate, comparison, month=sum((number, 1)), day=int(day), hour=int(hour))
    show(told)


page()
