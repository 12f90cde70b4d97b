"""What does it pay over its life?"""

from __future__ import annotations

from collections.abc import Callable

import streamlit as st

from estimator.leak_range import leakage_span
from estimator.report import (
    charts,
    charts_life,
    findings,
    leakage_said,
    ledger,
    life_carbon,
    life_working,
    life_worth,
    sure_words,
)
from estimator.report import life as life_words
from estimator.report.charts_frame import CONFIG
from estimator.report.document import STATEMENT
from estimator.report.life import Life
from estimator.ui import style
from estimator.ui.before_money import before_money
from estimator.ui.fields import escaped
from estimator.ui.lives import Shown, shown
from estimator.ui.money_details import details
from estimator.ui.onward import onward
from estimator.ui.own_bill import own_bill
from estimator.ui.results import palette
from estimator.ui.sheets import table
from estimator.ui.sureness import options
from estimator.ui.tables import show


def page() -> None:
    """From what it pays down to every entry and every working."""
    now = shown(_chosen())
    before_money(now.done.case, place="cost")
    _answer(now)
    onward()
    first = now.lives[0]
    _row(lambda: _money(first), lambda: _ledger(now, first), widths=(1.7, 1.0))
    style.finding("What decides it")
    details(now.done, now.option)
    _worth(now)
    with st.expander("Bills by month and carbon by year", on_change="rerun", key="years:more") as more:
        if more.open:
            _row(lambda: _bills(now), lambda: _carbon(first))
    with st.expander("Does this fit your own bill?", key="years:bill"):
        own_bill(now.done.case, now.done.year)
    _small_print(now)


def _row(left: Callable[[], None], right: Callable[[], None], widths: tuple[float, float] = (1.0, 1.0)) -> None:
    for column, draw in zip(st.columns(list(widths), gap="large"), (left, right), strict=True):
        with column:
            draw()


def _chosen() -> str:
    labels = options()
    if len(labels) == 1:
        return next(iter(labels))
    return st.selectbox("Option", list(labels), format_func=labels.__getitem__, key="years:option", filter_mode=None)


def _answer(now: Shown) -> None:
    first, *others = now.lives
    style.question("What does it pay over its life?")
    style.answer(life_words.answer(first))
    style.then(life_words.returned(first))
    for other in others:
        style.then(f"{life_words.answer(other)} {life_words.returned(other)}")


def _drawn(title: str, figure: object, words: str) -> None:
    style.finding(title)
    st.plotly_chart(figure, theme=None, config=CONFIG, alt=words)


def _money(life: Life) -> None:
    _drawn(life_words.money_title(life), charts_life.money(life, palette=palette()), life_words.money_in_words(life))
    style.small(life_words.MONEY_NOTE, *life_words.later_costs(life))
    with st.expander("In numbers: year by year"):
        show(life_working.by_year(life))


def _worth(now: Shown) -> None:
    style.finding("What is it worth?")
    first, *others = now.lives
    show(life_worth.figures(first))
    for other in others:
        with st.expander(escaped(f"The same against {other.words}")):
            show(life_worth.figures(other))
    with st.expander("How each figure is worked out, and from which entries"):
        for life in now.lives:
            table(life_working.workings(life))
            show(life_worth.spreads(life), life_working.entries(now.done.origins, life))


def _ledger(now: Shown, first: Life) -> None:
    comparison, currency = first.comparison, first.currency
    sums = ledger.sums(comparison)
    _drawn(
        findings.saving(sums, currency),
        charts.saving(sums, currency=currency, palette=palette()),
        findings.saving_in_words(sums, currency),
    )
    with st.expander("In numbers: from heat lost to net saving"):
        show(life_working.from_heat(ledger.fresh_air(now.done, comparison), comparison, currency))


def _bills(now: Shown) -> None:
    bills, currency = life_carbon.monthly_bills(now.result), now.lives[0].currency
    _drawn(
        life_carbon.bills_title(bills, currency),
        charts_life.bills(bills, baseline=now.done.case.baseline, currency=currency, palette=palette()),
        life_carbon.bills_in_words(bills, currency),
    )
    if said := life_carbon.roof_said(now.done.options[now.option]):
        style.small(*said)
    with st.expander("In numbers: bills by month"):
        show(life_carbon.bills_table(bills, currency))


def _carbon(first: Life) -> None:
    _drawn(
        life_carbon.carbon_title(first),
        charts_life.carbon(first, palette=palette()),
        life_carbon.carbon_in_words(first),
    )
    style.small(life_carbon.carbon_note(first))


def _small_print(now: Shown) -> None:
    year = now.done.year
    style.small(
        f"Prices: {now.done.case.prices.dated}. Weather: {year.name}, {year.source}.",
        f"Leakage: {leakage_said.words(leakage_span(now.done.case))}.",
        *sure_words.rests_on(now.tried)[:1],
        STATEMENT,
    )


page()
