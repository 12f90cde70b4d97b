"""Does the leaky-house page open from the first, answer, and answer anew when the leakage changes?"""

from __future__ import annotations

import io
import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, expect
from pypdf import PdfReader

from estimator import Case, Leakage, load_year
from estimator.at_leakage import ground
from estimator.leak_range import leakage_span
from estimator.report.tight import sweeps, tightness, verdict
from estimator.report.tight_picture import MEASURES
from tests.browser.axe import findings
from tests.browser.harness import Server, Visit
from tests.browser.windows import visit
from tests.papers import Page, joined, words_of


def expected(case: Case) -> str:
    """The verdict of the Python interface in the demo climate."""
    place = ground(case, load_year("Inland vale"))
    swept = sweeps(place, option="recovery")
    return plain(verdict(tightness(place, leakage_span(case), option="recovery", swept=swept)).sentence)


def leaking(q50: float) -> Case:
    return Case(leakage=Leakage(measure="q50", value=q50, basis="measured"))


def plain(text: str) -> str:
    return re.sub(r"\s+", " ", text)


def follow(here: Visit) -> None:
    """By its address."""
    here.open("/tight")
    here.page.get_by_role("heading", name="Is this house tight enough?").wait_for()


def test_another_leakage_is_another_verdict(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        follow(here)
        assert plain(here.answer()) == expected(Case())
        here.choose("Leakage test", "Tested, q50")
        here.type("Leakage, m³/(h m²)", "2")
        assert plain(here.answer()) == expected(leaking(2.0))
        here.type("Leakage, m³/(h m²)", "12")
        assert plain(here.answer()) == expected(leaking(12.0))
        assert "No, too leaky" in here.answer()
        here.after(here.page.get_by_role("button", name="Undo").click)
        assert plain(here.answer()) == expected(leaking(2.0))
        here.choose("Leakage test", "Not tested")
        assert plain(here.answer()) == expected(Case())
        here.assert_quiet()


def test_what_is_folded_away_opens_and_the_page_can_be_kept(browser: Browser, server: Server, tmp_path: Path) -> None:
    with visit(browser, server) as here:
        follow(here)
        for title, inside in (
            ("In numbers", "20"),
            ("Which leakage is the best to seal to?", "With heat recovery"),
            ("How leaky is it without a test?", "By what can be seen"),
            ("For experts: does it depend on the model?", "enhanced; quadrature"),
        ):
            here.after(here.page.get_by_text(title, exact=True).click)
            here.page.get_by_role("rowheader", name=inside).wait_for()
        here.page.get_by_role("button", name="The verdict on one page").click()
        read = {}
        for button in ("As text", "To print (PDF)", "For a browser"):
            with here.page.expect_download() as kept:
                here.page.get_by_role("button", name=button).click()
            kept.value.save_as(tmp_path / button)
            read[button] = (tmp_path / button).read_bytes()
        text = read["As text"].decode()
        assert plain(here.answer()) in plain(text)
        assert text.index("Carbon monoxide") < text.index("£")
        assert joined(here.answer()) in words_of(PdfReader(io.BytesIO(read["To print (PDF)"])))
        assert joined(here.answer()) in joined("".join(Page(read["For a browser"].decode()).text))
        here.assert_quiet()


def test_each_figure_can_be_drawn_over_leakage(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        follow(here)
        for button, title, told in (
            ("Payback", "it pays back within 20 years", "Years until the extra cost is back at each leakage"),
            ("Heat saved", "the tightest home saves", "Heat saved a year at each leakage"),
            ("Share of fresh air", "of the fresh air passes the exchanger", "Share of fresh air through the exchanger"),
            ("Net saving", "the tightest home", "Net saving a year at each leakage"),
        ):
            here.after(here.page.get_by_test_id("stRadio").get_by_text(button, exact=True).click)
            here.page.locator("h2.finding", has_text=title).first.wait_for()
            here.page.locator(f'.picture img[alt^="{told}"]:visible').wait_for()
        here.assert_quiet()


@pytest.mark.parametrize(("dark", "phone"), [(False, False), (True, True)], ids=["light-desk", "dark-phone"])
def test_everybody_can_read_it(browser: Browser, server: Server, dark: bool, phone: bool) -> None:
    with visit(browser, server, dark=dark, phone=phone) as here:
        follow(here)
        drawn = here.page.locator(".picture img:visible")
        drawn.wait_for()
        larger = drawn.evaluate("image => image.clientWidth / image.naturalWidth")
        assert larger * MEASURES["phone" if phone else "desk"].size >= 12.0
        assert findings(here.page) == []
        expect(here.page.get_by_role("table")).to_have_count(2)
        here.assert_quiet()
