"""Does each input that a search has found stay mended?"""

from __future__ import annotations

from pathlib import Path

import pytest

from estimator.climate.monthly_tables import monthly_means
from estimator.errors import ClimateFault, InputFaults
from estimator.inputs.case import Case
from estimator.stock.columns import read_columns
from estimator.stock.homes import base_case, read_homes
from estimator.stock.reading import batches, headings
from estimator.ui.link import from_link
from tests.fuzz.targets import LONGEST_SENTENCE, TARGETS

HEAD = "id,home.floor_area [m²]\n".encode()


def faulty_rows(folder: Path, content: bytes) -> tuple[int, list[int]]:
    """How many rows a table has, and which of them are told as faulty."""
    path = folder / "homes.csv"
    path.write_bytes(content)
    base = base_case(Case())
    columns = read_columns(headings(path), base)
    (table,) = [found for found in batches(path, columns.names, 1000) if found.num_rows]
    return table.num_rows, sorted(read_homes(table, columns, base).faults)


def test_a_table_of_nothing_but_broken_lines(tmp_path: Path) -> None:
    assert faulty_rows(tmp_path, HEAD + b"1,90,7\n2,91,8,9\n") == (2, [0, 1])


def test_a_broken_line_that_is_no_unicode_costs_that_line_alone(tmp_path: Path) -> None:
    assert faulty_rows(tmp_path, HEAD + b"1,90\nA\xffsh,91,8\n3,92\n") == (3, [1])


def test_a_heading_as_long_as_a_file_is_cut_in_the_sentence(tmp_path: Path) -> None:
    path = tmp_path / "homes.csv"
    path.write_bytes(b"leakage.value [as " + b"0" * 5000 + b"],home.floor_area [m\xc2\xb2]\n")
    with pytest.raises(InputFaults) as refused:
        read_columns(headings(path), Case())
    assert len(str(refused.value)) < LONGEST_SENTENCE


def test_a_mark_of_order_before_a_later_heading(tmp_path: Path) -> None:
    content = b"id,\xef\xbb\xbfhome.floor_area [m\xc2\xb2]\n1,90\n2,x\n"
    assert faulty_rows(tmp_path, content) == (2, [1])


def test_a_head_cut_within_a_letter_of_two_bytes(tmp_path: Path) -> None:
    path = tmp_path / "homes.csv"
    path.write_bytes(b"\xff\xfei\x00d\x00,\x00s")
    with pytest.raises(InputFaults):
        read_columns(headings(path), Case())


def test_a_link_whose_version_is_thousands_of_noughts() -> None:
    with pytest.raises(InputFaults, match="no form this estimator ever wrote"):
        from_link("0" * 7992 + ".abc")


@pytest.mark.parametrize("figure", ["9" * 400, "9" * 5000, "[" * 900, "a." * 2000 + "b = 1"])
def test_a_monthly_table_with_what_no_number_holds(figure: str) -> None:
    figures = "temp_air = [4.1, 4.4, 6.3, 8.6, 11.6, 14.5, 16.7, 16.5, 14.0, 10.5, 6.9, 4.4]"
    with pytest.raises(ClimateFault):
        monthly_means(f"latitude = {figure}\n{figures}", where="months.toml")
    with pytest.raises(ClimateFault):
        monthly_means(figures.replace("4.1", figure), where="months.toml")


@pytest.mark.parametrize("name", TARGETS)
@pytest.mark.parametrize("data", [b"", b"\n", b"\xff\xfe", b"\xef\xbb\xbf", b"\x00", b"\x1b[2J", b"1." + b"A" * 100])
def test_the_smallest_inputs(name: str, data: bytes) -> None:
    TARGETS[name].once(data)
