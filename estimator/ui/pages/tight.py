"""Is this house tight enough?"""

from __future__ import annotations

import datetime
from collections.abc import Callable
from contextvars import copy_context
from functools import partial
from importlib.util import find_spec

import streamlit as st

from estimator.report import findings_tight, tight_page, tight_picture, tight_routes, tight_sheets
from estimator.report.document import STATEMENT
from estimator.report.tight import explained, verdict
from estimator.report.tight_paper import TightPaper, tight_paper
from estimator.ui import style, tables
from estimator.ui.before_money import before_money
from estimator.ui.fields import escaped
from estimator.ui.papers import names_typed
from estimator.ui.pictures import picture
from estimator.ui.sheets import table
from estimator.ui.tightness import Shown, draughts, inputs, labels, listed, options, shown


def page() -> None:
    """From the verdict down to what it rests on."""
    now = shown(_chosen())
    before_money(now.found.case, place="tight", about="on sealing and leaks")
    _verdict(now)
    beside, right = st.columns([2.7, 1], gap="large")
    with right:
        inputs(now)
    with beside:
        _picture(now)
    _routes(now)
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
    style.then(said.then, said.today)


def _picture(now: Shown) -> None:
    """One figure over leakage, whichever somebody wants to see."""
    what = st.radio(
        "Drawn over leakage",
        list(findings_tight.NAMES),
        horizontal=True,
        format_func=findings_tight.NAMES.__getitem__,
        key="tight:drawn",
    )
    style.finding(findings_tight.title(now.found, what))
    desk, phone = (tight_picture.picture(now.found, what, form=form) for form in tight_picture.MEASURES)
    picture(desk=desk, phone=phone, alt=findings_tight.in_words(now.found, what), widest=780)
    with st.expander("In numbers", on_change="rerun", key="tight:numbers") as numbers:
        if numbers.open:
            table(tight_sheets.over_leakage(now.found))
    style.small(explained())


def _routes(now: Shown) -> None:
    found = now.found
    both = (found.baseline, found.today)
    told = [words for one in both for words in (tight_routes.first_step(one), tight_routes.short_of_air(one)) if words]
    tables.show(tight_sheets.house(found))
    style.finding("Seal, recover, both, or neither?")
    style.then(*told)
    table(tight_routes.four_routes(found, found.baseline))
    with st.expander(escaped(f"The same, starting from {found.today.words}"), key="tight:today"):
        table(tight_routes.four_routes(found, found.today))


def _folded(now: Shown) -> None:
    """What costs time to work out, or is for the expert, only once somebody opens it."""
    found = now.found
    with st.expander("Which leakage is the best to seal to?", on_change="rerun", key="tight:targets") as best:
        if best.open:
            table(tight_routes.targets(found))
            style.small("The leakage at which most money is left over the life, not discounted, with that air running.")
    with st.expander("Several pressure tests over the years?", on_change="rerun", key="tight:tests") as several:
        if several.open:
            listed(now)
    with st.expander("How leaky is it without a test?", on_change="rerun", key="tight:estimates") as untested:
        if untested.open:
            draughts(now)
            table(tight_sheets.estimates(found))
            style.small("The ways disagree. What an estimate cannot tell, a pressure test can.")
    with st.expander("For experts: does it depend on the model?", on_change="rerun", key="tight:models") as every:
        if every.open:
            table(tight_sheets.models(found))


def _files(now: Shown) -> None:
    """The verdict on one page, in three forms."""
    names, today, units = names_typed(), datetime.date.today(), copy_context()

    def made() -> TightPaper:
        paper: Callable[[], TightPaper] = partial(tight_paper, now.found, now.survey, names=names, today=today)
        return units.copy().run(paper)  # a file is made outside of this run, in the units chosen in it

    style.finding("The verdict on one page")
    with st.container(horizontal=True):
        if find_spec("typst") is not None:
            st.download_button(
                "To print (PDF)", data=lambda: tight_page.pdf(made()), file_name="tight-enough.pdf",
                mime="application/pdf", on_click="ignore", key="tight:pdf", type="primary",
            )  # fmt: skip
        st.download_button(
            "For a browser", data=lambda: tight_page.html(made()).encode(), file_name="tight-enough.html",
            mime="text/html", on_click="ignore", key="tight:html",
        )  # fmt: skip
        st.download_button(
            "As text", data=lambda: tight_page.text(made()), file_name="tight-enough.txt",
            mime="text/plain", on_click="ignore", key="tight:txt",
        )  # fmt: skip


def _small_print(now: Shown) -> None:
    found = now.found
    _files(now)
    year = found.place.year
    style.small(
        f"Prices: {found.case.prices.dated}. Weather: {year.name}, {year.source}.",
        f"The range is that of the home's leakage: {found.span.source}.",
        STATEMENT,
    )


page()
