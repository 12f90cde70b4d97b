"""Does the paper say what the screen says, hold all that must stand with it, and take any name for mere text?"""

from __future__ import annotations

import csv
import datetime
import io
import re
from typing import Any

import pytest
from pypdf import PdfReader

from estimator.cautions import cautions
from estimator.climate.sources import load_year
from estimator.compare import Result
from estimator.draws import ground
from estimator.inputs.case import Case
from estimator.leak_range import leakage_span, over_leakage_range
from estimator.report import leave_html, leave_pdf, sheet_files
from estimator.report.document import STATEMENT
from estimator.report.leave import LONGEST_NAME, Names, Paper, paper, plain
from estimator.report.method_words import method_error_in_words
from estimator.report.sure_words import Tried, sentence, tried
from estimator.sample import sample
from tests.papers import NASTY, Page, harmless, joined, words_of

TODAY = datetime.date(2026, 3, 1)
NAMES = Names(prepared_for=NASTY, prepared_by="+cmd|' /C calc'!A0", note="@SUM(1+1)")


@pytest.fixture(scope="module")
def result() -> Result:
    return over_leakage_range(Case(), load_year("Upland"))[1]


@pytest.fixture(scope="module")
def found() -> Tried:
    return tried(sample(ground(Case(), load_year("Upland")), count=300), option="recovery")


@pytest.fixture(scope="module")
def made(result: Result, found: Tried) -> Paper:
    return paper(result, found, leakage_span(Case()), names=NAMES, today=TODAY)


@pytest.fixture(scope="module")
def pages(made: Paper) -> PdfReader:
    return PdfReader(io.BytesIO(leave_pdf.pdf(made)))


@pytest.fixture(scope="module")
def page(made: Paper) -> Page:
    return Page(leave_html.html(made))


def _must_stand(made: Paper, case: Case) -> list[str]:
    """Answer with range and baseline, tariff date, cautions, what is not counted, validity, and the last line."""
    figures = [cell for row in made.figures.rows for cell in row]
    return [
        made.answer, *made.then, made.sentence, *figures, made.made, made.valid, STATEMENT, *made.not_counted,
        *made.rests_on,
        "Great Britain average price cap, July to September 2026", *made.remarks,
        *(words for caution in cautions(case, place="report") for words in (caution.title, caution.words)),
        *(cell for row in made.assumptions.rows for cell in row),
        *(f"{each.title}" for each in made.workings), *(each.result for each in made.workings),
    ]  # fmt: skip


def test_the_answer_is_that_of_the_screen(made: Paper, found: Tried) -> None:
    assert made.answer == sentence(found, found.against[0])
    assert "against new plain extract" in made.answer


def test_the_error_of_the_method_stands_on_the_paper(made: Paper, result: Result) -> None:
    assert method_error_in_words(result.estimate, result.against_baseline["recovery"]) in made.rests_on


def test_the_pdf_has_two_tagged_pages_with_their_own_letters(pages: PdfReader) -> None:
    assert len(pages.pages) == 2
    catalogue: Any = pages.root_object
    assert catalogue["/MarkInfo"]["/Marked"]
    assert catalogue["/Lang"].startswith("en")
    assert pages.metadata is not None
    assert pages.metadata.title == made_title()
    leaves: Any = pages.pages
    for leaf in leaves:
        for font in leaf["/Resources"]["/Font"].values():
            descendant = font.get_object()["/DescendantFonts"][0].get_object()
            assert any(key.startswith("/FontFile") for key in descendant["/FontDescriptor"]), descendant["/BaseFont"]


def made_title() -> str:
    return "Is heat recovery worth it here?"


def test_nothing_is_left_out_of_the_pdf(pages: PdfReader, made: Paper, result: Result) -> None:
    text = words_of(pages)
    assert [words for words in _must_stand(made, result.estimate.case) if joined(words) not in text] == []


def test_nothing_is_left_out_of_the_page_for_a_browser(page: Page, made: Paper, result: Result) -> None:
    text = joined("".join(page.text))
    assert [words for words in _must_stand(made, result.estimate.case) if joined(words) not in text] == []


def test_a_name_is_mere_text_in_the_pdf(pages: PdfReader) -> None:
    assert joined("#name *bold* <script>alert(1)</script>") in words_of(pages)
    assert pages.attachments == {}
    assert "/JavaScript" not in str(pages.root_object)


def test_a_name_is_mere_text_in_the_page_and_nothing_is_asked_of_anybody(page: Page) -> None:
    harmless(page)
    assert "<script>alert(1)</script>" in "".join(page.text)
    assert "{{ 7*7 }}" in "".join(page.text)


def test_every_picture_tells_itself_to_those_who_do_not_see_it(page: Page, made: Paper) -> None:
    assert sum(tag == "svg" and attributes.get("role") == "img" for tag, attributes in page.tags) == len(made.pictures)
    assert all(one.words for one in made.pictures)


def test_the_paper_says_the_best_guess_and_no_other_middle(made: Paper, result: Result) -> None:
    words = " ".join(
        [*made.then, *(one.words for one in made.pictures), *(c for row in made.figures.rows for c in row)]
    )
    assert "middle" not in words
    best = round(result.against_baseline["recovery"].net_saving)
    assert f"best guess {'−' if best < 0 else ''}£{abs(best)}" in words


def test_a_payback_stands_in_its_cell_in_few_words(made: Paper) -> None:
    payback = next(row for row in made.figures.rows if row[0] == "simple payback")
    assert all(len(cell) <= len("more than 100 years to never, best guess more than 100 years") for cell in payback)
    assert "never" in payback[2]  # against today more air is warmed, which nothing pays back in the Upland


def test_no_sum_of_a_year_has_pence(made: Paper) -> None:
    words = " ".join([made.answer, *made.then, *(one.words for one in made.pictures), *made.figures.rows[0]])
    assert "£" in words
    assert re.findall(r"£\d+\.\d\d", words) == []


def test_direction_and_control_marks_are_dropped() -> None:
    assert plain("a\u202eb\u2066c\u200fd\x00e\x1bf\ng\th") == "abcdefg h".replace("fg", "f g")
    assert len(plain("x" * 500)) == LONGEST_NAME
    assert plain("Zoë O'Brien-Łuk 山田") == "Zoë O'Brien-Łuk 山田"


def test_no_cell_of_a_table_is_a_formula(result: Result, found: Tried, made: Paper) -> None:
    rows = list(csv.reader(io.StringIO(sheet_files.results(result, found, made).removeprefix("\ufeff"))))
    assert rows[0] == list(sheet_files.HEAD)
    for row in rows:
        for cell in row:
            assert not cell.startswith(("=", "@", "\t", "\r")), row
            assert not cell.startswith(("+", "-")) or float(cell) <= 0.0, row


@pytest.mark.parametrize("cell", ["=1+1", "+1", "-x", "@SUM(A1)", "\t=1", "\r=1"])
def test_a_formula_is_written_behind_an_apostrophe(cell: str) -> None:
    assert sheet_files.harmless(cell) == f"'{cell}"


def test_the_table_of_results_holds_the_figures_and_all_that_belongs_to_them(
    result: Result, found: Tried, made: Paper
) -> None:
    text = sheet_files.results(result, found, made)
    rows = list(csv.DictReader(io.StringIO(text.removeprefix("\ufeff"))))
    saved = next(row for row in rows if row["what"] == "saving" and row["figure"] == "saved a year after upkeep")
    assert float(saved["value"]) == result.against_baseline["recovery"].net_saving
    assert float(saved["a tenth below"]) == found.against[0].sure.net_saving.low
    notes = [row["figure"] for row in rows if row["what"] == "note"]
    assert {made.answer, STATEMENT, *(f"Not counted: {words}" for words in made.not_counted)} <= set(notes)
    assert len([row for row in rows if row["what"] == "input"]) == len(result.estimate.origins)


def test_the_hours_hold_the_notes_below_the_last_hour(result: Result, made: Paper) -> None:
    text = sheet_files.hourly(result.estimate, result.against_baseline["recovery"], made)
    rows = list(csv.reader(io.StringIO(text.removeprefix("\ufeff"))))
    assert len([row for row in rows[1:] if len(row) > 1]) == 8760
    assert rows[-1] == [STATEMENT]


def test_ranges_of_another_case_are_refused(found: Tried) -> None:
    dear = run_with_kit(9999.0)
    with pytest.raises(ValueError, match="another case"):
        paper(dear, found, leakage_span(Case()), names=Names(), today=TODAY)


def run_with_kit(price: float) -> Result:
    from dataclasses import replace

    case = Case()
    option = case.options["recovery"]
    dear = replace(option, cost=replace(option.cost, kit=price))
    return over_leakage_range(replace(case, options={**case.options, "recovery": dear}), load_year("Upland"))[1]
