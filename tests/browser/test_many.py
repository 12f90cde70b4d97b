"""Can a table of homes be taken, narrowed, taken along, and one of them opened as the case?"""

from __future__ import annotations

import csv
import io
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from estimator.stock.demo import invented
from tests.browser.axe import findings
from tests.browser.harness import Server
from tests.browser.windows import visit
from tests.stock.broken import broken_csv


@pytest.mark.parametrize(("dark", "phone"), [(False, False), (True, True)], ids=["light-desk", "dark-phone"])
def test_everybody_can_read_it(browser: Browser, server: Server, dark: bool, phone: bool) -> None:
    with visit(browser, server, dark=dark, phone=phone) as here:
        here.open("/many")
        assert "400 homes" in here.answer()
        here.page.get_by_text("invented homes, as an example").wait_for()
        assert findings(here.page) == []
        here.assert_quiet()


def test_a_home_of_the_list_becomes_the_case_and_undo_brings_back_the_one_before(
    browser: Browser, server: Server
) -> None:
    with visit(browser, server) as here:
        here.open("/many")
        names = here.page.locator(".rows table").last.locator("tbody td:first-child").all_inner_texts()
        name = names[1]
        here.choose("Home to open", name)
        here.after(here.page.get_by_role("button", name="Open it as the case").click)
        assert f"{name} is the case now" in here.page.get_by_role("alert").inner_text()
        assert findings(here.page) == []
        here.after(here.page.get_by_role("link", name=f"See {name}, now the case").click)
        floor = next(row["home.floor_area [m²]"] for row in invented(400).to_pylist() if row["id"] == name)
        assert float(here.page.get_by_label("Floor area, m²", exact=True).input_value()) == floor
        here.undo(f"opened {name}")
        assert here.page.get_by_label("Floor area, m²", exact=True).input_value() == "110"
        here.assert_quiet()


def test_a_table_of_ones_own_comes_back_with_every_fault_named(
    browser: Browser, server: Server, tmp_path: Path
) -> None:
    text, broken = broken_csv(invented(120, start=8), share=0.1, start=1)
    source = tmp_path / "mine.csv"
    source.write_text(text, encoding="utf-8")
    with visit(browser, server) as here:
        here.open("/many")
        here.page.get_by_text("Take your own table of homes").click()
        here.after(lambda: here.page.locator("input[type=file]").first.set_input_files(source))
        here.page.get_by_text(f"{len(broken)} rows have faults").wait_for()
        here.choose("Show", "rows with faults")
        here.page.get_by_text("is not a number").first.wait_for()
        with here.page.expect_download() as waiting:
            here.page.get_by_role("button", name="All results as a table (CSV)").click()
        rows = list(csv.DictReader(io.StringIO(Path(waiting.value.path()).read_text(encoding="utf-8"))))
        assert {int(row["row"]) for row in rows if row["status"] == "fault"} == set(broken)
        assert len(rows) == 120
        here.assert_quiet()


def test_a_file_that_is_no_table_is_refused_in_words(browser: Browser, server: Server, tmp_path: Path) -> None:
    source = tmp_path / "mine.csv"
    source.write_text("home.flor_area [m²]\n90\n", encoding="utf-8")
    with visit(browser, server) as here:
        here.open("/many")
        here.page.get_by_text("Take your own table of homes").click()
        here.after(lambda: here.page.locator("input[type=file]").first.set_input_files(source))
        here.page.get_by_text("is no field of a table of homes").wait_for()
        assert "400 homes" in here.answer()
        here.assert_quiet()
