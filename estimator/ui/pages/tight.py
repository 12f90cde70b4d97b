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
from estimator.report.rows import Rows
from estimator.report.tight import Tightness, Verdict, explained, verdict
from estimator.report.tight_paper import TightPaper, tight_paper
from estimator.ui import live, pictures, style, tables
from estimator.ui.before_money import before_money
from estimator.ui.fields import escaped
from estimator.ui.papers import names_typed
from estimator.ui.sheets import as_html
from estimator.ui.tightness import Held, draughts, held, inputs, labels, listed, options, shown

_SEAL_TO, _TESTS = "Which leakage is the best to seal to?", "Several pressure tests over the years?"
_UNTESTED, _MODELS = "How leaky is it without a test?", "For experts: does it depend on the model?"
_MORE = (_SEAL_TO, _TESTS, _UNTESTED, _MODELS)


def page() -> None:
    """From the verdict down to what it rests on."""
    option = _chosen()
    now = shown(option)
    before_money(now.found.case, place="tight", about="on sealing and leaks")
    _verdict(option)
    beside, right = st.columns([2.7, 1], gap="large")
    with right:
        inputs(now)
    with beside:
        _picture(option)
    live.part(lambda: _routes(shown(option).found))
    _folded(
        f"The same, starting from {now.found.today.words}",
        lambda: tight_routes.four_routes(shown(option).found, shown(option).found.today),
        key="tight:today",
    )
    _more(option)
    _small_print(option)


def _chosen() -> str:
    names = options()
    if len(names) == 1:
        return names[0]
    return st.selectbox("Option", names, format_func=labels().__getitem__, key="tight:option", filter_mode=None)


def _verdict(option: str) -> None:
    def said() -> Verdict:
        return verdict(shown(option).found)

    style.question("Is this house tight enough?")
    with st.container(key="answer"):
        live.part(lambda: style.as_answer(said().sentence))
    live.part(lambda: style.as_then(said().then, said().today))


def _picture(option: str) -> None:
    """One figure over leakage, whichever somebody wants to see."""
    what = st.radio(
        "Drawn over leakage",
        list(findings_tight.NAMES),
        horizontal=True,
        format_func=findings_tight.NAMES.__getitem__,
        key="tight:drawn",
    )
    live.part(lambda: _drawn(shown(option).found, what))
    _folded("In numbers", lambda: tight_sheets.over_leakage(shown(option).found), key="tight:numbers")
    style.small(explained())


def _drawn(found: Tightness, what: str) -> str:
    picture = pictures.as_html(
        **{form: tight_picture.picture(found, what, form=form) for form in tight_picture.MEASURES},
        alt=findings_tight.in_words(found, what),
        widest=780,
    )
    return f"{style.as_finding(findings_tight.title(found, what))}{picture}"


def _folded(title: str, sheet: Callable[[], Rows], *, key: str) -> None:
    """A table that is sent only once somebody opens it."""
    with st.expander(escaped(title), on_change="rerun", key=key) as fold:
        if fold.open:
            live.part(lambda: as_html(sheet()))


def _routes(found: Tightness) -> str:
    both = (found.baseline, found.today)
    told = [words for one in both for words in (tight_routes.first_step(one), tight_routes.short_of_air(one)) if words]
    pieces = (
        tables.many_as_html(tight_sheets.house(found)),
        style.as_finding("Seal, recover, both, or neither?"),
        style.as_then(*told),
        as_html(tight_routes.four_routes(found, found.baseline)),
    )
    return "".join(pieces)


def _more(option: str) -> None:
    """What costs time to work out, or is for the expert, only once somebody asks."""
    asked = st.pills("More about the leakage", _MORE, key="tight:more")
    if asked == _SEAL_TO:
        live.part(lambda: as_html(tight_routes.targets(shown(option).found)))
        style.small("The leakage at which most money is left over the life, not discounted, with that air running.")
    elif asked == _TESTS:
        listed(shown(option))
    elif asked == _UNTESTED:
        draughts(shown(option))
        live.part(lambda: as_html(tight_sheets.estimates(shown(option).found)))
        style.small("The ways disagree. What an estimate cannot tell, a pressure test can.")
    elif asked == _MODELS:
        live.part(lambda: as_html(tight_sheets.models(shown(option).found)))


def _files(latest: Held) -> None:
    """The verdict on one page, in three forms."""
    names, today, units = names_typed(), datetime.date.today(), copy_context()

    def made() -> TightPaper:
        paper: Callable[[], TightPaper] = partial(
            tight_paper, latest.shown.found, latest.shown.survey, names=names, today=today
        )
        return units.copy().run(paper)  # a file is made outside of this run, in the units chosen in it

    with st.popover("The verdict on one page"):
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


def _small_print(option: str) -> None:
    _files(held(option))
    live.standing(lambda: _rests(shown(option).found))  # says where the leakage comes from, not what it is
    st.html(_rests(shown(option).found))


def _rests(found: Tightness) -> str:
    year = found.place.year
    return style.as_small(
        f"Prices: {found.case.prices.dated}. Weather: {year.name}, {year.source}.",
        f"The range is that of the home's leakage: {found.span.source}.",
        STATEMENT,
    )


page()
