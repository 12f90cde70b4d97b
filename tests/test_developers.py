"""Is the contributors' guide still true?"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable

import pytest

from tests import map_block, nomenclature, worked_block
from tests.marked import ROOT, Block

GUIDE = ROOT / "DEVELOPERS.md"
# Said in the guide to need no reason of their own: what the dashboard is made of, and its test runner.
PLAIN = {"streamlit", "pandas", "numpy", "plotly", "pvlib", "pytest"}


def guide() -> str:
    """The whole guide."""
    return GUIDE.read_text(encoding="utf-8")


@pytest.mark.parametrize("block", [map_block.block, nomenclature.block, worked_block.block])
def test_generated_parts_are_up_to_date(block: Callable[[], Block]) -> None:
    assert block().written() == block().text, "run `python -m tests.generated --write`"


def test_every_module_is_titled_by_its_question() -> None:
    lines = map_block.block().body.splitlines()
    assert [line for line in lines if not re.search(r"`(\*\*)? \S", line)] == []


def test_every_dependency_has_its_line_of_reason_and_no_other_has() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    extras = project["project"]["optional-dependencies"].values()
    wanted = [
        *project["project"]["dependencies"],
        *(line for extra in extras for line in extra),
        *project["build-system"]["requires"],
    ]
    names = {re.split(r"[<>=!~\[; ]", line)[0] for line in wanted if not line.startswith("estimator")}
    part = guide().partition("## Dependencies")[2].partition("\n## ")[0]
    heads = (line.partition(":")[0] for line in part.splitlines() if line.startswith("* "))
    told = {name for head in heads for name in re.findall(r"`([\w-]+)`", head)}
    assert told == names - PLAIN


def test_every_path_it_names_exists() -> None:
    """Paths in code marks that begin in a folder of the project."""
    named = set(re.findall(r"`((?:estimator|tests|climate_demo|\.ci|\.streamlit)/[^`\s]*)`", guide()))
    assert len(named) > 10
    assert [path for path in sorted(named) if not (ROOT / path).exists()] == []
