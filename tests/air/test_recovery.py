"""Does the air of a recovery unit bring and take what a walk along it with pencil and paper says?

Each figure is worked out by hand from the heat balance of one stretch after another: duct, heater, exchanger, duct.
"""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from estimator.air.recovery import (
    DuctShares,
    Recovered,
    inside_envelope,
    outside_envelope,
    postheated,
    prewarmed,
    throttled,
)

# Indoors 20 °C; outdoors −10 °C, and a summer's hour at 22 °C. Every duct, flow and set point differs from every other.
DIFFERENCE = np.array([30.0, -2.0])  # K, indoors less outdoors
DUCTS = DuctShares(intake=0.9, exhaust=0.95, supply=0.88, extract=0.92)
COMMON: dict[str, Any] = {
    "temp_in": 20.0,
    "effectiveness": 0.8,
    "ducts": DUCTS,
    "capacity_supply": 50.0,
    "capacity_balanced": 40.0,
}


def holds(back: Recovered, **expected: Any) -> None:
    assert set(expected) == set(Recovered._fields)
    for name, values in expected.items():
        np.testing.assert_allclose(getattr(back, name), values, rtol=1e-12, atol=1e-9, err_msg=name)


def test_in_the_envelope() -> None:
    """Air reaches the unit at 20 − 0.9 × 30 = −7 °C and takes 40 × 0.8 × 27 = 864 W, that is 17.28 K of 50 W/K.

    The exhaust duct takes a twentieth of it back. In summer the same the other way: 21.8 °C, −57.6 W, −1.152 K.
    """
    holds(
        inside_envelope(DIFFERENCE, **COMMON),
        heat=[820.8, -54.72],
        preheater=[0.0, 0.0],
        entering=[-7.0, 21.8],
        exchanged=[864.0, -57.6],
        arriving=[20.0, 20.0],
        supplied=[10.28, 20.648],
    )


def test_in_the_envelope_with_a_heater() -> None:
    """From −7 to −4 °C takes 3 K × 50 W/K, all of which is spared; then 40 × 0.8 × 24 = 768 W, or 15.36 K."""
    holds(
        inside_envelope(DIFFERENCE, preheat_to=-4.0, **COMMON),
        heat=[0.95 * 768.0 + 150.0, -54.72],
        preheater=[150.0, 0.0],
        entering=[-4.0, 21.8],
        exchanged=[768.0, -57.6],
        arriving=[20.0, 20.0],
        supplied=[11.36, 20.648],
    )


def test_in_the_envelope_throttled() -> None:
    """The extract stream gives up no more than 40 W/K × (20 − 2) K = 720 W; half as much again where it is half as
    large again as the balanced flow, which is then no limit.
    """
    assert inside_envelope(DIFFERENCE, throttle_at=2.0, **COMMON).exchanged == pytest.approx([720.0, -57.6])
    more = inside_envelope(DIFFERENCE, throttle_at=2.0, flow_ratio=1.5, **COMMON)
    assert more.exchanged == pytest.approx([864.0, -57.6])


def test_out_of_the_envelope() -> None:
    """A room at −10 + 0.3 × 30 = −1 °C: extract arrives at −1 + 0.92 × 21 = 18.32 °C, intake at −10 + 0.1 × 9 =
    −9.1 °C; 40 × 0.8 × 27.42 = 877.44 W lift it by 17.5488 K to 8.4488 °C, of which 0.88 × 9.4488 K above the room
    are left. Summer: room 21.4, extract 20.112, intake 21.94 °C; −58.496 W, −1.16992 K.
    """
    supplied = [-1.0 + 0.88 * 9.4488, 21.4 + 0.88 * (21.94 - 1.16992 - 21.4)]
    holds(
        outside_envelope(DIFFERENCE, zone_factor=0.3, **COMMON),
        heat=[50.0 * (supplied[0] + 10.0), 50.0 * (supplied[1] - 22.0)],
        preheater=[0.0, 0.0],
        entering=[-9.1, 21.94],
        exchanged=[877.44, -58.496],
        arriving=[18.32, 20.112],
        supplied=supplied,
    )


def test_out_of_the_envelope_through_a_long_intake_duct() -> None:
    """Bare and long, it keeps two fifths of the difference to the room at −1 °C: −10 + 0.6 × 9 K; 22 − 0.6 × 0.6 K."""
    bare = DUCTS._replace(intake=0.4)
    found = outside_envelope(DIFFERENCE, zone_factor=0.3, **{**COMMON, "ducts": bare})
    np.testing.assert_allclose(found.entering, [-4.6, 21.64], rtol=1e-12)


def test_out_of_the_envelope_with_a_heater_and_throttled() -> None:
    """From −9.1 to −5 °C: 205 W. The extract gives up no more than 40 W/K × (18.32 − 3) K = 612.8 W, or 12.256 K of
    supply air, which leaves at 7.256 °C, 8.256 K above the room.
    """
    back = outside_envelope(DIFFERENCE, zone_factor=0.3, preheat_to=-5.0, throttle_at=3.0, **COMMON)
    winter = Recovered(*(np.asarray(values)[0] for values in back))
    holds(
        winter,
        heat=50.0 * (9.0 + 0.88 * 8.256),
        preheater=205.0,
        entering=-5.0,
        exchanged=612.8,
        arriving=18.32,
        supplied=-1.0 + 0.88 * 8.256,
    )
    more = outside_envelope(DIFFERENCE, zone_factor=0.3, preheat_to=-5.0, throttle_at=3.0, flow_ratio=1.1, **COMMON)
    assert more.exchanged[0] == pytest.approx(1.1 * 612.8)


def test_throttling_limits_only_where_there_is_cold_to_fear() -> None:
    """Headroom over difference: 1.2 × 0.5 K over 2, 0.75, nil and −1 K. Only the first two limit; no heat, no frost."""
    entering = np.array([18.0, 19.25, 20.0, 21.0])
    found = throttled(0.9, temp_in=20.0, entering=entering, set_point=19.5, flow_ratio=1.2)
    np.testing.assert_allclose(found, [0.3, 0.8, 0.9, 0.9], rtol=1e-12)


@pytest.mark.parametrize("capacity", [0.0, 0.5])
def test_where_hardly_any_air_is_supplied(capacity: float) -> None:
    """No supply air is lifted by nothing, and a little of it, all balanced, by effectiveness × 27 K."""
    flows = {"capacity_supply": capacity, "capacity_balanced": capacity}
    back = inside_envelope(DIFFERENCE, **{**COMMON, **flows})
    assert back.supplied[0] == pytest.approx(-7.0 + (0.8 * 27.0 if capacity else 0.0))
    assert back.exchanged[0] == pytest.approx(capacity * 0.8 * 27.0)


def test_air_drawn_from_a_warmer_room() -> None:
    """A loft 0.2 of the way to indoors: 6 K warmer than −10 °C, 0.4 K cooler than 22 °C; 50 W/K."""
    holds(
        prewarmed(DIFFERENCE, temp_in=20.0, warmth=0.2, capacity_supply=50.0),
        heat=[300.0, -20.0],
        preheater=[0.0, 0.0],
        entering=[-10.0, 22.0],
        exchanged=[0.0, 0.0],
        arriving=[20.0, 20.0],
        supplied=[-4.0, 21.6],
    )


def test_heater_where_the_supply_air_enters_the_rooms() -> None:
    """11.36 to 16 °C: 4.64 K × 50 W/K = 232 W, on top of the 150 W of the heater before; none in summer."""
    before = inside_envelope(DIFFERENCE, preheat_to=-4.0, **COMMON)
    holds(
        postheated(before, capacity_supply=50.0, set_point=16.0),
        heat=[0.95 * 768.0 + 382.0, -54.72],
        preheater=[382.0, 0.0],
        entering=before.entering,
        exchanged=before.exchanged,
        arriving=before.arriving,
        supplied=[16.0, 20.648],
    )
    more = postheated(before, capacity_supply=50.0, set_point=25.0)
    np.testing.assert_allclose(more.preheater, [150.0 + 50.0 * 13.64, 50.0 * 4.352], rtol=1e-12)
