"""Is the reference itself right?

Hand arithmetic in the steady state, closed balances, and the same network solved as linear equations.
"""

from __future__ import annotations

import time
from typing import Any

import numpy as np
import pytest

from estimator.evidence.hourly import Homes, heating_need, simulate
from estimator.units import Array

HOURS = 8760


def some_homes(count: int = 10) -> Homes:
    rng = np.random.default_rng(13790)
    area = rng.uniform(45.0, 220.0, count)
    return Homes(
        floor_area=area,
        opaque=area * rng.uniform(0.4, 2.5, count),
        window=area * rng.uniform(0.1, 0.4, count),
        mass_class=np.arange(count) % 5,
    )


def some_year(homes: Homes) -> dict[str, Any]:
    """An invented year: seasons, days, gusts, sun by day."""
    hour = np.arange(HOURS)
    rng = np.random.default_rng(1)
    area = homes.floor_area[:, None]
    day = np.maximum(0.0, np.sin(2 * np.pi * (hour - 6) / 24))
    return {
        "temp_out": 9.0 - 9.0 * np.cos(2 * np.pi * hour / HOURS) + 4.0 * day,
        "temp_set": 20.0,
        "ventilation": area * rng.uniform(0.2, 0.8, (len(homes.floor_area), HOURS)),
        "internal_gains": 4.0 * area,
        "solar_gains": area * 12.0 * day,
    }


def test_steady_state_is_hand_arithmetic() -> None:
    """No gains, 20 K for ever: ventilation plus fabric behind the surface resistance, to nine digits."""
    homes = some_homes()
    flow = 0.3365 * np.linspace(20.0, 200.0, 10)
    need = heating_need(
        homes,
        temp_out=np.full(HOURS, 1.0),
        temp_set=21.0,
        ventilation=flow[:, None],
        internal_gains=0.0,
        solar_gains=0.0,
    )
    fabric = 1.0 / (1.0 / (3.45 * 4.5 * homes.floor_area) + 1.0 / (homes.opaque + homes.window))
    np.testing.assert_allclose(need, (flow + fabric) * 20.0 * HOURS / 1000.0, rtol=1e-9)


def test_steady_gains_replace_heat() -> None:
    """Hand arithmetic at each node: what a watt there spares on the air, to nine digits."""
    homes = some_homes()
    steady = {"temp_out": np.full(HOURS, 0.0), "temp_set": 20.0, "ventilation": 50.0}
    without = heating_need(homes, internal_gains=0.0, solar_gains=0.0, **steady)
    saved = without - heating_need(homes, internal_gains=200.0, solar_gains=100.0, **steady)
    h_is, h_ms = 3.45 * 4.5 * homes.floor_area, 9.1 * homes.mass_area
    on_mass_share = homes.mass_area / (4.5 * homes.floor_area)
    on_surface_share = 1.0 - on_mass_share - homes.window / (9.1 * 4.5 * homes.floor_area)
    at_surface = h_is / (h_is + homes.opaque + homes.window)
    at_mass = at_surface * (h_ms - homes.opaque) / h_ms  # the opaque fabric is h_ms and h_em in series
    scattered = 100.0 + 0.5 * 200.0
    spared = 0.5 * 200.0 + scattered * (on_surface_share * at_surface + on_mass_share * at_mass)
    np.testing.assert_allclose(saved, spared * HOURS / 1000.0, rtol=1e-9)


def test_no_heat_when_warm() -> None:
    homes = some_homes()
    year = some_year(homes) | {"temp_out": np.full(HOURS, 20.0)}
    assert np.all(heating_need(homes, **year) == 0.0)


def test_air_never_falls_below_the_set_point_and_floats_only_unheated() -> None:
    homes = some_homes()
    result = simulate(homes, **some_year(homes))
    assert result.air.min() > 20.0 - 1e-9
    assert np.all(np.abs(result.air[result.heat > 0.0] - 20.0) < 1e-9)
    assert 0.1 < np.mean(result.heat > 0.0) < 0.9


def test_energy_balance_closes_every_hour() -> None:
    """Heat and gains = ventilation + windows + opaque + storage, less what equation C.3 drops."""
    homes = some_homes()
    year = some_year(homes)
    result = simulate(homes, **year)
    before = np.concatenate([result.mass_at_start[:, None], result.mass[:, :-1]], axis=1)
    outside = year["temp_out"]
    lost = (
        year["ventilation"] * (result.air - outside)
        + homes.window[:, None] * (result.surface - outside)
        + homes.mass_to_outside[:, None] * (0.5 * (result.mass + before) - outside)
        + homes.capacity[:, None] * (result.mass - before)
    )
    scattered = 0.5 * year["internal_gains"] + year["solar_gains"]
    dropped = (homes.window / (9.1 * 4.5 * homes.floor_area))[:, None] * scattered
    came = result.heat + year["internal_gains"] + year["solar_gains"] - dropped
    np.testing.assert_allclose(lost, came, atol=1e-6)


def test_nodes_solve_the_network() -> None:
    """Three balances (air, surface, mass by the trapezoidal rule) solved by linear algebra, hour by hour."""
    homes = some_homes(5)
    year = some_year(homes)
    result = simulate(homes, **year)
    hours = slice(2000, 2100)
    for home in range(5):
        mass = result.mass[home, 1999]
        gains_air = 0.5 * year["internal_gains"][home, 0]
        for hour in range(*hours.indices(HOURS)):
            solved = _solved(homes, home, mass, hour, year, gains_air, result.heat[home, hour])
            ours = [result.air[home, hour], result.surface[home, hour], result.mass[home, hour]]
            np.testing.assert_allclose(ours, solved, rtol=1e-10)
            mass = solved[2]


def _solved(homes: Homes, home: int, mass: float, hour: int, year: dict[str, Any], on_air: float, heat: float) -> Array:
    pick = [x[home] for x in (homes.air_to_surface, homes.surface_to_mass, homes.mass_to_outside)]
    h_is, h_ms, h_em = pick
    h_w, c_m = homes.window[home], homes.capacity[home]
    h_ve, out = year["ventilation"][home, hour], year["temp_out"][hour]
    scattered = on_air + year["solar_gains"][home, hour]
    to_mass = homes.mass_area[home] / homes.surface_area[home]
    to_surface = 1.0 - to_mass - h_w / (9.1 * homes.surface_area[home])
    conductances = np.array(
        [
            [h_is + h_ve, -h_is, 0.0],
            [-h_is, h_is + h_w + h_ms, -0.5 * h_ms],
            [0.0, -h_ms, c_m + 0.5 * (h_ms + h_em)],
        ]
    )
    sources = [
        h_ve * out + on_air + heat,
        h_w * out + to_surface * scattered + 0.5 * h_ms * mass,
        h_em * out + to_mass * scattered + (c_m - 0.5 * (h_ms + h_em)) * mass,
    ]
    return np.asarray(np.linalg.solve(conductances, np.array(sources)))


def test_the_start_does_not_matter() -> None:
    homes = some_homes()
    year = some_year(homes)
    np.testing.assert_allclose(
        heating_need(homes, **year), heating_need(homes, run_in_weeks=26, **year), rtol=0.0, atol=0.01
    )


def test_one_home_at_a_time_is_all_at_once() -> None:
    homes = some_homes()
    year = some_year(homes)
    together = heating_need(homes, **year)
    third = Homes(
        floor_area=homes.floor_area[3:4],
        opaque=homes.opaque[3:4],
        window=homes.window[3:4],
        mass_class=homes.mass_class[3:4],
    )
    alone = {key: value[3:4] if np.ndim(value) == 2 else value for key, value in year.items()}
    assert heating_need(third, **alone)[0] == pytest.approx(together[3], rel=1e-12)


def test_months_add_up() -> None:
    homes = some_homes()
    result = simulate(homes, **some_year(homes))
    np.testing.assert_allclose(result.monthly_need.sum(axis=-1), result.annual_need, rtol=1e-12)
    assert result.monthly_need[:, 0].min() > result.monthly_need[:, 6].max()


def test_recovered_heat_as_less_flow_or_as_warmer_supply() -> None:
    """Where heating never stops both say the same; where rooms float, warmer supply keeps them warmer."""
    homes = some_homes()
    cold = {"temp_set": 20.0, "internal_gains": 0.0, "solar_gains": 0.0}
    outside = np.linspace(-10.0, 10.0, HOURS)
    less = heating_need(homes, temp_out=outside, ventilation=60.0 * 0.2, **cold)
    warmer = heating_need(
        homes, temp_out=outside, ventilation=60.0, temp_supply=outside + 0.8 * (20.0 - outside), **cold
    )
    np.testing.assert_allclose(less, warmer, rtol=1e-9)


def test_two_hundred_homes_and_two_options_take_seconds() -> None:
    homes = some_homes(400)
    year = some_year(homes)
    began = time.process_time()
    simulate(homes, **year)
    assert time.process_time() - began < 120.0  # a hang, not a speed
