"""Do files that come in harm nobody, and files that go out carry no harm to whoever opens them?"""

from __future__ import annotations

import base64
import contextlib
import csv
import datetime
import io
import json
import tracemalloc
import zipfile
import zlib
from pathlib import Path
from typing import Any

import pytest

from estimator.__main__ import main
from estimator.climate.cache import Cache
from estimator.climate.chosen import can_travel
from estimator.climate.kept_files import file_read, kept_file, needs_layout
from estimator.climate.sources import REAL_YEARS, load_year
from estimator.climate.text import LARGEST
from estimator.compare import Result
from estimator.draws import ground
from estimator.errors import ClimateFault, Fault, InputFaults, visible
from estimator.inputs.case import CASE_VERSION
from estimator.inputs.casefile import case_from_dict, case_from_text
from estimator.inputs.plaintext import LARGEST_FILE
from estimator.leak_range import leakage_span, over_leakage_range
from estimator.report import leave_html, leave_pdf, sheet_files
from estimator.report.document import as_json
from estimator.report.leave import Names, Paper, paper
from estimator.report.sure_words import Tried, tried
from estimator.sample import sample
from estimator.ui.link import LONGEST, from_link
from tests.climate.conftest import PVLIB_DATA
from tests.hostile.words import ANCHOR, IMAGE, SCRIPT, TREE, harm_in_html, packed

BOMB = 500_000_000  # bytes of nothing but zeros, which pack to half a million
DIRECTIONS = "\u202e\u2066\u200f"
FORMULAS = ("=", "+", "-", "@", "\t", "\r")


@pytest.fixture(scope="module")
def ends() -> tuple[Result, Result, Result]:
    return over_leakage_range(case_from_dict(TREE), load_year("Upland"))


@pytest.fixture(scope="module")
def found() -> Tried:
    return tried(sample(ground(case_from_dict(TREE), load_year("Upland")), count=200), option="recovery")


@pytest.fixture(scope="module")
def made(ends: tuple[Result, Result, Result], found: Tried) -> Paper:
    names = Names(prepared_for=SCRIPT + DIRECTIONS, prepared_by="=1+1", note=ANCHOR)
    return paper(ends[1], found, leakage_span(case_from_dict(TREE)), names=names, today=datetime.date(2026, 3, 1))


def is_number(cell: str) -> bool:
    try:
        float(cell)
    except ValueError:
        return False
    return True


def test_no_cell_of_a_table_is_a_formula(ends: tuple[Result, Result, Result], found: Tried, made: Paper) -> None:
    comparison = ends[1].against_baseline["recovery"]
    for text in (sheet_files.results(ends[1], found, made), sheet_files.hourly(ends[1].estimate, comparison, made)):
        cells = [cell for row in csv.reader(io.StringIO(text)) for cell in row]
        assert any(IMAGE in cell or "HYPERLINK" in cell for cell in cells)
        assert [cell for cell in cells if cell.startswith(FORMULAS) and not is_number(cell)] == []


def test_the_page_to_take_home_runs_and_fetches_nothing(made: Paper) -> None:
    whole = leave_html.html(made)
    assert harm_in_html(whole, allowed=frozenset({"meta"})) == []
    assert not set(DIRECTIONS) & set(whole)
    assert SCRIPT not in whole


def test_the_pdf_links_nowhere_and_runs_nothing(made: Paper) -> None:
    pypdf = pytest.importorskip("pypdf")
    reader = pypdf.PdfReader(io.BytesIO(leave_pdf.pdf(made)))
    raw = leave_pdf.pdf(made)
    assert b"/JavaScript" not in raw
    assert b"/Launch" not in raw
    for page in reader.pages:
        for note in page.get("/Annots") or []:
            assert "/URI" not in (note.get_object().get("/A") or {})
    assert "<script>" in "".join(page.extract_text() for page in reader.pages).replace(" ", "")


def test_the_document_is_plain_json(ends: tuple[Result, Result, Result]) -> None:
    low, middle, high = ends
    assert json.loads(as_json(middle, (low, high)))["options"]["today"]["label"] == TREE["options"]["today"]["label"]


@pytest.mark.parametrize("mark", [*DIRECTIONS, "\x1b", "\x00", "\n", "\u2028"])
@pytest.mark.parametrize("place", ["title", "options", "prices"])
def test_nothing_that_steers_what_shows_it_enters_a_case(mark: str, place: str) -> None:
    text = f"a{mark}b"
    changed: dict[str, Any] = {
        "title": text,
        "options": {**TREE["options"], "today": {"kind": "intermittent fans", "label": text}},
        "prices": {"currency": text},
    }
    with pytest.raises(InputFaults) as refused:
        case_from_dict({**TREE, place: changed[place]})
    assert mark == "\n" or mark not in str(refused.value)


@pytest.mark.parametrize("sign", ["=1", "<b>", "%{y}", "-", "@a", "1"])
def test_a_currency_is_a_sign_or_letters(sign: str) -> None:
    with pytest.raises(InputFaults, match="currency"):
        case_from_dict({**TREE, "prices": {"currency": sign}})


@pytest.mark.parametrize("sign", ["£", "€", "kr", "CHF", "zł", "R$", "Fr."])
def test_real_currencies_are_taken(sign: str) -> None:
    assert case_from_dict({"version": 1, "prices": {"currency": sign}}).prices.currency == sign


def test_a_sentence_about_a_hostile_file_is_harmless_on_a_terminal(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "case.toml"
    file.write_text('version = 1\n[home]\nform = "\\u001b[2J\\u202eevil"\n', encoding="utf-8")
    assert main(["estimate", str(file)]) != 0
    said = "".join(capsys.readouterr())
    assert "\x1b" not in said
    assert "\u202e" not in said
    assert str(Fault("a\x1b", "b\u202e")) == "a\ufffd: b\ufffd"


@pytest.mark.parametrize("reference", ["../../etc/passwd", "/etc/passwd", "kept:../../x", "C:\\x", "\\\\host\\x"])
def test_no_link_names_a_file_of_the_machine(reference: str) -> None:
    assert not can_travel(reference)


@pytest.mark.parametrize("name", ["../escape", "a/../../b", "/etc/x", "..", "a\x00b", "x" * 500])
def test_no_name_leads_out_of_the_folder_of_kept_years(tmp_path: Path, name: str) -> None:
    folder = tmp_path / "kept"
    with contextlib.suppress(ValueError):
        Cache(folder).put(name, b"body")
    outside = [path for path in tmp_path.rglob("*") if path != folder and folder not in path.parents]
    assert outside == []


@pytest.mark.parametrize("version", [CASE_VERSION + 1, 10**12])
def test_a_case_of_a_newer_release_says_so_in_file_and_link(version: int) -> None:
    with pytest.raises(InputFaults, match="newer release") as in_file:
        case_from_text(f"version = {version}\nunknown = 1\n", name="case.toml")
    with pytest.raises(InputFaults, match="newer release") as in_link:
        case_from_dict(from_link(packed({"version": version, "home": {"no_such": 1}})))
    assert len(in_file.value.faults) == len(in_link.value.faults) == 1


def _zeros() -> bytes:
    packer = zlib.compressobj(9)
    block = bytes(1_000_000)
    return b"".join(packer.compress(block) for _ in range(BOMB // len(block))) + packer.flush()


def test_packed_bombs_are_refused_before_they_are_unpacked(tmp_path: Path) -> None:
    zeros = _zeros()
    archive = io.BytesIO()
    with zipfile.ZipFile(archive, "w", zipfile.ZIP_DEFLATED) as pack:
        pack.writestr("year.epw", bytes(50_000_000))
    cache = Cache(tmp_path)
    cache.put("file_" + "0" * 24, zeros)
    tracemalloc.start()
    for content in (archive.getvalue(), b"\x1f\x8b\x08" + zeros):
        with pytest.raises(ClimateFault):
            needs_layout(content, name="year.epw")
        with pytest.raises(ClimateFault):
            file_read(content, name="year.epw")
    with pytest.raises(ClimateFault):
        kept_file("kept:" + "0" * 24, cache=cache)
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert peak < 5 * LARGEST


def test_a_link_that_would_unpack_to_gigabytes_is_refused_small() -> None:
    bomb = "1." + base64.urlsafe_b64encode(zlib.compress(bytes(40_000_000))).decode().rstrip("=")
    assert len(bomb) < LONGEST
    tracemalloc.start()
    with pytest.raises(InputFaults):
        from_link(bomb)
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert peak < 5_000_000


def test_what_is_too_large_is_said_with_its_limit(tmp_path: Path) -> None:
    file = tmp_path / "case.toml"
    file.write_bytes(b"#" * (LARGEST_FILE + 1))
    assert main(["estimate", str(file)]) != 0
    with pytest.raises(ClimateFault, match="too large"):
        file_read(b"1" * (LARGEST + 1), name="year.epw")


def test_a_hostile_place_in_a_weather_file_stays_words() -> None:
    whole = (PVLIB_DATA / REAL_YEARS["Greensboro"]).read_text("latin-1")
    head, rest = whole.split("\n", 1)
    fields = head.split(",")
    fields[1] = f"\x1b[2J{DIRECTIONS}{SCRIPT}"
    year = file_read("\n".join([",".join(fields), rest]).encode(), name="year.csv").year
    assert SCRIPT.casefold() in year.name.casefold()
    assert visible(year.name) == year.name
    assert visible(year.source) == year.source
