"""Which pages are there, and what stands around every one of them?"""

from __future__ import annotations

from pathlib import Path

import streamlit as st

from estimator.ui import state, wanting

TITLE = "Is heat recovery worth it here?"

_PAGES = Path(__file__).parent / "pages"

PAGES = (
    ("worth.py", "Worth it?", ""),
    ("tight.py", "Tight?", "tight"),
    ("sure.py", "Sure?", "sure"),
    ("fit.py", "Fitted how?", "fit"),
    ("weather.py", "Weather?", "weather"),
    ("worked.py", "Worked out?", "worked"),
    ("paper.py", "On paper?", "paper"),
    ("trust.py", "Trust?", "trust"),
)
"""File, label in the navigation (the page's own title is the full question), address."""


def draw() -> None:
    """Draw the chosen page and what stands around it."""
    st.set_page_config(page_title=TITLE, layout="wide", initial_sidebar_state="collapsed")
    state.begin()
    pages = [
        st.Page(_PAGES / file, title=label, url_path=address or None, default=not address)
        for file, label, address in PAGES
    ]
    page = st.navigation(pages, position="top")
    if not wanting.stands_in(page.url_path):
        page.run()
    state.show_link()
