"""Do the running states of a unit move the air and take the power that was set?

Reference for demand control: control factors of Commission Delegated Regulation (EU) 1254/2014, from memory. The rest
is laws.
"""

from __future__ import annotations

import dataclasses
from typing import Any

import numpy as np
import pytest

from estimator import Case, case_from_dict, estimate
from estimator.corridor import air_year, heat_year, home_year
from estimator.errors import InputFaults
from estimator.inputs.option import Flows, Option
from estimator.inputs.places import with_values
from estimator.survey.fill import filled
from estimator.survey.numbers import OptionNumbers, demand_factor, option_numbers
from tests.laws.settings import default_home, demand, year_of

PLAIN = {"flows.imbalance": 0.0, "flows.boost_share": 0.0, "ducts.intake": 0.0, "ducts.exhaust": 0.0}


def with_unit(**changes: Any) -> OptionNumbers:
    """Balanced heat recovery without ducts and boost, with entries changed: flows__away_share and so on."""
    values = {**PLAIN, **{name.replace("__", "."): value for name, value in changes.items()}}
    case = Case()
    option = with_values(case.options["recovery"], values)
    return option_numbers(
        filled(dataclasses.replace(case, options={**case.options, "recovery": option})).case.options["recovery"]
    )


def fans(option: OptionNumbers) -> float:
    home, year = default_home(), year_of("Greensboro")
    return float(air_year(home, option, home_year(home, year), top_up=False).fans)


def mean_through(option: OptionNumbers) -> float:
    home, year = default_home(), year_of("Greensboro")
    return float(np.mean(air_year(home, option, home_year(home, year), top_up=False).balanced))


@pytest.mark.parametrize(
    ("control", "factor"), [("none", 1.0), ("clock", 0.95), ("central demand", 0.85), ("local demand", 0.65)]
)
def test_control_lowers_the_mean_flow_by_its_declared_factor(control: str, factor: float) -> None:
    """Commission Delegated Regulation (EU) 1254/2014; from memory."""
    plain, controlled = with_unit(unit__standby=0.0), with_unit(unit__standby=0.0, flows__control=control)
    assert mean_through(controlled) == pytest.approx(factor * mean_through(plain), rel=1e-12)
    assert fans(controlled) == pytest.approx(factor * fans(plain), rel=1e-12)
    steep = with_unit(unit__standby=0.0, flows__control=control, flows__demand_exponent=2.0)
    assert fans(steep) == pytest.approx(factor**2 * fans(plain), rel=1e-12)


def test_a_factor_by_hand_is_taken_only_with_control_by_hand() -> None:
    plain = mean_through(with_unit())
    assert mean_through(with_unit(flows__control="by hand", flows__demand_factor=70.0)) == pytest.approx(0.7 * plain)
    assert mean_through(with_unit(flows__control="none", flows__demand_factor=70.0)) == pytest.approx(plain)


def test_a_night_at_half_speed_takes_its_own_power() -> None:
    """8 h a day at half flow, exponent 1.5: (16 + 8 × 0.5^2.5) of 24 h at full power; the air is 20/24 of it."""
    plain = with_unit(unit__standby=0.0)
    night = with_unit(unit__standby=0.0, flows__setback_share=100.0 / 3.0, flows__setback_flow=50.0)
    assert fans(night) / fans(plain) == pytest.approx((16.0 + 8.0 * 0.1767766952966369) / 24.0, rel=1e-12)
    assert mean_through(night) / mean_through(plain) == pytest.approx(20.0 / 24.0, rel=1e-12)


def test_less_air_is_needed_when_nobody_is_in_but_not_at_night() -> None:
    case = Case()
    windows = {}
    for name in ("setback", "away"):
        recovery = with_values(case.options["recovery"], {f"flows.{name}_share": 50.0, f"flows.{name}_flow": 50.0})
        tight = with_values(case, {"leakage.measure": "n50", "leakage.value": 0.3})
        tight = dataclasses.replace(tight, options={**case.options, "recovery": recovery})
        windows[name] = float(np.mean(estimate(tight, year_of("Greensboro")).options["recovery"].air.windows))
    assert windows["setback"] > 10.0 * windows["away"]


@pytest.mark.parametrize("given", [(60.0, 60.0, 60.0), (0.0, 30.0, 90.0), (100.0, 100.0, 0.0)])
def test_shares_of_the_year_sum_to_one_whatever_is_asked(given: tuple[float, float, float]) -> None:
    boost, away, setback = given
    option = with_unit(flows__boost_share=boost, flows__away_share=away, flows__setback_share=setback)
    shares = [float(state.share) for state in option.states]
    assert sum(shares) == pytest.approx(1.0, rel=1e-12)
    assert min(shares) > 0.0


def test_a_programme_of_more_hours_than_the_fans_run_is_refused() -> None:
    flows = {"boost_share": 10.0, "setback_share": 50.0, "away_share": 45.0}
    options = {"recovery": {"kind": "heat recovery", "flows": flows}}
    with pytest.raises(InputFaults, match=r"options.recovery.flows.away_share: .*105.* more than the 100"):
        case_from_dict({"version": 1, "baseline": "recovery", "today": "recovery", "options": options})
    flows["away_share"] = 40.0
    case_from_dict({"version": 1, "baseline": "recovery", "today": "recovery", "options": options})


def test_filters_raise_the_power_by_their_mean_share_of_the_pressure() -> None:
    """A filter that ends 60 Pa above clean against 150 Pa: 30 Pa on average, a fifth more power at the same flow."""
    clean = with_unit(unit__standby=0.0, unit__fan_pressure=150.0)
    loaded = with_unit(unit__standby=0.0, unit__fan_pressure=150.0, unit__filter_pressure_rise=60.0)
    assert fans(loaded) == pytest.approx(1.2 * fans(clean), rel=1e-12)


def test_leakage_inside_the_unit_brings_less_air_not_less_loss() -> None:
    """The ratio measured has the leak in it: c q (1 − ratio) is lost either way, but less of it is fresh air."""
    sound, leaky = with_unit(), with_unit(unit__internal_leakage=5.0)
    home, year = default_home(), year_of("Greensboro")
    shared = home_year(home, year)
    airs = [air_year(home, option, shared, top_up=False) for option in (sound, leaky)]
    losses = [
        shared.heat_capacity * air.balanced * shared.temp_difference - air.recovered + air.preheater for air in airs
    ]
    np.testing.assert_allclose(airs[1].balanced, 0.95 * airs[0].balanced, rtol=1e-12)
    mild = np.asarray(airs[0].preheater) == 0.0
    np.testing.assert_allclose(losses[1][mild], losses[0][mild], rtol=1e-9, atol=1e-9)
    assert fans(leaky) == pytest.approx(fans(sound), rel=1e-12)


def test_post_heater_spares_the_heating_as_much_as_it_takes_while_the_rooms_need_heat() -> None:
    home, year = default_home(), year_of("Sand Point")
    without, heated = with_unit(), with_unit(unit__post_heater="yes", unit__post_heat_to=19.0)
    shared = home_year(home, year)
    results = []
    for option in (without, heated):
        air = air_year(home, option, shared, top_up=True)
        results.append((air, heat_year(home, option, shared, air, step=year.weight)))
    (air, heat), (warm_air, warm_heat) = results
    taken = warm_air.preheater - air.preheater
    np.testing.assert_allclose(warm_air.recovered - air.recovered, taken, rtol=0.0, atol=1e-9)
    assert np.all(taken >= 0.0)
    assert np.sum(taken) > 0.0
    assert np.sum(heat.heat) - np.sum(warm_heat.heat) <= np.sum(taken) * (1.0 + 1e-9)
    assert demand(home, heated, year) < demand(home, without, year)


def test_heaters_are_off_above_their_set_points() -> None:
    home, year = default_home(), year_of("Sand Point")
    shared = home_year(home, year)
    entry = np.asarray(home.temp_in) - shared.temp_difference
    frost = air_year(home, with_unit(), shared, top_up=True).preheater
    assert np.all(frost[..., entry >= -3.0] == 0.0)
    assert np.all(frost[..., entry < -3.0] > 0.0)
    off = with_unit(unit__post_heater="yes", unit__post_heat_to=5.0)
    np.testing.assert_array_equal(air_year(home, off, shared, top_up=True).preheater, frost)


def test_a_column_of_homes_may_each_have_a_control_of_their_own() -> None:
    words = np.array([["none"], ["local demand"], ["by hand"]], dtype=object)
    flows = Flows(control=words, demand_factor=np.array([[90.0], [80.0], [70.0]]))  # type: ignore[arg-type]
    found = demand_factor(Option(kind="heat recovery", flows=flows))
    np.testing.assert_allclose(found, [[1.0], [0.65], [0.7]], rtol=1e-12)
