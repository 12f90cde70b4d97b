"""Do the thinner mechanisms of the unit agree with libraries, a real weather file, and worked or published figures?

References: CoolProp (enthalpy of humid air, here dry), `fluids` (work of a fan as adiabatic compression), pandas and
pvlib (a typical year of Sand Point as published, hour by hour), EN 12831 and a worked example of a filter's power.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pandas as pd
import pvlib
import pytest
from CoolProp.HumidAirProp import HAPropsSI
from fluids import isentropic_work_compression

from estimator import Case, estimate, run
from estimator.air.recovery import DuctShares, inside_envelope, prewarmed
from estimator.as_commissioned import as_commissioned
from estimator.inputs.catalogue import option_row
from estimator.inputs.option import Unit
from estimator.inputs.places import with_values
from estimator.installed import installed
from estimator.survey.certificate import read_certificate
from tests.laws.settings import year_of

SEA_LEVEL = 101_325.0  # Pa
GAS = 8.314462618  # J/(mol K), CODATA 2018
HORSEPOWER, CUBIC_FOOT, INCH_OF_WATER = 745.7, 0.028316846592, 249.089  # W, m³, Pa


@cache
def sand_point() -> pd.DataFrame:
    """The typical year of Sand Point as published, by pvlib."""
    file = Path(pvlib.__file__).parent / "data" / "703165TY.csv"
    table: pd.DataFrame = pvlib.iotools.read_tmy3(file, map_variables=True)[0]
    return table


def dry_heat(temp: Any) -> Any:
    """Enthalpy of dry air [J/kg] at temperatures [°C]."""
    return np.vectorize(lambda at: HAPropsSI("H", "T", at + 273.15, "W", 0.0, "P", SEA_LEVEL))(temp)


def temp_of(heat: Any) -> Any:
    """Temperature [°C] of dry air that holds this heat [J/kg]."""
    return np.vectorize(lambda held: HAPropsSI("T", "H", held, "W", 0.0, "P", SEA_LEVEL) - 273.15)(heat)


@pytest.mark.parametrize(("extract", "effectiveness"), [(0.040, 0.82), (0.044, 0.90), (0.040, 0.60)])
def test_throttled_exhaust_leaves_at_its_set_point_by_the_enthalpy_of_coolprop(
    extract: float, effectiveness: float
) -> None:
    """Extract air at 20 °C gives up what the exchanger passes: it leaves at 1 °C or above, at 1 °C where throttled."""
    outdoors = np.array([-25.0, -15.0, -8.0, -2.0, 3.0, 10.0])
    supply, heat = 0.040, 1.2041 * 1006.0  # m³/s, J/(m³ K) of air at 20 °C
    settings: dict[str, Any] = {
        "temp_in": 20.0, "effectiveness": effectiveness, "ducts": DuctShares(1.0, 1.0, 1.0, 1.0),
        "capacity_supply": heat * supply, "capacity_balanced": heat * supply, "flow_ratio": extract / supply,
    }  # fmt: skip
    free, kept = (inside_envelope(20.0 - outdoors, throttle_at=at, **settings) for at in (None, 1.0))
    mass = 1.2041 * extract
    leaving, frozen = (temp_of(dry_heat(20.0) - back.exchanged / mass) for back in (kept, free))
    np.testing.assert_allclose(leaving, np.maximum(frozen, 1.0), atol=0.05)
    assert np.array_equal(kept.exchanged < free.exchanged, frozen < 1.0 - 0.05)
    assert np.any(frozen < 1.0)


def test_bypass_hours_are_counted_as_pandas_counts_them_in_the_weather_file() -> None:
    """With a fixed base, heat flows below 15.5 °C: the bypass helps from there to the indoor temperature."""
    case = with_values(Case(), {"heating.mode": "fixed base", "heating.base_temperature": 15.5})
    done = estimate(case, year_of("Sand Point"))
    found = installed(done, "recovery")
    assert found is not None
    air = sand_point()["temp_air"]
    hours = int(air.between(15.5, float(np.squeeze(done.home.temp_in)), inclusive="left").sum())
    assert hours > 0
    assert found.bypass_hours == hours


def certificate_of(**changes: float) -> Any:
    unit: dict[str, Any] = {"effectiveness": 85.0, "reference_flow": 200.0, "fan_power": 1.0, "fan_pressure": 150.0}
    rest = {"filter_pressure_rise": 0.0, "internal_leakage": 0.0, "in_use_factor": 1.0}
    return read_certificate(Unit(**{**unit, **rest, **changes})).reference


@pytest.mark.parametrize(("pressure", "rise", "efficiency"), [(150.0, 60.0, 0.5), (250.0, 150.0, 0.35)])
def test_power_with_loading_filters_is_the_work_of_the_library_over_their_life(
    pressure: float, rise: float, efficiency: float
) -> None:
    """A fan compresses each cubic metre against clean resistance plus a filter that loads evenly from nil to `rise`."""

    def work(against: float) -> float:
        each = isentropic_work_compression(293.15, 1.4, P1=SEA_LEVEL, P2=SEA_LEVEL + against, eta=efficiency)
        return float(each) * SEA_LEVEL / (GAS * 293.15)  # J/m³, which is W/(m³/s)

    clean = work(pressure)
    over_life = float(np.mean([work(pressure + rise * age) for age in np.linspace(0.0, 1.0, 101)]))
    found = certificate_of(fan_power=clean / 1000.0, fan_pressure=pressure, filter_pressure_rise=rise).power
    assert found == pytest.approx(over_life, rel=2e-3)


def test_a_filter_takes_the_power_of_the_worked_example() -> None:
    """2000 ft³/min through 0.2 in of water with a fan of 65 %: 0.097 hp; an answer in a public forum of engineers."""
    flow, drop = 2000.0 * CUBIC_FOOT / 60.0, 0.2 * INCH_OF_WATER
    clean = 100.0 / 0.65 / 1000.0  # W/(l/s) at 100 Pa
    loaded = certificate_of(fan_power=clean, fan_pressure=100.0, filter_pressure_rise=2.0 * drop)
    more = float(loaded.power - certificate_of(fan_power=clean, fan_pressure=100.0).power) * flow
    assert more / HORSEPOWER == pytest.approx(0.097, abs=5e-4)


@pytest.mark.parametrize("at", [-10.0, 2.0, 7.0])
@pytest.mark.parametrize(("alone", "leaked"), [(0.80, 0.05), (0.90, 0.03), (0.70, 0.10)])
def test_leakage_is_taken_out_of_the_ratio_as_coolprop_mixes_it_in(at: float, alone: float, leaked: float) -> None:
    """Transfer ratio (EN 13141-7:2021, 3.3): that share of the supply is air of the zone itself. Mixed by enthalpy."""
    exchanged = at + alone * (20.0 - at)
    supply = temp_of((1.0 - leaked) * dry_heat(exchanged) + leaked * dry_heat(20.0))
    measured = float((supply - at) / (20.0 - at))
    found = certificate_of(effectiveness=100.0 * measured, internal_leakage=100.0 * leaked)
    assert found.ratio == pytest.approx(alone, abs=1e-3)
    assert found.flow * 3600.0 == pytest.approx(200.0 * (1.0 - leaked))


@pytest.mark.parametrize("warmth", [0.0, 0.1, 0.3])
def test_air_of_the_loft_spares_the_enthalpy_between_outdoors_and_the_loft(warmth: float) -> None:
    """EN 12831 (from memory): a loft loses 1.0, 0.9 or 0.7 of the full difference, so it is that much warmer."""
    hours = sand_point()["temp_air"].to_numpy()[::97]
    back = prewarmed(20.0 - hours, temp_in=20.0, warmth=warmth, capacity_supply=1.2041 * 1006.0 * 0.03)
    loft = 20.0 - (1.0 - warmth) * (20.0 - hours)
    np.testing.assert_allclose(back.heat, 1.2041 * 0.03 * (dry_heat(loft) - dry_heat(hours)), rtol=2e-3, atol=0.05)
    np.testing.assert_allclose(back.supplied, loft, atol=1e-9)


def test_the_usual_loft_lies_within_the_published_factors() -> None:
    """EN 12831:2003, table of factors for unheated spaces, roof spaces: 1.0, 0.9, 0.7; from memory."""
    assert 1.0 - 1.0 <= option_row("loft supply")["ducts.zone_factor"].value <= 1.0 - 0.7


def test_more_air_measured_than_promised_costs_what_the_degree_hours_of_the_weather_file_say() -> None:
    """150 m³/h promised and 180 measured, 80 % at both: 30 m³/h × 1.2041 × 1006 J/(m³ K) × 20 % × degree-hours."""
    own = {
        "flows.supply": 150.0, "flows.extract": 150.0, "flows.imbalance": 0.0, "flows.boost_share": 0.0,
        "unit.points": "100 80 0.6; 250 80 0.6", "unit.frost": "none", "ducts.intake": 0.0, "ducts.exhaust": 0.0,
    }  # fmt: skip
    case = with_values(
        Case(),
        {
            **{f"options.recovery.{path}": value for path, value in own.items()},
            "heating.mode": "fixed base", "heating.base_temperature": 15.5,
            "commissioned.fed": "bedroom 100; living room 80", "commissioned.drawn": "kitchen 100; bathroom 80",
        },
    )  # fmt: skip
    made = as_commissioned(run(case, year_of("Sand Point")))
    assert made is not None
    degree_hours = (15.5 - sand_point()["temp_air"]).clip(lower=0.0).sum()
    pressure = float(sand_point()["pressure"].mean()) * 100.0 / SEA_LEVEL
    more = 30.0 / 3600.0 * 1.2041 * 1006.0 * pressure * 0.2 * float(degree_hours) / 1000.0
    assert made.points[0].measured == pytest.approx(180.0)
    assert made.points[0].heat == pytest.approx(-more, rel=5e-3)
    assert made.whole.heat == pytest.approx(-more, rel=5e-3)
