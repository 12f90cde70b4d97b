"""What does it pay over its life?"""

from __future__ import annotations

import streamlit as st

from estimator.report import charts, charts_life, charts_sure, findings, ledger, life_carbon, life_worth, sure_words
from estimator.report import life as life_words
from estimator.report.charts import CONFIG
from estimator.report.document import STATEMENT
from estimator.report.life import Life
from estimator.ui import style
from estimator.ui.before_money import before_money
from estimator.ui.fields import escaped
from estimator.ui.lives import Shown, shown
from estimator.ui.money_details import details
from estimator.ui.own_bill import own_bill
from estimator.ui.results import palette
from estimator.ui.sheets import table
from estimator.ui.sureness import options
from estimator.ui.tables import show


def page() -> None:
    """From what it pays down to every entry and every working."""
    style.rules()
    now = shown(_chosen())
    before_money(now.done.case, place="cost")
    _answer(now)
    beside, right = st.columns([2.7, 1], gap="large")
    with beside:
        _money(now.lives[0])
    with right:
        style.finding("What decides it")
        details(now.done, now.option)
    _worth(now)
    _year(now)
    _carbon(now)
    style.finding("Does this fit your own bill?")
    own_bill(now.done.case, now.done.year)
    _small_print(now)


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
        show(life_worth.by_year(life))


def _worth(now: Shown) -> None:
    style.finding("What is it worth?")
    for life in now.lives:
        worth = life_worth.figures(life)
        table(worth)
        style.small(worth.note)
    with st.expander("How each figure is worked out, and from which entries"):
        for life in now.lives:
            table(life_worth.workings(life))
            show(life_worth.entries(now.done.origins, life))


def _year(now: Shown) -> None:
    first, colours = now.lives[0], palette()
    currency, comparison = first.currency, first.comparison
    left, right = st.columns(2, gap="large")
    with left:
        sums = ledger.sums(comparison)
        _drawn(
            findings.saving(sums, currency),
            charts.saving(sums, currency=currency, palette=colours),
            findings.saving_in_words(sums, currency),
        )
        with st.expander("In numbers: from heat lost to net saving"):
            show(life_worth.from_heat(ledger.fresh_air(now.done, comparison), comparison, currency))
    with right:
        bills = life_carbon.monthly_bills(now.result)
        _drawn(
            life_carbon.bills_title(bills, currency),
            charts_life.bills(bills, baseline=now.done.case.baseline, currency=currency, palette=colours),
            life_carbon.bills_in_words(bills, currency),
        )
        with st.expander("In numbers: bills by month"):
            show(life_carbon.bills_table(bills, currency))
    for line in life_carbon.roof_said(now.done.options[now.option]):
        style.then(line)


def _carbon(now: Shown) -> None:
    first, colours = now.lives[0], palette()
    left, right = st.columns(2, gap="large")
    with left:
        _drawn(
            life_carbon.carbon_title(first),
            charts_life.carbon(first, palette=colours),
            life_carbon.carbon_in_words(first),
        )
        style.small(life_carbon.carbon_note(first))
    with right:
        tried, against = now.tried, first.against
        figure = charts_sure.swings(
            sure_words.lines(tried, against),
            best=float(against.sure.best.net_saving[0]),
            currency=first.currency,
            palette=colours,
        )
        _drawn(sure_words.swings_title(against, first.currency), figure, sure_words.swings_in_words(tried, against))
        with st.expander("In numbers: the swings"):
            st.markdown(escaped(sure_words.swings_in_words(tried, against)))


def _small_print(now: Shown) -> None:
    year = now.done.year
    style.small(
        f"Prices: {now.done.case.prices.dated}. Weather: {year.name}, {year.source}.",
        *sure_words.rests_on(now.tried)[:1],
        STATEMENT,
    )


page()
