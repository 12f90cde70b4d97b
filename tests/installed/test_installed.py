"""Is what the installer is told the site's half of the same estimate?

Facts of the trade are marked; peaks and velocities are worked by hand from the air's own quantities; the rest is laws.
"""

from __future__ import annotations

import dataclasses
from functools import cache
from typing import Any

import numpy as np
import pytest

from estimator import Case, Estimate, estimate
from estimator.inputs.option import Option
from estimator.inputs.places import with_values
from estimator.installed import Installed, duct_velocity, installed
from tests.laws.settings import year_of

PLAIN: dict[str, Any] = {
    "flows__imbalance": 0.0,
    "flows__boost_share": 0.0,
    "ducts__intake": 0.0,
    "ducts__exhaust": 0.0,
}


def done_with(climate: str = "Cold plain", **changes: Any) -> Estimate:
    values = {f"options.recovery.{name.replace('__', '.')}": value for name, value in changes.items()}
    return estimate(with_values(Case(), values), year_of(climate))


def sheet(climate: str = "Cold plain", **changes: Any) -> Installed:
    found = installed(done_with(climate, **changes), "recovery")
    assert found is not None
    return found


@cache
def default_sheet(climate: str) -> Installed:
    return sheet(climate)


def test_a_preheater_is_hardly_needed_on_the_coast_and_wanted_on_the_plain() -> None:
    """Common practice, no source."""
    coast, plain = default_sheet("Mild coast").frost, default_sheet("Cold plain").frost
    assert coast.hours < 10.0
    assert not coast.needed
    assert coast.chosen.electricity == pytest.approx(0.0, abs=1.0)
    assert plain.hours > 1000.0
    assert plain.needed
    assert plain.chosen.electricity > 200.0


def test_without_an_intake_duct_frost_hours_are_those_of_the_weather() -> None:
    year = year_of("Cold plain")
    frost = sheet(**PLAIN).frost
    assert frost.hours == np.count_nonzero(year.temp_air < -3.0)
    assert frost.entering == pytest.approx(float(np.min(year.temp_air)))


def test_the_preheater_of_the_coldest_hour() -> None:
    """100 m³/h lifted from -26 to -3 °C: 100/3600 × 1.204 × 1006 × 23 = 773.8 W, at the pressure of sea level."""
    frost = sheet(**PLAIN, flows__supply=100.0, flows__extract=100.0).frost
    assert frost.entering == pytest.approx(-26.0, abs=0.05)
    pressure = float(np.mean(year_of("Cold plain").pressure))
    assert frost.chosen.coldest == pytest.approx(0.7738 * pressure / 101_325.0, rel=2e-3)
    assert sheet(**PLAIN, unit__frost="none").frost.chosen.electricity == 0.0


def test_electricity_of_the_preheater_is_that_of_the_estimate() -> None:
    done = done_with()
    found = installed(done, "recovery")
    assert found is not None
    assert found.frost.chosen.electricity == pytest.approx(done.options["recovery"].frost_electricity, rel=1e-12)


def test_bare_unit_supplies_its_share_of_the_difference() -> None:
    """Common practice, no source: 95 % between 20 and 0 °C gives 19 °C; here between indoors and the coldest hour."""
    home = done_with()
    air = sheet(**PLAIN, unit__effectiveness=95.0, unit__frost="none").supply_air
    indoors = float(np.squeeze(home.home.temp_in))
    assert air.supply_hour == pytest.approx(air.outdoors_hour + 0.95 * (indoors - air.outdoors_hour), rel=1e-9)
    assert air.supply_day == pytest.approx(air.outdoors_day + 0.95 * (indoors - air.outdoors_day), rel=1e-9)
    assert air.outdoors_hour < air.outdoors_day


def test_main_ducts_of_180_mm_carry_a_large_home_at_a_sensible_velocity() -> None:
    """Common practice, no source. Circle of 180 mm: 254.47 cm²; 250 m³/h through it is 2.729 m/s."""
    assert duct_velocity(250.0 / 3600.0, bore=0.18) == pytest.approx(2.729, rel=1e-3)
    found = sheet(ducts__bore=180.0, flows__supply=250.0, flows__extract=250.0, flows__boost_flow=350.0)
    assert found.velocity == pytest.approx(2.729, rel=1e-3)
    assert 1.0 < found.velocity < found.velocity_boost < 5.0


def test_fans_and_preheater_stay_below_13_amperes_or_are_flagged() -> None:
    """Common practice, no source: 13 A at 230 V is 2990 W."""
    usual = default_sheet("Cold plain")
    assert usual.spur_suffices
    assert usual.electrical_peak < 2990.0
    assert usual.current_peak == pytest.approx(usual.electrical_peak / 230.0)
    big = sheet(flows__supply=500.0, flows__extract=500.0, flows__boost_flow=700.0, unit__frost_set_point=2.0)
    assert big.electrical_peak > 2990.0
    assert not big.spur_suffices


def test_what_ducts_are_worth_is_the_difference_of_two_full_estimates() -> None:
    now = done_with("Inland vale").options["recovery"]
    worth = {item.name: item for item in default_sheet("Inland vale").worth}
    pairs: tuple[tuple[str, dict[str, Any], dict[str, Any]], ...] = (
        ("insulation", {"ducts__insulation": 0.0}, {}),
        ("more insulation", {}, {"ducts__insulation": 50.0}),
        ("another metre", {}, {"ducts__intake": 3.0, "ducts__exhaust": 3.0}),
    )
    for name, earlier, later in pairs:
        before = done_with("Inland vale", **earlier).options["recovery"] if earlier else now
        after = done_with("Inland vale", **later).options["recovery"] if later else now
        assert worth[name].heat == pytest.approx(before.heating_demand - after.heating_demand, rel=1e-9)
        assert worth[name].money == pytest.approx(before.household_bill - after.household_bill, rel=1e-9)
    assert worth["insulation"].heat > worth["more insulation"].heat > 0.0 > worth["another metre"].heat


@pytest.mark.parametrize("standing", ["inside", "outside"])
def test_points_lost_run_from_the_certificate_to_the_estimate(standing: str) -> None:
    changes: dict[str, Any] = {
        "ducts__standing": standing,
        "ducts__supply": 4.0,
        "ducts__extract": 4.0,
        "unit__internal_leakage": 3.0,
    }
    done = done_with(**changes)
    found = installed(done, "recovery")
    assert found is not None
    steps = found.steps
    assert steps[0].efficiency == pytest.approx(0.82)
    assert steps[-1].efficiency == pytest.approx(done.options["recovery"].heat.effective_efficiency.item(), rel=1e-12)
    assert steps[-1].heating == pytest.approx(done.options["recovery"].heating_demand, rel=1e-12)
    assert sum(step.lost for step in steps) == pytest.approx(0.82 - steps[-1].efficiency, rel=1e-9)
    lost = {step.name: step.lost for step in steps}
    assert lost["unit"] > 0.0
    assert lost["ducts"] > 0.0
    assert lost["frost"] > 0.0


def test_more_moisture_drips_more_and_never_more_than_was_given_off() -> None:
    """Law: exhaust air is warmer than outdoors, so it still holds what came in; the drain gets part of the rest."""
    done = done_with("Cold plain", unit__frost="none")
    tight = estimate(with_values(done.case, {"leakage.measure": "n50", "leakage.value": 1.0}), done.year)
    drains = []
    for moisture in (2.0, 8.0, 15.0):
        found = installed(estimate(with_values(tight.case, {"home.moisture": moisture}), tight.year), "recovery")
        assert found is not None
        drains.append(found.drain)
        assert found.drain.yearly <= moisture * 365.0
        assert found.drain.peak <= found.drain.bound
        assert found.drain.yearly <= found.drain.peak * 8760.0
    assert 0.0 < drains[0].yearly < drains[1].yearly < drains[2].yearly


def test_no_heat_and_colder_outdoors_are_the_hours_of_the_bypass() -> None:
    done = done_with("Greensboro")
    found = installed(done, "recovery")
    assert found is not None
    heat, outdoors = np.squeeze(done.options["recovery"].heat.heat), done.year.temp_air
    assert found.bypass_hours == np.count_nonzero((heat <= 0.0) & (outdoors < float(np.squeeze(done.home.temp_in))))
    assert found.bypass_hours > 0.0


def test_a_bedroom_gets_outdoor_air_through_the_wall_and_warm_air_through_the_unit() -> None:
    """From the weather itself: the coldest of all eight hours from ten in the evening, the year closed on itself."""
    year = year_of("Cold plain")
    twice = np.concatenate([year.temp_air, year.temp_air])
    coldest = min(float(np.mean(twice[day * 24 + 22 : day * 24 + 30])) for day in range(365))
    air = sheet(**PLAIN, unit__frost="none").supply_air
    assert air.outdoors_night == pytest.approx(coldest, abs=1e-9)
    indoors = float(np.squeeze(done_with().home.temp_in))
    assert air.supply_night == pytest.approx(coldest + 0.82 * (indoors - coldest), rel=1e-9)


def test_a_home_with_more_moisture_is_damper_and_never_above_saturation() -> None:
    done = done_with("Mild coast")
    shares = []
    for moisture in (2.0, 8.0, 60.0):
        found = installed(estimate(with_values(done.case, {"home.moisture": moisture}), done.year), "recovery")
        assert found is not None
        shares.append(found.humidity)
        assert 0.0 < found.humidity <= 1.0
    assert shares[0] < shares[1] < shares[2]


def test_what_is_in_hand_is_the_largest_flow_beyond_boost() -> None:
    """By hand: 200 of 260 m³/h."""
    flows: dict[str, Any] = {"flows__supply": 120.0, "flows__extract": 120.0, "flows__boost_flow": 200.0}
    assert sheet(**flows, unit__largest_flow=260.0).in_hand * 3600.0 == pytest.approx(60.0)


@pytest.mark.parametrize("kind", ["continuous extract", "loft supply", "natural ventilation"])
def test_there_is_no_sheet_without_an_exchanger(kind: str) -> None:
    case = dataclasses.replace(Case(), options={"one": Option(kind=kind)}, baseline="one", today="one")
    assert installed(estimate(case, year_of("Greensboro")), "one") is None
