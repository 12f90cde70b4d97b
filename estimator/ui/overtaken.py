"""Has something been changed on the page that waits for this run to end?

The framework ends a running script by itself where the whole page is to be drawn anew, but lets a change that only a
part of the page follows wait until the run has finished. Slow work asks here between its steps, and gives way.
"""

from __future__ import annotations

from streamlit.runtime.scriptrunner import get_script_run_ctx
from streamlit.runtime.scriptrunner_utils.script_requests import ScriptRequestType


class Overtaken(Exception):
    """The answer being worked out is nobody's question any more."""


def give_way() -> None:
    """End the work at hand where a newer change waits for it."""
    context = get_script_run_ctx(suppress_warning=True)
    waiting = getattr(context and context.script_requests, "_state", None)
    if waiting in (ScriptRequestType.RERUN, ScriptRequestType.STOP):
        raise Overtaken
