"""Which entries of heating, prices, roof and worth contradict each other?"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

import numpy as np

from estimator.inputs.case import Case
from estimator.inputs.catalogue import fuels, is_electric, is_heat_pump
from estimator.inputs.faults import shown
from estimator.inputs.finding import Finding
from estimator.inputs.tariff_lines import block_prices, hour_prices

_LINES: tuple[tuple[str, str, Callable[[str], tuple[Any, ...]]], ...] = (
    ("time of use", "windows", hour_prices),
    ("block", "blocks", block_prices),
)


def tariff(case: Case) -> Iterator[Finding]:
    """Lines of prices that cannot be read, are missing for their kind, or belong to another kind."""
    entered = case.prices.tariff
    kind = "prices.tariff.kind"
    for needed, name, read in _LINES:
        path, line = f"prices.tariff.{name}", getattr(entered, name)
        try:
            found = read(line)
        except ValueError as unreadable:
            yield Finding(path, str(unreadable))
            continue
        if entered.kind == needed and not found:
            yield Finding(path, f'missing: the tariff is {shown(needed)}; enter its prices, or write "flat".', (kind,))
        if entered.kind != needed and found:
            said = f"prices are given but the tariff is {shown(entered.kind)}; write {shown(needed)}, or delete them."
            yield Finding(path, said, (kind,))


def one_meter(case: Case) -> Iterator[Finding]:
    """A price of its own for electric heat where one tariff prices all electricity by the hour."""
    entered = case.prices
    fuel = case.heating.fuel
    if fuel not in fuels() or not is_electric(fuel) or entered.fuel is None:
        return
    hourly = entered.tariff.kind != "flat" or case.roof.size > 0.0
    own = entered.electricity is None or np.any(np.asarray(entered.fuel) != np.asarray(entered.electricity))
    if hourly and own:
        why = (
            "the tariff has prices of its own" if entered.tariff.kind != "flat" else "cells on the roof share its meter"
        )
        said = f"{shown(fuel)} comes through the electricity meter and {why}. Delete this price of heat."
        yield Finding("prices.fuel", said, ("heating.fuel", "prices.tariff.kind", "prices.electricity", "roof.size"))


def second_source(case: Case) -> Iterator[Finding]:
    """A price or carbon of its own for a second source that comes through the electricity meter."""
    second = case.heating.second
    if second.fuel in fuels() and is_electric(second.fuel):
        for name, value in (("price", second.price), ("carbon", second.carbon)):
            if value is not None:
                said = f"{shown(second.fuel)} comes through the electricity meter, at its {name}. Delete this line."
                yield Finding(f"heating.second.{name}", said, ("heating.second.fuel",))


def pump(case: Case) -> Iterator[Finding]:
    """A heat pump by the hour that is none, or whose flow does not rise towards the cold."""
    machine, fuel = case.heating.pump, case.heating.fuel
    if fuel in fuels() and not is_heat_pump(fuel):
        if machine.mode == "hourly":
            said = f'"hourly" needs a heat pump, but {shown(fuel)} heats the home. Write "constant".'
            yield Finding("heating.pump.mode", said, ("heating.fuel",))
        if machine.capacity > 0.0:
            said = f"a heat pump's largest heat is given, but {shown(fuel)} heats the home. Delete it."
            yield Finding("heating.pump.capacity", said, ("heating.fuel",))
    if machine.design_outdoors >= machine.mild_outdoors:
        said = f"{machine.design_outdoors:g} °C must lie below the mild {machine.mild_outdoors:g} °C. Correct one."
        yield Finding("heating.pump.design_outdoors", said, ("heating.pump.mild_outdoors",))
    if machine.mild_flow > machine.design_flow:
        said = f"{machine.mild_flow:g} °C on mild days is more than the {machine.design_flow:g} °C on cold ones."
        yield Finding("heating.pump.mild_flow", f"{said} Correct one.", ("heating.pump.design_flow",))


def carbon_path(case: Case) -> Iterator[Finding]:
    """A falling path that ends before it begins."""
    prices = case.prices
    if prices.carbon_path == "falling" and prices.carbon_end_year <= prices.carbon_year:
        said = f"{prices.carbon_end_year} is not after {prices.carbon_year}, in which the path begins. Correct one."
        yield Finding("prices.carbon_end_year", said, ("prices.carbon_year",))


RULES = (tariff, one_meter, second_source, pump, carbon_path)
