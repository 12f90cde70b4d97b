"""Does the page of sureness open from the first, say what the cases say, and change with the case?"""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Browser, expect

from estimator import Case, Home, load_year
from estimator.draws import ground
from estimator.report import sure_words
from estimator.sample import sample
from tests.browser.axe import findings
from tests.browser.harness import Server
from tests.browser.windows import visit


def expected(case: Case) -> str:
    """The sentence of the Python interface in the demo climate."""
    found = sure_words.tried(sample(ground(case, load_year("Inland vale"))), option="recovery")
    return plain(sure_words.sentence(found, found.against[0]))


def plain(text: str) -> str:
    return re.sub(r"\s+", " ", text)


def test_it_says_what_the_cases_say_and_follows_the_case(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        here.open("/sure")
        here.page.get_by_role("heading", name="How sure is this?").wait_for()
        assert plain(here.answer()) == expected(Case())
        expect(here.page.get_by_test_id("stPlotlyChart")).to_have_count(2)
        here.page.get_by_text("The ranges tried, with reason and source").click()
        here.page.get_by_role("cell", name="Dirty filters", exact=True).wait_for()
        here.type("The figure, £/year", "1.300,50")
        here.page.get_by_text("was reached in none of the cases tried").wait_for()
        here.type("The figure, £/year", "lots")
        here.page.get_by_text("'lots' is not a number").wait_for()
        here.go("Worth it?")
        here.type("Floor area, m²", "200")
        here.go("Sure?")
        assert plain(here.answer()) == expected(Case(home=Home(floor_area=200.0)))
        here.assert_quiet()


@pytest.mark.parametrize(("dark", "phone"), [(False, False), (True, True)], ids=["light-desk", "dark-phone"])
def test_everybody_can_read_it(browser: Browser, server: Server, dark: bool, phone: bool) -> None:
    with visit(browser, server, dark=dark, phone=phone) as here:
        here.open("/sure")
        here.page.wait_for_selector("[data-testid=stPlotlyChart] .main-svg")
        assert findings(here.page) == []
        here.assert_quiet()
