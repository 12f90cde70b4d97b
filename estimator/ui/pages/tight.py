"""Is this house tight enough?"""

from __future__ import annotations

import streamlit as st

from estimator.report import charts_tight, findings_tight, tight_sheets
from estimator.report.charts import CONFIG
from estimator.report.document import STATEMENT
from estimator.report.tight import EXPLAINED, verdict
from estimator.report.tight_page import page as installers_page
from estimator.ui import style
from estimator.ui.before_money import before_money
from estimator.ui.fields import escaped
from estimator.ui.results import palette
from estimator.ui.sheets import table
from estimator.ui.tightness import Shown, draughts, inputs, labels, options, shown


def page() -> None:
    """From the verdict down to what it rests on."""
    style.rules()
    now = shown(_chosen())
    before_money(now.found.case, place="tight", about="on sealing and leaks")
    _verdict(now)
    beside, right = st.columns([2.7, 1], gap="large")
    with right:
        inputs(now)
    with beside:
        _saving(now)
    _routes(now)
    _more_pictures(now)
    _folded(now)
    _small_print(now)


def _chosen() -> str:
    names = options()
    if len(names) == 1:
        return names[0]
    return st.selectbox("Option", names, format_func=labels().__getitem__, key="tight:option", filter_mode=None)


def _verdict(now: Shown) -> None:
    said = verdict(now.found)
    style.question("Is this house tight enough?")
    style.answer(said.sentence)
    style.then(said.then)
    style.then(said.today)


def _saving(now: Shown) -> None:
    _picture(
        findings_tight.saving_title(now.found),
        charts_tight.saving(now.found, palette=palette()),
        findings_tight.saving_in_words(now.found),
    )
    style.small(EXPLAINED)


def _picture(title: str, figure: object, words: str) -> None:
    style.finding(title)
    st.plotly_chart(figure, theme=None, config=CONFIG, alt=words)


def _routes(now: Shown) -> None:
    found = now.found
    style.finding("Seal, recover, both, or neither?")
    for against in (found.baseline, found.today):
        style.then(tight_sheets.first_step(against))
        if short := tight_sheets.short_of_air(against):
            style.then(short)
    for against in (found.baseline, found.today):
        table(tight_sheets.four_routes(found, against))


def _more_pictures(now: Shown) -> None:
    found, colours = now.found, palette()
    left, right = st.columns(2, gap="large")
    with left:
        _picture(
            findings_tight.share_title(found),
            charts_tight.through_exchanger(found, palette=colours),
            findings_tight.share_in_words(found),
        )
    with right:
        _picture(
            findings_tight.heat_title(found),
            charts_tight.heat(found, palette=colours),
            findings_tight.heat_in_words(found),
        )
    table(tight_sheets.house(found))


def _folded(now: Shown) -> None:
    """What costs time to work out, or is for the expert, only once somebody opens it."""
    found = now.found
    with st.expander("Which leakage is the best to seal to?", on_change="rerun", key="tight:targets") as best:
        if best.open:
            table(tight_sheets.targets(found))
            style.small("The leakage at which most money is left over the life, not discounted, with that air running.")
    with st.expander("How leaky is it without a test?", on_change="rerun", key="tight:estimates") as untested:
        if untested.open:
            draughts(now)
            table(tight_sheets.estimates(found))
            style.small("The ways disagree. What an estimate cannot tell, a pressure test can.")
    with st.expander("For experts: does it depend on the model?", on_change="rerun", key="tight:models") as every:
        if every.open:
            table(tight_sheets.models(found))
    for title, words in (
        ("In numbers: net saving", findings_tight.saving_in_words(found)),
        ("In numbers: share of fresh air and heat saved", findings_tight.both_in_words(found)),
    ):
        with st.expander(title):
            st.markdown(escaped(words))


def _small_print(now: Shown) -> None:
    found = now.found
    st.download_button(
        "The verdict on one page, as text",
        data=lambda: installers_page(found, now.survey),
        file_name="tight-enough.txt",
        mime="text/plain",
        on_click="ignore",
    )
    year = found.place.year
    style.small(
        f"Prices: {found.case.prices.dated}. Weather: {year.name}, {year.source}.",
        f"The range is that of the home's leakage: {found.span.source}.",
        STATEMENT,
    )


page()
