"""Do the fans run at the flows that were said?"""

from __future__ import annotations

import dataclasses

import pytest

from estimator import Case
from estimator.inputs.option import Flows, Option
from estimator.survey.fill import filled
from estimator.survey.numbers import State, running_states
from estimator.units import to_m3h


def states(flows: Flows) -> tuple[State, ...]:
    """All running states of a heat recovery unit with these entries."""
    case = Case()
    options = {**case.options, "recovery": Option(kind="heat recovery", flows=flows)}
    return running_states(filled(dataclasses.replace(case, options=options)).case.options["recovery"])


def ordinary(flows: Flows) -> tuple[float, float]:
    """Supply and extract [m³/h] in ordinary use of a heat recovery unit with these entries."""
    state = states(flows)[0]
    return float(to_m3h(state.supply)), float(to_m3h(state.extract))


def test_two_flows_given_stay_as_they_are() -> None:
    """They make their own imbalance; none of the catalogue's comes on top."""
    assert ordinary(Flows(supply=130.0, extract=145.0)) == pytest.approx((130.0, 145.0))


def test_one_flow_given_sets_both() -> None:
    """Not the one as given and the other from the air the home needs."""
    assert ordinary(Flows(extract=150.0, imbalance=0.0)) == pytest.approx((150.0, 150.0))
    assert ordinary(Flows(supply=150.0, imbalance=0.0)) == pytest.approx((150.0, 150.0))


def test_imbalance_is_counted_of_the_larger_flow() -> None:
    """Ten per cent of 150 by which extract exceeds supply, and the other way about."""
    assert ordinary(Flows(extract=150.0, imbalance=10.0)) == pytest.approx((135.0, 150.0))
    assert ordinary(Flows(extract=150.0, imbalance=-10.0)) == pytest.approx((150.0, 135.0))


def test_a_boost_that_moves_no_more_air_is_ordinary_use() -> None:
    """And the shares of the year still make one."""
    (state,) = states(Flows(supply=150.0, extract=150.0, boost_flow=150.0, boost_share=4.0))
    assert float(state.share) == 1.0
    boosted = states(Flows(supply=150.0, extract=150.0, boost_flow=200.0, boost_share=4.0))
    assert [round(float(one.share), 9) for one in boosted] == [0.96, 0.04]
