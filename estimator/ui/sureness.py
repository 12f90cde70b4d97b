"""How sure is the case on screen: at a first look while somebody types, and in all cases once for each case?

Once for all visitors, not for each: a reload, a second device and whoever opens the same link ask what has been worked
out already.
"""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable
from dataclasses import dataclass, field
from threading import Lock

import streamlit as st

from estimator.climate.year import ClimateYear
from estimator.draws import Ground, ground
from estimator.inputs.case import Case
from estimator.inputs.casefile import case_from_dict
from estimator.reach import first_look
from estimator.report.sure_words import Tried, tried
from estimator.sample import Outcomes, Sample, sample
from estimator.ui import at_hand, state
from estimator.ui.link import to_link
from estimator.ui.private import without_private
from estimator.ui.results import outcome
from estimator.ui.tree import EMPTY, Tree

_KEPT = "sureness"
_MOST = 16
"""Cases kept for whoever comes next: about 5 MB each, and 3 MB for each of their options that was asked about."""
_ASKS = 0.2  # s between two looks whether somebody who waits for another's trying still wants it


@dataclass(slots=True, eq=False)
class _Drawn:
    """The ground of a case, its first look, the one sample drawn of it, and what was said of its options so far."""

    place: Ground
    first: Outcomes | None = None
    sample: Sample | None = None
    trying: Lock = field(default_factory=Lock)
    options: dict[str, Tried] = field(default_factory=dict)


_LAST: OrderedDict[str, _Drawn] = OrderedDict()
"""By link, the one asked for last at the end; of cases without any private word."""
_LOOKING = Lock()


def options() -> dict[str, str]:
    """Names and labels of the options that may be asked about."""
    found = outcome()
    return {name: found.comparison(name, "baseline").option_label for name in found.options()}


def _kept() -> _Drawn:
    case = state.case()
    kept = st.session_state.get(_KEPT)
    if kept is None or kept[0] is not case:
        kept = st.session_state[_KEPT] = (case, _shared(state.tree(), case, outcome().middle.estimate.year))
    return kept[1]


def _shared(tree: Tree, case: Case, year: ClimateYear) -> _Drawn:
    """What is known of a case in that very year, whoever asked; nobody else's where it says something private."""
    if without_private(tree) != tree:
        return _Drawn(ground(case, year))
    return _remembered(to_link(tree), case, year)


def _remembered(link: str, case: Case, year: ClimateYear) -> _Drawn:
    with _LOOKING:
        found = _LAST.get(link)
    made = found if found is not None and found.place.year is year else _Drawn(ground(case, year))
    with _LOOKING:
        now = _LAST.get(link)  # somebody may have been quicker
        if now is None or now.place.year is not year:
            now = _LAST[link] = made
        _LAST.move_to_end(link)
        if len(_LAST) > _MOST:
            _LAST.popitem(last=False)
        return now


def known() -> bool:
    """Whether all cases have been tried of the case on screen."""
    return _kept().sample is not None


def at_once() -> Outcomes:
    """Every option in all cases where they have been tried, else in a first few."""
    return _at_once(_kept())


def at_sight(tree: Tree, case: Case, year: ClimateYear) -> Outcomes:
    """The same of a case that is on nobody's screen yet."""
    return _at_once(_shared(tree, case, year))


def _at_once(kept: _Drawn) -> Outcomes:
    if kept.sample is not None:
        return kept.sample.cases
    if kept.first is None:
        kept.first = first_look(kept.place)
    return kept.first


def whole(told: Callable[[int], None] = lambda _: None) -> Sample:
    """All cases; told: called with the number tried so far, and free to end the trying."""
    return _tried(_kept(), told)


def ahead() -> None:
    """The home that the dashboard opens with, before anybody has asked."""
    case = case_from_dict(EMPTY)
    _tried(_remembered(to_link(EMPTY), case, at_hand.shared(case)), lambda _: None)


def _tried(kept: _Drawn, told: Callable[[int], None]) -> Sample:
    """All cases; where somebody is at them already, what comes of that."""
    while kept.sample is None:
        if not kept.trying.acquire(timeout=_ASKS):
            told(0)
            continue
        try:
            kept.sample = kept.sample or sample(kept.place, told=told)
        finally:
            kept.trying.release()
    return kept.sample


def shown(option: str) -> Tried:
    """One option of the case on screen, in all cases tried."""
    kept = _kept()
    if kept.sample is None:
        with st.spinner("Trying many cases"):
            whole()
    if option not in kept.options:
        kept.options[option] = tried(whole(), option=option)
    return kept.options[option]


def chosen(place: str) -> str:
    """The option asked about on a page; a choice only where there are several."""
    labels = options()
    if len(labels) == 1:
        return next(iter(labels))
    return st.selectbox("Option", list(labels), format_func=labels.__getitem__, key=f"{place}:option", filter_mode=None)
