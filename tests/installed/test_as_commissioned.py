"""Does the estimate redone with what was measured say what each measurement is worth, and refuse what cannot be?"""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest

from estimator import Case, case_from_dict, run
from estimator.as_commissioned import AsCommissioned, as_commissioned
from estimator.errors import InputFaults
from estimator.inputs.places import with_values
from tests.laws.settings import year_of

MEASURED = {
    "fed": "bedroom 48; living room 50",
    "drawn": "kitchen 60; bathroom 52",
    "power": 46.0,
    "instrument": "vane anemometer with hood",
    "date": "2026-11-20",
    "leakage_measure": "n50",
    "leakage_value": 3.0,
    "leakage_date": "2026-11-18",
}


@cache
def found(**changes: Any) -> AsCommissioned:
    given = {**MEASURED, **{key: value for key, value in changes.items() if "__" not in key}}
    others = {key.replace("__", "."): value for key, value in changes.items() if "__" in key}
    case = with_values(Case(), {**{f"commissioned.{key}": value for key, value in given.items()}, **others})
    made = as_commissioned(run(case, year_of("Inland vale")))
    assert made is not None
    return made


def test_nothing_measured_is_nothing_said() -> None:
    assert as_commissioned(run(Case(), year_of("Inland vale"))) is None


def test_the_estimate_redone_moves_what_was_measured() -> None:
    """By hand: 98 m³/h fed and 112 drawn; 46 W in ordinary use; 3 air changes at 50 Pa."""
    option = found().result.estimate.options["recovery"]
    ordinary = option.numbers.states[0]
    assert float(ordinary.supply) * 3600.0 == pytest.approx(98.0)
    assert float(ordinary.extract) * 3600.0 == pytest.approx(112.0)
    assert found(options__recovery__flows__boost_share=0.0).result.estimate.options[
        "recovery"
    ].fan_electricity == pytest.approx(46.0 * 8.76, rel=1e-9)
    assert found().result.estimate.case.leakage.value == 3.0


def test_measured_values_are_read_back() -> None:
    points = {point.name: point for point in found().points}
    assert points["air moved, the larger of fed and drawn"].measured == pytest.approx(112.0)
    assert points["extract over supply, of the larger"].measured == pytest.approx(12.5)
    assert points["extract over supply, of the larger"].promised == pytest.approx(5.0)
    assert points["power of fans and controls"].measured == pytest.approx(46.0)
    assert points["leakage of the home"].measured == pytest.approx(3.0)


def test_the_steps_add_up_to_the_whole() -> None:
    made = found()
    for what in ("heat", "electricity", "money", "air"):
        assert sum(getattr(point, what) for point in made.points) == pytest.approx(getattr(made.whole, what), abs=1e-6)
    assert made.promised is not None
    assert made.measured is not None


def test_as_promised_is_worth_nothing() -> None:
    """Law: measured just as planned, every step is nil."""
    plan = {"fed": "a 112.86", "drawn": "b 118.8", "power": None, "leakage_measure": None, "leakage_value": None}
    made = found(**plan)
    for point in (*made.points, made.whole):
        assert point.money == pytest.approx(0.0, abs=1e-6)
        assert point.heat == pytest.approx(0.0, abs=1e-6)


@pytest.mark.parametrize("points", ["", "100 88 0.6; 200 84 0.9"])
def test_measured_power_scales_the_certificate_whatever_its_form(points: str) -> None:
    made = found(options__recovery__unit__points=points, options__recovery__unit__filter_pressure_rise=40.0)
    assert made.points[2].measured == pytest.approx(46.0)


def test_more_power_costs_and_a_tighter_home_saves() -> None:
    points = {point.name: point for point in found(power=80.0).points}
    assert points["power of fans and controls"].money < 0.0
    assert points["leakage of the home"].money > 0.0


def test_each_room_stands_beside_its_plan() -> None:
    made = found(rooms__fed="bedroom 53; living room 53", rooms__drawn="kitchen 65; shower 47")
    rooms = {(room.side, room.name): room.planned for room in made.rooms}
    assert rooms == {
        ("fed", "bedroom"): 53.0,
        ("fed", "living room"): 53.0,
        ("drawn", "kitchen"): 65.0,
        ("drawn", "bathroom"): None,
    }


@pytest.mark.parametrize(
    ("given", "where", "words"),
    [
        ({"date": "25.11.2026"}, "date", "is no date. Write year, month and day"),
        ({"date": "2026-02-30"}, "date", "no day of the calendar"),
        ({"date": "2026-1-5"}, "date", "is no date"),
        ({"leakage_date": "today"}, "leakage_date", "is no date"),
        ({"fed": "bedroom"}, "fed", "needs a name"),
        ({"leakage_value": 3.0}, "leakage_measure", "missing"),
        ({"leakage_measure": "q50"}, "leakage_value", "missing"),
        ({"power": 30.0, "option": "other"}, "option", "name of no option"),
        ({"power": -1.0}, "power", "too small"),
    ],
)
def test_what_cannot_be_is_refused_in_words(given: dict[str, Any], where: str, words: str) -> None:
    with pytest.raises(InputFaults, match=words) as refused:
        case_from_dict({"version": 1, "commissioned": given})
    assert [fault.where for fault in refused.value.faults] == [f"commissioned.{where}"]
    assert all(fault.what for fault in refused.value.faults)
