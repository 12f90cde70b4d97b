"""What did an option come to in many cases, and what does it save in each of them?"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from estimator.money import worth
from estimator.plan import Plan, Yearly, plan
from estimator.units import Array

_BY_YEAR = ("later", "embodied", "grid_factor")


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Outcome:
    """One option in n cases: arrays (n,). kWh, money and kg a year; efficiency 0 to 1."""

    heat: Array
    electricity: Array
    bill: Array  # heat and ventilation; standing charges and other uses are the same for every option
    carbon: Array
    capital: Array
    upkeep: Array
    efficiency: Array  # heat recovered less pre-heater, over the heat of the balanced flow, in hours with heat
    yearly: Yearly  # the same year as the years after it are counted from


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Difference:
    """An option against a baseline in n cases: arrays (n,); every saving is baseline minus option."""

    heat_saved: Array  # kWh
    net_saving: Array  # money a year, upkeep counted
    carbon_saving: Array  # kg
    net_capital: Array  # money
    payback: Array  # years, infinite where nothing is saved
    efficiency: Array  # of the option, 0 to 1
    plan: Plan  # over the years, (n, years + 1)


def difference(option: Outcome, *, baseline: Outcome) -> Difference:
    """One option against one baseline, case by case."""
    net_saving = baseline.bill - option.bill - (option.upkeep - baseline.upkeep)
    net_capital = option.capital - baseline.capital
    return Difference(
        heat_saved=baseline.heat - option.heat,
        net_saving=net_saving,
        carbon_saving=baseline.carbon - option.carbon,
        net_capital=net_capital,
        payback=np.asarray(worth.simple_payback(net_capital, net_saving=net_saving)),
        efficiency=option.efficiency,
        plan=plan(option.yearly, baseline=baseline.yearly),
    )


def some_cases(figures: Any, part: slice) -> Any:
    """Some of the cases of a noun of arrays with cases on the first axis."""
    if isinstance(figures, np.ndarray):
        return figures[part]
    if not dataclasses.is_dataclass(figures) or isinstance(figures, type):
        return figures
    names = [item.name for item in dataclasses.fields(figures)]
    return dataclasses.replace(figures, **{name: some_cases(getattr(figures, name), part) for name in names})


def joined(pieces: Sequence[Any]) -> Any:
    """Nouns of the same kind, each of some cases, as one of all of them; what is no array is the same in all."""
    first = pieces[0]
    if isinstance(first, np.ndarray):
        return np.concatenate(pieces)
    if not dataclasses.is_dataclass(first) or isinstance(first, type):
        return first
    names = [item.name for item in dataclasses.fields(first)]
    return dataclasses.replace(first, **{name: joined([getattr(piece, name) for piece in pieces]) for name in names})


def of_each(noun: Any, count: int) -> Any:
    """A noun with every figure once for each of `count` cases; what goes by years keeps them on its last axis."""
    found = {}
    for item in dataclasses.fields(noun):
        value = getattr(noun, item.name)
        if dataclasses.is_dataclass(value):
            value = of_each(value, count)
        elif isinstance(value, np.ndarray):
            shape = (count, value.shape[-1]) if item.name in _BY_YEAR else (count,)
            value = value if value.shape == shape else np.broadcast_to(value, shape)
        found[item.name] = value
    return dataclasses.replace(noun, **found)
