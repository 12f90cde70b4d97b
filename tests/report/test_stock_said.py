"""Does the page about many homes say what was counted?"""

from __future__ import annotations

import numpy as np
import pytest

from estimator.report import stock_said, stock_words
from estimator.report.stock_summary import error_lines, paybacks, summary
from estimator.stock.chunk import PAYBACK_EDGES
from estimator.stock.outcome import ROUTES
from estimator.stock.verdict import ANSWERS, REASONS, TIGHTNESS

COUNTS = {
    "rows": 1010,
    "faulty": 10,
    "not tested": 600,
    "saves against today": 0,
    "answer: pays back within its life": 40,
    "answer: saves, but not its cost within its life": 160,
    "answer: does not pay back": 800,
    "tightness: seal first: it saves only once sealed": 500,
    "route: leave as is": 900,
    "route: recover only": 100,
    "payback: 2": 40,
    "payback: 5": 160,
    "fault: home.age": 10,
}


def test_sentences_count_the_homes_that_have_no_fault() -> None:
    said = stock_said.answer(COUNTS, option="heat recovery", baseline="new plain extract")
    assert "40 of 1,000 homes (4%)" in said
    assert "160 of 1,000 homes (16%)" in said
    assert "new plain extract" in said
    assert "500 of 1,000 homes (50%)" in stock_said.sealing(COUNTS)
    assert "“leave as is”: in 900 of 1,000" in stock_said.sealing(COUNTS)
    assert "none of 1,000 homes" in stock_said.today(COUNTS, option="heat recovery")
    assert "600 of 1,000 homes (60%)" in stock_said.untested(COUNTS)
    assert stock_said.faults(COUNTS).startswith("10 rows have faults")
    assert stock_said.faults({"rows": 5}) == ""
    assert "every row has a fault" in stock_said.answer({"rows": 3, "faulty": 3}, option="a", baseline="b")


def test_every_key_of_a_verdict_has_its_words() -> None:
    assert set(stock_words.ANSWERS) == set(ANSWERS)
    assert set(stock_words.TIGHTNESS) == set(TIGHTNESS)
    assert set(stock_words.REASONS) == set(REASONS)
    assert len(ROUTES) == 4


def test_paybacks_add_up_to_all_homes() -> None:
    found = paybacks(COUNTS, PAYBACK_EDGES)
    assert sum(many for _, many in found) == 1000
    assert dict(found)["10 to 15 years"] == 40
    assert dict(found)["never"] == 800


def test_the_error_told_is_that_of_the_homes_that_took_both_years() -> None:
    short_and_full = np.array([[101.0, 100.0, 9.0, 10.0, 2.0, 2.0, 8.0, 8.0]] * 9 + [[100.0] * 2 + [10.0] * 6])
    lines = error_lines(short_and_full, currency="£")
    assert "in 10 homes" in lines[0]
    assert lines[1].strip().startswith("heat saved: 1 / 1 / 1 kWh a year, 1% of it")
    assert lines[2].strip().startswith("net saving: £1 / £1 / £1 a year")
    assert error_lines(np.empty((0, 8)), currency="£") == ["Every home took the full year of hours."]


def test_small_errors_are_told_no_finer_than_anybody_needs() -> None:
    fine = np.array([[1200.4, 1200.0, 40.0839, 40.0, 2.0, 2.0, 8.0, 8.0]] * 4)
    lines = [line.replace("\u00a0", " ").strip() for line in error_lines(fine, currency="kr")]
    assert lines[2] == "net saving: 0.08 kr / 0.08 kr / 0.08 kr a year"
    assert not any("money" in line for line in lines)


def test_the_summary_puts_danger_before_money_and_names_what_was_not_read() -> None:
    text = summary(
        COUNTS,
        np.empty((0, 8)),
        option="heat recovery",
        baseline="new plain extract",
        climate="Upland (invented)",
        currency="£",
        edges=PAYBACK_EDGES,
        strangers=("Tenant",),
        left_out=("home.storeys",),
    )
    assert text.startswith("Local codes and licensed trades come first.")
    assert "1,010 rows: 1,000 homes screened, 10 with faults" in text
    assert "home.age" in text
    assert "not carried into the results: Tenant." in text
    assert "No column for home.storeys" in text


def test_a_home_is_told_with_what_its_leakage_rests_on() -> None:
    row: dict[str, float | str | None] = {
        "q50": 6.0,
        "net_saving": 120.0,
        "payback": 14.0,
        "answer": "pays back within its life",
        "basis": "typical",
    }
    said = stock_said.home("Ash 1", row, currency="£")
    told = [cell.replace("\u00a0", " ") for cell in said]
    assert told == ["Ash 1", "not tested", "£120", "pays back within its life, in 14 years"]
    assert "not tested" not in " ".join(stock_said.home("Ash 1", {**row, "basis": "measured"}, currency="£"))
    assert stock_said.homes([said], faulty=False).rows == (said,)
    assert len(stock_said.homes([("Ash 2", "home.age: no age")], faulty=True).head) == 2
    with pytest.raises(KeyError):
        stock_said.home("Ash 1", {"q50": 6.0}, currency="£")
