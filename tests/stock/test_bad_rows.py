"""Does every row of a table come back, the broken ones with their faults in words?"""

from __future__ import annotations

import csv
import io
from pathlib import Path

import pyarrow as pa
import pyarrow.parquet as pq
import pytest

from estimator import Case, load_year
from estimator.errors import InputFaults
from estimator.inputs.casefile import case_from_dict, case_to_dict
from estimator.stock.columns import read_columns
from estimator.stock.demo import invented, template
from estimator.stock.reading import batches, headings
from estimator.stock.run import Stock, screen, settings_for
from estimator.stock.writing import harmless
from tests.stock.broken import KINDS, broken_csv


def screened(source: Path, target: Path) -> Stock:
    settings = settings_for(headings(source), Case(), load_year("Upland"), recovery="recovery")
    return screen(source, target, settings, workers=1)


def test_every_broken_row_comes_back_named_in_its_place(tmp_path: Path) -> None:
    table = invented(1500, start=9)
    text, broken = broken_csv(table, share=0.04, start=2)
    source, target = tmp_path / "homes.csv", tmp_path / "out.csv"
    source.write_text(text, encoding="utf-8")
    stock = screened(source, target)
    assert stock.faulty == len(broken) == 60
    rows = list(csv.DictReader(io.StringIO(target.read_text(encoding="utf-8"))))
    assert [int(row["row"]) for row in rows] == list(range(1, 1501))
    for row, home in zip(rows, table.to_pylist(), strict=True):
        where = broken.get(int(row["row"]))
        assert row["status"] == ("ok" if where is None else "fault")
        assert (where or "") in row["faults"]
        assert bool(row["answer"]) == (where is None)
        assert row["id"] == home["id"] or where == "the line"


@pytest.mark.parametrize("kind", KINDS[:-1], ids=lambda kind: kind[0])
def test_a_broken_row_is_told_in_the_words_of_a_case_file(tmp_path: Path, kind: tuple) -> None:  # type: ignore[type-arg]
    """The same sentences for the same entries; a missing floor area is a fault of tables alone."""
    name, where, spoil = kind
    home = next(row for row in invented(50, start=6).to_pylist() if row["leakage.value [as named]"] is None)
    row = spoil({head: "" if cell is None else str(cell) for head, cell in home.items()})
    source = tmp_path / "homes.csv"
    cells = [f'"{cell}"' for cell in row.values()]
    source.write_text("\n".join((",".join(row), ",".join(cells))), encoding="utf-8")
    screened(source, tmp_path / "out.parquet")
    told = pq.read_table(tmp_path / "out.parquet").column("faults")[0].as_py()
    assert told.startswith(f"{where}: ")
    tree = case_to_dict(Case())
    for head, cell in row.items():
        if head != "id" and cell:
            section, key = head.split(" [")[0].split(".")
            tree[section][key] = _plain(cell)
    if name != "no floor area":
        with pytest.raises(InputFaults) as raised:
            case_from_dict(tree)
        assert told == " ".join(str(fault) for fault in raised.value.faults)


def _plain(cell: str) -> object:
    for kind in (int, float):
        try:
            return kind(cell) if cell != "nan" else cell
        except ValueError:
            continue
    return cell


def test_headings_wrongly_written_are_refused_and_strangers_are_named_but_not_carried(tmp_path: Path) -> None:
    with pytest.raises(InputFaults) as raised:
        read_columns(["home.floor_area", "home.flor_area [m²]", "home.age", "home.age", "rooms.fed"], Case())
    told = [str(fault) for fault in raised.value.faults]
    assert 'its heading is "home.floor_area [m²]"' in told[0]
    assert 'Did you mean "home.floor_area [m²]"?' in told[1]
    assert "twice" in told[2]
    source, target = tmp_path / "homes.csv", tmp_path / "out.csv"
    source.write_text("Tenant,Street,home.floor_area [m²]\nA. Nobody,1 Nowhere,90\n", encoding="utf-8")
    stock = screened(source, target)
    assert stock.strangers == ("Tenant", "Street")
    assert "Nobody" not in target.read_text(encoding="utf-8")
    assert "Nowhere" not in target.read_text(encoding="utf-8")


def test_no_cell_of_the_results_runs_as_a_formula() -> None:
    """What OWASP lists as dangerous first signs of a cell ("CSV injection"): = + - @, tab and carriage return."""
    names = ["=1+1", "+2", "-3", "@SUM(A1)", "\t=1", " =1", "plain", None, "a=b"]
    safe = harmless(pa.table({"id": pa.array(names, pa.string()), "saving": [-1.0] * len(names)}))
    assert safe.column("id").to_pylist() == [
        *("'=1+1", "'+2", "'-3", "'@SUM(A1)", "'\t=1", "' =1"),
        *("plain", None, "a=b"),
    ]
    assert safe.column("saving").to_pylist() == [-1.0] * len(names)


def test_the_template_reads_back_without_a_fault(tmp_path: Path) -> None:
    source = tmp_path / "homes.csv"
    source.write_text(template(), encoding="utf-8")
    stock = screened(source, tmp_path / "out.csv")
    assert (stock.faulty, stock.strangers) == (0, ())


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "cp1252", "utf-16"])
@pytest.mark.parametrize("separator", [",", ";", "\t"])
def test_tables_of_any_spreadsheet_are_read(tmp_path: Path, encoding: str, separator: str) -> None:
    source = tmp_path / "homes.csv"
    lines = [["id", "home.floor_area [m²]", "home.age"], ["a\nb", "90", "before 1920"], ["short"], ["c", "80", ""]]
    text = "\r\n".join(separator.join(f'"{cell}"' for cell in line) for line in lines) + "\r\n"
    source.write_bytes(text.encode(encoding))
    assert headings(source) == lines[0]
    rows = pa.concat_tables(batches(source, lines[0], 2)).to_pylist()
    assert [row["id"] for row in rows] == ["a\nb", None, "c"]
    assert [row["home.floor_area [m²]"] for row in rows] == ["90", None, "80"]


@pytest.mark.parametrize("content", [b"", b"\x00\x01\x02", b"PAR1 cut off", b"home.floor_area [m\xb2]"])
@pytest.mark.parametrize("name", ["homes.csv", "homes.parquet", "homes.xlsx", "missing.csv"])
def test_files_that_are_no_tables_are_refused_in_words(tmp_path: Path, name: str, content: bytes) -> None:
    source = tmp_path / name
    if "missing" not in name:
        source.write_bytes(content)
    if name == "homes.csv" and content.startswith(b"home"):  # headings alone: a table of no homes
        assert screened(source, tmp_path / "out.csv").counts["rows"] == 0
        return
    with pytest.raises(InputFaults, match=r"\S"):
        screened(source, tmp_path / "out.csv")
