"""Does the weather page compare, follow its base, and stay readable for everybody?"""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser

from tests.browser.axe import findings
from tests.browser.harness import Server, Visit
from tests.browser.windows import visit


def go(here: Visit) -> None:
    """By its address."""
    here.open("/weather")


def test_another_climate_and_another_base_change_the_words(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        go(here)
        assert "less cold to work on than in Upland" in here.answer()
        here.choose("Beside the weather of", "Mild coast")
        assert "than in Mild coast" in here.answer()
        here.type("Cold counts below, °C", "12")
        assert "Below 12" in here.page.locator("h2.finding").nth(1).inner_text()
        here.assert_quiet()


def test_the_weather_is_that_of_the_case(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        here.open()
        here.choose("Weather like", "Cold plain")
        here.go("Weather?")
        assert "Cold plain: " in here.page.locator("p.then").inner_text()
        assert "more cold" in here.answer()
        here.assert_quiet()


def test_pictures_side_by_side_begin_on_one_line(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        go(here)
        heads = [head.bounding_box() for head in here.page.locator("h2.finding").all()]
        assert len({round(box["height"]) for box in heads if box}) == 2  # of one line, and of two
        tops = [box["y"] for each in here.page.locator(".js-plotly-plot").all() if (box := each.bounding_box())]
        assert len(tops) == 6
        assert tops[0::2] == tops[1::2]
        wide = [box["width"] for each in here.page.locator(".js-plotly-plot").all() if (box := each.bounding_box())]
        assert max(wide) - min(wide) < 1.0


@pytest.mark.parametrize(("dark", "phone"), [(False, False), (True, True)], ids=["light-desk", "dark-phone"])
def test_everybody_can_read_it(browser: Browser, server: Server, dark: bool, phone: bool) -> None:
    with visit(browser, server, dark=dark, phone=phone) as here:
        go(here)
        here.page.wait_for_selector("[data-testid=stPlotlyChart] .main-svg")
        here.unfold("Every month in numbers")
        here.page.get_by_role("table", name="Inland vale").wait_for()
        assert findings(here.page) == []
        here.assert_quiet()
