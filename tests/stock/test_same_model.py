"""Does a stock get the answers of its homes one by one?"""

from __future__ import annotations

import dataclasses

import numpy as np
import pytest

from estimator import Case, load_year, run
from estimator.climate.shorten import shortened
from estimator.corridor import heat_demand, home_year
from estimator.heat.memory import remembered
from estimator.inputs.casefile import case_from_dict, case_to_dict
from estimator.stock.chunk import screened, summary_of
from estimator.stock.demo import invented
from estimator.stock.lean import yearly
from estimator.stock.outcome import ROUTES
from estimator.stock.results import figures
from estimator.stock.run import HOURS_PER_BLOCK, settings_for
from estimator.units import to_kwh
from tests.accuracy.homes import Sample, sample
from tests.stock.alone import cases_of

WINTERS = ("Greensboro", "Sand Point")
HOMES = 60
HEADS = figures("£")


@pytest.fixture(scope="module")
def drawn() -> Sample:
    return sample(500, draw=20)


def test_with_the_full_year_every_figure_is_that_of_the_single_home() -> None:
    table, year = invented(HOMES, start=3), load_year("Sand Point")
    settings = settings_for(table.column_names, Case(), year, recovery="recovery", full_year=True)
    found = screened(settings, table, 1).to_pylist()
    assert summary_of(screened(settings, table, 1))["errors"] == []
    for row, case in zip(found, cases_of(table), strict=True):
        alone = run(case, year)
        extract, today = alone.against_baseline["recovery"], alone.against_today["recovery"]
        for name, expected in (
            ("heat_saved", extract.heat_saved),
            ("extra_electricity", extract.extra_electricity),
            ("frost", alone.estimate.options["recovery"].frost_electricity),
            ("bill_saving", extract.bill_saving),
            ("net_saving", extract.net_saving),
            ("carbon_saving", extract.carbon_saving),
            ("net_capital", extract.net_capital),
            ("payback", extract.simple_payback),
            ("net_saving_today", today.net_saving),
        ):
            given = np.inf if row[HEADS[name]] is None else row[HEADS[name]]
            assert given == pytest.approx(expected, rel=1e-9), (row["id"], name)


def test_sealed_homes_and_routes_are_those_of_the_four_routes_of_a_home() -> None:
    from estimator.at_leakage import ground
    from estimator.routes import routes

    table, year = invented(24, start=4), load_year("Greensboro")
    settings = settings_for(table.column_names, Case(), year, recovery="recovery", full_year=True)
    for row, case in zip(screened(settings, table, 1).to_pylist(), cases_of(table), strict=True):
        alone = routes(ground(case, year), option="recovery", start="extract")
        assert row["best route"] == alone.best.label
        assert row[HEADS["q50"]] == pytest.approx(alone.q50, rel=1e-9)
        assert row[HEADS["sealing_cost"]] == pytest.approx(alone.routes[ROUTES[1]].cost.middle, rel=1e-9, abs=1e-9)
        sealed = alone.routes[ROUTES[3]].net_saving - alone.routes[ROUTES[1]].net_saving
        assert row[HEADS["net_saving_sealed"]] == pytest.approx(sealed, rel=1e-9, abs=1e-7)


@pytest.mark.parametrize("climate", WINTERS)
def test_the_shortened_year_keeps_its_bounds_over_500_random_homes(drawn: Sample, climate: str) -> None:
    """Heat saved: 99 % of homes within 1.2 %; the worst within 2 %, or 20 kWh."""
    year = load_year(climate)
    options = {"extract": drawn.extract, "recovery": drawn.recovery}
    areas = {name: [drawn.home.leakage_area] for name in options}
    blocks = shortened(year, hours_per_block=HOURS_PER_BLOCK)
    short = yearly(drawn.home, options, blocks, areas=areas, today="", single=True)
    shared = home_year(drawn.home, year)
    full = {
        name: to_kwh(heat_demand(drawn.home, option, shared, step=1.0, top_up=True))[:, 0]
        for name, option in options.items()
    }
    saved, exact = to_kwh(short["extract"].heat - short["recovery"].heat)[:, 0], full["extract"] - full["recovery"]
    away = np.abs(saved - exact)
    share = away / np.abs(exact)
    assert np.quantile(share, 0.99) < 0.012
    assert np.all((share < 0.02) | (away < 20.0))


@pytest.mark.parametrize("single", [False, True])
def test_the_lean_year_is_the_corridor_in_any_pieces(drawn: Sample, single: bool) -> None:
    year = shortened(load_year("Sand Point"), hours_per_block=24)
    options = {"extract": drawn.extract, "recovery": drawn.recovery}
    areas = [drawn.home.leakage_area, drawn.home.leakage_area * 0.5]
    found = yearly(drawn.home, options, year, areas=dict.fromkeys(options, areas), today="", single=single)
    shared = home_year(drawn.home, year)
    for name, option in options.items():
        alone = to_kwh(heat_demand(drawn.home, option, shared, step=year.weight, top_up=True))[:, 0]
        np.testing.assert_allclose(to_kwh(found[name].heat[:, 0]), alone, rtol=3e-5 if single else 1e-12)
        assert np.all(found[name].heat[:, 1] < found[name].heat[:, 0])


def test_memory_of_a_single_home_and_of_a_column_are_one() -> None:
    load = np.random.default_rng(5).normal(0.0, 3000.0, (9, 2190))
    memory = np.linspace(3.0, 120.0, 9)[:, None]
    column = remembered(load, memory=memory, step=4.0)
    for place in range(9):
        alone = remembered(load[place], memory=float(memory[place, 0]), step=4.0)
        np.testing.assert_allclose(column[place], alone, atol=1e-9)


def test_money_by_the_hour_is_that_of_the_single_home() -> None:
    """Prices by the clock and cells on the roof for the whole table: the same bills as home by home."""
    tree = case_to_dict(Case())
    tree["prices"]["tariff"] |= {"kind": "time of use", "windows": "9 at 0:30-5:30"}
    tree["roof"]["size"] = 3.0
    table, year = invented(8, start=3), load_year("Sand Point")
    gas = table.append_column("prices.electricity [p/kWh]", [[28.0] * table.num_rows])
    settings = settings_for(gas.column_names, case_from_dict(tree), year, recovery="recovery", full_year=True)
    for row, home in zip(screened(settings, gas, 1).to_pylist(), cases_of(gas), strict=True):
        case = dataclasses.replace(
            home,
            roof=settings.case.roof,
            prices=dataclasses.replace(home.prices, tariff=settings.case.prices.tariff),
        )
        alone = run(case, year).against_baseline["recovery"]
        assert row[HEADS["net_saving"]] == pytest.approx(alone.net_saving, rel=1e-9)
        assert row[HEADS["carbon_saving"]] == pytest.approx(alone.carbon_saving, rel=1e-9)
