"""Which weather has the case on screen, and is it at hand here?

The one way from a case to its year in the dashboard. Nothing here asks a network: a place whose year is not kept, or a
file that is not here, is missing, and the pages say so instead of showing other weather.
"""

from __future__ import annotations

import dataclasses
import json
import warnings

import streamlit as st

from estimator.climate.chosen import at_home, can_travel, case_year
from estimator.climate.online import is_point, point_of
from estimator.climate.sources import load_year, names
from estimator.climate.year import ClimateYear
from estimator.errors import ExtrapolationWarning, Fault, InputFaults
from estimator.inputs.case import Case
from estimator.inputs.months import MONTHLY

_HELD = "weather_held"


def year(case: Case) -> ClimateYear:
    """The year of a case at its home's site; ClimateFault where it is not at hand."""
    held = st.session_state.get(_HELD, {}).get(case.place.climate)
    if held is None:
        return shared(case)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", ExtrapolationWarning)  # the page of the weather says so in words
        return at_home(held, case.place)


def shared(case: Case) -> ClimateYear:
    """The same for whoever has brought no year along, and also where nobody has come yet."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", ExtrapolationWarning)
        return _year(_named(case), case)


def included(name: str) -> ClimateYear:
    """An included year by name, at its own station."""
    return _included(name)


def missing(case: Case) -> tuple[Fault, ...]:
    """Why the weather of a case is not at hand, in words; nothing where it is."""
    try:
        year(case)
    except InputFaults as fault:
        return fault.faults
    return ()


def unusable(case: Case) -> tuple[Fault, ...]:
    """What of a case's weather no dashboard takes: a path of this machine, or figures that cannot be weather."""
    reference = case.place.climate
    if not can_travel(reference):
        known = ", ".join(names())
        return (Fault("place.climate", f"{reference!r} is not at hand here; choose one of {known}."),)
    try:
        if reference == MONTHLY:
            year(case)
        elif is_point(reference):
            point_of(reference)
    except InputFaults as fault:
        return fault.faults
    return ()


def hold(reference: str, year: ClimateYear) -> None:
    """Hold a year for this visit, in case it cannot be kept on this machine."""
    st.session_state.setdefault(_HELD, {})[reference] = year


def forget() -> None:
    """Read every year anew, since something kept may have gone."""
    _year.clear()
    st.session_state.pop(_HELD, None)


def _named(case: Case) -> str:
    """What the weather of a case depends on, written down."""
    months = dataclasses.asdict(case.months) if case.place.climate == MONTHLY else None
    place = {**dataclasses.asdict(case.place), "start_weekday": None}
    return json.dumps([place, months], sort_keys=True)


@st.cache_resource(max_entries=12, show_spinner=False)
def _year(named: str, _case: Case) -> ClimateYear:
    """A year that is never changed, so that all visitors share it."""
    return case_year(_case, online=False)


@st.cache_resource(max_entries=12, show_spinner=False)
def _included(name: str) -> ClimateYear:
    return load_year(name)
