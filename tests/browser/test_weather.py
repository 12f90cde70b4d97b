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


def test_the_weather_is_that_of_the_case_and_the_words_follow_what_it_is_held_against(
    browser: Browser, server: Server
) -> None:
    with visit(browser, server) as here:
        here.open()
        here.choose("Weather like", "Cold plain")
        here.go("Weather?")
        assert "Cold plain: " in here.page.locator("p.then").inner_text()
        assert "more cold" in here.answer()
        here.choose("Beside the weather of", "Mild coast")
        assert "than in Mild coast" in here.answer()
        here.type("Cold counts below, °C", "12")
        assert "Below 12" in here.page.locator("h2.finding").nth(1).inner_text()
        here.assert_quiet()


def side_by_side(here: Visit) -> None:
    """Pictures in pairs begin on one line, whatever their headlines take."""
    heads = [head.bounding_box() for head in here.page.locator("h2.finding").all()]
    assert len({round(box["height"]) for box in heads if box}) == 2  # of one line, and of two
    boxes = [box for each in here.page.locator(".js-plotly-plot").all() if (box := each.bounding_box())]
    tops, wide = [box["y"] for box in boxes], [box["width"] for box in boxes]
    assert len(boxes) == 6
    assert tops[0::2] == tops[1::2]
    assert max(wide) - min(wide) < 1.0


@pytest.mark.parametrize(("dark", "phone"), [(False, False), (True, True)], ids=["light-desk", "dark-phone"])
def test_everybody_can_read_it(browser: Browser, server: Server, dark: bool, phone: bool) -> None:
    with visit(browser, server, dark=dark, phone=phone) as here:
        go(here)
        here.page.wait_for_selector("[data-testid=stPlotlyChart] .main-svg")
        if not phone:
            side_by_side(here)
        here.unfold("Every month in numbers")
        here.page.get_by_role("table", name="Inland vale").wait_for()
        assert findings(here.page) == []
        here.assert_quiet()
