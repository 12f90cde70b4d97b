"""Does every case that an older release has written still open, and say the same?

The files are kept for ever as they were written. A release that changes the form of a case raises `CASE_VERSION`, adds
a migration and adds files of its own; it never changes these.
"""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from estimator import load_year, run
from estimator.inputs.case import CASE_VERSION
from estimator.inputs.casefile import MIGRATIONS, case_to_dict, read_case
from estimator.inputs.plaintext import branches

FILES = sorted(Path(__file__).parent.glob("version_*.toml"))


def version_of(path: Path) -> int:
    return int(path.stem.split("_")[1])


NEWEST = [path for path in FILES if version_of(path) == CASE_VERSION]


def test_every_version_has_files_and_a_way_to_the_next() -> None:
    assert {version_of(path) for path in FILES} == set(range(1, CASE_VERSION + 1))
    assert set(MIGRATIONS) == set(range(1, CASE_VERSION))


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_file_of_any_version_opens_and_can_be_estimated(path: Path) -> None:
    case = read_case(path)
    assert case.version == CASE_VERSION
    assert run(case, load_year("Inland vale")).against_baseline


@pytest.mark.parametrize(
    "path", [path for path in FILES if version_of(path) == CASE_VERSION], ids=lambda path: path.stem
)
def test_nothing_that_stands_in_a_file_of_this_version_is_lost(path: Path) -> None:
    written = tomllib.loads(path.read_text("utf-8"))
    held = case_to_dict(read_case(path))
    for place, value in branches(written):
        if place[0] == "tags" or value == {}:
            continue
        found = held
        for key in place:
            found = found[key]
        assert found == value, place
