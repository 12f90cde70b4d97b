"""Is the method's own error said of the right climates and the right homes, and wider where it is wider?"""

from __future__ import annotations

import dataclasses

import pytest

from estimator import Case, load_year, run
from estimator.compare import Result
from estimator.evidence.method import MethodRun, band_of, met_by_heating, method_error, method_run
from estimator.inputs.heating import Heating
from estimator.report import method_words

RUN = method_run()


def noted(run: MethodRun) -> str:
    return " ".join(method_words.method_notes(run))


@pytest.fixture(scope="module")
def result() -> Result:
    return run(Case(), load_year("Inland vale"))


def test_the_first_sentence_is_of_climates_it_was_not_fitted_on() -> None:
    fresh = [row for row in RUN.climates if row.fitted == "no"]
    said = method_words.method_answer(RUN)
    assert f"{max(100 * row.nineteen_in_twenty for row in fresh):.1f}%" in said
    assert f"{len(fresh)} climates" in said
    assert f"{sum(not row.invented for row in fresh)} of them real" in said


def test_the_worst_home_and_all_homes_far_off_are_told() -> None:
    said = noted(RUN)
    assert RUN.date in said
    assert f"{max(100 * row.worst for row in RUN.climates):.1f}%" in said
    for row in RUN.climates:
        assert (f"{row.beyond} in {row.climate}" in said) == (row.beyond > 0 and row.fitted == "no")
        missed = row.fitted == "no" and row.nineteen_in_twenty > method_words.NEAR
        assert (f"In {row.climate} {100 * row.wide:.1f}% of homes lie beyond 2.5%" in said) == missed
    near = [dataclasses.replace(row, beyond=0, nineteen_in_twenty=0.01) for row in RUN.climates]
    none = noted(dataclasses.replace(RUN, climates=tuple(near)))
    assert "No home differs" in none
    assert "In each of them 19 of 20 homes keep within 2.5%" in none


def test_a_climate_that_may_have_been_fitted_on_is_not_counted_as_fresh_and_says_so() -> None:
    rows = {row.climate: cells[0] for row, cells in zip(RUN.climates, method_words.method_table(RUN).rows, strict=True)}
    perhaps = [row for row in RUN.climates if row.fitted == "perhaps"]
    assert perhaps
    assert all("perhaps fitted on it" in rows[row.climate] for row in perhaps)
    wide = [dataclasses.replace(row, median=0.5) if row in perhaps else row for row in RUN.climates]
    said = method_words.method_answer(dataclasses.replace(RUN, climates=tuple(wide)))
    assert said == method_words.method_answer(RUN)


def test_every_climate_and_every_band_has_a_line() -> None:
    assert len(method_words.method_table(RUN).rows) == len(RUN.climates)
    assert len(method_words.band_table(RUN).rows) == len(RUN.bands)


def test_bands_are_in_order_and_hold_every_home_of_the_run() -> None:
    ends = [band.up_to for band in RUN.bands]
    assert ends == sorted(ends)
    assert ends[-1] == 1.0
    assert sum(band.homes for band in RUN.bands) == RUN.homes * len(RUN.climates)
    assert all(band.least <= band.low < band.high <= band.most for band in RUN.bands)
    assert band_of(1.2, RUN) is RUN.bands[-1]
    assert band_of(0.05, RUN) is RUN.bands[0]


def test_less_left_to_heat_is_a_wider_error() -> None:
    """The band of the least heated homes is several times as wide as that of the most heated."""
    widths = [band.high - band.low for band in RUN.bands]
    assert widths == sorted(widths, reverse=True)
    assert widths[0] > 5.0 * widths[-1]


def test_the_bounds_of_a_home_like_this(result: Result) -> None:
    comparison = result.against_baseline["recovery"]
    found = method_error(result.estimate, comparison)
    assert found is not None
    assert found.low < found.saved * 1.02
    assert found.high > found.saved * 0.98
    assert found.low < found.high
    share = met_by_heating(result.estimate, comparison.baseline)
    assert 0.3 < share < 0.9
    said = method_words.method_error_in_words(result.estimate, comparison)
    assert f"{100 * share:.0f}%" in said


def test_a_saving_of_nearly_nothing_is_not_said_to_be_exact(result: Result) -> None:
    comparison = dataclasses.replace(result.against_baseline["recovery"], heat_saved=0.0)
    found = method_error(result.estimate, comparison)
    assert found is not None
    assert found.low < 0.0 < found.high


def test_degree_days_below_a_fixed_base_claim_nothing() -> None:
    done = run(Case(heating=Heating(mode="fixed base", base_temperature=15.5)), load_year("Inland vale"))
    comparison = done.against_baseline["recovery"]
    assert method_error(done.estimate, comparison) is None
    assert "not held against" in method_words.method_error_in_words(done.estimate, comparison)
