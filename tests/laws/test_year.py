"""Does the year behave like a year: a circle of hours, as fine as one likes, and the sum of its months?"""

from __future__ import annotations

import dataclasses
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from estimator import Case, ClimateYear, estimate
from estimator.corridor import air_year, heat_year, home_year
from estimator.heat.demand import heat_with_memory, yearly_heat_with_memory
from estimator.heat.memory import remembered, unwoven, woven
from estimator.inputs.heating import Heating
from estimator.monthly import months
from estimator.survey.numbers import HomeNumbers
from estimator.units import to_m3h
from tests.laws.settings import FEW, KINDS, MANY, WINTERS, default_option, demand, homes, year_of

COLUMNS = ("temp_air", "wind_speed", "ghi", "dni", "dhi", "relative_humidity", "pressure", "facades")


def turned(year: ClimateYear, days: int) -> ClimateYear:
    """The year begun some days later."""
    columns: dict[str, Any] = {name: np.roll(getattr(year, name), -24 * days, axis=-1) for name in COLUMNS}
    return dataclasses.replace(year, **columns)


def doubled(year: ClimateYear) -> ClimateYear:
    """Each row twice, at half the weight."""
    columns: dict[str, Any] = {name: np.repeat(getattr(year, name), 2, axis=-1) for name in COLUMNS}
    return dataclasses.replace(year, weight=year.weight / 2.0, **columns)


@pytest.mark.parametrize("kind", KINDS)
@given(home=homes(), days=st.integers(1, 364), fixed=st.booleans())
@FEW
def test_beginning_the_year_elsewhere_changes_nothing(kind: str, home: HomeNumbers, days: int, fixed: bool) -> None:
    """Memory is periodic: rotating by whole days leaves the annual heat as it is."""
    home = dataclasses.replace(home, fixed_base=15.5 if fixed else None)
    year, option = year_of("Greensboro"), default_option(kind)
    np.testing.assert_allclose(demand(home, option, turned(year, days)), demand(home, option, year), rtol=1e-10)


@pytest.mark.parametrize("kind", KINDS)
@given(home=homes())
@FEW
def test_double_resolution_without_memory_is_the_same_year(kind: str, home: HomeNumbers) -> None:
    home = dataclasses.replace(home, fixed_base=15.5)
    year, option = year_of("Greensboro"), default_option(kind)
    np.testing.assert_allclose(demand(home, option, doubled(year)), demand(home, option, year), rtol=1e-12)


@pytest.mark.parametrize("kind", KINDS)
@given(home=homes())
@FEW
def test_double_resolution_with_memory_is_nearly_the_same_year(kind: str, home: HomeNumbers) -> None:
    """Within 0.3 % where the house remembers six hours and more."""
    option = default_option(kind)
    for name in WINTERS:
        year = year_of(name)
        shared = home_year(home, year)
        memory = heat_year(home, option, shared, air_year(home, option, shared, top_up=True), step=1.0).time_constant
        assume(float(np.squeeze(memory)) >= 6.0)
        np.testing.assert_allclose(demand(home, option, doubled(year)), demand(home, option, year), rtol=3e-3)


@given(memory=st.floats(0.0, 500.0), level=st.floats(-50.0, 50.0), rows=st.sampled_from([8760, 2190, 730]))
@MANY
def test_memory_moves_heat_but_makes_none(memory: float, level: float, rows: int) -> None:
    """The mean stays; a steady load stays what it is; where heating never stops the annual sum is untouched."""
    load = level + 40.0 * np.sin(np.arange(rows) / 5.0)
    felt = remembered(load, memory=memory, step=8760.0 / rows)
    assert np.mean(felt) == pytest.approx(np.mean(load), abs=1e-9)
    assert np.ptp(felt) <= np.ptp(load) + 1e-9
    steady = remembered(np.full(rows, level), memory=memory, step=8760.0 / rows)
    np.testing.assert_allclose(steady, level, atol=1e-9)
    always = load + 100.0
    heat = heat_with_memory(always, memory=memory, step=8760.0 / rows)
    assert np.sum(heat) == pytest.approx(np.sum(always), rel=1e-12)


@pytest.mark.parametrize("memory", [0.0, 5e-323, 1e-300, 1e-3])
def test_a_memory_of_next_to_no_time_is_none(memory: float) -> None:
    """Down to the smallest number there is."""
    load = np.random.default_rng(3).normal(500.0, 2000.0, 8760)
    np.testing.assert_array_equal(remembered(load, memory=memory, step=1.0), load)


def test_memory_follows_its_recurrence() -> None:
    """Hour after hour by hand: y = a y + (1 − a) x, the second time round, when the start is forgotten."""
    rng = np.random.default_rng(3)
    load = rng.normal(size=8760)
    keep = np.exp(-1.0 / 30.0)
    felt = 0.0
    for value in load:
        felt = keep * felt + (1.0 - keep) * value
    by_hand = []
    for value in load:
        felt = keep * felt + (1.0 - keep) * value
        by_hand.append(felt)
    np.testing.assert_allclose(remembered(load, memory=30.0, step=1.0), by_hand, atol=1e-10)


@pytest.mark.parametrize("mode", ["memory", "fixed base"])
@pytest.mark.parametrize("name", WINTERS)
def test_months_make_the_year(name: str, mode: Any) -> None:
    """Energies, bill, carbon and degree-hours by sum; flows by the hours of the months."""
    done = estimate(Case(heating=Heating(mode=mode)), year_of(name))
    hours = np.array([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]) * 24.0
    for option in done.options.values():
        by_month = months(done, option)
        for figures, whole in (
            (by_month.heating_demand, option.heating_demand),
            (by_month.fan_electricity, option.fan_electricity),
            (by_month.frost_electricity, option.frost_electricity),
            (by_month.electricity, option.electricity),
            (by_month.fuel_energy, option.fuel_energy),
            (by_month.bill, option.household_bill),
            (by_month.carbon, option.household_carbon),
            (by_month.degree_hours, option.heat.degree_hours.item()),
        ):
            assert np.shape(np.squeeze(figures)) == (12,)
            assert np.sum(figures) == pytest.approx(whole, rel=1e-9, abs=1e-9)
        for figures, hourly in (
            (by_month.air_delivered_m3h, option.air.delivered),
            (by_month.infiltration_m3h, option.air.infiltration),
            (by_month.windows_m3h, option.air.windows),
        ):
            mean = np.sum(np.squeeze(figures) * hours) / 8760.0
            assert mean == pytest.approx(to_m3h(float(np.mean(hourly))), rel=1e-9, abs=1e-9)


def test_memory_of_any_length_is_that_of_a_plain_filter_gone_through_the_year_until_it_repeats() -> None:
    load = np.random.default_rng(7).normal(500.0, 2000.0, (3, 365))
    memory = np.array([[3.0], [40.0], [5000.0]])
    keep = np.exp(-24.0 / memory[:, 0])
    felt = load.mean(axis=-1)
    for _ in range(40):
        for day in range(365):
            felt = keep * felt + (1.0 - keep) * load[:, day]
    np.testing.assert_allclose(remembered(load, memory=memory, step=24.0)[:, -1], felt, rtol=1e-9)


def test_memory_keeps_single_precision() -> None:
    load: Any = np.random.default_rng(8).normal(500.0, 2000.0, (4, 730)).astype(np.float32)
    memory = np.array([[8.0], [20.0], [60.0], [300.0]])
    felt = remembered(load, memory=memory, step=12.0)
    assert felt.dtype == np.float32
    exact = remembered(load.astype(float), memory=memory, step=12.0)
    np.testing.assert_allclose(felt, exact, atol=2e-6 * np.abs(load).max())


@pytest.mark.parametrize("rows", [1, 7, 12, 365, 1752, 2190, 8760])
def test_a_woven_year_holds_the_same_rows_and_comes_to_the_same_heat(rows: int) -> None:
    load = np.random.default_rng(rows).normal(100.0, 2000.0, (5, rows))
    memory = np.array([[0.0], [2.5], [12.0], [70.0], [900.0]])
    step = 8760.0 / rows
    np.testing.assert_array_equal(unwoven(woven(load)), load)
    in_order = np.sum(heat_with_memory(load, memory=memory, step=step), axis=-1, keepdims=True) * step
    of_woven = yearly_heat_with_memory(woven(load).copy(), memory=memory, step=step)
    np.testing.assert_allclose(of_woven, in_order, rtol=1e-12)


def test_remembering_leaves_the_load_as_it_was() -> None:
    for rows in (7, 17, 8760):
        load = np.random.default_rng(9).normal(size=(2, rows))
        before = load.copy()
        remembered(load, memory=np.array([[5.0], [50.0]]), step=8760.0 / rows)
        np.testing.assert_array_equal(load, before)
