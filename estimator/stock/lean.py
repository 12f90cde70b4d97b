"""How much heat and electricity do the options of many homes take in a year, and nothing else?

The corridor's own functions, on columns (n, 1) of homes and a year in blocks of consecutive hours. What does not hang
on the weather is worked out once for all homes; the hours go by in pieces that fit a processor's cache. What the unit
returns does not hang on the leaks, so that one pass serves a home at several leakages.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from estimator.air import joining
from estimator.air.properties import volumetric_heat_capacity
from estimator.climate.year import ClimateYear
from estimator.corridor import HomeYear, home_year
from estimator.heat import demand
from estimator.running import Exchange, exchange, fan_power
from estimator.survey.numbers import HomeNumbers, OptionNumbers
from estimator.units import Array

# Bytes of one quantity handled at once, homes times rows of the year: few enough that what is in hand stays near the
# processor, enough that the calls do not weigh. Found by trying.
_AT_ONCE = 400_000


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Running:
    """One running state, weather apart: floats or columns (n, 1)."""

    share: Any
    balanced: Any  # m³/s
    unbalanced: Any  # m³/s
    required: Any  # m³/s
    exchange: Exchange | None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Fitted:
    """One option in every home, weather apart: floats or columns (n, 1)."""

    states: tuple[Running, ...]
    ventilators: Any  # m² of leakage area
    fans: Any  # W, mean
    fan_heat_useful: Any
    top_up: bool


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Yearly:
    """One option in n homes over a year; heat has one column for each leakage asked about."""

    heat: Array  # Wh, (n, leakages)
    fans: Array  # W, mean, (n,)
    frost: Array  # Wh, (n,)


def fitted(home: HomeNumbers, option: OptionNumbers, *, heat_capacity: float, top_up: bool) -> Fitted:
    """What of an option does not hang on the weather; heat_capacity: of air moved [J/(m³ K)]."""
    fans: Any = option.standby
    for state in option.states:
        fans = fans + state.share * fan_power(option, state)
    return Fitted(
        states=tuple(
            Running(
                share=state.share,
                balanced=joining.balanced_flow(state.supply, state.extract),
                unbalanced=joining.unbalanced_flow(state.supply, state.extract),
                required=home.required * state.need,
                exchange=exchange(home, option, state, heat_capacity=heat_capacity),
            )
            for state in option.states
        ),
        ventilators=option.ventilator_leakage_area,
        fans=fans,
        fan_heat_useful=option.fan_heat_useful,
        top_up=top_up,
    )


def yearly(
    home: HomeNumbers,
    options: Mapping[str, OptionNumbers],
    year: ClimateYear,
    *,
    areas: Mapping[str, Sequence[Array]],
    today: str,
    single: bool,
) -> dict[str, Yearly]:
    """The options of n homes, each at several leakages.

    areas: for each option the leakage areas [m²] asked about, columns (n, 1), in the place of the home's own.
    today: the option that gets no windows opened in thought.
    single: reckon in single precision, with seven digits in place of sixteen.
    """
    count = len(next(iter(areas.values()))[0])
    year_heat = float(volumetric_heat_capacity(float(np.mean(year.pressure))))
    weatherless = {
        name: fitted(home, numbers, heat_capacity=year_heat, top_up=home.top_up and name != today)
        for name, numbers in options.items()
    }
    precise = _single if single else _double
    ready: Any = precise((home, weatherless, {name: tuple(columns) for name, columns in areas.items()}))
    year = precise(year)
    found = {name: (np.empty((count, len(areas[name]))), np.empty(count), np.empty(count)) for name in options}
    size = max(1, _AT_ONCE // year.temp_air.nbytes)
    for first in range(0, count, size):
        part = slice(first, first + size)
        here, fits, leaks = _rows(ready, part, count)
        shared = home_year(here, year)
        for name, fit in fits.items():
            heat, fans, frost = found[name]
            spared, heaters = _spared(fit, shared)
            for column, area in enumerate(leaks[name]):
                heat[part, column] = _heat(here, fit, shared, area=area, spared=spared, step=year.weight)[..., 0]
            fans[part] = np.squeeze(fit.fans, -1) if np.ndim(fit.fans) else fit.fans
            frost[part] = np.sum(heaters, axis=-1) * year.weight
    return {name: Yearly(heat=heat, fans=fans, frost=frost) for name, (heat, fans, frost) in found.items()}


def _spared(fit: Fitted, shared: HomeYear) -> tuple[Any, Any]:
    """Heat that the supply air spares and electricity of the unit's heaters [W], averaged over the running states."""
    spared: Any = 0.0
    heaters: Any = np.zeros((1, 1))
    for state in fit.states:
        if state.exchange is not None:
            back = state.exchange.at(shared.temp_difference)
            spared = spared + state.share * back.heat
            heaters = heaters + state.share * back.preheater
    return spared, heaters


def _heat(home: HomeNumbers, fit: Fitted, shared: HomeYear, *, area: Array, spared: Any, step: float) -> Any:
    """Heat to be supplied over the year [Wh], (n, 1), at one leakage area [m²] of the house."""
    difference = shared.temp_difference
    infiltration = (area + fit.ventilators) * shared.specific_infiltration
    # In place, since the pieces are meant to stay in the cache.
    load = np.zeros(np.broadcast_shapes(infiltration.shape, difference.shape), dtype=infiltration.dtype)
    for state in fit.states:
        own = joining.envelope_flow(infiltration, unbalanced=state.unbalanced)
        own += state.balanced
        if fit.top_up:
            np.maximum(own, state.required, out=own)
        own *= state.share
        load += own
    load *= shared.heat_capacity
    load *= difference
    load -= spared
    if home.fixed_base is not None:
        outdoors = home.temp_in - difference
        heat = demand.heat_at_fixed_base(
            load, outdoors, temp_in=home.temp_in, fabric=home.fabric_loss, base=home.fixed_base
        )
    else:
        load += home.fabric_loss * difference
        memory = demand.time_constant(home.heat_capacity, demand.loss_coefficient(load, difference))
        load -= shared.gain
        load -= fit.fan_heat_useful * fit.fans
        heat = demand.heat_with_memory(load, memory=memory, step=step)
    return np.sum(heat, axis=-1, keepdims=True) * step


def _single(value: Any) -> Any:
    """Every floating number of a tree of numbers in single precision."""
    return _mapped(value, lambda leaf: leaf.astype(np.float32) if np.issubdtype(leaf.dtype, np.floating) else leaf)


def _double(value: Any) -> Any:
    return value


def _rows(value: Any, part: slice, count: int) -> Any:
    """The homes of one piece from a tree of numbers; what is the same for all homes stays as it is."""
    return _mapped(value, lambda leaf: leaf[part] if leaf.ndim == 2 and len(leaf) == count else leaf)


def _mapped(value: Any, change: Any) -> Any:
    """A tree of dataclasses, mappings and tuples with every array in it changed."""
    if isinstance(value, np.ndarray | np.generic | float):
        return change(np.asarray(value))
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        changed = {item.name: _mapped(getattr(value, item.name), change) for item in dataclasses.fields(value)}
        return dataclasses.replace(value, **changed)
    if isinstance(value, Mapping):
        return {name: _mapped(inner, change) for name, inner in value.items()}
    if isinstance(value, tuple):
        inside: Iterator[Any] = (_mapped(inner, change) for inner in value)
        return type(value)(*inside) if hasattr(value, "_fields") else tuple(inside)
    return value
