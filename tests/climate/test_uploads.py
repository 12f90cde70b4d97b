"""Does every broken file end in one plain sentence on the dashboard too, and does a good one become the weather?"""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pandas as pd
import pytest
from streamlit.testing.v1 import AppTest

from estimator.climate.cache import FOLDER_VARIABLE
from estimator.climate.kept_files import file_read
from estimator.errors import ClimateFault, InputFaults
from tests.climate.conftest import PVLIB_DATA
from tests.climate.every import LAYOUT, table_of
from tests.climate.test_broken_files import BROKEN_EPW, NO_WEATHER

# What is no file, and what a form of its own asks about.
NO_UPLOAD = ("folder", "nothing", "table without a note", "blank", "empty")
FILES = [row[0] for row in (*BROKEN_EPW, *NO_WEATHER) if row[0] not in NO_UPLOAD]


def broken(name: str, epw: list[str], folder: Path) -> bytes:
    harm = {row[0]: row[1] for row in BROKEN_EPW}.get(name)
    if harm is not None:
        return "\n".join(harm(epw)).encode()
    path = folder / "year.epw"
    {row[0]: row[1] for row in NO_WEATHER}[name](path)
    return path.read_bytes()


def uploader() -> None:
    """The part of the page that takes a file, by itself."""
    from estimator.ui import by_file

    by_file.draw()


@pytest.fixture
def page(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> AppTest:
    monkeypatch.setenv(FOLDER_VARIABLE, str(tmp_path / "kept"))
    return AppTest.from_function(uploader, default_timeout=60)


def upload(page: AppTest, content: bytes, name: str = "year.epw") -> AppTest:
    page.run()
    page.file_uploader[0].set_value((name, content, "text/plain")).run()
    return page


def said(page: AppTest) -> list[str]:
    """Messages without the marks that keep their words from being read as markup."""
    return [error.value.replace("\\", "") for error in page.error]


@pytest.mark.parametrize("name", FILES)
def test_each_broken_file_gives_one_message_and_no_traceback(
    page: AppTest, epw: list[str], tmp_path: Path, name: str
) -> None:
    content = broken(name, epw, tmp_path)
    upload(page, content)
    assert not page.exception
    (message,) = said(page)
    assert "\n" not in message
    assert "Traceback" not in message
    assert not page.button
    if name == "no header":  # rows of hours alone look like somebody's table
        assert "no row of headers" in message
        return
    with pytest.raises(ClimateFault) as caught:
        file_read(content, name="year.epw")
    (fault,) = caught.value.faults
    assert message.casefold() == str(fault).casefold()


def test_there_are_more_than_twenty_of_them() -> None:
    assert len(FILES) > 20


def test_an_empty_file_is_said_to_be_empty() -> None:
    """The test bench uploads no empty file; the same function reads it."""
    with pytest.raises(ClimateFault, match="empty"):
        file_read(b"", name="year.epw")
    with pytest.raises(ClimateFault, match="empty"):
        file_read(b"\n \n", name="year.epw")


@pytest.mark.parametrize("file", ["723170TYA.CSV", "12839.tm2"])
def test_a_good_file_is_reported_on_and_becomes_the_weather(page: AppTest, file: str) -> None:
    upload(page, (PVLIB_DATA / file).read_bytes(), file)
    assert not page.exception
    assert not page.error
    report = page.markdown[0].value.replace("\\", "")
    for heading in ("Read", "Not in the file, and what stands in", "Repaired", "Implausible"):
        assert f"**{heading}**" in report
    assert "air temperature" in report
    page.button[0].click().run()
    assert not page.exception
    case = page.session_state["case_history"].now
    assert case["place"]["climate"].startswith("kept:")
    assert file not in json.dumps(case)


def test_a_table_asks_which_column_is_what_and_keeps_what_was_said(page: AppTest, tmy3_frame: pd.DataFrame) -> None:
    upload(page, table_of(tmy3_frame), "mine.csv")
    chosen = {box.label: box.value for box in page.selectbox}
    assert chosen["Air temperature"] == "Temp °F"
    assert chosen["Unit of air temperature"] == "°F"
    assert chosen["Unit of wind speed"] == "knots"
    assert chosen["Date and time"] == "When"
    page.button[0].click().run()  # without a place
    assert [message.partition(":")[0] for message in said(page)] == ["Latitude, °", "Longitude, °", "Altitude, m"]
    for label, value in (("Latitude, °", "36,1"), ("Longitude, °", "-79.95"), ("Altitude, m", "273")):
        next(box for box in page.text_input if box.label == label).set_value(value)
    page.button[0].click().run()
    assert not page.error
    assert any("Use this weather" in button.label for button in page.button)
    assert {box.label: box.value for box in page.text_input}["Latitude, °"] == "36,1"


def test_a_wrong_unit_said_of_a_column_is_a_message_with_row_and_column(tmy3_frame: pd.DataFrame) -> None:
    with pytest.raises(InputFaults, match="column Temp °F"):
        file_read(table_of(tmy3_frame), name="mine.csv", layout=replace(LAYOUT, units={"temp_air": "°C"}))
