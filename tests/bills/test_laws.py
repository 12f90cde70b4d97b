"""Do bills by the hour behave as bills must, whatever the home?"""

from __future__ import annotations

import dataclasses
from typing import Any

import numpy as np
import pytest

from estimator import Case, run
from estimator.climate.year import ClimateYear
from estimator.draws import Ground, ground, outcomes
from estimator.inputs.places import with_values
from estimator.sample import sample
from estimator.sure import sure, sure_of
from estimator.tries import places
from tests.bills.test_by_hand import BLOCK, CASES, PUMP, TIME_OF_USE
from tests.laws.settings import year_of

DRAWN: dict[str, dict[str, Any]] = {
    "time of use": {**TIME_OF_USE, "heating.fuel": "direct electric"},
    "roof and heat pump": {**PUMP, "roof.size": 4.0},
    "block": {**BLOCK, "heating.fuel": "heat pump"},
}


@pytest.fixture(scope="module")
def year() -> ClimateYear:
    """A year with a winter and a sun."""
    return year_of("Inland vale")


@pytest.mark.parametrize("fuel", ["natural gas", "heat pump"])
@pytest.mark.parametrize("kind", ["time of use", "block"])
def test_one_price_everywhere_is_flat(kind: str, fuel: str, year: ClimateYear) -> None:
    lines = {"time of use": ("windows", "26.11 at 6:00-22:00"), "block": ("blocks", "26.11 beyond 100")}
    name, line = lines[kind]
    flat = with_values(Case(), {"heating.fuel": fuel, "prices.electricity": 26.11})
    other = with_values(flat, {"prices.tariff.kind": kind, f"prices.tariff.{name}": line})
    ours, theirs = run(other, year).against_baseline["recovery"], run(flat, year).against_baseline["recovery"]
    for figure in ("net_saving", "carbon_saving", "heat_bill_saving", "extra_ventilation_bill", "simple_payback"):
        assert getattr(ours, figure) == pytest.approx(getattr(theirs, figure), rel=1e-9)


@pytest.mark.parametrize("name", list(CASES))
def test_parts_make_the_saving_and_level_doubles_it(name: str, year: ClimateYear) -> None:
    case = with_values(Case(), {**CASES[name], "prices.electricity_standing": 0.0, "prices.export": 0.0})
    twice = with_values(case, {"prices.tariff.level": 200.0})
    once, double = (run(each, year).estimate.options for each in (case, twice))
    for option in once:
        assert double[option].bills.electricity_bill == pytest.approx(2.0 * once[option].bills.electricity_bill)
    found = run(case, year).against_baseline["recovery"]
    assert found.heat_bill_saving - found.extra_ventilation_bill == pytest.approx(found.bill_saving)
    assert found.plan.flows[1] == pytest.approx(found.net_saving)
    assert found.plan.flows[0] == pytest.approx(-found.net_capital)


def test_more_cells_carry_more_and_never_more_than_all(year: ClimateYear) -> None:
    shares, sold = [], []
    for size in (1.0, 3.0, 9.0, 30.0):
        case = with_values(Case(), {**PUMP, "roof.size": size})
        roof = run(case, year).estimate.options["recovery"].bills.roof
        assert roof is not None
        shares.append(float(roof.ventilation.share))
        sold.append(float(roof.sold))
        assert float(roof.bought - roof.sold + roof.generated) > 0.0
    assert shares[0] > 0.0
    assert np.all(np.diff(shares) > 0.0)
    assert np.all(np.diff(sold) > 0.0)
    assert shares[-1] < 1.0  # nobody is carried by the sun at night


def test_sun_that_would_be_sold_is_worth_its_export_price(year: ClimateYear) -> None:
    """At an export price equal to the price bought, cells change no saving; below it, fans cost less with them."""
    saved = {}
    for export in (26.11, 5.0):
        for size in (0.0, 6.0):
            case = with_values(Case(), {"roof.size": size, "prices.export": export, "prices.electricity": 26.11})
            saved[export, size] = run(case, year).against_baseline["recovery"].extra_ventilation_bill
    assert saved[26.11, 6.0] == pytest.approx(saved[26.11, 0.0])
    assert saved[5.0, 6.0] < saved[5.0, 0.0]


@pytest.fixture(scope="module", params=list(DRAWN))
def place(request: pytest.FixtureRequest, year: ClimateYear) -> Ground:
    """A home whose bill goes by the hour, ready to be drawn."""
    return ground(with_values(Case(), DRAWN[request.param]), year)


def test_wider_ranges_never_narrow_the_answer(place: Ground) -> None:
    widths = []
    for widening in (0.5, 1.0, 1.5):
        drawn = sample(place, names=("recovery", "extract"), count=256, widening=widening)
        found = sure_of(drawn, option="recovery", baseline="extract")
        spreads = (found.net_saving, found.carbon_saving, found.net_present_value)
        widths.append([spread.high - spread.low for spread in spreads])
    assert np.all(np.diff(widths, axis=0) > 0.0)


def test_blocks_err_little_and_the_same_start_draws_the_same(place: Ground) -> None:
    where = places(len(place.inputs), count=16, start=3)
    short, again = outcomes(place, where), outcomes(place, where)
    full = outcomes(place, where, full_year=True)

    def saved(found: Any) -> Any:
        return found["extract"].bill - found["recovery"].bill

    np.testing.assert_array_equal(saved(short), saved(again))
    # Measured at £2.9 of up to £500 at the worst, over eight kinds of case, two years, and 40 draws of each.
    error = np.abs(saved(short) - saved(full))
    assert 0.0 < error.max() < 3.5
    blurred = outcomes(dataclasses.replace(place, bill_of_hours={}), where)
    assert np.median(error) < np.median(np.abs(saved(blurred) - saved(full)))
    # At the best guess itself nothing is left of it.
    best = np.zeros((1, len(place.inputs)))
    np.testing.assert_allclose(
        saved(outcomes(place, best)), saved(outcomes(place, best, full_year=True)), rtol=1e-9, atol=1e-9
    )


def test_worth_has_its_range_too(place: Ground) -> None:
    found = sure(place.case, place.year, option="recovery", baseline="extract", count=64)
    assert found.net_present_value.low < found.net_present_value.middle < found.net_present_value.high
    assert found.discounted_payback.low <= found.discounted_payback.high
