"""Which few inputs decide most, and stand in the page itself?"""

from __future__ import annotations

import streamlit as st

from estimator.climate.chosen import spoken
from estimator.climate.sources import names
from estimator.estimate import Estimate
from estimator.inputs.case import Case
from estimator.inputs.catalogue import fuels, is_electric, option_kinds, table
from estimator.inputs.option import Option
from estimator.inputs.quantity import declared
from estimator.leak_range import leakage_span
from estimator.leak_span import LeakageSpan
from estimator.ui import elsewhere, leakage_entry, state
from estimator.ui.fields import escaped, field
from estimator.ui.tree import entry

_CASE = {item.path: item for item in declared(Case)}
_OPTION = {item.path: item for item in declared(Option)}
OF_ONE_FUEL = (
    "prices.fuel", "prices.fuel_standing", "prices.fuel_carbon", "prices.fuel_growth", "heating.efficiency",
    "heating.pump.mode", "heating.pump.capacity",
)  # fmt: skip
"""What was entered of one fuel says nothing of another: it goes when the fuel changes."""
_NEXT = {
    "home.form": "Kind of home",
    "home.age": "Built",
    "home.bedrooms": "Bedrooms",
    "home.indoor_temperature": "Kept at",
}
"""What decides next most, one step away."""
_UNTESTED, _LISTED, _FIGURE = "Not tested", "Several tests", "A figure, not tested"
_TESTED = {"q50": "Tested at 50 Pa", "n50": "Tested at 50 Pa", "q4": "Tested at 4 Pa"}
LEAKAGE_UNITS = {"q50": "m³/(h m²)", "n50": "1/h at 50 Pa", "q4": "m³/(h m²) at 4 Pa"}
"""What each kind of test says its figure in."""


def inputs(done: Estimate, span: LeakageSpan) -> None:
    """The decisive inputs, with what was refused of the last change above them."""
    for fault in state.refused():
        st.error(escaped(str(fault)))
    common = {"origins": done.origins, "currency": done.case.prices.currency}
    with st.grid(2, min_column_width=140, gap="small", vertical_alignment="bottom"):
        _fields(done, span, common)
    with st.expander("Kind of home, when built, bedrooms, warmth", on_change="rerun", key="decisive:more") as more:
        if more.open:
            with st.grid(2, min_column_width=140, gap="small"):
                for path, label in _NEXT.items():
                    ages = _same(tuple(table("homes")["age"])) if path == "home.age" else None
                    field(_CASE[path], path=path, label=label, choices=ages, **common)
    elsewhere.link()


def _fields(done: Estimate, span: LeakageSpan, common: dict) -> None:
    field(_CASE["home.floor_area"], path="home.floor_area", label="Floor area", alone=True, **common)
    field(
        _CASE["place.climate"],
        path="place.climate",
        label="Weather like",
        choices={spoken(name): name for name in dict.fromkeys([*names(), done.case.place.climate])},
        **common,
    )
    _leakage(span, common)
    field(
        _CASE["heating.fuel"],
        path="heating.fuel",
        label="Heated by",
        choices=_same(fuels()),
        clears=OF_ONE_FUEL,
        **common,
    )
    _price(done.case.heating.fuel, common)
    today = f"options.{done.case.today}.kind"
    field(_OPTION["kind"], path=today, label="Aired today by", choices=_same(option_kinds()), **common)


def _price(fuel: str, common: dict) -> None:
    """The price that heat is bought at: of electricity, where it comes through that meter."""
    electric = is_electric(fuel)
    path = "prices.electricity" if electric else "prices.fuel"
    field(_CASE[path], path=path, label=f"Price of {'electricity' if electric else fuel}", alone=True, **common)


def _same(words: tuple[str, ...]) -> dict[str, str]:
    return {f"{word[:1].upper()}{word[1:]}": word for word in words}


def _leakage(span: LeakageSpan, common: dict) -> None:
    """Tested, listed, said or neither, and the figure where there is one, as it was entered."""
    measure = entry(state.tree(), "leakage.measure")
    given = measure not in (None, "estimate")
    tested = _TESTED[measure if given else "q50"]
    by_test, by_none = (tested, _FIGURE) if given else (_LISTED, _UNTESTED)
    tells_test = span.tested or leakage_entry.awaited()
    chosen = by_test if tells_test else by_none
    st.session_state["tested"] = chosen
    words = dict.fromkeys((_UNTESTED, tested, chosen))
    st.selectbox("Air leakage", list(words), key="tested", filter_mode=None, on_change=_tested, args=(measure,))
    if given:
        unit = LEAKAGE_UNITS[measure]
        also = leakage_entry.TYPED if tells_test else {}
        field(_CASE["leakage.value"], path="leakage.value", label="Leakage", unit=unit, also=also, alone=True, **common)
        leakage_entry.say()


def _tested(measure: str | None) -> None:
    said = st.session_state["tested"]
    if said in (_LISTED, _FIGURE):
        return
    if said == _UNTESTED:
        found = dict.fromkeys(("leakage.measure", "leakage.value", "leakage.basis", "leakage.tests"))
    elif measure not in _TESTED:
        found = leakage_entry.offer("q50", float(f"{leakage_span(state.case()).middle:.2g}"), tested=True)
    elif leakage_entry.is_ours():
        found = leakage_entry.offer(measure, entry(state.tree(), "leakage.value"), tested=True)
    else:
        found = leakage_entry.TYPED
    state.put(found, done=f"Air leakage: {said}")
