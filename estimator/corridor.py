"""How do a home, an option and a weather year become air, heat and electricity, hour by hour?

The corridor that joins the rooms: it takes numbers in SI and knows neither case files nor money. Homes stand on the
first axis, time on the last, so that one home and a column of many take the same way.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np

from estimator.air import joining
from estimator.air.infiltration import MODELS
from estimator.air.properties import volumetric_heat_capacity
from estimator.climate.year import ClimateYear
from estimator.heat import degrees, demand, gains
from estimator.running import fan_power, recovered
from estimator.survey.numbers import HomeNumbers, OptionNumbers
from estimator.units import Array


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class HomeYear:
    """What is the same for every option of a home: shapes (…, rows)."""

    temp_difference: Array  # K, indoor minus outdoor
    specific_infiltration: Array  # m/s, per m² of leakage area
    gain: Array  # W, sun and internal
    heat_capacity: Any  # J/(m³ K) of air moved


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class AirYear:
    """Air and fans of an option, averaged over its running states: shapes (…, rows)."""

    infiltration: Array  # m³/s, leaks and open ventilators without fans
    envelope: Array  # m³/s, through the envelope with fans
    balanced: Array  # m³/s, in and out through the unit
    windows: Array  # m³/s, added so that no hour is short
    short: Array  # share of each row with less than the required air, before windows
    recovered: Array  # W, spared by the supply air, its heaters included
    preheater: Array  # W, heaters of the unit: against frost, and after the exchanger where there is one
    fans: Any  # W, mean, standby included
    entering: Array  # °C, air entering the exchanger in ordinary use

    @property
    def delivered(self) -> Array:
        """All outdoor air [m³/s], windows included."""
        return self.envelope + self.balanced + self.windows


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class HeatYear:
    """Heat of an option: hourly arrays (…, rows), yearly figures (…, 1)."""

    ventilation_load: Array  # W, heat that the air asks for
    heat: Array  # W, supplied by the heating
    loss_coefficient: Any  # W/K
    mean_gain: Any  # W, over the hours with heat
    time_constant: Any  # h, nil in fixed-base mode
    balance_temperature: Any  # °C
    degree_hours: Any  # K h
    effective_efficiency: Any  # 0 to 1, recovered less pre-heater, in hours with heat


def home_year(home: HomeNumbers, year: ClimateYear) -> HomeYear:
    """Temperature difference, specific infiltration and gains of a home in a weather year."""
    difference = np.asarray(home.temp_in) - year.temp_air
    model = MODELS[home.infiltration_model]
    return HomeYear(
        temp_difference=difference,
        specific_infiltration=model(difference, year.wind_speed, home.setting),
        gain=gains.solar_gain(year.facades, home.apertures) + home.internal_gains,
        heat_capacity=volumetric_heat_capacity(float(np.mean(year.pressure))),
    )


def air_year(
    home: HomeNumbers,
    option: OptionNumbers,
    shared: HomeYear,
    *,
    top_up: bool,
    join: Callable[..., Any] = joining.envelope_flow,
) -> AirYear:
    """Flows, recovered heat and electricity of an option: each running state by itself, then averaged by its share.

    join: how infiltration and unbalanced fan flow make the air through the envelope; quadrature unless another
    published way is to stand beside it.
    """
    area = home.leakage_area + option.ventilator_leakage_area
    infiltration = area * shared.specific_infiltration
    rows = shared.temp_difference.shape[-1]
    envelope: Any = None
    balanced: Any = None
    windows: Any = 0.0
    short: Any = 0.0
    spared: Any = None
    preheater: Any = None
    fans: Any = option.standby
    entering = np.asarray(home.temp_in) - shared.temp_difference
    for number, state in enumerate(option.states):
        through = joining.balanced_flow(state.supply, state.extract)
        unbalanced = joining.unbalanced_flow(state.supply, state.extract)
        around = join(infiltration, unbalanced=unbalanced)
        required = home.required * state.need
        back = recovered(home, option, state, shared.temp_difference, heat_capacity=shared.heat_capacity)
        envelope = _with_share(envelope, around, share=state.share)
        balanced = _with_share(balanced, through, share=state.share)
        if np.any(np.min(around, axis=-1, keepdims=True) + through < required):
            missing = np.maximum(required - (around + through), 0.0)
            # A shortfall below a millionth of the requirement is rounding, not missing air.
            short = short + state.share * (missing > 1e-6 * required)
            windows = windows + state.share * missing if top_up else windows
        fans = fans + state.share * fan_power(option, state)
        if back is not None:
            spared = _with_share(spared, back.heat, share=state.share)
            preheater = _with_share(preheater, back.preheater, share=state.share)
            entering = back.entering if number == 0 else entering
    spared, preheater = (0.0 if part is None else part for part in (spared, preheater))
    # Any input alone may be a column of homes: whatever it reaches gives the shape.
    shape = np.broadcast_shapes(*(np.shape(part) for part in (envelope, balanced, windows, spared, preheater)), (rows,))
    return AirYear(
        infiltration=np.broadcast_to(infiltration, shape),
        envelope=np.broadcast_to(envelope, shape),
        balanced=np.broadcast_to(balanced, shape),
        windows=np.broadcast_to(windows, shape),
        short=np.broadcast_to(short, shape),
        recovered=np.broadcast_to(spared, shape),
        preheater=np.broadcast_to(preheater, shape),
        fans=fans,
        entering=entering,
    )


def _with_share(total: Any, part: Any, *, share: Any) -> Any:
    """A sum with a part more, counted by its share of the year; without a pass over the hours that changes nothing."""
    counted = part if np.ndim(share) == 0 and share == 1.0 else share * part
    return counted if total is None else total + counted


def heat_year(home: HomeNumbers, option: OptionNumbers, shared: HomeYear, air: AirYear, *, step: float) -> HeatYear:
    """Heating of an option: the load of fabric and air, what is left of it after gains, and what it amounts to."""
    load, loss = _losses(home, shared, air)
    per_kelvin = demand.loss_coefficient(loss, demand.cold_rows(shared.temp_difference))
    gain = _gain(option, shared, air)
    heat, memory = _heat(home, shared, load=load, loss=loss, gain=gain, per_kelvin=per_kelvin, step=step)
    outdoors = np.asarray(home.temp_in) - shared.temp_difference
    if home.fixed_base is None:
        mean_gain = gains.mean_gain_in_heating(gain, heat)
        balance = demand.balance_temperature(home.temp_in, mean_gain=mean_gain, loss_per_kelvin=per_kelvin)
        degree_hours = np.sum(heat, axis=-1, keepdims=True) * step / per_kelvin
    else:
        mean_gain = (np.asarray(home.temp_in) - home.fixed_base) * per_kelvin
        balance = np.broadcast_to(np.asarray(home.fixed_base, dtype=float), per_kelvin.shape)
        degree_hours = degrees.degree_hours(outdoors, base=home.fixed_base, step=step)[..., None]
    kept, passed = (np.sum(part, axis=-1, keepdims=True) for part in kept_and_passed(shared, air, heat))
    return HeatYear(
        ventilation_load=load,
        heat=heat,
        loss_coefficient=per_kelvin,
        mean_gain=mean_gain,
        time_constant=memory,
        balance_temperature=balance,
        degree_hours=degree_hours,
        effective_efficiency=np.divide(kept, passed, out=np.zeros(np.shape(passed)), where=passed > 0.0),
    )


def heat_demand(home: HomeNumbers, option: OptionNumbers, shared: HomeYear, *, step: float, top_up: bool) -> Any:
    """Yearly heat [Wh], shape (…, 1), and nothing else: the lean form for sweeps and samples."""
    air = air_year(home, option, shared, top_up=top_up)
    load, loss = _losses(home, shared, air)
    per_kelvin = demand.loss_coefficient(loss, demand.cold_rows(shared.temp_difference))
    gain = _gain(option, shared, air)
    heat, _ = _heat(home, shared, load=load, loss=loss, gain=gain, per_kelvin=per_kelvin, step=step)
    return np.sum(heat, axis=-1, keepdims=True) * step


def kept_and_passed(shared: HomeYear, air: AirYear, heat: Array) -> tuple[Array, Array]:
    """In every hour with heat [W]: what the exchanger keeps less its pre-heater, and the heat in its balanced air."""
    on = heat > 0.0
    passed = np.where(on, shared.heat_capacity * air.balanced * shared.temp_difference, 0.0)
    return np.where(on, air.recovered - air.preheater, 0.0), passed


def _losses(home: HomeNumbers, shared: HomeYear, air: AirYear) -> tuple[Array, Array]:
    """Load of the air, and loss of fabric and air [W]."""
    load = shared.heat_capacity * air.delivered * shared.temp_difference - air.recovered
    return load, np.asarray(home.fabric_loss) * shared.temp_difference + load


def _gain(option: OptionNumbers, shared: HomeYear, air: AirYear) -> Any:
    """Gains of the home and the useful heat of the fans [W]."""
    return shared.gain + np.asarray(option.fan_heat_useful) * air.fans


def _heat(
    home: HomeNumbers, shared: HomeYear, *, load: Array, loss: Array, gain: Array, per_kelvin: Array, step: float
) -> tuple[Array, Any]:
    """Heat [W] in every hour, and the hours over which it remembers: none below a fixed base."""
    if home.fixed_base is None:
        memory = demand.time_constant(home.heat_capacity, per_kelvin)
        return demand.heat_with_memory(loss - gain, memory=memory, step=step), memory
    outdoors = np.asarray(home.temp_in) - shared.temp_difference
    heat = demand.heat_at_fixed_base(
        load, outdoors, temp_in=home.temp_in, fabric=home.fabric_loss, base=home.fixed_base
    )
    return heat, np.zeros(per_kelvin.shape)
