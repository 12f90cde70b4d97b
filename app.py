"""What does `python -m streamlit run app.py` start?"""

import streamlit as st

from estimator.ui.server import SCRIPT, middleware, take_short_turns

take_short_turns()
app = st.App(SCRIPT, middleware=middleware())
