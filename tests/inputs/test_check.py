"""Are contradictions between entries found, and nothing else?"""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from estimator.inputs import check, relations
from estimator.inputs.case import Case
from estimator.inputs.casefile import case_from_text
from estimator.inputs.home import Form, Home
from estimator.inputs.option import Option
from estimator.inputs.places import with_value
from estimator.inputs.template import example_text


def case_with(**values: Any) -> Case:
    """The default case with entries replaced, their paths written with __ for the full stop."""
    case: Case = Case()
    for path, value in values.items():
        case = with_value(case, path.replace("__", "."), value)
    return case


def said_of(case: Case) -> dict[str, str]:
    return {fault.where: fault.what for fault in check.faults(case)}


def test_the_default_and_the_example_are_in_order() -> None:
    assert check.faults(Case()) == []
    assert check.faults(case_from_text(example_text(), name="example.toml")) == []


@pytest.mark.parametrize(
    ("values", "where", "part"),
    [
        ({"baseline": "recovry"}, "baseline", 'Did you mean "recovery"?'),
        ({"today": "x"}, "today", '"today", "extract", "recovery"'),
        ({"options": {}}, "options", "none is given"),
        ({"options__recovery__kind": "heat recoveri"}, "options.recovery.kind", 'Did you mean "heat recovery"?'),
        ({"options__recovery__label": "new plain extract"}, "options.recovery.label", "also the label of extract"),
        ({"heating__fuel": "heating oyl"}, "heating.fuel", 'Did you mean "heating oil"?'),
        ({"tags": {"home.bedroom": "measured"}}, "tags.home.bedroom", 'Did you mean "home.bedrooms"?'),
        ({"tags": {"title": "measured"}}, "tags.title", "no entry"),
        ({"tags": {"home.volume": "measured"}}, "tags.home.volume", "nothing is entered"),
        ({"leakage__measure": "n50"}, "leakage.value", 'missing: the measure is "n50"'),
        ({"leakage__value": 5.0}, "leakage.value", 'the measure is "estimate"'),
        ({"leakage__basis": "measured"}, "leakage.basis", "needs a pressure test"),
        ({"air__rule": "entered"}, "air.entered", "missing"),
        ({"air__entered": 100.0}, "air.entered", 'the rule is "England 2021"'),
        ({"home__bedrooms": 4, "home__habitable_rooms": 3}, "home.bedrooms", "more than the 3 habitable"),
        ({"home__floor_area": 50.0, "home__bedrooms": 11}, "home.bedrooms", "each bedroom needs"),
        ({"home__floor_area": 50.0, "home__people": 11.0}, "home.people", "each person needs"),
        ({"home__volume": 100.0}, "home.volume", "rooms 0.91 m high; 1.9 to 5 m"),
        ({"home__volume": 600.0}, "home.volume", "rooms 5.45 m high"),
        ({"sealing__step_low": 13.0}, "sealing.step_low", "low cost of 13 is more than the middling cost of 12"),
        ({"sealing__step": 26.0}, "sealing.step", "middling cost of 26 is more than the high cost of 25"),
        ({"title": "a\tb"}, "title", "control character"),
        ({"home__floor_area": 5.0}, "home.floor_area", "5 m² is too small"),
        ({"home__form": "tower"}, "home.form", '"tower" is not known'),
        ({"home__bathrooms": None}, "home.bathrooms", "nothing (null)"),
    ],
)
def test_one_contradiction(values: dict[str, Any], where: str, part: str) -> None:
    said = said_of(case_with(**values))
    assert list(said) == [where]
    assert part in said[where]


FLOWS = "options__recovery__flows__"
UNIT = "options__recovery__unit__"


@pytest.mark.parametrize(
    ("values", "where"),
    [
        ({f"{FLOWS}supply": 100.0, f"{FLOWS}boost_flow": 90.0}, "flows.supply"),
        ({f"{FLOWS}extract": 100.0, f"{FLOWS}boost_flow": 90.0}, "flows.extract"),
        ({f"{FLOWS}boost_share": 30.0, f"{FLOWS}running_share": 20.0}, "flows.boost_share"),
        ({f"{FLOWS}supply": 9.0, f"{FLOWS}extract": 9.0, f"{FLOWS}imbalance": 0.0}, "flows.imbalance"),
        ({f"{UNIT}ratio_includes_fan_heat": "yes", f"{UNIT}fan_heat_useful": 50.0}, "unit.fan_heat_useful"),
        ({f"{UNIT}in_use_factor": 0.9, "options__recovery__ducts__intake": 2.0}, "unit.in_use_factor"),
    ],
)
def test_one_contradiction_within_an_option(values: dict[str, Any], where: str) -> None:
    assert list(said_of(case_with(**values))) == [f"options.recovery.{where}"]


@pytest.mark.parametrize(
    "values",
    [
        {"leakage__measure": "q50", "leakage__value": 4.0, "leakage__basis": "measured"},
        {"air__rule": "entered", "air__entered": 120.0},
        {f"{FLOWS}supply": 100.0, f"{FLOWS}boost_flow": 100.0},
        {f"{FLOWS}supply": 100.0, f"{FLOWS}imbalance": 5.0},
        {f"{UNIT}ratio_includes_fan_heat": "yes", f"{UNIT}fan_heat_useful": 0.0},
        {f"{UNIT}in_use_factor": 0.9, "options__recovery__ducts__intake": 0.0},
        {f"{UNIT}in_use_factor": 1.0, "options__recovery__ducts__intake": 2.0},
        {"heating__base_temperature": 25.0},
        {"home__volume": 264.0, "home__envelope_area": 255.0},
        {"baseline": "today"},
        {"tags": {"home.floor_area": "measured", "options.recovery.kind": "assumed"}},
    ],
)
def test_what_is_unusual_is_no_contradiction(values: dict[str, Any]) -> None:
    assert check.faults(case_with(**values)) == []


def test_a_fixed_base_above_the_indoor_temperature() -> None:
    values = {"heating__mode": "fixed base", "heating__base_temperature": 21.0}
    assert "19.5 °C" in said_of(case_with(**values))["heating.base_temperature"]
    assert check.faults(case_with(**values, home__indoor_temperature=21.0)) == []


def test_an_envelope_smaller_than_a_ball() -> None:
    """A ball of radius 3.5 m has 179.594 m³ in 153.938 m² (4/3 π r³, 4 π r²: any table of solids)."""
    size = {"home__floor_area": 60.0, "home__volume": 179.594}
    assert list(said_of(case_with(**size, home__envelope_area=153.9))) == ["home.envelope_area"]
    assert check.faults(case_with(**size, home__envelope_area=153.95)) == []


def test_a_tag_against_the_basis_of_the_leakage() -> None:
    tested = {"leakage__measure": "q50", "leakage__value": 4.0, "leakage__basis": "measured"}
    assert "contradicts" in said_of(case_with(**tested, tags={"leakage.value": "assumed"}))["tags.leakage.value"]
    assert check.faults(case_with(**tested, tags={"leakage.value": "measured"})) == []


@pytest.mark.parametrize("name", ["", " ", "a.b", "x" * 41, "a\nb"])
def test_names_of_options_that_no_path_could_hold(name: str) -> None:
    case = case_with(options={name: Option(kind="heat recovery")}, baseline=name, today=name)
    assert f"options.{name}" in said_of(case)


def test_more_options_than_can_be_compared() -> None:
    options = {f"o{number}": Option(kind="heat recovery") for number in range(check.MOST_OPTIONS + 1)}
    assert list(said_of(Case(options=options, baseline="o0", today="o1"))) == ["options"]


def test_all_faults_of_a_case_at_once() -> None:
    values = {"baseline": "x", "home__floor_area": "big", "home__bedrooms": 99, "leakage__value": 3.0}
    said = said_of(case_with(**values, heating__fuel="gas", tags={"a": "measured"}))
    where = ["home.floor_area", "home.bedrooms", "baseline", "heating.fuel", "tags.a", "leakage.value"]
    assert list(said) == where


def test_what_was_unreadable_is_not_judged() -> None:
    case = case_with(leakage__value=5.0, home__bedrooms=12, home__habitable_rooms=3)
    assert len(check.faults(case)) == 2
    assert check.faults(case, unreadable={"leakage.measure", "home"}) == []
    assert len(check.faults(case, unreadable={"leakage.meas", "hom"})) == 2


def column(*values: Any, of: type = float) -> Any:
    return np.asarray(values, dtype=of)[:, None]


def test_many_homes_are_counted_and_the_first_is_named() -> None:
    home = Home(
        floor_area=column(100.0, 5.0, 3.0),
        bedrooms=column(20, 1, 1, of=int),
        form=column("flat", "flat", "tower", of=object),
        volume=column(250.0, 200.0, 250.0),
    )
    said = said_of(Case(home=home))
    assert said["home.floor_area"].startswith("5 m² is too small in 2 of 3 rows (first: row 2): allowed is")
    assert said["home.bedrooms"].startswith("20 is too large in 1 of 3 rows (first: row 1)")
    assert said["home.form"].startswith('"tower" is not known here in 1 of 3 rows (first: row 3)')
    assert len(said) == 3


def test_contradictions_of_many_homes() -> None:
    form: Form = "flat"
    home = Home(
        floor_area=column(100.0, 20.0, 20.0),
        bedrooms=column(3, 5, 2, of=int),
        people=column(2.0, 2.0, 9.0),
        form=form,
    )
    said = said_of(with_value(Case(home=home), "leakage.measure", column("q50", "estimate", "n50", of=object)))
    assert said["home.bedrooms"].endswith("Correct one of the two in 1 of 3 rows (first: row 2).")
    assert said["home.people"].startswith("9 is too many")
    assert said["leakage.value"].startswith('missing: the measure is "q50"')
    assert said["leakage.value"].endswith("in 2 of 3 rows (first: row 1).")
    assert len(said) == 3


def test_the_height_of_rooms_follows_the_limits_of_the_ceiling() -> None:
    spec = next(item.spec for item in relations_entries() if item.name == "ceiling_height")
    assert (spec.low, spec.high) == (relations.LOWEST_ROOM, relations.HIGHEST_ROOM)


def relations_entries() -> tuple[Any, ...]:
    from estimator.inputs.places import own_entries

    return own_entries(Home)
