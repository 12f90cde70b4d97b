"""Is every entry of money within reach of its page, under a name of its own, and typed where a comma could be lost?"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

import estimator.ui
from estimator import Case
from estimator.inputs.heating import Heating, Pump, Second
from estimator.inputs.prices import Prices, Roof, Tariff, Worth
from estimator.inputs.quantity import declared
from estimator.survey.fill import filled
from estimator.ui.decisive import OF_ONE_FUEL
from estimator.ui.money_details import groups
from estimator.ui.tariff_fields import _LINES

START = Path(estimator.ui.__file__).parent / "site" / "start.py"
# How demand is worked out is the method's, not the household's.
METHOD = {"heating.mode", "heating.base_temperature"}
TARIFF = {"prices.tariff.kind", *(line.path for line in _LINES.values())}

CASES = {
    "gas": Case(),
    "heat pump by the hour": Case(heating=Heating(fuel="heat pump", pump=Pump(mode="hourly"))),
    "two sources": Case(heating=Heating(second=Second(share=20.0))),
    "cells": Case(roof=Roof(size=3.0)),
    "blocks": Case(prices=Prices(tariff=Tariff(kind="block", blocks="31 beyond 150"))),
    "falling": Case(prices=Prices(carbon_path="falling"), worth=Worth(terms="nominal")),
}


def paths(case: Case) -> Iterator[str]:
    for group in groups(filled(case).case):
        yield from group.paths


def test_every_entry_of_money_is_within_reach() -> None:
    reached = {path for case in CASES.values() for path in paths(case)}
    wanted = {item.path for item in declared(Case) if item.path.startswith(("prices.", "heating.", "roof.", "worth."))}
    assert reached == wanted - METHOD - TARIFF
    assert set(OF_ONE_FUEL) <= wanted


@pytest.mark.parametrize("name", CASES)
def test_no_entry_stands_twice(name: str) -> None:
    found = [*paths(CASES[name])]
    assert len(found) == len(set(found))


def test_prices_and_sums_are_typed_and_read_with_either_mark() -> None:
    page = AppTest.from_string(
        """
import streamlit as st
from estimator.ui import state
from estimator.ui.money_details import details
from estimator.ui.results import outcome
state.begin()
details(outcome().middle.estimate, "recovery")
""",
        default_timeout=60,
    ).run()
    assert not page.exception
    # Each of these would take a number ten or a hundred times too large where the browser drops the comma.
    unit = ("p/kWh", "p/day", "£", "£/year", "kg/kWh", "%/year")
    assert not [box.label for box in page.number_input if box.label.endswith(tuple(f", {each}" for each in unit))]
    price = next(box for box in page.text_input if box.label == "Price of electricity, p/kWh")
    price.set_value("0,28").run()
    assert page.session_state["case_read"].case.prices.electricity == 0.28
    price = next(box for box in page.text_input if box.label == "Price of electricity, p/kWh")
    price.set_value("28,5").run()
    assert page.session_state["case_read"].case.prices.electricity == 28.5
    assert any("28.5 pence a kWh" in part.proto.body for part in page.get("html"))


def test_another_fuel_takes_nothing_of_the_old_one() -> None:
    page = AppTest.from_file(str(START), default_timeout=60).run()
    price = next(box for box in page.text_input if box.label == "Price of natural gas, p/kWh")
    price.set_value("12,5").run()
    next(box for box in page.selectbox if box.label == "Heated by").set_value("Heat pump").run()
    assert not page.exception
    case = filled(page.session_state["case_read"].case).case
    assert case.prices.fuel == case.prices.electricity
    assert any(box.label == "Price of electricity, p/kWh" for box in page.text_input)
    assert dataclasses.asdict(case.heating)["fuel"] == "heat pump"
