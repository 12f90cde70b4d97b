"""Which entries decide what is paid over the years, and how are they grouped where somebody looks for them?

Every field comes from its declaration; only names that say nothing by themselves are said here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import streamlit as st

from estimator.estimate import Estimate
from estimator.inputs.case import Case
from estimator.inputs.catalogue import fuels, is_electric, is_heat_pump
from estimator.inputs.option import Option
from estimator.inputs.quantity import Declared, declared
from estimator.ui import state
from estimator.ui.decisive import OF_ONE_FUEL
from estimator.ui.fields import escaped, field
from estimator.ui.tariff_fields import tariff_fields

_CASE = {item.path: item for item in declared(Case)}
_COST = tuple(item for item in declared(Option) if item.path.startswith("cost."))
_PLACE = "years"
_TARIFF = "Prices and tariff"
_DATED = "prices.dated"

_LABELS = {
    "prices.currency": "Currency",
    "prices.dated": "Prices valid when and where",
    "prices.electricity": "Price of electricity",
    "prices.electricity_standing": "Standing charge of electricity",
    "prices.fuel": "Price of the heating fuel",
    "prices.fuel_standing": "Standing charge of the fuel",
    "prices.export": "Price of electricity sold",
    "prices.other_electricity": "Other electricity of the household",
    "prices.hot_water": "Heat for hot water",
    "prices.tariff.billing": "Billing period of blocks",
    "prices.tariff.daylight_saving": "Summer time",
    "prices.tariff.first_day": "1 January is a",
    "prices.tariff.level": "All prices of the tariff at",
    "prices.tariff.household": "Household's use over the day",
    "heating.fuel": "Heat source",
    "heating.efficiency": "Seasonal efficiency",
    "heating.pump.mode": "Heat pump worked out",
    "heating.pump.source": "Heat taken from",
    "heating.pump.capacity": "Largest heat it gives",
    "heating.second.fuel": "Second heat source",
    "heating.second.share": "Share of the second",
    "heating.second.efficiency": "Efficiency of the second",
    "heating.second.price": "Price of its fuel",
    "heating.second.carbon": "Carbon of its fuel",
    "roof.size": "Solar cells",
    "roof.tilt": "Tilt of the roof",
    "roof.azimuth": "Roof faces",
    "roof.losses": "Losses",
    "worth.life": "Life of the kit",
    "worth.horizon": "Years counted",
    "worth.discount": "Later money weighs less by",
    "worth.terms": "Money in terms",
    "worth.inflation": "General inflation",
    "prices.electricity_growth": "Growth of the price of electricity",
    "prices.fuel_growth": "Growth of the price of fuel",
    "prices.electricity_carbon": "Carbon of electricity",
    "prices.fuel_carbon": "Carbon of the heating fuel",
    "prices.carbon_path": "Carbon of electricity in later years",
    "prices.carbon_year": "First year counted",
    "prices.carbon_end_year": "The path ends in",
    "prices.carbon_end": "Carbon of electricity then",
    "cost.kit": "Unit, valves, controls",
    "cost.vat": "Value added tax",
    "cost.days": "Days they take",
    "cost.people": "People fitting it",
    "cost.filter_sets": "Filter sets a year",
    "cost.kit_life": "Life of this kit",
    "cost.renewal": "Renewing the kit",
    "cost.renewal_year": "First renewal after",
    "cost.fans": "Replacing its fans",
    "cost.fans_year": "Fans last",
    "cost.embodied": "Carbon of making it",
}


@dataclass(frozen=True, slots=True)
class Group:
    """Entries that belong together, under one title."""

    title: str
    paths: tuple[str, ...]


def groups(case: Case) -> tuple[Group, ...]:
    """The groups of a filled case; what cannot matter for it is left out."""
    return (
        Group(_TARIFF, _prices(case)),
        Group("Heat source", _heating(case)),
        Group("Solar cells", _roof(case)),
        Group("Years and discount", _years(case)),
        Group("Carbon of energy", _carbon(case)),
    )


def details(done: Estimate, option: str) -> None:
    """A tab for each group, then for the costs of the option and of its baseline. done: of the case on screen."""
    with st.container(key="years:refused"):  # always there, so that what stands below it stays open
        for fault in state.refused():
            st.error(escaped(str(fault)))
    case = done.case
    common: dict[str, Any] = {"origins": done.origins, "currency": case.prices.currency, "place": _PLACE, "echo": True}
    found, fitted = groups(case), tuple(dict.fromkeys((option, case.baseline)))
    costs = [escaped(f"Cost of {case.options[name].label or name}") for name in fitted]
    tabs = st.tabs([*(group.title for group in found), *costs], key="years:details")
    for tab, group in zip(tabs, found, strict=False):
        with tab:
            if group.title == _TARIFF:
                tariff_fields(case)
            _fields(group.paths, common)
    for tab, name in zip(tabs[len(found) :], fitted, strict=True):
        with tab, _grid():
            for item in _COST:
                _field(item, f"options.{name}.{item.path}", _LABELS.get(item.path, ""), common)


def _grid() -> Any:
    return st.grid(4, min_column_width=160, gap="small")


def _fields(paths: tuple[str, ...], common: Mapping[str, Any]) -> None:
    with _grid():
        for path in paths:
            if path != _DATED:
                _field(_CASE[path], path, _LABELS.get(path, ""), common)
    if _DATED in paths:  # words, not a figure: they need a row of their own
        _field(_CASE[_DATED], _DATED, _LABELS[_DATED], common)


def _field(item: Declared, path: str, label: str, common: Mapping[str, Any]) -> None:
    extra: dict[str, Any] = {}
    if path in ("heating.fuel", "heating.second.fuel"):
        extra["choices"] = {f"{fuel[:1].upper()}{fuel[1:]}": fuel for fuel in fuels()}
    if path == "heating.fuel":
        extra["clears"] = OF_ONE_FUEL
    field(item, path=path, label=label, **common, **extra)


def _prices(case: Case) -> tuple[str, ...]:
    tariff, heat = "prices.tariff.", () if is_electric(case.heating.fuel) else ("prices.fuel", "prices.fuel_standing")
    block = (f"{tariff}billing",) if case.prices.tariff.kind == "block" else ()
    level = (f"{tariff}level",) if case.prices.tariff.kind != "flat" else ()
    clock = ("first_day", "daylight_saving", "household") if case.prices.tariff.kind != "flat" or case.roof.size else ()
    return (
        "prices.currency", "prices.electricity", "prices.electricity_standing", *heat,
        *level, *block, *(f"{tariff}{name}" for name in clock),
        "prices.other_electricity", "prices.hot_water", "prices.dated",
    )  # fmt: skip


def _heating(case: Case) -> tuple[str, ...]:
    pump: tuple[str, ...] = ()
    if is_heat_pump(case.heating.fuel):
        pump = ("heating.pump.mode",)
        if case.heating.pump.mode == "hourly":
            pump = tuple(path for path in _CASE if path.startswith("heating.pump."))
    shared = case.heating.second.share or case.heating.pump.capacity
    more = ("efficiency", "price", "carbon") if shared else ()
    second = ("heating.second.share", "heating.second.fuel", *(f"heating.second.{name}" for name in more))
    return ("heating.fuel", "heating.efficiency", *pump, *second)


def _roof(case: Case) -> tuple[str, ...]:
    more = ("roof.tilt", "roof.azimuth", "roof.losses", "prices.export") if case.roof.size else ()
    return ("roof.size", *more)


def _years(case: Case) -> tuple[str, ...]:
    inflation = ("worth.inflation",) if case.worth.terms == "nominal" else ()
    return (
        "worth.life", "worth.horizon", "worth.discount", "worth.terms", *inflation,
        "prices.electricity_growth", "prices.fuel_growth",
    )  # fmt: skip


def _carbon(case: Case) -> tuple[str, ...]:
    falling = ("carbon_year", "carbon_end_year", "carbon_end") if case.prices.carbon_path == "falling" else ()
    fuel = () if is_electric(case.heating.fuel) else ("prices.fuel_carbon",)
    return ("prices.electricity_carbon", *fuel, "prices.carbon_path", *(f"prices.{name}" for name in falling))
