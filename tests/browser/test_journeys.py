"""Can an adviser, a homeowner and an installer each go their whole way, and is nothing lost on it?

Every journey reads what a person sees, and holds the figures against those of the command line for the same case.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Locator, expect
from pypdf import PdfReader

from estimator import Case, Leakage, load_year
from estimator.__main__ import main
from estimator.leak_range import over_leakage_range
from estimator.report import fit_words
from estimator.report.fitting import fitting
from estimator.report.variants import QUESTION
from estimator.ui.onward import WHAT_IT_TAKES
from tests.browser.harness import Server, Visit
from tests.browser.windows import PHONE, visit


def plain(text: str) -> str:
    """One kind of space, since a line may end anywhere."""
    return re.sub(r"\s+", " ", text).strip()


def bare(text: str) -> str:
    """Letters alone, since a line of paper may end, and hyphenate, anywhere."""
    return re.sub(r"[\s\u00ad\u2010-]+", "", text)


def read_as(here: Visit, words: str) -> None:
    """Say who is reading."""
    here.choose("Who is reading", words)


def saved(here: Visit, folder: Path) -> Path:
    """The case as a file, saved from the page."""
    here.page.get_by_test_id("stPopover").get_by_role("button", name="Case").click()
    with here.page.expect_download() as waiting:
        here.page.get_by_role("button", name="Save as a file").click()
    file = folder / "case.toml"
    waiting.value.save_as(file)
    here.page.keyboard.press("Escape")
    return file


def opened(here: Visit, *, name: str, content: bytes) -> None:
    """Open a file as the case."""
    here.page.get_by_test_id("stPopover").get_by_role("button", name="Case").click()
    field = here.page.locator("input[type=file]")
    file = {"name": name, "mimeType": "application/toml", "buffer": content}
    here.after(lambda: field.set_input_files(file))  # type: ignore[arg-type]
    here.page.keyboard.press("Escape")
    expect(here.page.get_by_test_id("stPopoverBody")).to_have_count(0)


def command_line(file: Path, capsys: pytest.CaptureFixture[str]) -> str:
    """What the command line prints of a case file."""
    assert main(["estimate", str(file)]) == 0
    return plain(capsys.readouterr().out)


def test_an_adviser_asks_counts_compares_and_leaves_a_paper(
    browser: Browser, server: Server, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with visit(browser, server) as here:
        here.open()
        here.type("Floor area, m²", "140")
        here.choose("Air leakage", "Tested at 50 Pa")
        here.type("Leakage, m³/(h m²)", "4")
        here.type("Price of natural gas, p/kWh", "8,2")
        answer = plain(here.answer())
        here.go("Which way?")
        assert "counted from" in plain(here.page.locator("p.then").first.inner_text())
        here.after(here.page.get_by_role("button", name="Save a copy as a variant").click)
        here.type("Certified heat recovery, %", "92")
        here.page.get_by_text("92%, not 82%").wait_for()
        here.go("Worth it?")
        assert plain(here.answer()) == answer
        file = saved(here, tmp_path)
        assert answer in command_line(file, capsys)
        here.go("On paper?")
        said = here.answer()
        with here.page.expect_download() as waiting:
            here.page.get_by_role("button", name="Two pages (PDF)").click()
        waiting.value.save_as(tmp_path / "paper.pdf")
        text = "".join(page.extract_text() for page in PdfReader(tmp_path / "paper.pdf").pages)
        assert bare(said) in bare(text)
        here.assert_quiet()


def test_a_homeowner_compares_and_asks_what_it_would_take(browser: Browser, server: Server) -> None:
    with visit(browser, server, phone=True) as here:
        here.open()
        said = plain(here.answer())
        read_as(here, "I live here")
        assert plain(here.answer()) == said  # the same figures, whoever reads
        assert "for=home" in here.page.url
        assert (
            not here.page.get_by_role("navigation", name="Questions")
            .get_by_role("link", name="Fitted how?")
            .is_visible()
        )
        here.go("Which way?")
        here.page.get_by_role("heading", name=QUESTION).wait_for()
        here.go("Worth it?")
        here.type("Floor area, m²", "64")  # which draws the figures alone, and not what leads on
        here.after(here.page.get_by_role("button", name=WHAT_IT_TAKES).click)
        heading = here.page.get_by_role("heading", name="What would it take?")
        heading.wait_for()
        assert (heading.bounding_box() or {"y": 1e9})["y"] < PHONE["height"]  # without a search
        here.type("To pay back within, years", "10")
        here.page.get_by_text("to pay back within 10 years, all else at its best guess").wait_for()
        asked = here.answer()
        here.after(here.page.reload)
        assert here.answer() == asked
        assert "for=home" in here.page.url
        assert "case=" in here.page.url
        here.assert_quiet()


def test_an_installer_asks_for_leaks_rooms_and_frost(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        here.open("/tight?for=fitting")
        first = here.page.get_by_role("navigation", name="Questions").get_by_role("link").first
        assert first.inner_text().strip() == "Tight?"
        here.choose("Leakage test", "Tested, q50")
        here.type("Leakage, m³/(h m²)", "3")
        assert "Tight enough" in here.answer()
        here.go("Fitted how?")
        case = Case(leakage=Leakage(measure="q50", value=3.0, basis="measured"))
        low, middle, high = over_leakage_range(case, load_year(case.place.climate))
        assert plain(here.answer()) == plain(fit_words.answer(fitting(middle, (low, high), "recovery")))
        here.page.get_by_text(re.compile(r"^On site: \d+ things")).click()
        here.page.locator("p, td, th").filter(has_text=re.compile("condensate", re.I), visible=True).first.wait_for()
        words = plain(here.page.locator("[data-testid=stMain]").inner_text()).lower()
        for wanted in ("frost", "condensate", "circuit"):
            assert wanted in words
        here.go("Weather?")
        here.assert_quiet()


BAD = (
    ("bad.toml", b"\xff\xfe\x00junk", "UTF-16"),
    ("bad.toml", b"version = 1\n[home]\nfloor_area = -3\n", "home.floor_area"),
    ("bad.json", b"{", "bad.json"),
    ("old.toml", b"version = 99\n", "newer release"),
)


def test_a_file_that_cannot_be_used_is_named_and_changes_nothing(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        here.open()
        here.type("Floor area, m²", "200")
        answer = here.answer()
        for name, content, said in BAD:
            opened(here, name=name, content=content)
            here.page.get_by_role("alert").filter(has_text=said).first.wait_for()
            assert here.answer() == answer
        here.assert_quiet()


def test_a_saved_case_opens_with_its_names_which_no_address_carries(
    browser: Browser, server: Server, tmp_path: Path
) -> None:
    with visit(browser, server) as here:
        here.open()
        here.type("Floor area, m²", "200")
        here.go("Which way?")
        here.type("Name", "the offer of Example and Sons")
        here.go("Worth it?")
        answer, file = here.answer(), saved(here, tmp_path)
        assert "Example and Sons" in file.read_text(encoding="utf-8")
        assert "xample" not in here.page.url
    with visit(browser, server, phone=True) as other:
        other.open()
        opened(other, name="case.toml", content=file.read_bytes())
        assert other.answer() == answer
        other.undo("opened a file")
        assert other.answer() != answer


def test_the_whole_way_goes_by_keyboard(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        here.open()
        said = here.answer()

        def reach(wanted: Locator) -> None:
            wanted.evaluate("node => node.setAttribute('data-wanted', '')")
            for _ in range(60):
                here.page.keyboard.press("Tab")
                if here.page.evaluate("() => document.activeElement.hasAttribute('data-wanted')"):
                    return
            raise AssertionError(f"sixty steps do not lead to {wanted}")

        reach(here.page.get_by_label("Floor area, m²", exact=True))
        here.page.keyboard.press("ControlOrMeta+A")
        here.page.keyboard.type("240")
        here.after(lambda: here.page.keyboard.press("Enter"))
        assert here.answer() != said
        here.page.keyboard.press("ControlOrMeta+Home")
        here.page.evaluate("() => document.activeElement.blur()")
        reach(here.page.get_by_role("button", name="Undo"))
        here.after(lambda: here.page.keyboard.press("Enter"))
        assert here.answer() == said


def test_whoever_thinks_in_feet_reads_and_types_them_and_the_figures_stay(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        here.open()
        said = here.answer()
        here.page.get_by_test_id("stPopover").get_by_role("button", name="Case").click()
        here.choose("Units", "imperial: ft², cfm, °F, in")
        here.page.keyboard.press("Escape")
        assert here.answer() == said
        assert here.page.get_by_label("Floor area, ft²", exact=True).input_value() == "1180"
        assert "1,180 ft²" in plain(here.page.locator("p.sentence").inner_text())
        here.type("Floor area, ft²", "2400")
        assert "2,400 ft²" in plain(here.page.locator("p.sentence").inner_text())
        here.go("Tight?")
        here.after(here.page.reload)
        assert "units=imperial" in here.page.url
        here.assert_quiet()
