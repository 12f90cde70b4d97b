"""What is known of the chosen option as fitted, and under which question does each of its entries stand?"""

from __future__ import annotations

import streamlit as st

from estimator.as_commissioned import AsCommissioned, as_commissioned
from estimator.inputs.case import Case
from estimator.inputs.option import Option
from estimator.inputs.quantity import Declared, declared
from estimator.report.fit_words import line_words
from estimator.report.fitting import Fitting, fitting, with_exchanger
from estimator.ui import state, style
from estimator.ui.fields import escaped, field
from estimator.ui.results import outcome

_CASE = {item.path: item for item in declared(Case)}
_OPTION = {item.path: item for item in declared(Option)}
_KEPT = "fitted"

QUESTIONS = {
    "What does the certificate say?": (
        {
            "unit.effectiveness": "Ratio on the certificate",
            "unit.fan_power": "Fan power",
            "unit.reference_flow": "Read at a flow of",
            "unit.internal_leakage": "Leaks inside the unit",
            "unit.largest_flow": "Largest flow",
            "unit.sound": "Declared sound",
        },
        {
            "unit.points": "Several points",
            "unit.standby": "Standby",
            "unit.fan_exponent": "Fan power grows by",
            "unit.fan_pressure": "Pressure of each fan",
            "unit.filter_pressure_rise": "Filters load by",
            "unit.in_use_factor": "In-use factor",
            "unit.ratio_includes_fan_heat": "Fan heat in the ratio",
            "unit.fan_heat_useful": "Fan heat that helps",
        },
    ),
    "Where does it stand?": (
        {
            "ducts.standing": "Unit stands",
            "ducts.intake": "Intake duct",
            "ducts.exhaust": "Exhaust duct",
            "ducts.insulation": "Duct insulation",
            "ducts.bore": "Main ducts inside",
        },
        {
            "ducts.zone_factor": "Warmth of its room",
            "ducts.supply": "Supply duct in the cold",
            "ducts.extract": "Extract duct in the cold",
            "ducts.conductivity": "Conductivity",
        },
    ),
    "How is it set?": (
        {
            "flows.supply": "Supply air",
            "flows.extract": "Extract air",
            "flows.imbalance": "Extract over supply",
            "flows.boost_flow": "Boost flow",
            "flows.boost_share": "Hours on boost",
            "unit.frost": "Frost protection",
            "unit.frost_set_point": "Kept against frost",
            "cost.filter_sets": "Filter sets a year",
            "cost.filter_price": "Price of a set",
        },
        {
            "flows.running_share": "Hours running",
            "flows.setback_share": "Hours set back",
            "flows.setback_flow": "Flow set back",
            "flows.away_share": "Hours away",
            "flows.away_flow": "Flow away",
            "flows.control": "Control",
            "flows.demand_factor": "Factor by hand",
            "flows.demand_exponent": "Power under control",
            "unit.post_heater": "Heater in supply air",
            "unit.post_heat_to": "Supply kept at",
            "cost.service": "Service",
        },
    ),
}
"""Each question, its usual entries by path with their labels, and those behind a fold."""

ROOMS = {
    "rooms.fed": "Rooms fed",
    "rooms.drawn": "Rooms drawn from",
    "rooms.lines": "Air transfer paths",
    "rooms.doors": "Doors with another gap",
    "rooms.door_area": "Free area under a door",
    "rooms.branch_flow": "Most through a branch",
}
MEASURED = {
    "commissioned.fed": "Measured into rooms",
    "commissioned.drawn": "Measured out of rooms",
    "commissioned.power": "Measured power",
    "commissioned.instrument": "Instrument",
    "commissioned.date": "Measured on",
    "commissioned.leakage_measure": "Leakage test gives",
    "commissioned.leakage_value": "Leakage after the works",
    "commissioned.leakage_date": "Tested on",
}
_TESTS = {"q50": "m³/(h m²)", "n50": "1/h", "q4": "m³/(h m²) at 4 Pa"}
HOME = {"home.moisture": "Moisture given off", "home.moist_air": "Moist home"}


def options() -> dict[str, str]:
    """Names and labels of the options that have an exchanger."""
    done = outcome().middle.estimate
    return {name: done.options[name].label for name in with_exchanger(done)}


def shown(option: str) -> Fitting:
    """The chosen option of the case on screen, worked out once for each case."""
    found = outcome()
    kept = st.session_state.get(_KEPT)
    if kept is None or kept[0] is not found.case or kept[1].option != option:
        kept = (found.case, fitting(found.middle, (found.low, found.high), option))
        st.session_state[_KEPT] = kept
    return kept[1]


def on_site() -> AsCommissioned | None:
    """What was measured, against what was promised."""
    return as_commissioned(outcome().middle)


def refusals() -> None:
    """What could not be used of the last change."""
    for fault in state.refused():
        st.error(escaped(str(fault)))


def question(now: Fitting, words: str) -> None:
    """The entries under one question, each with what it costs a year."""
    usual, rare = QUESTIONS[words]
    _lines(now, usual)
    with st.expander(f"More: {', '.join(label.lower() for label in list(rare.values())[:3])} and others"):
        _lines(now, rare)


def _lines(now: Fitting, labels: dict[str, str]) -> None:
    with st.grid(4, min_column_width=230, gap="medium"):
        for path, label in labels.items():
            with st.container(gap="xsmall"):
                _draw(now, f"options.{now.option}.{path}", _OPTION[path], label)
                style.small(line_words(now, path))


def entries(now: Fitting, labels: dict[str, str]) -> None:
    """Plain entries of the case."""
    with st.grid(2, min_column_width=230, gap="medium"):
        for path, label in labels.items():
            _draw(now, path, _CASE[path], label)


def _draw(now: Fitting, path: str, item: Declared, label: str) -> None:
    unit, choices = None, None
    if path == "commissioned.leakage_measure":
        choices = {f"{measure}, {unit_of}": measure for measure, unit_of in _TESTS.items()}
    elif path == "commissioned.leakage_value":
        unit = _TESTS.get(now.case.commissioned.leakage_measure, "as tested")
    common = {"origins": now.done.origins, "currency": now.currency, "place": "fit"}
    field(item, path=path, label=label, unit=unit, choices=choices, **common)


def take_plan(now: Fitting) -> None:
    """Write the proposed rooms into the case, to be corrected there."""
    rooms = now.rooms
    changes = {f"rooms.{name}": getattr(rooms, name) or None for name in ("fed", "drawn", "lines")}
    option = None if rooms.option == _CASE["rooms.option"].default else rooms.option
    state.put({**changes, "rooms.option": option}, done="Took the proposed rooms")


def take_option(now: Fitting) -> None:
    """What is measured belongs to the option on screen."""
    state.put({"commissioned.option": now.option}, done=f"Measured: {now.label}")
