"""What case is this visitor looking at, and how did it get that way?

The session holds one plain dict of changes and its history; widgets only show it and ask for changes. The address of
the page always carries the same case, so that a reload, another device or a restarted server give the same figures.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import streamlit as st
from streamlit.runtime.scriptrunner import get_script_run_ctx

from estimator.errors import Fault, InputFaults
from estimator.inputs.case import Case
from estimator.inputs.casefile import case_from_dict
from estimator.survey.fill import Filled, filled
from estimator.ui import at_hand
from estimator.ui.link import PARAMETER, from_link, to_link
from estimator.ui.tree import EMPTY, History, Tree, with_entry

_HISTORY, _CASE, _SHOWN, _REFUSED, _TOLD = "case_history", "case_read", "case_link", "case_refused", "case_told"
_ORIGINS = "case_origins"
_CHANGED = "case_changed"  # and this server does not know whether the address has heard of it
_WHOLE = "case_whole_refused"  # what was refused is a whole case, by link or file, not an entry


def history() -> History:
    """The case now and the changes before it."""
    return st.session_state.setdefault(_HISTORY, History(EMPTY))


def tree() -> Tree:
    """What differs from the defaults."""
    return history().now


@dataclass(slots=True)
class Held:
    """The case of a session for those who are asked where no session is, such as the writer of a file."""

    case: Case


def case() -> Case:
    """The case, read and checked."""
    return held().case


def held() -> Held:
    """What holds the case, now and after every change."""
    if _CASE not in st.session_state:
        st.session_state[_CASE] = Held(_checked(tree()))
    return st.session_state[_CASE]


def survey() -> Filled:
    """The case without gaps, worked out once for each case."""
    kept = st.session_state.get(_ORIGINS)
    if kept is None or kept[0] is not case():
        kept = st.session_state[_ORIGINS] = (case(), filled(case()))
    return kept[1]


def refused() -> tuple[Fault, ...]:
    """Which entries could not be used since the last change that could; whoever asks shows it, beside the inputs."""
    if st.session_state.get(_WHOLE):
        return ()  # a link or a file that was not used is said before any figure of another case
    return told()


def told() -> tuple[Fault, ...]:
    """All that could not be used; whoever asks shows it."""
    st.session_state[_TOLD] = True
    return refusals()


def refusals() -> tuple[Fault, ...]:
    """The same, asked by somebody who does not show it."""
    return st.session_state.get(_REFUSED, ())


def untold() -> bool:
    """Whether something was refused and the page has not shown it."""
    return bool(refusals()) and not st.session_state.get(_TOLD)


def refuse(*faults: Fault, whole: bool = False) -> None:
    """Say that something was not used; everything stays as it was. whole: a case, not one of its entries."""
    st.session_state[_REFUSED] = faults
    st.session_state[_WHOLE] = whole


def put(changes: Mapping[str, Any], *, done: str) -> None:
    """Change entries, None going back to the default; where the whole would be no case, say why and change nothing."""
    wanted = tree()
    for path, value in changes.items():
        wanted = with_entry(wanted, path, value)
    replace(wanted, done=done)


def take(path: str, value: Any, *, tag: str, done: str) -> None:
    """Change one entry and what it is said to rest on, as one step."""
    wanted = with_entry(tree(), path, value)
    replace({**wanted, "tags": {**wanted.get("tags", {}), path: tag}}, done=done)


def replace(wanted: Tree, *, done: str, whole: bool = False) -> None:
    """Take another case, if it is one. whole: it comes from outside, by link or file."""
    try:
        held().case = _checked(wanted)
    except InputFaults as error:
        refuse(*error.faults, whole=whole)
        return
    st.session_state[_HISTORY] = history().changed(wanted, done)
    st.session_state[_REFUSED] = ()
    st.session_state[_CHANGED] = True


def undo() -> None:
    """Take back the last change."""
    st.session_state[_HISTORY] = history().undone()
    held().case = _checked(tree())
    st.session_state[_REFUSED] = ()
    st.session_state[_CHANGED] = True


def begin() -> None:
    """At the start of every run: take the case that the address brings, if it is another than the one shown.

    What was changed on the page goes before its address, which may not have heard yet of the change before, unless
    somebody goes back through the addresses.
    """
    st.session_state[_TOLD] = False
    brought = st.query_params.get(PARAMETER)
    ours = st.session_state.get(_CHANGED) and not _going_back()
    if ours or brought is None or brought == st.session_state.get(_SHOWN):
        return
    st.session_state[_SHOWN] = brought
    try:
        replace(from_link(brought), done="opened a link", whole=True)
    except InputFaults as error:
        refuse(*error.faults, whole=True)


def address() -> dict[str, str]:
    """What the address of every page carries of the case."""
    link = to_link(tree())
    return {PARAMETER: link} if link else {}


def link_to_show() -> str:
    """The case as the address is to say it, where the browser puts it there by itself; empty for the case as it opens.

    It does so once it has drawn: a new address costs it as much as a new answer.
    """
    link = to_link(tree())
    st.session_state[_SHOWN] = link or None
    return link


def show_link() -> None:
    """At the end of every run of the whole page: put the case into the address."""
    link = link_to_show()
    st.session_state[_CHANGED] = False
    if link:
        if st.query_params.get(PARAMETER) != link:
            st.query_params[PARAMETER] = link
    elif PARAMETER in st.query_params:
        del st.query_params[PARAMETER]


def _going_back() -> bool:
    context = get_script_run_ctx()
    return bool(context and context.is_history_navigation)


def _checked(wanted: Tree) -> Case:
    found = case_from_dict(wanted)
    if wrong := at_hand.unusable(found):
        raise InputFaults(wrong)
    return found
