"""Does the installer's one page say in print what it says on screen, with all that must stand beside a sum of money?"""

from __future__ import annotations

import datetime
import io
import itertools
from dataclasses import replace

import pytest
from pypdf import PdfReader

from estimator import Case, load_year
from estimator.at_leakage import ground
from estimator.cautions import cautions
from estimator.leak_range import leakage_span
from estimator.report import tight_page
from estimator.report.document import STATEMENT
from estimator.report.leave import Names
from estimator.report.rows import Rows
from estimator.report.tight import sweeps, tightness, verdict
from estimator.report.tight_paper import TightPaper, tight_paper
from estimator.survey.fill import filled
from tests.papers import NASTY, Page, harmless, joined, words_of


@pytest.fixture(scope="module")
def case() -> Case:
    """The untested demo home, with an option that is called something hostile."""
    shipped = Case()
    return replace(shipped, options={**shipped.options, "recovery": replace(shipped.options["recovery"], label=NASTY)})


@pytest.fixture(scope="module")
def made(case: Case) -> TightPaper:
    place = ground(case, load_year("Inland vale"))
    found = tightness(place, leakage_span(case), option="recovery", swept=sweeps(place, option="recovery"))
    names = Names(prepared_for=NASTY, prepared_by="+cmd|' /C calc'!A0", note="@SUM(1+1)")
    paper = tight_paper(found, filled(case), names=names, today=datetime.date(2026, 3, 1))
    assert paper.answer == verdict(found).sentence
    return paper


@pytest.fixture(scope="module")
def printed(made: TightPaper) -> PdfReader:
    return PdfReader(io.BytesIO(tight_page.pdf(made)))


@pytest.fixture(scope="module")
def shown(made: TightPaper) -> Page:
    return Page(tight_page.html(made))


def must_stand(made: TightPaper, case: Case) -> list[str]:
    """Verdict, worth, first steps, both baselines, every figure, every caution, dates, and the last line."""
    sheets: tuple[Rows, ...] = (made.house, *made.routes, made.targets, made.used)
    cells = itertools.chain.from_iterable((sheet.caption, *itertools.chain(*sheet.rows)) for sheet in sheets)
    return [
        made.answer, *made.then, *cells, made.made, made.valid, STATEMENT, made.preface, *made.rests_on,
        "Great Britain average price cap, July to September 2026",
        *(said for one in cautions(case, place="tight") for said in (one.title, one.words, one.ask)),
    ]  # fmt: skip


def seen(words: str) -> str:
    """Marks that no page can print are not looked for."""
    return joined("".join(letter for letter in words if letter.isprintable() or letter.isspace()))


def test_nothing_is_left_out_in_any_form(made: TightPaper, case: Case, printed: PdfReader, shown: Page) -> None:
    forms = (words_of(printed), "".join(shown.text), tight_page.text(made).replace("\n- ", "\n"))
    for form in map(seen, forms):
        assert [words for words in must_stand(made, case) if seen(words) not in form] == []


def test_every_form_says_what_each_figure_rests_on(made: TightPaper) -> None:
    tags = {tag for _, words in made.used.rows for tag in ("measured", "typical", "assumed") if tag in words}
    assert {"typical", "assumed"} <= tags
    assert all("to" in made.house.caption.split() for _ in made.house.rows)


def test_cautions_stand_before_money_in_every_form(made: TightPaper, printed: PdfReader, shown: Page) -> None:
    for form in (words_of(printed), joined("".join(shown.text)), joined(tight_page.text(made))):
        assert 0 < form.index(joined("Carbon monoxide")) < form.index("£")


def test_it_is_one_tagged_sheet_with_its_own_letters(printed: PdfReader) -> None:
    assert len(printed.pages) == 1
    assert printed.root_object["/MarkInfo"]["/Marked"]  # type: ignore[index]
    for font in printed.pages[0]["/Resources"]["/Font"].values():  # type: ignore[index]
        described = font.get_object()["/DescendantFonts"][0].get_object()["/FontDescriptor"]
        assert any(key.startswith("/FontFile") for key in described)


def test_a_name_in_letters_that_the_fonts_lack_is_printed_all_the_same(made: TightPaper) -> None:
    strange = replace(made, names=Names(prepared_for="山田"))
    assert len(PdfReader(io.BytesIO(tight_page.pdf(strange))).pages) == 1


def test_a_name_is_mere_text(printed: PdfReader, shown: Page) -> None:
    assert joined("#name *bold* <script>alert(1)</script>") in words_of(printed)
    assert printed.attachments == {}
    assert "/JavaScript" not in str(printed.root_object)
    harmless(shown)
    assert "<script>alert(1)</script>" in "".join(shown.text)
    assert "{{ 7*7 }}" in "".join(shown.text)
