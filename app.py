"""What does `python -m streamlit run app.py` start?"""

import streamlit as st

from estimator.ui.server import SCRIPT, middleware

app = st.App(SCRIPT, middleware=middleware())
