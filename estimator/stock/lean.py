"""How much heat and electricity do the options of many homes take in a year, and nothing else?

The corridor's own functions, on columns (n, 1) of homes and a year in blocks of consecutive hours. What does not hang
on the weather is worked out once for all homes; the hours go by in pieces that fit a processor's cache. What the unit
returns does not hang on the leaks, so that one pass serves a home at several leakages.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from estimator.air import joining
from estimator.air.properties import volumetric_heat_capacity
from estimator.climate.year import ClimateYear
from estimator.corridor import HomeYear, home_year
from estimator.heat import demand
from estimator.heat.memory import woven
from estimator.running import Exchange, exchange, fan_power
from estimator.stock.trees import homes_picked, in_single_precision
from estimator.survey.numbers import HomeNumbers, OptionNumbers
from estimator.units import Array

# Bytes of one quantity handled at once, homes times rows of the year: few enough that what is in hand stays near the
# processor, enough that the calls do not weigh. Found by trying.
_AT_ONCE = 560_000
_ROUNDING = 1e-12


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Running:
    """One running state, weather apart and counted by its share of the year: floats or columns (n, 1).

    Flows are told by the heat that they carry for each kelvin [W/K].
    """

    carries: Any  # J/(m³ K), share times heat capacity of the air
    balanced: Any
    unbalanced: Any
    required: Any
    uneven: bool  # whether any fan flow is unbalanced
    topped_up: bool  # whether windows may have to bring what is required, in some home and hour
    exchange: Exchange | None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Fitted:
    """One option in every home, weather apart: floats or columns (n, 1)."""

    states: tuple[Running, ...]
    ventilators: Any  # m² of leakage area
    fans: Any  # W, mean
    fan_heat_useful: Any


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Yearly:
    """One option in n homes over a year; heat has one column for each leakage asked about."""

    heat: Array  # Wh, (n, leakages)
    fans: Array  # W, mean, (n,)
    frost: Array  # Wh, (n,)


def fitted(home: HomeNumbers, option: OptionNumbers, *, heat_capacity: float, top_up: bool) -> Fitted:
    """What of an option does not hang on the weather; heat_capacity: of air moved [J/(m³ K)]."""
    fans: Any = option.standby
    states = []
    for state in option.states:
        fans = fans + state.share * fan_power(option, state)
        carries = state.share * heat_capacity
        balanced = carries * joining.balanced_flow(state.supply, state.extract)
        unbalanced = carries * joining.unbalanced_flow(state.supply, state.extract)
        required = carries * home.required * state.need
        back = exchange(home, option, state, heat_capacity=heat_capacity)
        states.append(
            Running(
                carries=carries,
                balanced=balanced,
                unbalanced=unbalanced,
                required=required,
                uneven=bool(np.any(unbalanced)),
                # However tight the home, the fans move their flow. A difference in the last digits is rounding.
                topped_up=top_up and bool(np.any(required > (balanced + unbalanced) * (1.0 + _ROUNDING))),
                exchange=None if back is None else back.counted(state.share),
            )
        )
    return Fitted(
        states=tuple(states),
        ventilators=option.ventilator_leakage_area,
        fans=fans,
        fan_heat_useful=option.fan_heat_useful,
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
    ready: Any = (home, weatherless, {name: tuple(columns) for name, columns in areas.items()})
    year = _woven(year)
    if single:
        ready, year = in_single_precision(ready), in_single_precision(year)
    found = {name: (np.empty((count, len(areas[name]))), np.empty(count), np.empty(count)) for name in options}
    pick = homes_picked(ready, count)
    size = max(1, _AT_ONCE // year.temp_air.nbytes)
    for first in range(0, count, size):
        part = slice(first, first + size)
        here, fits, leaks = pick(part)
        shared = home_year(here, year)
        cold = demand.cold_rows(shared.temp_difference)
        for name, fit in fits.items():
            heat, fans, frost = found[name]
            given = _given(fit, shared, cold)
            for column, area in enumerate(leaks[name]):
                heat[part, column] = _heat(here, fit, shared, given, cold, area=area, step=year.weight)[..., 0]
            fans[part] = np.squeeze(fit.fans, -1) if np.ndim(fit.fans) else fit.fans
            frost[part] = given.heaters * year.weight
    return {name: Yearly(heat=heat, fans=fans, frost=frost) for name, (heat, fans, frost) in found.items()}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Given:
    """What an option gives the home at any leakage, in each row: floats, (n, 1) or (n, rows)."""

    spared: Any  # W, heat that the supply air spares
    spared_per_kelvin: Any  # W/K, one for all rows
    free: Any  # W, spared heat, gains and the useful heat of fans
    heaters: Any  # W, electricity of the unit's heaters, sum of all rows


def _given(fit: Fitted, shared: HomeYear, cold: Any) -> _Given:
    """The heat that needs no heating, of all running states together."""
    spared: Any = None
    heaters: Any = 0.0
    for state in fit.states:
        if state.exchange is not None:
            back = state.exchange.at(shared.temp_difference)
            spared = back.heat if spared is None else spared + back.heat
            heaters = heaters + np.sum(back.preheater, axis=-1)
    of_fans = fit.fan_heat_useful * fit.fans
    free = shared.gain + of_fans if np.any(of_fans) else shared.gain
    if spared is None:
        return _Given(spared=0.0, spared_per_kelvin=0.0, free=free, heaters=heaters)
    per_kelvin = demand.loss_coefficient(spared, cold)
    return _Given(spared=spared, spared_per_kelvin=per_kelvin, free=free + spared, heaters=heaters)


def _heat(
    home: HomeNumbers, fit: Fitted, shared: HomeYear, given: _Given, cold: Any, *, area: Array, step: float
) -> Any:
    """Heat to be supplied over the year [Wh], (n, 1), at one leakage area [m²] of the house."""
    difference, leaks = shared.temp_difference, area + fit.ventilators
    if home.fixed_base is not None:
        load = _carried(fit, shared, leaks=leaks) * difference - given.spared
        outdoors = home.temp_in - difference
        heat = demand.heat_at_fixed_base(
            load, outdoors, temp_in=home.temp_in, fabric=home.fabric_loss, base=home.fixed_base
        )
        return np.sum(heat, axis=-1, keepdims=True) * step
    carried = _carried(fit, shared, leaks=leaks, besides=home.fabric_loss)
    # In place, here and below, since the pieces are meant to stay in the cache.
    loss = np.multiply(carried, difference, out=carried if carried.shape == difference.shape else None)
    per_kelvin = demand.loss_coefficient(loss, cold) - given.spared_per_kelvin
    loss -= given.free
    memory = demand.time_constant(home.heat_capacity, per_kelvin)
    return demand.yearly_heat_with_memory(loss, memory=memory, step=step)


def _carried(fit: Fitted, shared: HomeYear, *, leaks: Array, besides: Any = 0.0) -> Any:
    """Heat that the air of an option carries for each kelvin [W/K], in each row, and what is lost `besides`."""
    carried = besides
    for state in fit.states:
        if not state.topped_up:
            carried = carried + state.balanced
    for state in fit.states:
        own = state.carries * leaks * shared.specific_infiltration
        if state.uneven:
            own = joining.envelope_flow(own, unbalanced=state.unbalanced)
        if state.topped_up:
            own += state.balanced
            np.maximum(own, state.required, out=own)
        own += carried
        carried = own
    return carried


def _woven(year: ClimateYear) -> ClimateYear:
    """The year with its rows woven, for the memory of the house."""
    columns: dict[str, Any] = {
        name: woven(getattr(year, name)) for name in ("temp_air", "wind_speed", "pressure", "facades")
    }
    return dataclasses.replace(year, **columns)
