"""What are all the entries, once those left out have been worked out, and what does each rest on?"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any, cast

import numpy as np

from estimator.inputs.case import Case
from estimator.inputs.catalogue import Known, electricity_row, fuel_row, is_electric, option_row
from estimator.inputs.places import every_entry, value_at, with_values
from estimator.inputs.quantity import Declared, Tag, declared
from estimator.survey import money_gaps, typical


@dataclass(frozen=True, slots=True)
class Origin:
    """One input as used: dotted path, value, unit, meaning, what it rests on and where it comes from."""

    path: str
    value: Any
    unit: str
    meaning: str
    tag: Tag
    source: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Filled:
    """A case without gaps, and the origin of every entry by its dotted path."""

    case: Case
    origins: Mapping[str, Origin]


class _Origins(Mapping[str, Origin]):
    """Origins by dotted path, in writing order; each is worked out when it is asked for, since few ever are."""

    def __init__(self, given: Case, whole: Case, known: Mapping[str, Known]) -> None:
        self._given, self._whole, self._known = given, whole, known

    @cached_property
    def _entries(self) -> dict[str, Declared]:
        return dict(every_entry(self._whole))

    def __getitem__(self, path: str) -> Origin:
        item, given, whole = self._entries[path], self._given, self._whole
        if path in self._known:
            tag, source = self._known[path].tag, self._known[path].source
        elif _entered(value_at(given, path), item.default):
            tag, source = given.tags.get(path, "measured"), "entered"
        else:
            tag, source = given.tags.get(path, item.spec.tag), item.spec.source
        if path == "leakage.value" and whole.leakage.basis is not None:
            tag = whole.leakage.basis
        return Origin(path, value_at(whole, path), item.unit, item.spec.meaning, tag, source)

    def __iter__(self) -> Iterator[str]:
        return iter(self._entries)

    def __len__(self) -> int:
        return len(self._entries)


def filled(case: Case) -> Filled:
    """The case with every gap worked out or taken from the catalogue, each entry with its origin."""
    home, home_known = _with_gaps_filled(case.home, typical.home_gaps(case.home))
    listed, tested = typical.tested_leakage(case.leakage)
    leakage, leakage_known = _with_gaps_filled(listed, typical.leakage_gaps(listed, home))
    leakage_known |= tested
    fuel = fuel_row(case.heating.fuel)
    second = {f"second.{name}": known for name, known in money_gaps.second_gaps(case.heating.second).items()}
    heating, heating_known = _with_gaps_filled(case.heating, {"efficiency": fuel["efficiency"], **second})
    prices, prices_known = _with_gaps_filled(
        case.prices,
        {
            "electricity": electricity_row()["price"],
            "electricity_standing": electricity_row()["standing"],
            "electricity_carbon": electricity_row()["carbon"],
            "fuel": _one_meter(case, case.prices.electricity, fuel["price"]),
            "fuel_standing": fuel["standing"],
            "fuel_carbon": _one_meter(case, case.prices.electricity_carbon, fuel["carbon"]),
            "hot_water": typical.hot_water(home),
            "export": electricity_row()["export"],
        },
    )
    undated = money_gaps.price_date(case.prices, case.heating.fuel)
    prices = with_values(prices, {path: known.value for path, known in undated.items()})
    prices_known |= undated
    air, air_known = _with_gaps_filled(case.air, typical.air_gaps(case.air, home))
    worth, worth_known = _with_gaps_filled(case.worth, money_gaps.worth_gaps(case.worth))
    options, known = {}, {}
    for name, option in case.options.items():
        standing = typical.standing_already() if name == case.today else {}
        gaps = {**option_row(option.kind), **typical.option_gaps(option, home, air), **standing}
        options[name], found = _with_gaps_filled(option, gaps)
        later = money_gaps.later_cost_gaps(options[name].cost, option.kind, case.worth, standing=name == case.today)
        options[name], found_later = _with_gaps_filled(options[name], later)
        found |= found_later
        known.update({f"options.{name}.{path}": origin for path, origin in found.items()})
    for prefix, found in (
        ("home", home_known), ("leakage", leakage_known), ("heating", heating_known), ("prices", prices_known),
        ("air", air_known), ("worth", worth_known),
    ):  # fmt: skip
        known.update({f"{prefix}.{path}": origin for path, origin in found.items()})
    whole = dataclasses.replace(
        case, home=home, leakage=leakage, heating=heating, prices=prices, air=air, worth=worth, options=options
    )
    return Filled(case=whole, origins=_Origins(case, whole, known))


def _with_gaps_filled(noun: Any, gaps: Mapping[str, Known]) -> tuple[Any, dict[str, Known]]:
    paths = {item.path for item in declared(cast(type, type(noun)))}
    used = {path: known for path, known in gaps.items() if path in paths and value_at(noun, path) is None}
    return with_values(noun, {path: known.value for path, known in used.items()}), used


def _one_meter(case: Case, entered: Any, usual: Known) -> Known:
    """Price or carbon of the heating fuel: what was entered for electricity, where heat comes through its meter."""
    if entered is None or not is_electric(case.heating.fuel):
        return usual
    return Known(entered, "measured", "as entered for electricity: one meter")


def _entered(value: Any, default: Any) -> bool:
    """Whether somebody entered a value: anything but the default; a column of homes always was."""
    if value is None or np.ndim(value) > 0:
        return value is not None
    return bool(value != default)
