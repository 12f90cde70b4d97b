"""Does the answer that stands there before any script say what the command line says, with all that belongs to it?"""

from __future__ import annotations

import re
from collections import OrderedDict
from html import unescape
from pathlib import Path
from typing import Any

import pytest

from estimator.__main__ import main
from estimator.climate.cache import FOLDER_VARIABLE
from estimator.inputs.casefile import case_from_dict, case_to_toml
from estimator.report.document import STATEMENT
from estimator.ui import ahead, at_hand, sureness
from estimator.ui.at_sight import at_sight
from tests.hostile.words import packed

WRITTEN = {
    "version": 1,
    "home": {"floor_area": 138.0, "bedrooms": 4},
    "place": {"climate": "Upland"},
    "leakage": {"measure": "q50", "value": 3.4, "basis": "measured"},
}


@pytest.fixture(autouse=True)
def nobody_before(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sureness, "_LAST", OrderedDict())


def words(html: str) -> str:
    """What is to be read, with one kind of space."""
    without_style = re.sub(r"<style>.*?</style>", "", html, flags=re.S)
    return re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", " ", without_style)))


def asked(written: dict[str, Any], **more: str) -> dict[str, str]:
    return {"case": packed(written), **more}


@pytest.mark.parametrize("written", [{"version": 1}, WRITTEN], ids=["as it opens", "of somebody's own"])
def test_the_answer_is_that_of_the_command_line(
    written: dict[str, Any], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert "About: " in words(at_sight(asked(written)))  # of a first few cases
    case = case_from_dict(written)
    sureness._tried(sureness._shared(written, case, at_hand.shared(case)), lambda _: None)
    html = at_sight(asked(written))
    assert "About: " not in words(html)
    (sentence,) = re.findall(r'<p class="answer">(.*?)</p>', html)
    file = tmp_path / "case.toml"
    file.write_text(case_to_toml(case), encoding="utf-8")
    assert main(["estimate", str(file)]) == 0
    assert words(sentence) in re.sub(r"\s+", " ", capsys.readouterr().out)


@pytest.mark.parametrize("who", ["advice", "home", "fitting"])
def test_range_baseline_cautions_and_dates_stand_there_for_every_reader(who: str) -> None:
    said = words(at_sight(asked(WRITTEN, **{"for": who})))
    assert "against new plain extract" in said
    assert "against the house as it is aired today" in said
    assert said.index("Carbon monoxide") < said.index("£")
    assert "Prices: Great Britain" in said
    assert "not tested" not in said
    assert STATEMENT in said


def test_units_and_reader_of_the_address_hold() -> None:
    assert "138 m²" in words(at_sight(asked(WRITTEN)))
    assert "1,490 ft²" in words(at_sight(asked(WRITTEN, units="imperial")))
    assert words(at_sight(asked(WRITTEN, **{"for": "home"}))) != words(at_sight(asked(WRITTEN)))
    assert at_sight(asked(WRITTEN, **{"for": "<script>", "units": "x"})) == at_sight(asked(WRITTEN))


def test_the_first_questions_lead_on_with_the_same_address() -> None:
    html = at_sight(asked(WRITTEN, **{"for": "fitting"}))
    (first, *others) = re.findall(r'<a[^>]* href="([^"]*)">', html)
    assert first == f"./tight?case={packed(WRITTEN)}&amp;for=fitting"
    assert [link.split("?")[0] for link in others] == ["./fit", "./weather", "./", "./worked"]


def test_what_somebody_wrote_stays_words() -> None:
    said = at_sight(asked({"version": 1, "prices": {"dated": "<script>alert(1)</script>"}}))
    assert "&lt;script&gt;alert(1)" in said
    assert "<script" not in said


@pytest.mark.parametrize("link", ["1.broken", "9.abc", "x", "0" * 5000 + ".a"])
def test_a_link_that_cannot_be_used_is_left_to_the_dashboard(link: str) -> None:
    assert at_sight({"case": link}) == ""


@pytest.mark.parametrize("climate", ["36.1,-79.95", "/etc/passwd", "kept:" + "0" * 24, "nowhere"])
def test_weather_that_is_not_at_hand_is_left_to_the_dashboard(
    climate: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv(FOLDER_VARIABLE, str(tmp_path))
    at_hand._year.clear()
    assert ahead.said(asked({"version": 1, "place": {"climate": climate}})) == ""


def test_what_goes_wrong_is_left_to_the_dashboard_and_written_down(
    monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    monkeypatch.setattr("estimator.ui.at_sight.filled", lambda case: 1 / 0)
    assert ahead.said(asked(WRITTEN)) == ""
    assert "ZeroDivisionError" in caplog.text
