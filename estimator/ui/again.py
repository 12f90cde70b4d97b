"""What becomes of a change that reaches a server which was started anew in the meantime?

The browser then sends what its fields say to a session that has not drawn them yet and knows of no change to make of
them; the framework drops it without a word. So the first run of a session draws the case of the address, which tells
the session its fields, and what the browser had sent is put to it once more.
"""

from __future__ import annotations

import streamlit as st
from streamlit.proto.WidgetStates_pb2 import WidgetStates
from streamlit.runtime.scriptrunner import RerunData, RerunException, get_script_run_ctx

_MET, _SENT, _ASKED = "again:met", "again:sent", "again:asked"


def begin() -> None:
    """At the start of every run: in the first of a session, keep what the browser says its fields hold."""
    st.session_state[_ASKED] = st.session_state.get(_MET) == _ASKED
    if _MET in st.session_state:
        st.session_state[_MET] = True
        return
    st.session_state[_MET] = True
    context = get_script_run_ctx()
    sent = context.session_state.get_widget_states() if context else []
    if sent:
        # A link is followed in the first run already; asked for once more, it would take back the next one.
        st.session_state[_SENT] = [each for each in sent if each.WhichOneof("value") != "json_trigger_value"]


def asked() -> bool:
    """Whether this run follows such a first one: the browser then shows what the first run said, not what it sent."""
    return bool(st.session_state.get(_ASKED))


def ask() -> None:
    """At the end of every run: put to the session once more what it could not understand before it had drawn."""
    sent = st.session_state.pop(_SENT, None)
    context = get_script_run_ctx()
    if sent and context:
        st.session_state[_MET] = _ASKED
        raise RerunException(
            RerunData(
                query_string=context.query_string,
                page_script_hash=context.page_script_hash,
                widget_states=WidgetStates(widgets=sent),
            )
        )
