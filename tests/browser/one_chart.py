"""What is the least that a page with one input and one chart can be? The measure of every other page."""

import plotly.graph_objects as go
import streamlit as st

size = st.number_input("Size", min_value=1.0, max_value=100.0, value=5.0, step=1.0)
st.plotly_chart(go.Figure(go.Scatter(x=list(range(60)), y=[size * x for x in range(60)])), theme=None)
