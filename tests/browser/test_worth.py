"""Does the first page answer, recompute, keep its case, and stay readable for everybody?"""

from __future__ import annotations

import re
from functools import cache

import pytest
from playwright.sync_api import Browser, expect

from estimator import case_from_dict, load_year, run
from estimator.draws import ground
from estimator.reach import reach
from estimator.report.answer import reached
from estimator.sample import sample
from tests.browser.axe import findings
from tests.browser.harness import Server
from tests.browser.windows import visit


@cache
def expected(section: str = "home", **entries: object) -> str:
    """The answer of the Python interface for the demo home with these entries, over all cases tried."""
    case, year = case_from_dict({"version": 1, section: entries}), load_year("Inland vale")
    comparison = run(case, year).against_baseline["recovery"]
    found = reach(sample(ground(case, year)).cases, option="recovery", baseline="extract", years=comparison.life)
    return reached(comparison, found, "£").sentence


def plain(text: str) -> str:
    return re.sub(r"\s+", " ", text)


WATCH = """() => { window.seen = []; new MutationObserver(() => {
  const said = document.querySelector('.basis')?.innerText;
  if (said && said !== seen.at(-1)) seen.push(said);
}).observe(document.body, {subtree: true, childList: true, characterData: true}); }"""


def test_a_changed_input_has_a_first_look_that_says_so_and_then_the_answer_of_all_cases(
    browser: Browser, server: Server
) -> None:
    with visit(browser, server) as here:
        here.open()
        before = plain(here.answer())
        assert before == plain(expected())
        here.page.evaluate(WATCH)
        here.type("Floor area, m²", "133")  # which nobody else asks for
        first, last = here.page.evaluate("() => seen")[-2:]
        assert first.startswith("About: ")
        assert last.startswith("Eight of ten of 2,000 cases")
        after = plain(here.answer())
        assert after == plain(expected(floor_area=133.0))
        assert after != before
        here.after(here.page.get_by_role("button", name="Undo").click)
        assert plain(here.answer()) == before
        assert here.page.locator(".basis").inner_text() == last
        here.assert_quiet()


def test_the_case_outlives_a_reload_another_device_and_undo(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        here.open()
        here.type("Floor area, m²", "200")
        here.choose("Heated by", "Heating oil")
        said, address = here.answer(), here.page.url
        assert "case=1." in address
        here.after(here.page.reload)
        assert here.answer() == said
        assert here.page.get_by_label("Floor area, m²", exact=True).input_value() == "200"
    with visit(browser, server, phone=True) as other:
        other.open(address.removeprefix(server.url))
        assert other.answer() == said
        other.assert_quiet()


def test_a_price_with_a_decimal_comma_is_the_price_that_was_meant(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        here.open()
        here.type("Price of natural gas, p/kWh", "12,5")
        assert plain(here.answer()) == plain(expected("prices", fuel=12.5))
        assert "12.5p/kWh" in here.page.locator("p.sentence").inner_text()
        here.type("Price of natural gas, p/kWh", "1250")
        assert "outside the limits" in here.page.get_by_role("alert").first.inner_text()
        assert plain(here.answer()) == plain(expected("prices", fuel=12.5))


def test_a_pressure_test_narrows_the_answer(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        here.open()
        here.choose("Air leakage", "Tested at 50 Pa")
        here.type("Leakage, m³/(h m²)", "2")
        assert "(tested)" in here.page.locator("p.sentence").inner_text()
        assert "would save" in here.answer()
        here.choose("Air leakage", "Not tested")
        assert plain(here.answer()) == plain(expected())


@pytest.mark.parametrize(("dark", "phone"), [(False, False), (True, True)], ids=["light-desk", "dark-phone"])
def test_everybody_can_read_it(browser: Browser, server: Server, dark: bool, phone: bool) -> None:
    with visit(browser, server, dark=dark, phone=phone) as here:
        here.open()
        for opens in ("More pictures", "All details"):
            here.after(here.page.get_by_text(opens).click)
        here.page.wait_for_selector("[data-testid=stPlotlyChart] .main-svg")
        assert findings(here.page) == []
        pictures = here.page.locator(".picture img:visible")
        expect(pictures).to_have_count(2)
        assert "kWh" in (pictures.first.get_attribute("alt") or "")
        here.assert_quiet()


def test_the_answer_stays_in_sight_while_inputs_change_on_a_phone(browser: Browser, server: Server) -> None:
    with visit(browser, server, phone=True) as here:
        here.open()
        here.page.get_by_label("Floor area, m²", exact=True).scroll_into_view_if_needed()
        here.page.get_by_role("combobox", name="Aired today by").scroll_into_view_if_needed()
        box = here.page.locator("p.answer").bounding_box()
        assert box is not None
        assert 0 <= box["y"] < 200
        for y in (box["y"] + 3, box["y"] + box["height"] - 3):
            uncovered = "([x, y]) => document.elementFromPoint(x, y).closest('p.answer') !== null"
            assert here.page.evaluate(uncovered, [box["x"] + 5, y])


def test_the_picture_is_lettered_as_wide_as_it_was_reckoned(browser: Browser) -> None:
    """Chromium's own measure of the embedded letters, against the table from which labels are set."""
    from estimator.report.drawing import text_width
    from estimator.report.fresh_air import FreshAir, Take
    from estimator.report.ribbon import ribbon

    account = FreshAir(
        past=1200.0,
        lost=400.0,
        kept=1800.0,
        saved=1300.0,
        baseline="new plain extract",
        heat_price=0.09,
        takes=(Take(name="fans", cost=38.0), Take(name="filters and service", cost=40.0, meaning="upkeep")),
        currency="£",
    )
    page = browser.new_page()
    page.set_content(ribbon(account, look="light"))
    page.evaluate("() => document.fonts.ready")
    measured = page.eval_on_selector_all(
        "svg text",
        "nodes => nodes.map(n => [n.textContent, n.getComputedTextLength(), n.getAttribute('font-size'), "
        "n.getAttribute('font-weight')])",
    )
    assert len(measured) > 10
    for text, width, size, weight in measured:
        reckoned = text_width(text, size=float(size), weight=700 if weight == "700" else 500)
        assert reckoned == pytest.approx(width, rel=0.03), text
    page.close()
