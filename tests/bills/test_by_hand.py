"""Do bills by the hour agree with a count in plain Python over all 8,760 hours?"""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from estimator import Case, ClimateYear, Estimate, estimate, load_year
from estimator.at_leakage import ground, option_at
from estimator.bills import by_row
from estimator.draws import ground as drawn_ground
from estimator.draws import outcomes
from estimator.inputs import check
from estimator.inputs.places import with_values
from estimator.leak_range import house_q50
from estimator.monthly import months
from tests.bills.by_hand import Counted, counted

HOURS = "9 at 0:30-5:30; 38 at 16:00-19:00 Mon-Fri; 15 at 22:00-2:00 Sat,Sun"
TIME_OF_USE = {"prices.tariff.kind": "time of use", "prices.tariff.windows": HOURS}
BLOCK = {"prices.tariff.kind": "block", "prices.tariff.blocks": "31 beyond 150; 45 beyond 330"}
PUMP = {"heating.fuel": "heat pump", "heating.pump.mode": "hourly"}
STOVE = {"heating.second.fuel": "wood pellets", "heating.second.share": 20.0}
CASES: dict[str, dict[str, Any]] = {
    "time of use, direct electric": {**TIME_OF_USE, "heating.fuel": "direct electric"},
    "time of use, gas, roof": {**TIME_OF_USE, "roof.size": 3.5, "roof.azimuth": 230.0},
    "block by the quarter, gas and stove": {**BLOCK, **STOVE, "prices.tariff.billing": "quarter"},
    "block by the month, heat pump, roof": {**BLOCK, "heating.fuel": "heat pump", "roof.size": 5.0},
    "flat, heat pump by the hour, small": {**PUMP, "heating.pump.capacity": 3.0},
    "ground, stove, roof": {**PUMP, **STOVE, "heating.pump.source": "ground", "roof.size": 4.0, "prices.export": 15.0},
    "all at once": {**TIME_OF_USE, **PUMP, "heating.pump.capacity": 4.0, "roof.size": 4.0,
                    "prices.tariff.household": "out in the daytime", "options.recovery.unit.frost_set_point": 2.0},
}  # fmt: skip


@pytest.fixture(scope="module")
def year() -> ClimateYear:
    """A year of hours whose clocks are those of London."""
    return load_year("Inland vale")


@pytest.fixture(scope="module", params=list(CASES))
def pair(request: pytest.FixtureRequest, year: ClimateYear) -> tuple[Estimate, dict[str, Counted]]:
    """A case estimated, and its options counted by hand."""
    case = with_values(Case(), CASES[request.param])
    assert check.faults(case) == []
    done = estimate(case, year)
    return done, {name: counted(done.case, done.options[name], year) for name in ("extract", "recovery")}


def test_the_household_bill_and_carbon(pair: tuple[Estimate, dict[str, Counted]]) -> None:
    done, by_hand = pair
    for name, found in by_hand.items():
        option = done.options[name]
        assert option.household_bill == pytest.approx(found.household, abs=1e-6)
        assert option.household_carbon == pytest.approx(found.carbon, abs=1e-3)  # to the gram
        assert option.heat_bill + option.ventilation_bill < option.household_bill


def test_energy_bought_by_source_and_hour(pair: tuple[Estimate, dict[str, Counted]]) -> None:
    done, by_hand = pair
    for name, found in by_hand.items():
        option, bills = done.options[name], done.options[name].bills
        assert float(bills.first_energy[0]) == pytest.approx(sum(found.pump), rel=1e-9)
        assert float(bills.second_energy[0]) == pytest.approx(found.second, rel=1e-9)
        rows = by_row(
            done.supply, heat=option.heat.heat, fans=np.squeeze(option.air.fans), preheater=option.air.preheater
        )
        np.testing.assert_allclose(rows.loads.first, found.pump, rtol=1e-9)
        assert rows.bought.sum() == pytest.approx(found.bought, rel=1e-9)


def test_what_the_roof_carries(pair: tuple[Estimate, dict[str, Counted]]) -> None:
    done, by_hand = pair
    for name, found in by_hand.items():
        roof = done.options[name].bills.roof
        if done.case.roof.size == 0.0:
            assert roof is None
            continue
        assert roof is not None
        assert float(roof.generated) == pytest.approx(found.generated)
        assert float(roof.bought) == pytest.approx(found.bought)
        assert float(roof.sold) == pytest.approx(found.sold)
        assert float(roof.ventilation.not_sold) == pytest.approx(found.fans_not_sold)
        assert float(roof.heating.not_sold) == pytest.approx(found.heat_not_sold)
        # Bought on top and not sold together are all that ventilation takes.
        whole = roof.ventilation.bought + roof.ventilation.not_sold
        assert float(whole) == pytest.approx(done.options[name].electricity)


def test_months_add_up_to_the_year(pair: tuple[Estimate, dict[str, Counted]]) -> None:
    done, by_hand = pair
    for name, found in by_hand.items():
        np.testing.assert_allclose(months(done, done.options[name]).bill, found.months, rtol=1e-9)


def test_sweep_and_draws_go_the_same_way(pair: tuple[Estimate, dict[str, Counted]]) -> None:
    """The saving of the bill, from two other doors, equals that of the two meters counted by hand."""
    done, by_hand = pair
    saved = by_hand["extract"].household - by_hand["recovery"].household
    place = ground(done.case, done.year)
    swept = [option_at(place, name, np.array([house_q50(done.case)])).bill[0] for name in ("extract", "recovery")]
    assert swept[0] - swept[1] == pytest.approx(saved, rel=1e-6)
    drawn = drawn_ground(done.case, done.year)
    found = outcomes(drawn, np.zeros((2, len(drawn.inputs))), full_year=True)
    assert found["extract"].bill[1] - found["recovery"].bill[1] == pytest.approx(saved, rel=1e-6)
