"""In which of many homes does it pay?"""

from __future__ import annotations

import streamlit as st

from estimator.errors import InputFaults
from estimator.report import charts_stock, stock_said
from estimator.report.charts_frame import CONFIG
from estimator.report.document import STATEMENT
from estimator.report.stock_summary import error_lines
from estimator.stock.demo import template
from estimator.stock.held import MOST_ROWS, Held
from estimator.ui import faults, many, style, tables
from estimator.ui.before_money import before_money
from estimator.ui.fields import escaped
from estimator.ui.many_shown import Shown, shown
from estimator.ui.results import palette


def page() -> None:
    """From the answer for the whole table down to each home of it."""
    top = st.container()
    _table()
    found = many.screened()
    now = shown(found)
    with top:
        before_money(found.stock.settings.case, place="many", about="on homes like these")
        _answer(now)
    _pictures(now)
    _list(found, now)
    _take_away(found, now)
    _small_print(now)


def _table() -> None:
    """The table: a file, or invented homes."""
    with st.expander("Take your own table of homes", key="many:table"):
        given = st.file_uploader(
            f"Table of homes, CSV or Parquet, at most {MOST_ROWS:,} rows", type=["csv", "parquet"], key="many:file"
        )
        wrong = st.container()  # beside the file, where its sender looks
        st.download_button(
            "A table to fill in, with examples (CSV)",
            data=template().encode("utf-8-sig"),
            file_name="homes.csv",
            mime="text/csv",
            on_click="ignore",
        )
        style.small(
            "One home a row; what a column does not say is worked out as for a single home. Columns that are no field "
            "of a home, such as names, are not carried into the results. The file is kept nowhere after this visit.",
            "For any number of homes: python -m estimator stock homes.csv results.csv",
        )
    try:
        many.take(None if given is None else given.getvalue(), "" if given is None else given.name)
    except InputFaults as refused:
        with wrong:
            faults.show(refused.faults)


def _answer(now: Shown) -> None:
    style.question("In which of many homes does it pay?")
    style.answer(stock_said.answer(now.counts, option=now.option, baseline=now.baseline))
    style.then(stock_said.sealing(now.counts))
    style.then(stock_said.today(now.counts, option=now.option))
    for said in (stock_said.untested(now.counts), stock_said.faults(now.counts)):
        if said:
            style.then(said)
    if many.is_demo():
        style.then(f"These are {many.DEMO_HOMES} invented homes, as an example; take your own table below.")


def _pictures(now: Shown) -> None:
    left, right = st.columns([1, 1.6], gap="large")
    with left:
        style.finding(stock_said.payback_title(now.paybacks))
        figure = charts_stock.paybacks(now.paybacks, palette=palette())
        st.plotly_chart(figure, theme=None, config=CONFIG, alt=stock_said.paybacks_in_words(now.paybacks))
    with right:
        style.finding(stock_said.map_title(now.counts))
        figure = charts_stock.leakage_and_saving(
            now.q50, now.saving, now.tightness, names=now.names, currency=now.currency, palette=palette()
        )
        st.plotly_chart(figure, theme=None, config=CONFIG, alt=stock_said.map_in_words(now.counts))
        style.small(now.drawn)
    with st.expander("In numbers: both pictures"):
        st.markdown(escaped(stock_said.paybacks_in_words(now.paybacks)))
        st.markdown(escaped(stock_said.map_in_words(now.counts)))


def _list(found: Held, now: Shown) -> None:
    style.finding("Every home, the largest net saving first")
    with st.container(horizontal=True, vertical_alignment="bottom"):
        narrowed = st.selectbox("Show", list(stock_said.FILTERS), key="many:filter", filter_mode=None)
        named = st.text_input("Name contains", key="many:name", max_chars=60)
    rows = many.listed(found, narrowed, named)
    if not len(rows):
        style.then("No home of the table is like that.")
        return
    part = many.page_of(len(rows), key=f"many:page:{narrowed}:{named}")
    shown_rows = rows[part].tolist()
    faulty = now.is_faulty(shown_rows[0])
    tables.show(stock_said.homes([now.cells(row) for row in shown_rows], faulty=faulty))
    if not faulty:
        many.choose_home(found, shown_rows)


def _take_away(found: Held, now: Shown) -> None:
    with st.container(horizontal=True, gap="small"):
        st.download_button(
            "All results as a table (CSV)", data=found.as_csv, file_name="results.csv", mime="text/csv",
            on_click="ignore",
        )  # fmt: skip
        st.download_button(
            "The summary as text", data=now.summary, file_name="summary.txt", mime="text/plain", on_click="ignore"
        )


def _small_print(now: Shown) -> None:
    style.small(
        *error_lines(now.errors, currency=now.currency), f"Prices: {now.dated}. Weather: {now.weather}.", STATEMENT
    )


page()
