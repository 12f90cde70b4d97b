"""Are several points of a certificate met where they were measured, and refused where they cannot be?

Reference: the interpolation of the general library SciPy (interp1d); laws for the rest.
"""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from scipy.interpolate import interp1d

from estimator import Case, Estimate, case_from_dict, estimate
from estimator.air.certificate import Points, beyond, reference_at
from estimator.errors import InputFaults
from estimator.inputs.places import with_values
from estimator.inputs.points import certificate_points
from estimator.installed import installed
from estimator.running import fan_power
from tests.laws.settings import year_of

LINE = "100 90 0.6; 200 85 0.9; 300 79 1.4"
POINTS = Points(np.array([100.0, 200.0, 300.0]), np.array([0.90, 0.85, 0.79]), np.array([0.6, 0.9, 1.4]))
PLAIN: dict[str, Any] = {"flows__imbalance": 0.0, "ducts__intake": 0.0, "ducts__exhaust": 0.0, "unit__standby": 0.0}


def done_at(flow: float, **changes: Any) -> Estimate:
    """Balanced heat recovery without ducts at one flow [m³/h], with the points above."""
    flows = {"flows__supply": flow, "flows__extract": flow, "flows__boost_flow": flow, "unit__points": LINE}
    values = {
        f"options.recovery.{key.replace('__', '.')}": value for key, value in {**PLAIN, **flows, **changes}.items()
    }
    return estimate(with_values(Case(), values), year_of("Greensboro"))


def power_at(flow: float) -> float:
    numbers = done_at(flow).options["recovery"].numbers
    return float(fan_power(numbers, numbers.states[0]))


def test_between_points_it_is_the_interpolation_of_scipy() -> None:
    flows = np.linspace(100.0, 300.0, 41)
    found = reference_at(POINTS, flow=flows)
    np.testing.assert_allclose(found.ratio, interp1d(POINTS.flows, POINTS.ratios)(flows), rtol=1e-12)
    np.testing.assert_allclose(found.power, interp1d(POINTS.flows, POINTS.powers)(flows), rtol=1e-12)
    np.testing.assert_array_equal(found.flow, flows)
    assert not np.any(beyond(POINTS, flow=flows))
    np.testing.assert_array_equal(beyond(POINTS, flow=np.array([99.0, 150.0, 301.0])), [True, False, True])


@pytest.mark.parametrize(("flow", "ratio", "power"), [(100.0, 0.90, 0.6), (200.0, 0.85, 0.9), (300.0, 0.79, 1.4)])
def test_the_house_meets_each_point_where_it_was_measured(flow: float, ratio: float, power: float) -> None:
    """W/(l/s) times litres a second: 200 m³/h at 0.9 is 50 W."""
    done = done_at(flow, unit__frost="none")
    assert done.options["recovery"].heat.effective_efficiency.item() == pytest.approx(ratio, rel=1e-9)
    assert power_at(flow) == pytest.approx(power * flow / 3.6, rel=1e-9)


def test_beyond_its_points_the_last_goes_on_by_the_scaling_laws_and_is_flagged() -> None:
    """At 600 m³/h, twice the last: N = 0.79/0.21 halved, and power per litre 2^1.5 = 2.828 times as large."""
    done = done_at(600.0, unit__frost="none")
    units = 0.79 / 0.21 / 2.0
    assert done.options["recovery"].heat.effective_efficiency.item() == pytest.approx(units / (1.0 + units), rel=1e-9)
    assert power_at(600.0) == pytest.approx(1.4 * 2.8284271247461903 * 600.0 / 3.6, rel=1e-9)
    found = installed(done, "recovery")
    assert found is not None
    assert found.outside_certificate == (
        "600 m³/h lies outside the certificate's 100 to 300 m³/h: ratio and fan power are scaled from it.",
    )
    inside = installed(done_at(250.0), "recovery")
    assert inside is not None
    assert inside.outside_certificate == ()
    assert inside.steps[0].efficiency == pytest.approx(0.82, rel=1e-9)


def test_one_point_is_flagged_at_any_other_flow() -> None:
    found = installed(done_at(250.0, unit__points="", unit__reference_flow=150.0), "recovery")
    assert found is not None
    assert "150 m³/h: ratio" in found.outside_certificate[0]


def test_leakage_inside_the_unit_is_taken_out_of_every_point() -> None:
    """Less fresh air by the leak, and at every flow the same power as without it."""
    sound, leaky = done_at(200.0), done_at(200.0, unit__internal_leakage=5.0)
    powers = [float(fan_power(o.numbers, o.numbers.states[0])) for o in (d.options["recovery"] for d in (sound, leaky))]
    assert powers[0] == pytest.approx(powers[1], rel=1e-12)
    assert leaky.options["recovery"].heat.effective_efficiency.item() < 0.85


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("100 105 0.6; 200 85 0.9", "ratio of 105 %"),
        ("0 90 0.6; 200 85 0.9", "flow of 0 m³/h"),
        ("200 85 0.9; 100 90 0.6", "rising order"),
        ("200 85 0.9", "two or more"),
        ("200 85; 300 79", "no point"),
        ("200 85 nan; 300 79 1", "power of nan"),
        ("much", "no point"),
    ],
)
def test_an_impossible_certificate_is_refused_in_words(line: str, said: str) -> None:
    options = {"recovery": {"kind": "heat recovery", "unit": {"points": line}}}
    with pytest.raises(InputFaults, match=said) as refused:
        case_from_dict({"version": 1, "baseline": "recovery", "today": "recovery", "options": options})
    assert [fault.where for fault in refused.value.faults] == ["options.recovery.unit.points"]
    with pytest.raises(ValueError, match=said):
        certificate_points(line)
