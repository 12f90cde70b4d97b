"""Can the paper be left behind, does each file say what the screen says, and do names stay out of the link?"""

from __future__ import annotations

import csv
import io
import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser
from pypdf import PdfReader

from estimator import Case, load_year, run
from tests.browser.axe import findings
from tests.browser.harness import Server, Visit
from tests.browser.windows import visit

NAME = "Ms <b>Ashgrove</b>"


def _saved(here: Visit, button: str) -> bytes:
    with here.page.expect_download() as waiting:
        here.page.get_by_role("button", name=button).click()
    return Path(waiting.value.path()).read_bytes()


def _bare(text: str) -> str:
    return re.sub(r"[\s\u00ad\u2010-]+", "", text)


def test_the_files_say_what_the_screen_says(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        here.open()
        here.type("Floor area, m²", "200")
        here.go("On paper?")
        here.type("Prepared for", NAME)
        answer = here.answer()
        pages = PdfReader(io.BytesIO(_saved(here, "Two pages (PDF)"))).pages
        assert len(pages) == 2
        text = _bare(" ".join(page.extract_text() for page in pages))
        assert _bare(answer) in text
        assert _bare(f"Prepared for {NAME}") in text
        html = _saved(here, "One page for a browser").decode()
        assert "&lt;b&gt;Ashgrove" in html
        assert "<b>Ashgrove" not in html
        table = list(csv.DictReader(io.StringIO(_saved(here, "Every result (CSV)").decode().removeprefix("\ufeff"))))
        assert answer.replace("\u00a0", " ") in {row["figure"].replace("\u00a0", " ") for row in table}
        found = json.loads(_saved(here, "Every result (JSON)"))
        area = next(item["value"] for item in found["inputs"] if item["path"] == "home.floor_area")
        assert area == 200.0
        assert "Ashgrove" not in here.page.url
        assert "Ashgrove" not in json.dumps(found)
        here.go("Worth it?")
        here.go("On paper?")
        assert here.page.get_by_label("Prepared for").input_value() == NAME
        here.assert_quiet()


def test_every_hour_can_be_taken_along_and_one_be_read(browser: Browser, server: Server) -> None:
    done = run(Case(), load_year("Inland vale"))
    with visit(browser, server) as here:
        here.open("/worked")
        saving = done.against_baseline["recovery"].net_saving
        here.page.get_by_text("Net saving a year against new plain extract: about").click()
        here.page.get_by_text("Saved on heat − more for electricity").wait_for()
        here.page.get_by_text(f"−£{abs(saving):.2f}").first.wait_for()
        lines = _saved(here, "Every hour as a table (CSV)").decode().splitlines()
        assert sum(line[:1].isdigit() for line in lines) >= 8760
        here.type("Hour, 0 to 23", "4")
        here.page.get_by_text("1 Jan, 04:00 to 05:00").first.wait_for()
        here.assert_quiet()


@pytest.mark.parametrize("address", ["paper", "worked"])
@pytest.mark.parametrize(("dark", "phone"), [(False, False), (True, True)], ids=["light-desk", "dark-phone"])
def test_everybody_can_read_it(browser: Browser, server: Server, address: str, dark: bool, phone: bool) -> None:
    with visit(browser, server, dark=dark, phone=phone) as here:
        here.open(f"/{address}")
        here.page.locator("p.answer").wait_for()
        assert findings(here.page) == []
        here.assert_quiet()
