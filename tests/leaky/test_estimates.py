"""Do the published ways of judging an untested house give a span, and do several tests say what they should?"""

import dataclasses
from typing import Any

import pytest

from estimator import Case
from estimator.inputs.home import Home
from estimator.inputs.sealing import Draughts
from estimator.leak_estimates import BY_AGE, BY_COMPONENTS, BY_FLOOR_AREA, BY_SURFACE, leakage_estimates
from estimator.leak_range import leakage_span
from estimator.leak_span import LeakageSpan
from estimator.leak_tests import PressureTest, history
from estimator.survey.typical import outdoor_surface


def seen(**entries: Any) -> LeakageSpan:
    return leakage_estimates(dataclasses.replace(Case(), draughts=Draughts(**entries)))[BY_COMPONENTS]


KNOWN = {"floor": "solid", "lobby": "no", "stripped": "all"}


def test_the_component_method_adds_up_as_the_worksheet_does() -> None:
    # UK Standard Assessment Procedure 2012, section 2, from memory: masonry 0.35, second storey 0.1, no lobby 0.05, all
    # windows stripped 0.05, together 0.55 1/h where a tested q50 over twenty would stand: 11.
    assert seen(**KNOWN).middle == pytest.approx(11.0)


def test_an_open_chimney_adds_its_flow() -> None:
    # 40 m³/h each (as above) in 264 m³ is 0.1515 1/h, or 3.03 in the place of q50.
    assert seen(**KNOWN, chimneys=1).middle - seen(**KNOWN).middle == pytest.approx(3.03, abs=0.005)
    assert seen(**KNOWN, flues=2).middle == pytest.approx(seen(**KNOWN, chimneys=1).middle)


def test_an_unknown_answer_widens_the_span_and_a_known_one_narrows_it() -> None:
    unknown, known = seen(), seen(**KNOWN)
    assert unknown.low <= known.low < known.high < unknown.high
    assert known.low < known.middle < known.high


def test_a_timber_frame_is_taken_to_be_tighter_than_masonry() -> None:
    frame = dataclasses.replace(Case(), home=Home(construction="timber frame"), draughts=Draughts(**KNOWN))  # type: ignore[arg-type]
    # 0.25 against 0.35 1/h (as retold): 2 less in the place of q50.
    assert seen(**KNOWN).middle - leakage_estimates(frame)[BY_COMPONENTS].middle == pytest.approx(2.0)


def test_the_standard_by_floor_area_doubles_from_low_to_average_to_high() -> None:
    span = leakage_estimates(Case())[BY_FLOOR_AREA]
    assert span.middle / span.low == pytest.approx(2.0)
    assert span.high / span.middle == pytest.approx(2.0)


def test_the_surface_out_of_doors_leaves_out_the_ground_and_the_neighbours() -> None:
    # By hand: 50 m² on each of two floors, aspect 1.5, so 8.66 m by 5.77 m and 28.87 m round; 4.8 m high: 138.56 m² of
    # wall, of which a middle house in a terrace shows four tenths; 50 m² of roof.
    home = Home(floor_area=100.0, form="terraced", age="2011 or later")
    assert float(outdoor_surface(home)) == pytest.approx(0.4 * 138.56 + 50.0, abs=0.01)
    by_surface = leakage_estimates(Case(home=home))[BY_SURFACE]
    # Table 3 of ASHRAE Handbook Fundamentals 2021, ch. 17: every class leaks twice as much as the one before.
    assert by_surface.middle / by_surface.low == pytest.approx(2.0)
    assert by_surface.high / by_surface.middle == pytest.approx(2.0)


def test_the_table_of_ages_is_the_span_in_use() -> None:
    by_age, used = leakage_estimates(Case())[BY_AGE], leakage_span(Case())
    assert (by_age.low, by_age.middle, by_age.high) == pytest.approx((used.low, used.middle, used.high))


def test_no_way_of_judging_claims_a_test() -> None:
    assert all(not span.tested and "not tested" in span.words for span in leakage_estimates(Case()).values())


def test_one_test_is_its_own_answer() -> None:
    one = history([PressureTest(when=2024.5, q50=4.0)], today=2026.0)
    assert one.drift is None
    assert (one.span.low, one.span.middle, one.span.high) == pytest.approx((3.6, 4.0, 4.4))
    assert one.span.tested


def test_a_house_that_leaks_more_each_year_is_carried_on_to_today() -> None:
    tests = [PressureTest(when=year, q50=q50) for year, q50 in ((2010, 3.0), (2015, 3.5), (2020, 4.0))]
    found = history(tests, today=2025)
    assert found.drift == pytest.approx(0.1)
    assert found.span.middle == pytest.approx(4.0)
    # By hand: carried on to 4.5 in 2025, and a tenth more.
    assert found.span.high == pytest.approx(4.95)
    assert found.span.low == pytest.approx(3.6)
    assert "leakier by 0.10 a year" in found.words


def test_tests_of_one_moment_are_averaged() -> None:
    both = history([PressureTest(when=2020, q50=3.8), PressureTest(when=2020, q50=4.2)], today=2026)
    assert both.span.middle == pytest.approx(4.0)
    assert both.drift is None


@pytest.mark.parametrize("tests", [[], [PressureTest(when=2030, q50=4.0)]])
def test_no_test_or_one_from_the_future_is_refused(tests: list[PressureTest]) -> None:
    with pytest.raises(ValueError, match="pressure test"):
        history(tests, today=2026)
