"""Does the page of fitting say what the command line says, follow its fields, and stay readable for everybody?"""

from __future__ import annotations

import json
import re
from typing import Any

import pytest
from playwright.sync_api import Browser, expect

from estimator import case_from_dict, load_year
from estimator.leak_range import over_leakage_range
from estimator.report.document import as_json
from tests.browser.axe import findings
from tests.browser.harness import Server, Visit
from tests.browser.windows import visit


def document(**sections: Any) -> Any:
    """What the command line prints for the demo home with these entries."""
    case = case_from_dict({"version": 1, **sections})
    low, middle, high = over_leakage_range(case, load_year("Inland vale"))
    return json.loads(as_json(middle, (low, high)))


def plain(text: str) -> str:
    return re.sub(r"\s+", " ", text)


def go(here: Visit) -> None:
    """By its address."""
    here.open("/fit")
    here.page.get_by_role("heading", name="What must be fitted, and how?").wait_for()


def turn_to(here: Visit, question: str) -> None:
    """One of the three questions."""
    here.page.get_by_role("tab", name=question).click()


def words(here: Visit) -> str:
    return plain(here.page.get_by_test_id("stMain").inner_text())


def test_its_figures_are_those_of_the_command_line(browser: Browser, server: Server) -> None:
    fitted = document()["fitted"]["recovery"]
    with visit(browser, server) as here:
        go(here)
        here.unfold("Installer's sheet")
        shown = words(here)
        for question in ("Where does it stand?", "How is it set?"):
            turn_to(here, question)
            shown += words(here)
        for path in (
            "unit.fan_power",
            "ducts.insulation",
            "ducts.intake",
            "flows.imbalance",
            "unit.frost",
            "unit.sound",
        ):
            assert plain(fitted["lines"][path]["words"]) in shown
        ends = fitted["figures"]["certificate_efficiency"]["value"], fitted["figures"]["installed_efficiency"]["value"]
        assert f"The certificate says {ends[0]:.0f}%; {ends[1]:.0f}% comes back here" in plain(here.answer())
        for key, form in (
            ("supply_coldest_day", "{:.1f} °C"),
            ("velocity", "{:.1f} m/s"),
            ("electrical_peak", "{:.0f} W"),
        ):
            assert form.format(fitted["figures"][key]["value"]) in shown
        saved = next(change for change in fitted["changes"] if change["change"] == "insulation")
        assert f"Insulating the ducts saves about £{saved['money']['value']:.0f} a year" in shown
        here.assert_quiet()


def test_a_changed_line_costs_another_sum_at_once(browser: Browser, server: Server) -> None:
    options = {
        "today": {"kind": "intermittent fans", "label": "as aired today"},
        "extract": {"kind": "continuous extract", "label": "new plain extract"},
        "recovery": {"kind": "heat recovery", "label": "heat recovery", "ducts": {"intake": 8.0, "insulation": 0.0}},
    }
    expected = document(options=options)["fitted"]["recovery"]
    with visit(browser, server) as here:
        go(here)
        turn_to(here, "Where does it stand?")
        here.type("Intake duct, m", "8")
        here.type("Duct insulation, mm", "0")
        assert "The ducts are bare" in words(here)
        assert plain(expected["lines"]["ducts.intake"]["words"]) in words(here)
        here.assert_quiet()


def test_what_was_measured_is_entered_and_refused_where_it_cannot_be(browser: Browser, server: Server) -> None:
    given = {"power": 60.0, "date": "2026-11-20"}
    expected = document(commissioned=given)["commissioned"]
    with visit(browser, server) as here:
        go(here)
        here.unfold("As commissioned")
        here.type("Measured power, W", "60")
        here.type("Measured on", "20.11.2026")
        assert "is no date" in here.page.get_by_role("alert").first.inner_text()
        here.type("Measured on", "2026-11-20")
        expect(here.page.get_by_role("alert")).to_have_count(0)
        here.page.get_by_role("table", name="Promised and measured").wait_for()
        money = expected["whole"]["money"]["value"]
        assert money < 0.0
        assert f"costs £{-money:.0f} more a year than promised" in words(here)
        assert "no instrument" in words(here).lower()
        here.assert_quiet()


@pytest.mark.parametrize(("dark", "phone"), [(False, False), (True, True)], ids=["light-desk", "dark-phone"])
def test_everybody_can_read_it(browser: Browser, server: Server, dark: bool, phone: bool) -> None:
    with visit(browser, server, dark=dark, phone=phone) as here:
        go(here)
        here.page.wait_for_selector("[data-testid=stPlotlyChart] .main-svg")
        for title in ("Installer's sheet", "Air from room to room", "As commissioned", "On site"):
            here.unfold(title)
        assert here.page.get_by_role("table", name="Doors on the way").is_visible()
        assert findings(here.page) == []
        here.assert_quiet()
