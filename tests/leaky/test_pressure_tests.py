"""Is a list of pressure tests read strictly, which test stands for the house, and who sees the notes?"""

from __future__ import annotations

import pytest

from estimator import Case, case_from_dict, case_from_text, case_to_toml, run
from estimator.climate.year import ClimateYear
from estimator.errors import InputFaults
from estimator.inputs.pressure_tests import pressure_log
from estimator.leak_range import leakage_span, pressure_history, with_q50
from estimator.survey.fill import filled
from estimator.ui.link import from_link, to_link

LINE = "2021-03 q50 5.0 (after the windows); 2010 q50 9.2 (as bought); 2019 works (windows, name of a firm)"


def listed(line: str, **entries: object) -> Case:
    return case_from_dict({"version": 1, "leakage": {"tests": line, **entries}})


def test_the_newest_test_after_the_works_stands_for_the_house() -> None:
    survey = filled(listed(LINE))
    assert (survey.case.leakage.measure, survey.case.leakage.value) == ("q50", 5.0)
    origin = survey.origins["leakage.value"]
    assert origin.tag == "measured"
    assert origin.source == "pressure test of 2021-03, the newest of 2, after the works of 2019"


def test_a_test_before_the_works_counts_for_nothing() -> None:
    # EN ISO 9972, 10 % in calm weather (from memory): 4.5 to 5.5, and nothing of the 9.2 before the works.
    span = leakage_span(listed(LINE))
    assert (span.low, span.middle, span.high) == pytest.approx((4.5, 5.0, 5.5))
    assert span.tested
    only_old = leakage_span(listed("2010 q50 9.2; 2019 works"))
    assert not only_old.tested
    assert only_old.middle == leakage_span(Case()).middle


def test_several_valid_tests_widen_the_span_by_their_drift() -> None:
    # By hand: 0.1 a year from 3.0 in 2010 over 3.5 in 2015 to 4.0 in 2020, so 4.6 in 2026, and a tenth more: 5.06.
    case = listed("2010 q50 3.0; 2015 q50 3.5; 2020 q50 4.0")
    assert leakage_span(case).high == pytest.approx(5.06)
    assert leakage_span(filled(case).case).high == pytest.approx(5.06)
    found = pressure_history(case)
    assert found is not None
    assert "leakier by 0.10 a year" in found.words


def test_the_list_gives_the_estimate_of_its_newest_test(year: ClimateYear) -> None:
    plain = case_from_dict({"version": 1, "leakage": {"measure": "n50", "value": 4.1, "basis": "measured"}})
    ours = run(listed("2015 q50 9.0; 2021-03-15 n50 4.1"), year).against_baseline["recovery"]
    assert ours.net_saving == run(plain, year).against_baseline["recovery"].net_saving


def test_a_leakage_that_is_entered_stands_in_place_of_the_list() -> None:
    case = listed(LINE, measure="q50", value=3.0)
    assert filled(case).case.leakage.value == 3.0
    assert pressure_history(case) is None
    moved = with_q50(listed(LINE), 4.0)
    assert leakage_span(moved).middle == pytest.approx(4.0)


def test_notes_stay_in_the_file_and_out_of_the_link() -> None:
    case = listed(LINE)
    assert "name of a firm" in case_to_toml(case)
    assert case_from_text(case_to_toml(case), name="a case").leakage.tests == LINE
    back = from_link(to_link({"version": 1, "leakage": {"tests": LINE}}))
    assert back["leakage"]["tests"] == "2021-03 q50 5.0; 2010 q50 9.2; 2019 works"


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("q50 9.2", "is no date"),
        ("2016-13 q50 9.2", "is no date"),
        ("16 q50 9.2", "is no date"),
        ("2016 q75 9.2", "neither a test nor works"),
        ("2016 q50", "neither a test nor works"),
        ("2016 q50 nan", "is no leakage"),
        ("2016 q50 0", "is no leakage"),
        ("2016 q50 4,1", "is no leakage"),
        ("2016 rebuilt", "neither a test nor works"),
        ("2016 q50 9.2 (open", "neither a test nor works"),
        ("(a note)", "is no date"),
    ],
)
def test_what_cannot_be_read_is_refused_in_words(line: str, said: str) -> None:
    with pytest.raises(InputFaults) as refused:
        listed(line)
    (fault,) = refused.value.faults
    assert fault.where == "leakage.tests"
    assert said in fault.what


def test_an_empty_list_says_nothing() -> None:
    assert pressure_log(" ; ").newest is None
    assert leakage_span(listed("")).tag == "typical"
