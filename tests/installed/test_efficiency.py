"""Is the installed efficiency that of the exchanger, less what ducts and frost take, and never more?

Laws. The exchanger itself is held to the general library `ht` (effectiveness_from_NTU, counterflow).
"""

from __future__ import annotations

import dataclasses
from typing import Any

import numpy as np
import pytest
from ht import effectiveness_from_NTU
from hypothesis import given
from hypothesis import strategies as st

from estimator.corridor import air_year, heat_year, home_year
from estimator.evidence.held import plain_option
from estimator.survey.numbers import DuctConductances, OptionNumbers
from tests.laws.settings import FEW, default_home, year_of

FLOW = st.floats(0.01, 0.12)
CERTIFIED = st.floats(0.5, 0.95)
RATIO = st.sampled_from([0.7, 0.95, 1.0, 1.3])


def installed_efficiency(option: OptionNumbers) -> float:
    home, year = default_home(), year_of("Sand Point")
    shared = home_year(home, year)
    air = air_year(home, option, shared, top_up=True)
    return float(np.squeeze(heat_year(home, option, shared, air, step=year.weight).effective_efficiency))


def of_exchanger(certified: float, *, reference: float, supply: float, extract: float) -> float:
    units = certified / (1.0 - certified) * reference / min(supply, extract)
    ratio = min(supply, extract) / max(supply, extract)
    return float(effectiveness_from_NTU(units, Cr=ratio, subtype="counterflow"))  # type: ignore[no-untyped-call]


def unit(certified: float, flow: float, ratio: float, reference: float, **changes: Any) -> OptionNumbers:
    plain = plain_option(supply=flow, extract=flow * ratio, effectiveness=certified)
    return dataclasses.replace(plain, reference_flow=np.asarray(reference), **changes)


@given(certified=CERTIFIED, flow=FLOW, ratio=RATIO, reference=FLOW)
@FEW
def test_without_ducts_it_is_that_of_the_exchanger_at_its_flows(
    certified: float, flow: float, ratio: float, reference: float
) -> None:
    expected = of_exchanger(certified, reference=reference, supply=flow, extract=flow * ratio)
    for outside in (False, True):
        found = installed_efficiency(unit(certified, flow, ratio, reference, outside=outside))
        assert found == pytest.approx(expected, rel=1e-9)


@given(
    certified=CERTIFIED, flow=FLOW, ratio=RATIO, reference=FLOW,
    ducts=st.tuples(*[st.floats(0.0, 10.0)] * 4), outside=st.booleans(),
)  # fmt: skip
@FEW
def test_it_is_never_above_the_exchanger(
    certified: float,
    flow: float,
    ratio: float,
    reference: float,
    ducts: tuple[float, float, float, float],
    outside: bool,
) -> None:
    """Ducts outside the envelope at outdoor temperature, ducts inside it at indoor temperature."""
    intake, exhaust, supply, extract = ducts
    lossy = DuctConductances(intake=intake, exhaust=exhaust, supply=supply, extract=extract)
    option = unit(certified, flow, ratio, reference, outside=outside, zone_factor=0.0, ducts=lossy)
    limit = of_exchanger(certified, reference=reference, supply=flow, extract=flow * ratio)
    assert installed_efficiency(option) <= limit * (1.0 + 1e-9)
    sealed = DuctConductances(intake=1e-13, exhaust=1e-13, supply=1e-13, extract=1e-13)
    assert installed_efficiency(dataclasses.replace(option, ducts=sealed)) == pytest.approx(limit, rel=1e-9)


@given(
    certified=CERTIFIED, flow=FLOW, ratio=RATIO,
    ducts=st.tuples(*[st.floats(0.0, 10.0)] * 4), outside=st.booleans(),
)  # fmt: skip
@FEW
def test_in_no_hour_does_more_come_back_than_through_the_bare_exchanger(
    certified: float, flow: float, ratio: float, ducts: tuple[float, float, float, float], outside: bool
) -> None:
    """Hour by hour, to 1e-9; without conductance just as much, in every hour."""
    intake, exhaust, supply, extract = ducts
    lossy = DuctConductances(intake=intake, exhaust=exhaust, supply=supply, extract=extract)
    home, year = default_home(), year_of("Sand Point")
    shared = home_year(home, year)
    limit = of_exchanger(certified, reference=flow, supply=flow, extract=flow * ratio)
    most = limit * shared.heat_capacity * min(flow, flow * ratio) * shared.temp_difference
    size = 1e-9 * float(np.max(np.abs(most)))
    cold = shared.temp_difference > 0.0
    option = unit(certified, flow, ratio, flow, outside=outside, zone_factor=0.0, ducts=lossy)
    assert np.all((air_year(home, option, shared, top_up=True).recovered - most)[cold] <= size)
    bare = dataclasses.replace(option, ducts=DuctConductances(intake=0.0, exhaust=0.0, supply=0.0, extract=0.0))
    np.testing.assert_allclose(air_year(home, bare, shared, top_up=True).recovered, most, rtol=0.0, atol=size)


@given(certified=CERTIFIED, flow=FLOW)
@FEW
def test_at_the_reference_flow_it_is_that_of_the_certificate(certified: float, flow: float) -> None:
    assert installed_efficiency(unit(certified, flow, 1.0, flow)) == pytest.approx(certified, rel=1e-9)
