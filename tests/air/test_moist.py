"""Does moist air behave as the psychrolib and CoolProp libraries say?

Handbook tables stand as published checks in the package; here are the libraries, the inverses and the edges.
"""

from __future__ import annotations

from importlib import import_module
from typing import Any

import numpy as np
import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.air import moist
from estimator.errors import ExtrapolationWarning

SEA_LEVEL = 101_325.0
TEMPS = np.array([-40.0, -15.0, -0.5, 0.5, 7.0, 20.0, 35.0])
RATIOS = np.array([0.00005, 0.0008, 0.002, 0.0035, 0.006, 0.009, 0.02])


@pytest.fixture(autouse=True)
def _si_units() -> None:
    psychrolib.SetUnitSystem(psychrolib.SI)


@pytest.fixture
def humid_air() -> Any:
    """CoolProp's humid air; seconds to load, which is left to whoever runs these tests."""
    return import_module("CoolProp.HumidAirProp")


def each(function: Any, *columns: Any) -> list[float]:
    """The library's scalar function, row by row."""
    return [float(function(*(float(x) for x in row))) for row in zip(*columns, strict=True)]


def close(ours: Any, reference: list[float], rtol: float = 1e-9) -> None:
    np.testing.assert_allclose(ours, np.array(reference), rtol=rtol)


def test_saturation_pressure_like_psychrolib() -> None:
    close(moist.saturation_pressure(TEMPS), each(psychrolib.GetSatVapPres, TEMPS))


def test_saturation_pressure_like_coolprop(humid_air: Any) -> None:
    """IAPWS water and ice behind CoolProp's humid air: independent of the handbook's fitted equations.

    CoolProp's partial pressure includes the effect of the air itself, up to 0.5 %.
    """
    reference = [humid_air.HAPropsSI("P_w", "T", t + 273.15, "P", SEA_LEVEL, "R", 1.0) for t in TEMPS]
    close(moist.saturation_pressure(TEMPS), reference, rtol=6e-3)


@pytest.mark.parametrize("pressure", [SEA_LEVEL, 84_000.0])
def test_states_like_psychrolib(pressure: float) -> None:
    site = np.full_like(TEMPS, pressure)
    vapour = moist.vapour_pressure(RATIOS, pressure=pressure)
    close(vapour, each(psychrolib.GetVapPresFromHumRatio, RATIOS, site))
    close(
        moist.humidity_ratio(vapour, pressure=pressure),
        each(psychrolib.GetHumRatioFromVapPres, vapour, site),
    )
    close(
        moist.saturation_humidity_ratio(TEMPS, pressure=pressure),
        each(psychrolib.GetSatHumRatio, TEMPS, site),
    )
    close(
        moist.relative_humidity(TEMPS, humidity_ratio=RATIOS, pressure=pressure),
        each(psychrolib.GetRelHumFromHumRatio, TEMPS, RATIOS, site),
    )
    close(
        moist.enthalpy(TEMPS, humidity_ratio=RATIOS),
        each(psychrolib.GetMoistAirEnthalpy, TEMPS, RATIOS),
    )
    close(
        moist.specific_volume(TEMPS, humidity_ratio=RATIOS, pressure=pressure),
        each(psychrolib.GetMoistAirVolume, TEMPS, RATIOS, site),
        rtol=1e-7,  # the library writes the inverse of the ratio of masses, with seven digits
    )


def test_heat_and_volume_like_coolprop(humid_air: Any) -> None:
    """Differences of enthalpy count, not their origin; real-gas effects stay within 0.5 %."""
    states = ((20.0, 0.007), (4.0, 0.004))
    warm, cold = [humid_air.HAPropsSI("Hda", "T", t + 273.15, "P", SEA_LEVEL, "W", w) for t, w in states]
    ours = moist.enthalpy(20.0, humidity_ratio=0.007) - moist.enthalpy(4.0, humidity_ratio=0.004)
    assert ours == pytest.approx(warm - cold, rel=5e-3)
    volume = moist.specific_volume(20.0, humidity_ratio=0.007, pressure=SEA_LEVEL)
    reference = humid_air.HAPropsSI("Vda", "T", 293.15, "P", SEA_LEVEL, "W", 0.007)
    assert volume == pytest.approx(reference, rel=1e-3)


def test_dew_point_like_psychrolib() -> None:
    vapour = moist.vapour_pressure(RATIOS, pressure=SEA_LEVEL)
    reference = each(psychrolib.GetTDewPointFromVapPres, np.full_like(RATIOS, 30.0), vapour)
    np.testing.assert_allclose(moist.dew_point(vapour), reference, atol=0.01)  # psychrolib searches to 0.001 K


@given(st.floats(-60.0, 90.0))
def test_dew_point_undoes_saturation(temp: float) -> None:
    assert moist.dew_point(moist.saturation_pressure(temp)) == pytest.approx(temp, abs=1e-6)


def test_dry_air_has_no_dew_point() -> None:
    np.testing.assert_array_equal(np.isnan(moist.dew_point(np.array([0.0, 1e-5, 611.0]))), [True, True, False])


def test_ice_and_water_meet_at_the_triple_point() -> None:
    """Triple point of water, 611.657 Pa at 0.01 °C (IAPWS, from memory)."""
    at, below = moist.saturation_pressure(np.array([0.01, 0.01 - 1e-9]))
    assert at == pytest.approx(611.657, abs=0.001)
    assert below == pytest.approx(at, rel=1e-7)


def test_wet_bulb_like_psychrolib() -> None:
    """The same two equations, to the digit; at a wet bulb of 0 °C the wick is wet."""
    wet = TEMPS - np.array([0.1, 0.4, 0.5, 0.5, 2.0, 6.0, 10.0])
    ours = moist.humidity_ratio_at_wet_bulb(TEMPS, wet_bulb=wet, pressure=SEA_LEVEL)
    close(ours, each(psychrolib.GetHumRatioFromTWetBulb, TEMPS, wet, np.full_like(TEMPS, SEA_LEVEL)))


def test_cooling_without_condensate_is_plain_heat() -> None:
    """No dripping above the dew point: psychrolib's temperature from enthalpy and humidity ratio."""
    heat = np.array([30_000.0, 35_000.0])
    ours = moist.temperature_at_enthalpy(heat, humidity_ratio=0.006, pressure=SEA_LEVEL)
    reference = each(psychrolib.GetTDryBulbFromEnthalpyAndHumRatio, heat, [0.006, 0.006])
    np.testing.assert_allclose(ours, reference, atol=1e-4)


@given(st.floats(-15_000.0, 60_000.0), st.floats(0.0, 0.012), st.floats(70_000.0, 105_000.0))
def test_cooled_air_holds_the_heat_it_was_left_with(heat: float, vapour: float, pressure: float) -> None:
    """The moist balance closes: held vapour is what was there, or what can be held, whichever is less."""
    temp = moist.temperature_at_enthalpy(heat, humidity_ratio=vapour, pressure=pressure)
    held = np.minimum(vapour, moist.saturation_humidity_ratio(temp, pressure=pressure))
    assert moist.enthalpy(temp, humidity_ratio=held) == pytest.approx(heat, abs=0.5)


def test_exhaust_of_a_recovery_unit_drips_like_coolprop(humid_air: Any) -> None:
    """Room air, 20 °C and 7 g/kg, that gives up 20 kJ/kg ends saturated at the temperature CoolProp finds."""
    left = humid_air.HAPropsSI("Hda", "T", 293.15, "P", SEA_LEVEL, "W", 0.007) - 20_000.0
    reference = humid_air.HAPropsSI("T", "Hda", left, "P", SEA_LEVEL, "R", 1.0) - 273.15
    ours = moist.temperature_at_enthalpy(
        moist.enthalpy(20.0, humidity_ratio=0.007) - 20_000.0, humidity_ratio=0.007, pressure=SEA_LEVEL
    )
    assert ours == pytest.approx(reference, abs=0.1)


def test_out_of_range_is_said_and_still_answered() -> None:
    """The handbook's equations 5 and 6 hold from −100 to 200 °C, both included; warnings are errors in all tests."""
    with pytest.warns(ExtrapolationWarning, match="hold from -100 to 200"):
        assert moist.saturation_pressure(np.array([20.0, 230.0]))[1] > 2e6
    for just_beyond in (-100.5, 200.5):
        with pytest.warns(ExtrapolationWarning):
            assert moist.saturation_pressure(just_beyond) > 0.0
    edges = moist.saturation_pressure(np.array([-100.0, 200.0]))
    assert moist.dew_point(edges[0]) == -100.0


@pytest.mark.parametrize("temp", [-90.0, -20.0, 5.0, 60.0, 180.0])
def test_saturation_rises_as_fast_as_it_says(temp: float) -> None:
    """A slope is the limit of differences, here over a thousandth of a kelvin each way."""
    low, high = (moist._log_saturation(np.asarray(temp + by))[0] for by in (-1e-3, 1e-3))
    assert moist._log_saturation(np.asarray(temp))[1] == pytest.approx((high - low) / 2e-3, rel=1e-7)


def test_a_search_without_an_end_finds_nothing() -> None:
    """And leaves what was found beside it."""
    found = moist._search(np.array([7.0, 7.0]), lambda temp: np.array([1.0, 0.0]))
    np.testing.assert_array_equal(found, [np.nan, 7.0])


def test_shapes_broadcast() -> None:
    temps, vapour = np.linspace(-10.0, 30.0, 5), np.array([[0.001], [0.004]])
    grid = moist.temperature_at_enthalpy(
        moist.enthalpy(temps, humidity_ratio=vapour), humidity_ratio=vapour, pressure=SEA_LEVEL
    )
    assert grid.shape == (2, 5)
    one = moist.temperature_at_enthalpy(
        moist.enthalpy(30.0, humidity_ratio=0.004), humidity_ratio=0.004, pressure=SEA_LEVEL
    )
    assert grid[1, 4] == pytest.approx(one)
