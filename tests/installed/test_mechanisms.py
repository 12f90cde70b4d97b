"""Has each mechanism of the unit as fitted a check against somebody else, and a law?

The checks and laws themselves stand where they are named; here it is seen to that none of them goes missing.
"""

from __future__ import annotations

import ast
from functools import cache
from pathlib import Path
from typing import NamedTuple

import pytest

from estimator.evidence.checks import checks

ROOT = Path(__file__).resolve().parents[2]


class Mechanism(NamedTuple):
    """Its name; published values by file, or tests against a library; laws as tests."""

    name: str
    checks: tuple[str, ...]
    laws: tuple[str, ...]


_INSTALLED = "tests/installed/test_"
_EXCHANGER = "tests/air/test_exchanger.py::"
_OTHERS = "tests/installed/test_by_others.py::"
TABLE = (
    Mechanism(
        "effectiveness at duty",
        (
            "exchanger-number-of-transfer-units.toml",
            f"{_EXCHANGER}test_counterflow_equals_the_heat_transfer_library",
        ),
        (f"{_INSTALLED}efficiency.py::test_at_the_reference_flow_it_is_that_of_the_certificate",),
    ),
    Mechanism(
        "unequal flows and imbalance",
        ("exchanger-unequal-flows.toml", "joining-quadrature.toml"),
        (
            f"{_EXCHANGER}test_heat_of_unequal_flows_lies_between_those_of_the_smaller_and_the_larger_flow_balanced",
            f"{_INSTALLED}line_costs.py::test_what_only_spoils_the_air_is_compared_at_the_same_fresh_air",
        ),
    ),
    Mechanism(
        "points of a certificate",
        (
            "exchanger-test-point.toml",
            f"{_INSTALLED}certificate.py::test_between_points_it_is_the_interpolation_of_scipy",
        ),
        (f"{_INSTALLED}certificate.py::test_beyond_its_points_the_last_goes_on_by_the_scaling_laws_and_is_flagged",),
    ),
    Mechanism(
        "fan power at duty", ("fan-laws.toml",),
        (f"{_EXCHANGER}test_fan_power_grows_with_its_exponent_and_meets_the_certificate",),
    ),
    Mechanism(
        "duct loss",
        (
            "duct-transmittance.toml", "duct-kept-share.toml",
            f"{_INSTALLED}libraries.py::test_a_metre_of_duct_is_the_cylinder_of_the_library",
            f"{_INSTALLED}libraries.py::test_what_a_duct_keeps_is_what_a_stream_beside_a_constant_temperature_keeps",
        ),
        (
            f"{_INSTALLED}libraries.py::test_insulation_without_end_keeps_everything",
            f"{_INSTALLED}efficiency.py::test_in_no_hour_does_more_come_back_than_through_the_bare_exchanger",
        ),
    ),
    Mechanism(
        "unit inside or outside", ("exchanger-good-plate.toml",),
        (
            "tests/laws/test_closure.py::test_heat_of_exchanger_and_house_closes",
            f"{_INSTALLED}efficiency.py::test_it_is_never_above_the_exchanger",
        ),
    ),
    Mechanism(
        "frost: pre-heater", ("frost-label-preheater.toml",),
        (
            f"{_INSTALLED}states.py::test_heaters_are_off_above_their_set_points",
            "tests/laws/test_closure.py::test_heat_of_exchanger_and_house_closes",
        ),
    ),
    Mechanism(
        "frost: throttling",
        (f"{_OTHERS}test_throttled_exhaust_leaves_at_its_set_point_by_the_enthalpy_of_coolprop",),
        (f"{_INSTALLED}frost_ways.py::test_throttling_acts_where_the_exhaust_would_fall_below_its_set_point",),
    ),
    Mechanism(
        "post-heater", ("frost-label-preheater.toml",),
        (f"{_INSTALLED}states.py::test_post_heater_spares_the_heating_as_much_as_it_takes_while_the_rooms_need_heat",),
    ),
    Mechanism(
        "boost, set-back and absence",
        ("air-needed-england-continuous.toml", "fan-laws.toml"),
        (
            f"{_INSTALLED}states.py::test_a_night_at_half_speed_takes_its_own_power",
            f"{_INSTALLED}states.py::test_shares_of_the_year_sum_to_one_whatever_is_asked",
        ),
    ),
    Mechanism(
        "demand control", ("control-factors.toml",),
        (f"{_INSTALLED}states.py::test_control_lowers_the_mean_flow_by_its_declared_factor",),
    ),
    Mechanism(
        "filters",
        (
            f"{_OTHERS}test_power_with_loading_filters_is_the_work_of_the_library_over_their_life",
            f"{_OTHERS}test_a_filter_takes_the_power_of_the_worked_example",
        ),
        (f"{_INSTALLED}states.py::test_filters_raise_the_power_by_their_mean_share_of_the_pressure",),
    ),
    Mechanism(
        "leakage inside the unit", (f"{_OTHERS}test_leakage_is_taken_out_of_the_ratio_as_coolprop_mixes_it_in",),
        (f"{_INSTALLED}states.py::test_leakage_inside_the_unit_brings_less_air_not_less_loss",),
    ),
    Mechanism(
        "condensate",
        (
            "moist-saturation-pressure.toml", f"{_INSTALLED}condensate.py::test_exhaust_and_water_equal_psychrolib",
            f"{_INSTALLED}condensate.py::test_exhaust_equals_coolprop",
        ),
        (f"{_INSTALLED}condensate.py::test_heat_and_water_balance_close_in_every_hour",),
    ),
    Mechanism(
        "humidity indoors", (f"{_INSTALLED}condensate.py::test_outdoor_vapour_equals_psychrolib",),
        (f"{_INSTALLED}installed.py::test_a_home_with_more_moisture_is_damper_and_never_above_saturation",),
    ),
    Mechanism(
        "summer bypass hours",
        (f"{_OTHERS}test_bypass_hours_are_counted_as_pandas_counts_them_in_the_weather_file",),
        (f"{_INSTALLED}installed.py::test_no_heat_and_colder_outdoors_are_the_hours_of_the_bypass",),
    ),
    Mechanism(
        "background ventilators and stack", ("england-ventilators.toml", "infiltration-basic-stack.toml"),
        (f"{_INSTALLED}kinds.py::test_more_ventilators_bring_more_air_by_themselves",),
    ),
    Mechanism(
        "air from the loft",
        (
            "loft-warmth.toml",
            f"{_OTHERS}test_air_of_the_loft_spares_the_enthalpy_between_outdoors_and_the_loft",
        ),
        (f"{_INSTALLED}kinds.py::test_loft_supply_as_cold_as_outdoors_takes_the_heat_of_extract_at_the_same_flow",),
    ),
    Mechanism(
        "doors on the way of the air",
        (
            "door-gap.toml",
            f"{_INSTALLED}libraries.py::test_a_gap_under_a_door_loses_what_a_fitting_of_its_loss_coefficient_does",
        ),
        (f"{_INSTALLED}paths.py::test_air_of_every_room_is_conserved",),
    ),
    Mechanism(
        "commissioning",
        (f"{_OTHERS}test_more_air_measured_than_promised_costs_what_the_degree_hours_of_the_weather_file_say",),
        (
            f"{_INSTALLED}as_commissioned.py::test_as_promised_is_worth_nothing",
            f"{_INSTALLED}as_commissioned.py::test_the_steps_add_up_to_the_whole",
        ),
    ),
)  # fmt: skip


@cache
def published() -> frozenset[str]:
    return frozenset(check.file for check in checks())


@cache
def functions_of(path: str) -> frozenset[str]:
    tree = ast.parse((ROOT / path).read_text(encoding="utf-8"))
    return frozenset(node.name for node in tree.body if isinstance(node, ast.FunctionDef))


def there(name: str) -> bool:
    path, _, test = name.partition("::")
    return test in functions_of(path) if test else name in published()


@pytest.mark.parametrize("mechanism", TABLE, ids=[mechanism.name for mechanism in TABLE])
def test_it_has_a_check_by_others_and_a_law(mechanism: Mechanism) -> None:
    assert mechanism.checks
    assert mechanism.laws
    assert all("::" in law for law in mechanism.laws)
    for name in (*mechanism.checks, *mechanism.laws):
        assert there(name), name
