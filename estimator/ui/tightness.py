"""What is known of the tightness of the case on screen, and which inputs decide it?

The sweep over all leakages does not depend on the house's own leakage, nor does what it would be once sealed: both
are kept while only the leakage is moved.
"""

from __future__ import annotations

import dataclasses
import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import streamlit as st

from estimator.at_leakage import OptionAt, ground
from estimator.inputs.case import Case
from estimator.inputs.catalogue import table
from estimator.inputs.quantity import declared
from estimator.leak_range import leakage_span, pressure_history
from estimator.report import tight_sheets
from estimator.report.tight import Tightness, sealed, stated, sweeps, tightness
from estimator.survey.fill import Filled
from estimator.sweep import Sweep
from estimator.ui import at_hand, leakage_entry, live, state, style
from estimator.ui.decisive import LEAKAGE_UNITS
from estimator.ui.fields import escaped, field
from estimator.ui.sheets import table as sheet
from estimator.ui.tree import entry, with_entry

_CASE = {item.path: item for item in declared(Case)}
_KEPT, _HELD = "tight_sweeps", "tight_held"
_FREE = ("leakage.measure", "leakage.value", "leakage.basis", "leakage.tests", "sealing", "draughts", "title")
"""Entries that the sweep does not depend on."""

_UNTESTED, _LISTED = "Not tested", "Several tests"
_TESTS = {
    "Tested, q50": ("q50", "measured"),
    "Tested, n50": ("n50", "measured"),
    "Tested at 4 Pa": ("q4", "measured"),
    "A figure, not tested": ("q50", "assumed"),
}
_SEEN = {
    "draughts.chimneys": "Open chimneys",
    "draughts.flues": "Open flues",
    "draughts.passive_vents": "Passive vents",
    "draughts.floor": "Ground floor",
    "draughts.lobby": "Draught lobby",
    "draughts.stripped": "Draught seals",
}


@dataclass(frozen=True, slots=True, eq=False)
class Shown:
    """The filled case with the origin of every entry, and all that is said about its tightness."""

    survey: Filled
    found: Tightness


@dataclass(frozen=True, slots=True, eq=False)
class _Kept:
    """What stays while only the house's own leakage is moved, and what it depends on."""

    wanted: str
    swept: Mapping[str, Sweep]
    target: float
    sealed: Mapping[str, OptionAt]


@dataclass(slots=True, eq=False)
class Held:
    """What was shown last, for those who are asked where no session is, such as the writer of a file."""

    case: Case | None = None
    shown: Shown | None = None


def options() -> tuple[str, ...]:
    """Names of the options that may be asked about."""
    case = state.case()
    return tuple(name for name in case.options if name not in (case.baseline, case.today))


def labels() -> dict[str, str]:
    """What each option is called."""
    return {name: option.label or option.kind for name, option in state.case().options.items()}


def shown(option: str) -> Shown:
    """The case on screen, asked about one option, worked out once for each case."""
    case, latest = state.case(), held(option)
    if latest.case is not case:
        survey = state.survey()
        place = ground(case, at_hand.year(case), survey=survey)
        wanted = _without_leakage(option)
        target = place.case.sealing.target
        kept = st.session_state.get(_KEPT)
        if kept is None or kept.wanted != wanted:
            kept = _Kept(wanted, sweeps(place, option=option), target, sealed(place, option=option))
        elif kept.target != target:
            kept = dataclasses.replace(kept, target=target, sealed=sealed(place, option=option))
        st.session_state[_KEPT] = kept
        span = leakage_span(case, survey=survey)
        found = tightness(place, span, option=option, swept=kept.swept, known=kept.sealed)
        latest.shown, latest.case = Shown(survey, found), case
    return latest.shown


def held(option: str) -> Held:
    """What holds the latest, now and after every change."""
    return st.session_state.setdefault(_HELD, {}).setdefault(option, Held())


def inputs(now: Shown) -> None:
    """The inputs that decide this question, with what was refused of the last change above them."""
    for fault in state.refused():
        st.error(escaped(str(fault)))
    common = _common(now)
    with st.grid(2, min_column_width=140, gap="small"):
        _test(now, common)
        field(_CASE["sealing.target"], path="sealing.target", label="Seal to", **common)
    with st.expander("What sealing costs, and how far it goes", on_change="rerun", key="tight:sealing") as sealing:
        if sealing.open:
            _sealing(common)


def _sealing(common: dict) -> None:
    with st.grid(2, min_column_width=140, gap="small"):
        for path, label in (
            ("sealing.tightest", "Tightest possible"),
            ("sealing.step_low", "Halving leakage, low"),
            ("sealing.step", "Halving leakage, middling"),
            ("sealing.step_high", "Halving leakage, high"),
        ):
            field(_CASE[path], path=path, label=label, **common)


def listed(now: Shown) -> None:
    """All pressure tests over the years, as a line to write and as a table."""
    live.whole()
    case = state.case()
    field(_CASE["leakage.tests"], path="leakage.tests", label="Tests and works", **_common(now))
    if not case.leakage.tests:
        return
    found = pressure_history(case)
    if found is not None:
        style.then(found.words)
    elif entry(state.tree(), "leakage.value") is not None:
        style.then("Not used: the leakage entered above stands in place of the list.")
    else:
        style.then("No test in the list is newer than the works: the leakage is an estimate again until it is tested.")
    sheet(tight_sheets.tests(now.found, case))


def draughts(now: Shown) -> None:
    """What can be seen of the ways air takes, for the estimate by what can be seen."""
    with st.grid(3, min_column_width=140, gap="small"):
        for path, label in _SEEN.items():
            field(_CASE[path], path=path, label=label, **_common(now))


def _common(now: Shown) -> dict:
    return {"origins": now.survey.origins, "currency": now.found.currency, "place": "tight"}


def _test(now: Shown, common: dict) -> None:
    """Tested, said or neither, and the figure; where there is none, the age that the estimate comes from."""
    leakage = now.survey.case.leakage
    measure = entry(state.tree(), "leakage.measure")
    chosen = _UNTESTED
    if measure not in (None, "estimate"):
        basis = "measured" if now.found.span.tested or leakage_entry.awaited() else "assumed"
        kinds = [words for words, kind in _TESTS.items() if kind == (measure, basis)]
        chosen = kinds[0] if kinds else "A figure, not tested"
    by_list = chosen == _UNTESTED and now.found.span.tested
    chosen = _LISTED if by_list else chosen
    st.session_state["tight:test"] = chosen
    kinds = (_UNTESTED, *_TESTS, *((_LISTED,) if by_list else ()))
    st.selectbox("Leakage test", kinds, key="tight:test", filter_mode=None, on_change=_tested)
    if chosen == _UNTESTED:
        ages = {f"{age[:1].upper()}{age[1:]}": age for age in table("homes")["age"]}
        field(_CASE["home.age"], path="home.age", label="Age of the home", choices=ages, **common)
    elif not by_list:
        unit = LEAKAGE_UNITS[leakage.measure]
        also = leakage_entry.TYPED if _TESTS[chosen][1] == "measured" else {}
        field(_CASE["leakage.value"], path="leakage.value", label="Leakage", unit=unit, also=also, alone=True, **common)
        leakage_entry.say()


def _tested() -> None:
    said = st.session_state["tight:test"]
    if said == _LISTED:
        return
    measure, basis = _TESTS.get(said, (None, None))
    found: dict[str, Any] = dict.fromkeys(("leakage.measure", "leakage.value", "leakage.basis"))
    if measure is None:
        found["leakage.tests"] = None  # a house said not to be tested has no list of tests either
    else:
        value = float(f"{stated(state.survey().case, leakage_span(state.case()).middle)[measure]:.2g}")
        given = entry(state.tree(), "leakage.measure") not in (None, "estimate")
        if leakage_span(state.case()).tested or (given and not leakage_entry.is_ours()):
            found = {"leakage.measure": measure, "leakage.value": value, "leakage.basis": basis}
        else:
            found = leakage_entry.offer(measure, value, tested=basis == "measured")
    state.put(found, done=f"Leakage test: {said}")


def _without_leakage(option: str) -> str:
    """What the sweep depends on, written down."""
    tree = state.tree()
    for path in _FREE:
        tree = with_entry(tree, path, None)
    return json.dumps([option, tree], sort_keys=True)
