"""Does the page of the years open from the first, say what the Python interface says, and take prices and bills?"""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Browser

from estimator import Case, load_year, run
from estimator.draws import ground
from estimator.inputs.prices import Prices
from estimator.metered import today_year
from estimator.report.life import answer, lives
from estimator.report.sure_words import tried
from estimator.sample import sample
from estimator.survey.fill import filled
from tests.browser.axe import findings
from tests.browser.harness import Server
from tests.browser.windows import visit

YEAR = load_year("Inland vale")


def plain(text: str) -> str:
    return re.sub(r"\s+", " ", text)


def expected(case: Case) -> str:
    """The first line by the Python interface."""
    result, found = run(case, YEAR), tried(sample(ground(case, YEAR)), option="recovery")
    both = {case.baseline: result.against_baseline["recovery"], case.today: result.against_today["recovery"]}
    return plain(answer(lives(found, both)[0]))


def test_it_says_what_the_years_say_and_takes_a_price_with_a_comma(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        here.open("/years")
        here.page.get_by_role("heading", name="What does it pay over its life?").wait_for()
        assert plain(here.answer()) == expected(Case())
        here.page.get_by_test_id("stPlotlyChart").nth(1).wait_for()
        here.after(here.page.get_by_text("Bills by month and carbon by year").click)
        here.page.get_by_test_id("stPlotlyChart").nth(3).wait_for()
        here.type("Price of the heating fuel, p/kWh", "12,5")
        here.page.get_by_text("12.5 pence a kWh", exact=True).wait_for()
        assert plain(here.answer()) == expected(Case(prices=Prices(fuel=12.5)))
        here.choose("Kind of tariff", "Prices by the hour")
        here.type("Hours with their own price", "9,5 at 0:30-5:30")
        here.page.get_by_text("Write a decimal point.").first.wait_for()
        here.type("Hours with their own price", "9.5 at 0:30-5:30")
        here.page.get_by_text("9.5 pence a kWh from 0:30 to 5:30 every day").first.wait_for()
        here.assert_quiet()


def test_a_bill_is_taken_into_the_case_and_out_again(browser: Browser, server: Server) -> None:
    whole = filled(Case()).case
    today = today_year(whole, YEAR)
    with visit(browser, server) as here:
        here.open("/years")
        here.page.get_by_text("Does this fit your own bill?").click()
        here.type("Bill of a year, kWh", f"{1.1 * (today.fuel_energy + today.hot_water_fuel):.0f}")
        here.page.get_by_text("The bill fits a heat loss of the fabric of").wait_for()
        here.after(lambda: here.page.get_by_role("button", name="Take it into the case").click())
        here.page.get_by_text("it fits.").wait_for()
        here.go("Worth it?")
        here.undo("Heat loss of the fabric from the bill")
        here.go("Years?")
        here.page.get_by_text("Does this fit your own bill?").click()
        here.type("Bill of a year, kWh", "1200")
        here.page.get_by_text("leave nothing for heating").wait_for()
        here.assert_quiet()


@pytest.mark.parametrize(("dark", "phone"), [(False, False), (True, True)], ids=["light-desk", "dark-phone"])
def test_everybody_can_read_it(browser: Browser, server: Server, dark: bool, phone: bool) -> None:
    with visit(browser, server, dark=dark, phone=phone) as here:
        here.open("/years")
        here.page.wait_for_selector("[data-testid=stPlotlyChart] .main-svg")
        here.page.get_by_text("How each figure is worked out").click()
        here.page.get_by_role("tab", name="Years and discount").click()
        assert findings(here.page) == []
        here.assert_quiet()
