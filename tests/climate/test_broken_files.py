"""Does every broken weather file end in one plain sentence, never in a traceback?"""

from __future__ import annotations

import gzip
import zipfile
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

from estimator.__main__ import main
from estimator.climate.files import read_year
from estimator.climate.sources import demo_folder, load_year
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault
from tests.climate.conftest import PVLIB_DATA

Read = Callable[[list[str]], ClimateYear]
Put = Callable[[list[str], int, str, str], None]
Harm = Callable[[list[str]], list[str]]


def _field(row: int, position: int, text: str) -> Harm:
    def harm(lines: list[str]) -> list[str]:
        fields = lines[row - 1].split(",")
        fields[position] = text
        return [*lines[: row - 1], ",".join(fields), *lines[row:]]

    return harm


def _every(position: int, change: Callable[[float], float]) -> Harm:
    def harm(lines: list[str]) -> list[str]:
        rows = [line.split(",") for line in lines[8:]]
        for fields in rows:
            fields[position] = f"{change(float(fields[position])):g}"
        return [*lines[:8], *(",".join(fields) for fields in rows)]

    return harm


def _clock_moved(lines: list[str]) -> list[str]:
    rows = [line.split(",") for line in lines[8:]]
    light = [fields[13:16] for fields in rows]
    return [*lines[:8], *(",".join([*f[:13], *light[i - 3], *f[16:]]) for i, f in enumerate(rows))]


BROKEN_EPW: list[tuple[str, Harm, tuple[str, ...]]] = [
    ("cut short", lambda lines: lines[:5000], ("row 5000", "missing")),
    ("cut within a row", lambda lines: [*lines[:-1], lines[-1][:40]], ("row 8768", "cut")),
    ("no header", lambda lines: lines[8:], ("known format",)),
    ("header alone", lambda lines: lines[:8], ("before its first hour",)),
    ("header cut", lambda lines: [lines[0], *lines[3:]], ("8 header rows",)),
    ("letters", _field(70, 6, "warm"), ("row 70", "temp_air", "warm", "no usable number")),
    ("infinite", _field(70, 21, "inf"), ("row 70", "wind_speed")),
    ("an hour twice", lambda lines: [*lines[:50], lines[49], *lines[50:]], ("row 51", "row 50", "more than once")),
    ("two years", lambda lines: [*lines, *lines[8:]], ("more than once",)),
    ("a day that is not", _field(70, 2, "32"), ("row 70", "does not exist")),
    ("29 February of no leap year", lambda lines: _feb_29(lines), ("29 February",)),
    ("a field too many", lambda lines: [*lines[:20], lines[20] + ",1", *lines[21:]], ("row 21", "36 fields")),
    ("Fahrenheit", _every(6, lambda value: value * 1.8 + 32.0), ("temp_air", "Fahrenheit")),
    ("tenths", _every(6, lambda value: value * 10.0), ("temp_air", "tenths")),
    ("pressure in hPa", _every(9, lambda value: value / 100.0), ("atmospheric_pressure", "hPa")),
    ("clock moved", _clock_moved, ("clock", "3.0 h behind")),
    ("no latitude", lambda lines: [lines[0].replace("36.1", "north"), *lines[1:]], ("row 1", "latitude")),
    ("latitude beyond the pole", lambda lines: [lines[0].replace("36.1", "361"), *lines[1:]], ("latitude", "361")),
    ("time zone missing", lambda lines: [lines[0].replace("-5.0", ""), *lines[1:]], ("row 1", "time zone")),
    ("no wind at all", _every(21, lambda _: 999.0), ("wind_speed", "not one usable value")),
    ("wind in tenths", _every(21, lambda value: value * 10.0), ("row 9, column wind_speed", "tenths")),
    ("NaN", lambda lines: _nan(lines), ("row 70, column temp_air", "10 hours are missing")),
]


def _nan(lines: list[str]) -> list[str]:
    for row in range(70, 80):
        lines = _field(row, 6, "NaN")(lines)
    return lines


def _feb_29(lines: list[str]) -> list[str]:
    fields = lines[8 + 58 * 24].split(",")
    return [*lines, ",".join(["2001", "2", "29", *fields[3:]])]


@pytest.mark.parametrize(("harm", "says"), [row[1:] for row in BROKEN_EPW], ids=[row[0] for row in BROKEN_EPW])
def test_a_broken_epw_file_is_refused_in_words(
    epw: list[str], read_lines: Read, harm: Harm, says: tuple[str, ...]
) -> None:
    with pytest.raises(ClimateFault) as caught:
        read_lines(harm(epw))
    for words in says:
        assert words in str(caught.value)


def _zip(path: Path) -> None:
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("year.epw", "LOCATION,")


def _letters(count: int) -> bytes:
    return np.random.default_rng(1).integers(32, 127, count, dtype=np.uint8).tobytes()


NO_WEATHER: list[tuple[str, Callable[[Path], object], str]] = [
    ("empty", lambda path: path.write_bytes(b""), "empty"),
    ("blank", lambda path: path.write_bytes(b"\n \n"), "empty"),
    ("zip", _zip, "zip"),
    ("gzip", lambda path: path.write_bytes(gzip.compress(b"LOCATION,")), "compressed"),
    ("web page", lambda path: path.write_text("<!DOCTYPE html><p>Not found"), "web page"),
    ("noise", lambda path: path.write_bytes(np.random.default_rng(1).bytes(5_000_000)), "not a text file"),
    ("noise of letters", lambda path: path.write_bytes(_letters(5_000_000)), "known format"),
    ("mainframe's encoding", lambda path: path.write_bytes("LOCATION,Fernby".encode("cp500")), "known format"),
    ("PDF", lambda path: path.write_bytes(b"%PDF-1.7\n%..."), "PDF"),
    ("picture", lambda path: path.write_bytes(b"\x89PNG\r\n"), "picture"),
    ("spreadsheet", lambda path: path.write_bytes(b"\xd0\xcf\x11\xe0" + bytes(900)), "save it as text"),
    ("table without a note", lambda path: path.write_text("month,day,hour,temp_air\n1,1,0,5\n"), "needs this note"),
    ("prose", lambda path: path.write_text("It was a dark night.\n" * 9000), "known format"),
    ("folder", lambda path: path.mkdir(), "folder"),
    ("nothing", lambda path: None, "no such file"),
    ("LOCATION alone", lambda path: path.write_text("LOCATION,"), "row 8"),
    ("TMY3 names alone", lambda path: path.write_text("1,a,b\nDate (MM/DD/YYYY),Time (HH:MM)\n"), "hour"),
]


@pytest.mark.parametrize(("make", "says"), [row[1:] for row in NO_WEATHER], ids=[row[0] for row in NO_WEATHER])
def test_what_is_no_weather_is_refused_in_words(tmp_path: Path, make: Callable[[Path], object], says: str) -> None:
    path = tmp_path / "year.epw"
    make(path)
    with pytest.raises(ClimateFault) as caught:
        load_year(str(path))
    assert says in str(caught.value)


@pytest.mark.parametrize("name", [row[0] for row in (*BROKEN_EPW, *NO_WEATHER)])
def test_each_is_one_sentence_from_the_front_and_from_the_command_line(
    epw: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str], name: str
) -> None:
    path = tmp_path / "year.epw"
    harm = {row[0]: row[1] for row in BROKEN_EPW}.get(name)
    if harm is None:
        {row[0]: row[1] for row in NO_WEATHER}[name](path)
    else:
        path.write_text("\n".join(harm(epw)), encoding="utf-8")
    with pytest.raises(ClimateFault) as caught:
        load_year(str(path))
    (fault,) = caught.value.faults
    assert caught.value.__cause__ is None
    assert "\n" not in str(fault)
    assert len(str(fault)) < 400
    assert main(["estimate", "example", "--climate", str(path)]) == 2
    said = capsys.readouterr()
    assert (said.out, said.err) == ("", f"{fault}\n")


REAL = ("723170TYA.CSV", "12839.tm2")


@pytest.mark.parametrize("name", REAL)
@pytest.mark.parametrize(
    ("harm", "says"),
    [
        (lambda lines: lines[:3000], "row 3000"),
        (lambda lines: [*lines[:99], lines[99][:25], *lines[100:]], "row 100"),
        (lambda lines: [*lines[:99], "?" * len(lines[99]), *lines[100:]], "row 100"),
        (lambda lines: [*lines[:100], *lines[99:]], "row 101"),
    ],
    ids=["cut short", "row cut", "letters", "an hour twice"],
)
def test_a_broken_typical_year_is_refused_in_words(tmp_path: Path, name: str, harm: Harm, says: str) -> None:
    path = tmp_path / name
    path.write_text("\n".join(harm((PVLIB_DATA / name).read_text().splitlines())))
    with pytest.raises(ClimateFault) as caught:
        read_year(path)
    assert says in str(caught.value)


def test_letters_in_a_tmy2_value_are_named_by_row_and_column(tmp_path: Path) -> None:
    """The dry bulb stands at positions 68 to 71 (User's Manual for TMY2, table 3-2)."""
    lines = (PVLIB_DATA / "12839.tm2").read_text().splitlines()
    lines[99] = f"{lines[99][:67]}warm{lines[99][71:]}"
    path = tmp_path / "year.tm2"
    path.write_text("\n".join(lines))
    with pytest.raises(ClimateFault, match="row 100, column DryBulb: “warm”"):
        read_year(path)


def test_damage_to_a_column_of_no_concern_is_borne(epw: list[str], read_lines: Read) -> None:
    fields = epw[4000].split(",")
    fields[24] = "far"  # visibility
    assert read_lines([*epw[:4000], ",".join(fields), *epw[4001:]]).rows == 8760


def test_a_stray_quotation_mark_is_refused_in_words(epw: list[str], read_lines: Read) -> None:
    epw[4000] = epw[4000].replace("?", '"', 1)
    epw[4003] = epw[4003].replace("?", '"', 1)
    with pytest.raises(ClimateFault, match="quotation mark"):
        read_lines(epw)


def test_a_station_of_two_words_is_read(tmp_path: Path) -> None:
    text = (PVLIB_DATA / "12839.tm2").read_text().replace("MIAMI      ", "KEY HARBOUR", 1)
    path = tmp_path / "year.tm2"
    path.write_text(text)
    assert read_year(path).name == "Key Harbour, FL"


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("latitude = 52.0", "", "upland"),
        ("invented = true", 'invented = "yes"', "invented"),
        ("[recipe]", "[recipe", "cannot be read"),
    ],
)
def test_a_broken_note_is_refused_in_words(tmp_path: Path, old: str, new: str, says: str) -> None:
    table = demo_folder() / "upland.csv"
    note = table.with_suffix(".toml").read_text(encoding="utf-8").replace("latitude = 54.5", "latitude = 52.0")
    (tmp_path / "upland.csv").write_text(table.read_text(encoding="utf-8"), encoding="utf-8")
    (tmp_path / "upland.toml").write_text(note.replace(old, new), encoding="utf-8")
    with pytest.raises(ClimateFault) as caught:
        read_year(tmp_path / "upland.csv")
    assert says in str(caught.value)


def test_a_table_without_its_note_says_what_the_note_must_hold(tmp_path: Path) -> None:
    (tmp_path / "mine.csv").write_text("month,day,hour,temp_air\n1,1,0,5\n")
    with pytest.raises(ClimateFault, match="latitude"):
        read_year(tmp_path / "mine.csv")
