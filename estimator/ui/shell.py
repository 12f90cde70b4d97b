"""Which pages are there, and what stands around every one of them?"""

from __future__ import annotations

import logging
from pathlib import Path

import streamlit as st

from estimator.errors import InputFaults
from estimator.ui import again, case_bar, live, measure, navigation, readers, state, style, takes, wanting
from estimator.ui.onward import carried

TITLE = "Is heat recovery worth it here?"

_PAGES = Path(__file__).parent / "pages"
_LOG = logging.getLogger(__name__)

PAGES = (
    ("worth.py", "Worth it?", ""),
    ("compare.py", "Which way?", "compare"),
    ("tight.py", "Tight?", "tight"),
    ("years.py", "Years?", "years"),
    ("sure.py", "Sure?", "sure"),
    ("fit.py", "Fitted how?", "fit"),
    ("weather.py", "Weather?", "weather"),
    ("many.py", "Many homes?", "many"),
    ("worked.py", "Worked out?", "worked"),
    ("paper.py", "On paper?", "paper"),
    ("trust.py", "Trust?", "trust"),
)
"""File, label in the navigation (the page's own title is the full question), address."""


def draw() -> None:
    """Draw the chosen page and what stands around it."""
    st.set_page_config(page_title=TITLE, layout="wide", initial_sidebar_state="collapsed")
    again.begin()
    live.begin()
    state.begin()
    readers.WHO.begin()
    measure.begin()
    style.rules()
    pages = {
        address: st.Page(_PAGES / file, title=label, url_path=address or None, default=not address)
        for file, label, address in PAGES
    }
    chosen = st.navigation(list(pages.values()), position="hidden")
    with st.container(key="top", horizontal=True, gap="small", vertical_alignment="center"):
        asked = navigation.links(pages, now=chosen.url_path)
        if asked is not None:
            takes.forget()
            st.switch_page(pages[asked], query_params=carried())
        case_bar.draw()
    above = st.container()
    live.standing(state.refusals)
    if wanting.stands_in(chosen.url_path):
        state.show_link()
        live.finish()
    else:
        _run(chosen)
    if state.untold():
        with above:
            case_bar.tell()
    readers.WHO.show()
    measure.UNITS.show()
    again.ask()


def _run(page: st.Page) -> None:
    """The page, or in its place what can be done; the fault itself goes to the log, without any value of the case."""
    around = live.around()
    try:
        page.run()
        state.show_link()
        live.finish()
    except InputFaults as error:
        state.show_link()
        around()
        state.refuse(*error.faults)
    except Exception as error:
        _LOG.error("a page could not be drawn: %s", type(error).__name__, exc_info=True)
        state.show_link()
        around()
        style.question("This page could not be drawn")
        style.sentence_alone("Nothing is lost: the case is as you left it.")  # the place for answers may be taken
        style.then(
            "Undo the last change, go to another question, or save the case as a file and open it again. "
            "What went wrong is written in the log of the server."
        )
