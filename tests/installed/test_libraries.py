"""Do ducts and doors agree with general libraries of heat transfer and flow?

`ht`: conduction through a cylinder, and a stream beside one of constant temperature (capacity ratio nil), which is what
a duct in a room is. `fluids`: pressure lost in a fitting of known loss coefficient, which is what a gap is.
"""

from __future__ import annotations

import math
from typing import Any

import pytest
from fluids import dP_from_K
from ht import effectiveness_from_NTU
from ht.conduction import R_cylinder
from hypothesis import given
from hypothesis import strategies as st

from estimator.air.ducts import INNER_FILM, OUTER_FILM, kept_share, linear_transmittance
from estimator.air.paths import DISCHARGE, opening_area, opening_pressure
from estimator.air.properties import density
from tests.laws.settings import MANY

BORE = st.floats(0.05, 0.5)  # m
THICKNESS = st.floats(0.001, 0.3)  # m
CONDUCTIVITY = st.floats(0.015, 0.2)  # W/(m K)


@given(bore=BORE, thickness=THICKNESS, conductivity=CONDUCTIVITY)
@MANY
def test_a_metre_of_duct_is_the_cylinder_of_the_library(bore: float, thickness: float, conductivity: float) -> None:
    outer = bore + 2.0 * thickness
    cylinder: Any = R_cylinder
    resistance = (
        1.0 / (INNER_FILM * math.pi * bore)
        + cylinder(Di=bore, Do=outer, k=conductivity, L=1.0)
        + 1.0 / (OUTER_FILM * math.pi * outer)
    )
    found = linear_transmittance(bore=bore, insulation=thickness, conductivity=conductivity)
    assert found == pytest.approx(1.0 / resistance, rel=1e-9)


@given(conductance=st.floats(0.01, 50.0), capacity=st.floats(2.0, 200.0))
@MANY
def test_what_a_duct_keeps_is_what_a_stream_beside_a_constant_temperature_keeps(
    conductance: float, capacity: float
) -> None:
    from_units: Any = effectiveness_from_NTU
    lost = from_units(conductance / capacity, Cr=0.0, subtype="counterflow")
    assert kept_share(conductance=conductance, capacity_flow=capacity) == pytest.approx(1.0 - lost, rel=1e-9, abs=1e-12)


@given(flow=st.floats(0.001, 0.1), area=st.floats(0.0005, 0.05))
@MANY
def test_a_gap_under_a_door_loses_what_a_fitting_of_its_loss_coefficient_does(flow: float, area: float) -> None:
    """A discharge coefficient C is a loss coefficient of 1/C² on the velocity in the gap."""
    loss: Any = dP_from_K
    expected = loss(K=1.0 / DISCHARGE**2, rho=float(density()), V=flow / area)
    assert opening_pressure(flow, area=area) == pytest.approx(expected, rel=1e-9)
    assert opening_area(flow, pressure=expected) == pytest.approx(area, rel=1e-9)


@given(bore=BORE, conductivity=CONDUCTIVITY)
@MANY
def test_insulation_without_end_keeps_everything(bore: float, conductivity: float) -> None:
    """Law: thicker never loses more once past the critical radius, and a conductivity of next to nothing keeps all."""
    outer_radius = max(conductivity / OUTER_FILM, bore / 2.0)
    thick = [outer_radius - bore / 2.0 + step for step in (0.0, 0.05, 0.5, 5.0)]
    losses = [linear_transmittance(bore=bore, insulation=each, conductivity=conductivity) for each in thick]
    assert losses == sorted(losses, reverse=True)
    nothing = linear_transmittance(bore=bore, insulation=0.05, conductivity=1e-12)
    assert kept_share(conductance=nothing * 10.0, capacity_flow=40.0) == pytest.approx(1.0, abs=1e-9)
