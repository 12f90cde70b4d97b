"""Is a column of homes the same as the homes one by one?"""

from __future__ import annotations

import dataclasses
from typing import Any

import numpy as np
import pytest

from estimator.corridor import AirYear, HeatYear, HomeYear, air_year, heat_demand, heat_year, home_year
from estimator.inputs.home import Home, Leakage
from estimator.survey.fill import filled
from estimator.survey.numbers import DuctConductances, HomeNumbers, OptionNumbers, home_numbers
from estimator.survey.typical import fabric_loss
from tests.accuracy.homes import Sample, sample
from tests.laws.settings import KINDS, default_home, default_option, year_of

HOMES = 7


@pytest.fixture(scope="module")
def drawn() -> Sample:
    return sample(HOMES, draw=11)


def one(noun: Any, place: int) -> Any:
    """The home at a place of a column: every (n, 1) entry, however deep, as a float."""
    if dataclasses.is_dataclass(noun) and not isinstance(noun, type):
        return dataclasses.replace(
            noun, **{item.name: one(getattr(noun, item.name), place) for item in dataclasses.fields(noun)}
        )
    if isinstance(noun, tuple):
        return tuple(one(part, place) for part in noun)
    if isinstance(noun, np.ndarray) and noun.ndim == 2:
        return noun[place, 0].item()
    return noun


def worked_out(home: HomeNumbers, option: OptionNumbers, year: Any) -> tuple[HomeYear, AirYear, HeatYear, Any]:
    shared = home_year(home, year)
    air = air_year(home, option, shared, top_up=True)
    heat = heat_year(home, option, shared, air, step=year.weight)
    return shared, air, heat, heat_demand(home, option, shared, step=year.weight, top_up=True)


def same(column: Any, alone: Any, place: int, where: str) -> None:
    """Every entry of the column's result at that place equals the lone result."""
    if dataclasses.is_dataclass(column):
        for item in dataclasses.fields(column):
            same(getattr(column, item.name), getattr(alone, item.name), place, f"{where}.{item.name}")
        return
    rows = np.asarray(column)
    picked = rows[place] if rows.ndim == 2 and rows.shape[0] == HOMES else rows
    np.testing.assert_allclose(
        picked, np.broadcast_to(np.asarray(alone), np.shape(picked)), rtol=1e-9, atol=1e-9, err_msg=where
    )


@pytest.mark.parametrize("base", [None, 15.5])
@pytest.mark.parametrize("kind", [*KINDS, "outside", "throttled"])
def test_column_is_one_by_one(kind: str, base: float | None, drawn: Sample) -> None:
    """Every option of the catalogue, a unit outside the envelope, throttling; with memory and at a fixed base."""
    home = dataclasses.replace(drawn.home, fixed_base=base)
    option = default_option(kind if kind in KINDS else "recovery")
    if kind == "outside":
        conductance = np.linspace(0.5, 4.0, HOMES)[:, None]
        option = dataclasses.replace(
            option,
            outside=True,
            zone_factor=np.linspace(0.0, 0.6, HOMES)[:, None],
            ducts=DuctConductances(intake=0.4, exhaust=conductance, supply=conductance, extract=conductance),
        )
    if kind == "throttled":
        option = dataclasses.replace(option, preheat_to=None, throttle_at=1.0)
    states = tuple(
        dataclasses.replace(
            state,
            supply=state.supply * drawn.home.required / 0.033,
            extract=state.extract * drawn.home.required / 0.033,
        )
        for state in option.states
    )
    option = dataclasses.replace(option, states=states, reference_flow=drawn.home.required)
    year = year_of("Greensboro")
    together = worked_out(home, option, year)
    for place in range(HOMES):
        alone = worked_out(one(home, place), one(option, place), year)
        for column, single in zip(together, alone, strict=True):
            same(column, single, place, f"{kind}, home {place}")


@pytest.mark.parametrize("outside", [False, True])
@pytest.mark.parametrize(
    ("entry", "values"),
    [
        ("effectiveness", (0.6, 0.9)), ("reference_flow", (0.02, 0.05)), ("fan_power", (500.0, 1500.0)),
        ("fan_exponent", (1.0, 2.0)), ("standby", (0.0, 9.0)), ("fan_heat_useful", (0.0, 0.5)),
        ("zone_factor", (0.0, 0.6)), ("preheat_to", (-5.0, 0.0)), ("throttle_at", (0.0, 2.0)),
        ("post_heat_to", (14.0, 18.0)), ("ventilator_leakage_area", (0.0, 0.01)),
    ],
)  # fmt: skip
def test_any_entry_alone_may_be_a_column(entry: str, values: tuple[float, float], outside: bool) -> None:
    """One home, options that differ in one number only: each row is what that number alone gives."""
    home, year = default_home(), year_of("Sand Point")
    option = dataclasses.replace(default_option("recovery"), outside=outside)
    column = dataclasses.replace(option, **{entry: np.array(values)[:, None]})  # type: ignore[arg-type]
    _, air, heat, lean = worked_out(home, column, year)
    for place, value in enumerate(values):
        _, air_alone, heat_alone, lean_alone = worked_out(home, dataclasses.replace(option, **{entry: value}), year)  # type: ignore[arg-type]
        for many, alone in (
            (air.recovered, air_alone.recovered), (air.fans, air_alone.fans), (heat.heat, heat_alone.heat),
            (lean, lean_alone),
        ):  # fmt: skip
            row = many[place] if np.ndim(many) == 2 and np.shape(many)[0] == len(values) else many
            np.testing.assert_allclose(row, np.broadcast_to(alone, np.shape(row)), rtol=1e-9, atol=1e-9)


@pytest.mark.parametrize("base", [None, 15.5])
@pytest.mark.parametrize("kind", KINDS)
def test_lean_form_is_the_whole_form(kind: str, base: float | None, drawn: Sample) -> None:
    """The heat alone equals the heat with everything around it, to the last digits."""
    home = dataclasses.replace(drawn.home, fixed_base=base)
    _, _, heat, lean = worked_out(home, default_option(kind), year_of("Sand Point"))
    np.testing.assert_allclose(lean, np.sum(heat.heat, axis=-1, keepdims=True), rtol=1e-12)


def test_column_of_surveyed_homes() -> None:
    """Words and numbers of a survey in columns: what is worked out is what each home alone would get."""
    areas = np.array([[60.0], [110.0], [180.0]])
    ages = np.array([["before 1920"], ["1996 to 2010"], ["very low energy"]])
    walls = np.array([["solid masonry"], ["timber frame"], ["cavity masonry"]])
    column = fabric_loss(Home(floor_area=areas, age=ages, construction=walls))  # type: ignore[arg-type]
    for place in range(3):
        home = Home(floor_area=areas[place, 0], age=ages[place, 0], construction=walls[place, 0])
        assert column[place, 0] == pytest.approx(fabric_loss(home), rel=1e-12)


def test_column_of_tested_homes_reaches_si() -> None:
    """A column of pressure tests in a filled case becomes a column of leakage areas, each that of its home alone."""
    from estimator import Case

    whole = filled(Case()).case
    tests = np.array([[1.0], [5.0], [9.0]])
    case = dataclasses.replace(whole, leakage=Leakage(measure="n50", value=tests, basis="measured"))  # type: ignore[arg-type]
    areas = home_numbers(case).leakage_area
    for place in range(3):
        alone = dataclasses.replace(whole, leakage=Leakage(measure="n50", value=tests[place, 0], basis="measured"))
        assert areas[place, 0] == pytest.approx(float(home_numbers(alone).leakage_area), rel=1e-12)
