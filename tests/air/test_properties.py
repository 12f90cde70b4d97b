"""Does air weigh, and carry heat, as handbooks and the CoolProp library say?"""

from __future__ import annotations

import CoolProp.CoolProp as coolprop
import CoolProp.HumidAirProp as humid_air
import numpy as np
import psychrolib
import pytest

from estimator.air.properties import density, pressure_at_altitude, volumetric_heat_capacity
from estimator.units import SECONDS_PER_HOUR


@pytest.mark.parametrize("temp", [-30.0, 0.0, 20.0, 45.0])
@pytest.mark.parametrize("pressure", [101_325.0, 85_000.0])
def test_density_of_dry_air_is_that_of_a_reference_equation_of_state(temp: float, pressure: float) -> None:
    """CoolProp, "Air" (Lemmon et al. 2000): real gas, within 0.15 % of an ideal one in this range."""
    reference = coolprop.PropsSI("D", "T", temp + 273.15, "P", pressure, "Air")
    assert density(temp, pressure=pressure) == pytest.approx(reference, rel=1.5e-3)


def test_heat_carried_per_cubic_metre() -> None:
    """CoolProp, "Air", 20 °C and sea level; 0.336 Wh/(m³ K) is the trade's rounded figure."""
    state = ("T", 293.15, "P", 101_325.0, "Air")
    reference = coolprop.PropsSI("D", *state) * coolprop.PropsSI("C", *state)
    assert volumetric_heat_capacity() == pytest.approx(reference, rel=1e-3)
    assert volumetric_heat_capacity() / SECONDS_PER_HOUR == pytest.approx(0.3365, abs=0.00005)


def test_vapour_left_out_is_worth_a_quarter_of_a_per_cent() -> None:
    """CoolProp, humid air at 20 °C and half saturation; the module's title paragraph states the figure."""
    state = ("T", 293.15, "P", 101_325.0, "R", 0.5)
    moist = humid_air.HAPropsSI("cp_ha", *state) / humid_air.HAPropsSI("Vha", *state)
    assert moist / volumetric_heat_capacity() - 1.0 == pytest.approx(0.0025, abs=0.0003)


def test_thin_air_carries_less_in_proportion() -> None:
    """CoolProp, "Air" at 1,500 m standard pressure from the psychrolib library."""
    site = psychrolib_pressure(1500.0)
    state = ("T", 293.15, "P", site, "Air")
    reference = coolprop.PropsSI("D", *state) * coolprop.PropsSI("C", *state)
    assert volumetric_heat_capacity(site) == pytest.approx(reference, rel=1e-3)


def psychrolib_pressure(altitude: float) -> float:
    psychrolib.SetUnitSystem(psychrolib.SI)
    return float(psychrolib.GetStandardAtmPressure(altitude))


def test_pressure_at_altitude_over_an_array() -> None:
    """psychrolib, standard atmosphere; shapes are kept."""
    altitudes = np.array([[-100.0, 0.0], [640.0, 2500.0]])
    reference = [[psychrolib_pressure(float(altitude)) for altitude in row] for row in altitudes]
    np.testing.assert_allclose(pressure_at_altitude(altitudes), reference, rtol=1e-6)
