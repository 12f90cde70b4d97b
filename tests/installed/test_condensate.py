"""Does the moist balance close, and does the water agree with libraries of psychrometrics?

References: psychrolib (ASHRAE Handbook Fundamentals 2017, chapter 1) and CoolProp (real-gas humid air, ASHRAE RP-1485).
"""

from __future__ import annotations

import numpy as np
import psychrolib
import pytest
from CoolProp.HumidAirProp import HAPropsSI
from scipy.optimize import brentq

from estimator import names
from estimator.air import condensate, moist
from tests.laws.settings import year_of

PRESSURE = 101_325.0
AIR = 0.05  # kg/s
ROOMS = [(20.0, 0.35), (20.0, 0.50), (21.0, 0.70), (23.0, 0.95)]
HEATS = [5_000.0, 12_000.0, 18_000.0, 24_000.0]  # J/kg dry air

psychrolib.SetUnitSystem(psychrolib.SI)


def found(temp: float, share: float, heat: float) -> condensate.Dripping:
    vapour = psychrolib.GetHumRatioFromRelHum(temp, share, PRESSURE)
    return condensate.dripping(temp=temp, vapour=vapour, exchanged=heat * AIR, air=AIR, pressure=PRESSURE)


@pytest.mark.parametrize(("temp", "share"), ROOMS)
@pytest.mark.parametrize("heat", HEATS)
def test_exhaust_and_water_equal_psychrolib(temp: float, share: float, heat: float) -> None:
    vapour = psychrolib.GetHumRatioFromRelHum(temp, share, PRESSURE)

    def left(at: float) -> float:
        return float(min(vapour, psychrolib.GetSatHumRatio(at, PRESSURE)))

    def surplus(at: float) -> float:
        given = psychrolib.GetMoistAirEnthalpy(temp, vapour) - psychrolib.GetMoistAirEnthalpy(at, left(at))
        return float(given - heat)

    leaving = brentq(surplus, -30.0, temp)
    made = found(temp, share, heat)
    assert made.leaving == pytest.approx(leaving, abs=0.02)
    assert made.water == pytest.approx(AIR * (vapour - left(leaving)), abs=AIR * 2e-5)


@pytest.mark.parametrize(("temp", "share"), ROOMS)
@pytest.mark.parametrize("heat", HEATS)
def test_exhaust_equals_coolprop(temp: float, share: float, heat: float) -> None:
    """Real gas against ideal gas: 0.1 K apart at most."""
    vapour = psychrolib.GetHumRatioFromRelHum(temp, share, PRESSURE)
    at = ("T", temp + 273.15, "W", vapour, "P", PRESSURE)
    target = HAPropsSI("H", *at) - heat

    def surplus(leaving: float) -> float:
        saturated = HAPropsSI("W", "T", leaving + 273.15, "R", 1.0, "P", PRESSURE)
        kind, value = ("R", 1.0) if saturated < vapour else ("W", vapour)
        return float(HAPropsSI("H", "T", leaving + 273.15, kind, value, "P", PRESSURE) - target)

    assert found(temp, share, heat).leaving == pytest.approx(brentq(surplus, -30.0, temp), abs=0.1)


def test_dry_air_drips_nothing_and_warmed_air_neither() -> None:
    assert found(20.0, 0.2, 12_000.0).water == 0.0
    assert found(20.0, 0.6, -5_000.0).water == 0.0


@pytest.mark.parametrize("climate", names())
def test_heat_and_water_balance_close_in_every_hour(climate: str) -> None:
    """Law: what the air brought in is what it keeps, gives and drips, to 1e-9 of it."""
    year = year_of(climate)
    outdoor = condensate.outdoor_vapour(
        year.temp_air, relative_humidity=year.relative_humidity / 100.0, pressure=year.pressure
    )
    moisture = 10.0 / 86_400.0  # kg/s
    vapour = condensate.room_vapour(outdoor, moisture=moisture, air=AIR, temp_in=20.0, pressure=year.pressure)
    exchanged = 0.85 * AIR * 1006.0 * (20.0 - year.temp_air)
    made = condensate.dripping(temp=20.0, vapour=vapour, exchanged=exchanged, air=AIR, pressure=year.pressure)
    brought = moist.enthalpy(20.0, humidity_ratio=vapour)
    kept = moist.enthalpy(made.leaving, humidity_ratio=made.vapour)
    np.testing.assert_allclose(brought - kept, exchanged / AIR, rtol=0.0, atol=1e-9 * np.max(brought))
    np.testing.assert_allclose(AIR * vapour, AIR * made.vapour + made.water, rtol=1e-9)
    unsaturated = vapour < moist.saturation_humidity_ratio(20.0, pressure=year.pressure)
    np.testing.assert_allclose((AIR * outdoor + moisture)[unsaturated], (AIR * vapour)[unsaturated], rtol=1e-9)
    assert np.all(made.water >= 0.0)
    assert np.any(made.water > 0.0)


def test_outdoor_vapour_equals_psychrolib() -> None:
    expected = psychrolib.GetHumRatioFromRelHum(5.0, 0.8, PRESSURE)
    found_ratio = condensate.outdoor_vapour(5.0, relative_humidity=0.8, pressure=PRESSURE)
    assert found_ratio == pytest.approx(expected, rel=1e-3)
