"""What can be taken home on paper?"""

from __future__ import annotations

from importlib.util import find_spec

import streamlit as st

from estimator.report import leave_html, leave_pdf, sheet_files
from estimator.report.document import as_json
from estimator.report.leave import Paper
from estimator.ui import style
from estimator.ui.before_money import before_money
from estimator.ui.papers import names_typed, paper_of, typed
from estimator.ui.results import Outcome, outcome
from estimator.ui.sureness import chosen, shown
from estimator.ui.tables import show


def page() -> None:
    """The answer, who it is for, the files, and what stands in them."""
    found = outcome()
    option = chosen("paper")
    before_money(found.middle.estimate.case, place="report")
    style.question("What can be taken home on paper?")
    heading = st.container()
    _names()
    paper = paper_of(option, names_typed())
    with heading:
        style.answer(paper.answer)
    _files(found, option, paper)
    _preview(paper)


def _names() -> None:
    left, right = st.columns(2)
    with left:
        typed("paper:for", "Prepared for", placeholder="who it is for")
    with right:
        typed("paper:by", "Prepared by", placeholder="who made it")
    typed("paper:note", "A note")
    style.small("Names and note stay on this screen and in the files you save: not in the link, nor on the server.")


def _files(found: Outcome, option: str, paper: Paper) -> None:
    tried = shown(option)
    with st.container(horizontal=True, gap="small"):
        if find_spec("typst") is None:
            st.info("No PDF can be made on this machine. The page for a browser prints as well.")
        else:
            st.download_button(
                "Two pages (PDF)", data=lambda: leave_pdf.pdf(paper), file_name="heat-recovery.pdf",
                mime="application/pdf", on_click="ignore", key="paper:pdf", type="primary",
            )  # fmt: skip
        st.download_button(
            "One page for a browser", data=lambda: leave_html.html(paper).encode(), file_name="heat-recovery.html",
            mime="text/html", on_click="ignore", key="paper:html",
        )  # fmt: skip
        st.download_button(
            "Every result (CSV)", data=lambda: sheet_files.results(found.middle, tried, paper).encode(),
            file_name="results.csv", mime="text/csv", on_click="ignore", key="paper:csv",
        )  # fmt: skip
        st.download_button(
            "Every result (JSON)", data=lambda: as_json(found.middle, (found.low, found.high)).encode(),
            file_name="results.json", mime="application/json", on_click="ignore", key="paper:json",
        )  # fmt: skip


def _preview(paper: Paper) -> None:
    style.finding("What stands in it")
    style.small(
        f"The answer, the case in one sentence, {len(paper.pictures)} pictures, the working, all cautions. "
        f"Made {paper.made}; use until {paper.valid}."
    )
    show(paper.figures)
    style.finding("What is not counted")
    style.small(*paper.not_counted)
    with st.expander("What it rests on: inputs with tag and source"):
        show(paper.assumptions)
    style.small(*paper.rests_on, paper.statement)


page()
