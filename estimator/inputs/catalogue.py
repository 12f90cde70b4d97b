"""What does the package know of options, fuels and typical homes, and from where?"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import Any

from estimator.inputs.quantity import Tag


@dataclass(frozen=True, slots=True)
class Known:
    """A value of the catalogue with what it rests on."""

    value: Any
    tag: Tag
    source: str


@cache
def table(name: str) -> Mapping[str, Any]:
    """One data file of the package as nested mappings."""
    text = resources.files("estimator").joinpath("data", f"{name}.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


def option_kinds() -> tuple[str, ...]:
    """Kinds of ventilation option, in the catalogue's order."""
    return tuple(table("options"))


def fuels() -> tuple[str, ...]:
    """Fuels and heat sources, in the catalogue's order."""
    return tuple(table("fuels")["fuels"])


@cache
def option_row(kind: str) -> Mapping[str, Known]:
    """Every figure of a kind of option by its dotted path, such as "unit.fan_power"."""
    row = table("options")[kind]
    return {
        f"{group}.{name}": Known(**entry)
        for group, entries in row.items()
        if isinstance(entries, dict)
        for name, entry in entries.items()
    }


def option_fact(kind: str, name: str) -> Any:
    """A plain fact of a kind of option: words, supplies, extracts, flow_from; None where the row does not say."""
    return table("options")[kind].get(name)


@cache
def fuel_row(fuel: str) -> Mapping[str, Known]:
    """Price, standing charge, carbon and efficiency of a fuel; an electric one takes those of electricity."""
    tables = table("fuels")
    row: dict[str, Any] = dict(tables["fuels"][fuel])
    if row.pop("electric", False):
        free = {"value": 0.0, "tag": "typical", "source": "comes through the electricity meter, already paid"}
        row = {**tables["electricity"], **row, "standing": free}
    row.pop("heat_pump", None)
    return {name: Known(**entry) for name, entry in row.items()}


@cache
def electricity_row() -> Mapping[str, Known]:
    """Price, standing charge and carbon of electricity."""
    return {name: Known(**entry) for name, entry in table("fuels")["electricity"].items()}


def is_electric(fuel: str) -> bool:
    """Whether a fuel is bought through the electricity meter."""
    return bool(table("fuels")["fuels"][fuel].get("electric", False))


def is_heat_pump(fuel: str) -> bool:
    """Whether a row of the table of fuels is a heat pump."""
    return bool(table("fuels")["fuels"][fuel].get("heat_pump", False))
