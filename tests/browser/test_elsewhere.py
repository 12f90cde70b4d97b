"""Can a home be anywhere: a place fetched, a file uploaded, months typed, each carried by the link and never replaced?

The service is a server on this machine that replays answers; what is fetched and uploaded is kept in a test's folder.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pandas as pd
import pvlib
import pytest
from playwright.sync_api import Browser

from estimator.climate.cache import FOLDER_VARIABLE, Cache
from estimator.climate.online import URL_VARIABLE
from tests.browser.axe import findings
from tests.browser.harness import SETTLED, Server, Visit
from tests.browser.windows import visit
from tests.climate.replay import Replay, as_json, replaying, utc_rows

DATA = Path(pvlib.__file__).parent / "data"
FETCH = "Fetch the weather of 36.10° N, 79.95° W"
MONTHS = "4.1 4.4 6.3 8.6 11.6 14.5 16.7 16.5 14.0 10.5 6.9 4.4"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("kept")


@pytest.fixture(scope="module")
def service() -> Iterator[Replay]:
    """What PVGIS would answer for Greensboro."""
    with replaying() as replay:
        replay.body = as_json(utc_rows(pvlib.iotools.read_tmy3(DATA / "723170TYA.CSV")[0]))
        yield replay


@pytest.fixture(scope="module")
def own_server(service: Replay, folder: Path) -> Iterator[Server]:
    """A dashboard of its own, which asks that service and keeps years in that folder."""
    with pytest.MonkeyPatch.context() as patch:  # for as long as it runs: a test starts it a second time
        patch.setenv(URL_VARIABLE, service.url)
        patch.setenv(FOLDER_VARIABLE, str(folder))
        patch.setenv("NO_PROXY", "127.0.0.1")
        running = Server()
        running.start()
        yield running
        running.stop()


def go(here: Visit, way: str) -> None:
    """To where the home is."""
    here.open("/weather?where=1")
    here.after(lambda: here.page.get_by_text(way, exact=True).click())


def press(here: Visit, name: str) -> None:
    here.after(lambda: here.page.get_by_role("button", name=name, exact=True).click())


def shown(here: Visit, words: str) -> None:
    """The words come into sight; after a request the page draws itself once more."""
    here.page.get_by_text(words).wait_for(state="visible")
    here.page.wait_for_function(SETTLED)


def upload(here: Visit, *, name: str, content: bytes) -> None:
    file = {"name": name, "mimeType": "text/plain", "buffer": content}
    here.after(lambda: here.page.locator("input[type=file]").set_input_files(file))  # type: ignore[arg-type]


def carried(here: Visit, browser: Browser, server: Server) -> None:
    """The link shows another visitor the same answer."""
    said, link = here.answer(), here.page.url.partition("?")[2]
    case = next(part for part in link.split("&") if part.startswith("case="))
    with visit(browser, server) as other:
        other.open(f"/weather?{case}")
        assert other.answer() == said
        other.assert_quiet()


def test_a_place_is_fetched_after_telling_and_failure_keeps_what_was_typed(
    browser: Browser, own_server: Server, service: Replay, folder: Path
) -> None:
    good, asked = service.body, len(service.asked)
    with visit(browser, own_server) as here:
        go(here, "A latitude and longitude")
        here.type("Latitude, longitude", "95, 200")
        assert "is not within" in here.page.get_by_role("alert").first.inner_text()
        here.type("Latitude, longitude", "36.1034, -79.9461")
        told = here.page.get_by_text("A request goes to").inner_text()
        assert "latitude 36.10 and longitude -79.95, rounded to 0.05°" in told
        assert len(service.asked) == asked
        service.body = b"<html>Sign in</html>"
        press(here, FETCH)
        assert "sign-in page of a public network" in here.page.get_by_role("alert").inner_text()
        assert here.page.get_by_label("Latitude, longitude", exact=True).input_value() == "36.1034, -79.9461"
        assert here.page.get_by_role("button", name="Use Greensboro").is_visible()
        service.body = good
        press(here, FETCH)
        shown(here, "Weather now: 36.10° N, 79.95° W")
        assert [query["lat"] for query in service.asked[asked:]] == [["36.1"], ["36.1"]]
        carried(here, browser, own_server)
        assert len(service.asked) == asked + 2
        here.assert_quiet()
    assert any(kept.key.startswith("pvgis_+36.10_-79.95") for kept in Cache(folder).kept())


def test_a_broken_file_gives_a_message_and_a_good_one_is_used_and_carried(
    browser: Browser, own_server: Server, folder: Path
) -> None:
    text = (DATA / "723170TYA.CSV").read_text()
    lines = text.splitlines()
    with visit(browser, own_server) as here:
        go(here, "A file of mine")
        before = here.answer()
        for name, content, said in (
            ("short.csv", "\n".join(lines[:3000]), "row 3000"),
            ("page.epw", "<!DOCTYPE html><p>Not found", "web page"),
        ):
            upload(here, name=name, content=content.encode())
            here.page.get_by_role("alert").filter(has_text=said).wait_for()  # the file before is taken away first
            here.page.wait_for_function(SETTLED)
            assert here.page.get_by_role("alert").count() == 1
            assert here.answer() == before
        upload(here, name="Mx Example.csv", content=text.encode())
        for heading in ("Read", "Repaired", "Implausible"):
            here.page.get_by_text(heading, exact=True).wait_for()
        press(here, "Use this weather")
        assert here.answer() != before
        assert "Example" not in here.page.url
        carried(here, browser, own_server)
        case = here.page.url.partition("?")[2]
        here.assert_quiet()
    Cache(folder).clear()
    own_server.stop()
    own_server.start()
    with visit(browser, own_server) as here:
        here.open(f"/?{case}")
        assert "nothing is worked out" in here.answer()
        assert "on another machine or that was thrown away" in here.page.get_by_role("alert").inner_text()
        upload(here, name="again.csv", content=text.encode())
        press(here, "Use this weather")
        assert "against new plain extract" in here.answer()
        here.assert_quiet()


def test_a_table_of_any_headers_is_read_by_what_is_said_of_its_columns(browser: Browser, own_server: Server) -> None:
    frame = pvlib.iotools.read_tmy3(DATA / "723170TYA.CSV")[0]
    when = pd.date_range("2019-01-01", periods=len(frame), freq="h").strftime("%Y-%m-%d %H:%M")
    table = pd.DataFrame({"When": when, "Outside": frame["temp_air"].to_numpy()})
    with visit(browser, own_server) as here:
        go(here, "A file of mine")
        upload(here, name="mine.csv", content=table.to_csv(index=False).encode())
        here.page.get_by_role("combobox", name="Air temperature", exact=True).first.click()
        here.page.get_by_role("option", name="Outside", exact=True).click()
        for label, text in (("Latitude, °", "36,1"), ("Longitude, °", "-79.95"), ("Altitude, m", "273")):
            here.page.get_by_label(label, exact=True).fill(text)
        press(here, "Read the table")
        assert "not in the file" in here.page.get_by_text("wind speed: not in the file").inner_text()
        press(here, "Use this weather")
        shown(here, "Weather now: a table of your own")
        here.assert_quiet()


def test_typed_months_travel_in_the_link_itself(browser: Browser, own_server: Server, folder: Path) -> None:
    with visit(browser, own_server) as here:
        here.open()
        here.after(lambda: here.page.get_by_role("link", name="Elsewhere, or weather of your own").click())
        here.after(lambda: here.page.get_by_text("Twelve monthly means", exact=True).click())
        here.page.get_by_label("Jan", exact=True).fill("warm")
        press(here, "Use these means")
        assert "not a number" in here.page.get_by_role("alert").first.inner_text()
        here.page.get_by_label("Jan", exact=True).fill(MONTHS)
        press(here, "Use these means")
        assert here.page.get_by_label("Dec", exact=True).input_value() == "4.4"
        shown(here, "Weather now: your own monthly means")
        here.type("Altitude of the home, m", "300")
        shown(here, "1.3 K colder all year, 6.5 K for each 1,000 m")
        Cache(folder).clear()
        carried(here, browser, own_server)
        here.assert_quiet()


@pytest.mark.parametrize("phone", [False, True], ids=["desk", "phone"])
def test_everybody_can_use_it(browser: Browser, own_server: Server, phone: bool) -> None:
    with visit(browser, own_server, phone=phone, dark=phone) as here:
        here.open("/weather?where=1")
        for way in ("A latitude and longitude", "A file of mine", "Twelve monthly means"):
            here.after(here.page.get_by_text(way, exact=True).click)
            assert findings(here.page) == [], way
        here.assert_quiet()
