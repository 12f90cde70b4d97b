"""What may any bytes do to a reader? Give something usable, or plain sentences: nothing else.

Each target takes bytes and returns; what it raises is a finding. A year or a case that is accepted must hold what was
written: finite hours, and every entry that stands in the text.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import numpy as np

from estimator.climate.columns import Layout
from estimator.climate.kept_files import file_read, needs_layout
from estimator.climate.monthly import monthly_year
from estimator.climate.monthly_tables import monthly_means
from estimator.climate.raw import Place
from estimator.climate.sources import DEMO_CLIMATES, REAL_YEARS, demo_folder
from estimator.climate.text import text_of
from estimator.climate.year import ClimateYear
from estimator.errors import InputFaults
from estimator.inputs.case import Case
from estimator.inputs.casefile import case_from_dict, case_from_text
from estimator.inputs.plaintext import branches, text_of_bytes, tree_of_text
from estimator.inputs.template import commented_case
from estimator.inputs.writing import case_to_dict, case_to_toml
from estimator.stock.columns import read_columns
from estimator.stock.demo import template
from estimator.stock.homes import base_case, read_homes
from estimator.stock.reading import batches, headings
from estimator.ui.link import from_link, to_link
from tests.climate.conftest import PVLIB_DATA

LONGEST_SENTENCE = 1_500  # characters: more is no sentence but somebody's file
MOST_SENTENCES = 20_000
MONTHS = """name = "Fernby"
latitude = 52.0
longitude = -1.5
altitude = 120.0
utc_offset = 0.0
source = "invented"
licence = "free"
temp_air = [4.1, 4.4, 6.3, 8.6, 11.6, 14.5, 16.7, 16.5, 14.0, 10.5, 6.9, 4.4]
wind_speed = [4.8, 4.7, 4.5, 4.2, 4.0, 3.7, 3.6, 3.5, 3.7, 4.0, 4.2, 4.4]
ghi = [28, 54, 97, 152, 191, 205, 192, 161, 119, 69, 35, 22]
daily_swing = [5.7, 6.3, 7.2, 8.6, 9.0, 8.8, 8.8, 8.4, 7.8, 6.6, 5.9, 5.7]
daily_spread = [3.9, 3.5, 3.0, 2.6, 2.6, 2.3, 2.2, 2.0, 2.1, 2.6, 3.3, 3.8]
"""
LAYOUT = Layout(
    place=Place(
        name="Fernby",
        latitude=52.0,
        longitude=-1.5,
        altitude=120.0,
        utc_offset=0.0,
        source="invented",
        licence="free",
    ),
    columns={name: name for name in ("month", "day", "hour", "temp_air", "wind_speed", "ghi", "dni", "dhi")},
)


@dataclass(frozen=True, kw_only=True)
class Target:
    """A reader under fire, and well-formed bytes to spoil."""

    once: Callable[[bytes], None]
    sound: Callable[[], tuple[bytes, ...]]


def told(refused: InputFaults) -> None:
    """A refusal says something, of a length that can be read, and shows no program text."""
    assert 0 < len(refused.faults) <= MOST_SENTENCES
    for fault in refused.faults:
        assert fault.what.strip(), refused
        assert len(fault.what) <= LONGEST_SENTENCE, fault.what[:200]
        assert "Traceback" not in fault.what
        assert "object at 0x" not in fault.what


def refusing(read: Callable[[bytes], None]) -> Callable[[bytes], None]:
    """Plain sentences are an answer; everything else that is raised goes on."""

    def once(data: bytes) -> None:
        try:
            read(data)
        except InputFaults as refused:  # ClimateFault is one of them
            told(refused)

    return once


def _case(data: bytes) -> None:
    text = text_of_bytes(data, name="case")
    case = case_from_text(text, name="case")
    _holds_what_was_written(tree_of_text(text, name="case"), case_to_dict(case))
    assert case_to_dict(case_from_text(case_to_toml(case), name="again.toml")) == case_to_dict(case)


def _link(data: bytes) -> None:
    tree = from_link(data.decode("latin-1"))
    case = case_from_dict(tree)
    again = to_link(tree)
    if again:
        case_from_dict(from_link(again))
    assert case_to_dict(case)["version"] == 1


def _holds_what_was_written(written: dict[str, Any], held: dict[str, Any]) -> None:
    for place, value in branches(written):
        if place[0] == "tags" or value == {}:
            continue  # tags may be written as tables; their case is compared as a whole below
        found: Any = held
        for key in place:
            found = found[key]
        assert found == value, (place, value, found)


def _weather(data: bytes) -> None:
    layout = LAYOUT if needs_layout(data, name="weather") else None
    _whole(file_read(data, name="weather", layout=layout).year)


def _months(data: bytes) -> None:
    _whole(monthly_year(monthly_means(text_of(data, "months"), where="months")))


def _stock(data: bytes) -> None:
    base = base_case(Case())
    with TemporaryDirectory() as folder:
        path = Path(folder) / "homes.csv"
        path.write_bytes(data)
        columns = read_columns(headings(path), base)
        for table in batches(path, columns.names, 100):
            read = read_homes(table, columns, base)
            rows = sorted([*read.faults, *(row for group in read.groups for row in group.rows.tolist())])
            assert rows == list(range(table.num_rows)), "a row is lost or doubled"
            for faults in read.faults.values():
                told(InputFaults(faults))


def _whole(year: ClimateYear) -> None:
    assert year.rows * year.weight == 8760.0
    for name in ("temp_air", "wind_speed", "ghi", "dni", "dhi", "relative_humidity", "pressure", "facades"):
        assert np.isfinite(getattr(year, name)).all(), name
    assert (year.pressure > 0.0).all()
    assert (year.facades >= 0.0).all()


@cache
def _cases() -> tuple[bytes, ...]:
    whole = commented_case()
    return whole.encode(), b"version = 1\n[home]\nfloor_area = 90.0\n", b'{"version": 1, "home": {"bedrooms": 3}}'


@cache
def _links() -> tuple[bytes, ...]:
    tree = {"version": 1, "home": {"floor_area": 145.5, "form": "detached"}, "prices": {"currency": "€"}}
    return to_link(tree).encode(), b"1.", b"2.abc"


@cache
def _weathers() -> tuple[bytes, ...]:
    files = [PVLIB_DATA / name for name in REAL_YEARS.values()]
    return (*(file.read_bytes() for file in files), (demo_folder() / DEMO_CLIMATES["Upland"]).read_bytes())


@cache
def _stocks() -> tuple[bytes, ...]:
    whole = template().encode()
    return whole, whole.replace(b",", b";"), b"id,home.floor_area [m\xc2\xb2]\n1,90\n"


TARGETS = {
    "case": Target(once=refusing(_case), sound=_cases),
    "link": Target(once=refusing(_link), sound=_links),
    "weather": Target(once=refusing(_weather), sound=_weathers),
    "stock": Target(once=refusing(_stock), sound=_stocks),
    "months": Target(once=refusing(_months), sound=lambda: (MONTHS.encode(),)),
}
