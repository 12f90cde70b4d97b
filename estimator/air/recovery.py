"""How much of the heat of the balanced flow comes back, and what does frost protection take?

Both forms return the heat that the supply air spares the heating system [W], pre-heater included, and the pre-heater's
electricity [W]. The heat that space heating must supply is then c [√(Qi²+Qu²) + Qb + Qwin](Ti − To) − recovered: the
pre-heater's heat reaches the house through the exchanger and is counted there, never again as a gain.
"""

from __future__ import annotations

from typing import Any, NamedTuple

import numpy as np

from estimator.units import Array, Numeric


class Recovered(NamedTuple):
    """Heat spared by the supply air [W], heaters' electricity [W], air entering the exchanger [°C].

    And heat passed inside the exchanger itself [W], extract air as it arrives there and supply air as it comes into the
    rooms [°C], post-heater included.
    """

    heat: Any
    preheater: Any
    entering: Any
    exchanged: Any
    arriving: Any
    supplied: Any


class DuctShares(NamedTuple):
    """Share of temperature difference kept along each duct, 0 to 1."""

    intake: Any
    exhaust: Any
    supply: Any
    extract: Any


def _preheated(entering: Any, *, capacity_supply: Any, set_point: Numeric | None) -> tuple[Any, Any]:
    if set_point is None:
        return entering, np.zeros(np.shape(entering))
    lifted = np.maximum(entering, set_point)
    return lifted, capacity_supply * (lifted - entering)


def throttled(effectiveness: Any, *, temp_in: Numeric, entering: Array, set_point: Numeric, flow_ratio: Numeric) -> Any:
    """Effectiveness when supply is throttled so that the exhaust stays at or above `set_point` [°C].

    The extract stream may give up at most Qe (Ti − T_set); the supply stream takes e Qb (Ti − T1); flow_ratio = Qe/Qb.
    """
    headroom = np.asarray(temp_in) - np.asarray(set_point)
    difference = temp_in - entering
    limit = np.divide(
        flow_ratio * headroom,
        difference,
        out=np.full(np.broadcast(effectiveness, flow_ratio, headroom, difference).shape, np.inf),
        where=difference > 0.0,
    )
    return np.minimum(effectiveness, limit)


def inside_envelope(
    temp_difference: Array,
    *,
    temp_in: Numeric,
    effectiveness: Numeric,
    ducts: DuctShares,
    capacity_supply: Numeric,
    capacity_balanced: Numeric,
    preheat_to: Numeric | None = None,
    throttle_at: Numeric | None = None,
    flow_ratio: Numeric = 1.0,
) -> Recovered:
    """Unit in the heated envelope: cold intake and exhaust ducts stand in warm rooms and take heat from them.

    temp_difference: indoor minus outdoor [K], (…, hours); capacity_*: volumetric heat capacity times flow [W/K];
    preheat_to, throttle_at: frost set points [°C], or None. The intake duct warms outdoor air to
    T1 = Ti − (Ti−To) E_intake with heat of the room; what the exhaust duct takes counts as not recovered. Hence
    recovered = c Qb e E_exhaust (Ti − Tx) + P, and without heater the efficiency is e E_intake E_exhaust.
    """
    entering = temp_in - temp_difference * ducts.intake
    entering, preheater = _preheated(entering, capacity_supply=capacity_supply, set_point=preheat_to)
    if throttle_at is not None:
        effectiveness = throttled(
            effectiveness, temp_in=temp_in, entering=entering, set_point=throttle_at, flow_ratio=flow_ratio
        )
    exchanged = capacity_balanced * effectiveness * (temp_in - entering)
    return Recovered(
        heat=exchanged * ducts.exhaust + preheater,
        preheater=preheater,
        entering=entering,
        exchanged=exchanged,
        arriving=np.broadcast_to(temp_in, np.shape(entering)),
        supplied=entering + _per_supply(exchanged, capacity_supply),
    )


def outside_envelope(
    temp_difference: Array,
    *,
    temp_in: Numeric,
    effectiveness: Numeric,
    ducts: DuctShares,
    zone_factor: Numeric,
    capacity_supply: Numeric,
    capacity_balanced: Numeric,
    preheat_to: Numeric | None = None,
    throttle_at: Numeric | None = None,
    flow_ratio: Numeric = 1.0,
) -> Recovered:
    """Unit in an unheated room at To + b (Ti−To): warm supply and extract ducts lose heat to it.

    Arguments as `inside_envelope`; zone_factor b. In fractions of Ti−To: extract arrives at b + (1−b) E_extract, intake
    at b (1 − E_intake), supply leaves the exchanger in between and reaches the rooms at b + (θ2 − b) E_supply.
    """
    temp_out = temp_in - temp_difference
    zone = temp_out + zone_factor * temp_difference
    entering = temp_out + zone_factor * (1.0 - ducts.intake) * temp_difference
    entering, preheater = _preheated(entering, capacity_supply=capacity_supply, set_point=preheat_to)
    extract = zone + (temp_in - zone) * ducts.extract
    if throttle_at is not None:
        effectiveness = throttled(
            effectiveness, temp_in=extract, entering=entering, set_point=throttle_at, flow_ratio=flow_ratio
        )
    # Where supply exceeds extract, the balanced part exchanges and all of the supply shares what it brings.
    exchanged = capacity_balanced * effectiveness * (extract - entering)
    leaving = entering + _per_supply(exchanged, capacity_supply)
    supplied = zone + (leaving - zone) * ducts.supply
    return Recovered(
        heat=capacity_supply * (supplied - temp_out),
        preheater=preheater,
        entering=entering,
        exchanged=exchanged,
        arriving=extract,
        supplied=supplied,
    )


def prewarmed(temp_difference: Array, *, temp_in: Numeric, warmth: Numeric, capacity_supply: Numeric) -> Recovered:
    """Supply air drawn from an unheated room at To + b (Ti−To), `warmth` b from 0 to 1; no exchanger.

    capacity_supply: volumetric heat capacity times supply flow [W/K]. It spares c Qs b (Ti−To). What warms such a room
    is sun, and heat that the fabric loses to it in any case; b is that of the room while the air is drawn from it.
    """
    temp_out = temp_in - temp_difference
    nothing = np.zeros(np.broadcast(temp_out, capacity_supply).shape)
    supplied = temp_out + warmth * temp_difference
    return Recovered(
        heat=capacity_supply * (supplied - temp_out),
        preheater=nothing,
        entering=temp_out,
        exchanged=nothing,
        arriving=np.broadcast_to(temp_in, nothing.shape),
        supplied=supplied,
    )


def _per_supply(heat: Any, capacity_supply: Any) -> Any:
    """By how much heat [W] lifts the supply air [K]; nil where there is no supply air."""
    capacity = np.asarray(capacity_supply)
    return heat * np.divide(1.0, capacity, out=np.zeros_like(capacity), where=capacity > 0.0)


def postheated(before: Recovered, *, capacity_supply: Numeric, set_point: Numeric) -> Recovered:
    """The same with an electric heater where the supply air enters the rooms, off above its set point [°C].

    capacity_supply: volumetric heat capacity times supply flow [W/K]. Its electricity joins that of the pre-heater, and
    all of its heat spares the heating system as much.
    """
    lifted = np.maximum(before.supplied, set_point)
    heat = capacity_supply * (lifted - before.supplied)
    return before._replace(heat=before.heat + heat, preheater=before.preheater + heat, supplied=lifted)
