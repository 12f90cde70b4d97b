"""Do imports run one way, do rooms keep their own tools, and do files stay small?

The rules are tried on the files as they are and on planted wrongs.
"""

from __future__ import annotations

import json
import subprocess
import sys

import pytest

from tests.layers import (
    HEAVY,
    PHYSICS,
    TOP_LEVEL,
    arithmetic_faults,
    direction_faults,
    library_faults,
    number_faults,
    piecemeal_faults,
    size_faults,
)
from tests.sources import PACKAGE, ROOT, Source, files_in_git, named, sources


@pytest.mark.parametrize("source", named(sources(PACKAGE)))
def test_imports_run_one_way(source: Source) -> None:
    assert direction_faults(source) == []


@pytest.mark.parametrize("source", named((*sources(PACKAGE), *(item for item in sources() if item.path == "app.py"))))
def test_libraries_keep_to_their_rooms(source: Source) -> None:
    assert library_faults(source) == []


@pytest.mark.parametrize("source", named(tuple(item for item in sources(PACKAGE) if item.room in PHYSICS)))
def test_conversions_have_names(source: Source) -> None:
    assert number_faults(source) == []


def test_charts_are_put_together_at_once() -> None:
    rooms = [item for item in sources(PACKAGE) if item.room in ("report", "ui")]
    assert [fault for room in rooms for fault in piecemeal_faults(room)] == []
    changed = planted("report/charts.py", "figure.add_vline(x=1)\nfigure.update_layout(height=2)\n")
    assert len(piecemeal_faults(changed)) == 2


def test_pages_do_not_calculate() -> None:
    pages = [item for item in sources(PACKAGE) if item.path.startswith(f"{PACKAGE}/ui/pages/")]
    assert [fault for page in pages for fault in arithmetic_faults(page)] == []


@pytest.mark.parametrize("source", named(sources()))
def test_files_are_small_and_say_what_they_are_for(source: Source) -> None:
    assert size_faults(source) == []


def test_the_front_door_opens_without_the_heavy_libraries() -> None:
    modules = [item.module for item in sources(PACKAGE) if item.room not in ("report", "ui", "__main__")]
    code = "import importlib, json, sys; [importlib.import_module(name) for name in sys.argv[1:]]"
    command = [sys.executable, "-c", f"{code}; print(json.dumps(sorted(sys.modules)))"]
    for loaded in ([PACKAGE], modules):
        run = subprocess.run([*command, *loaded], cwd=ROOT, capture_output=True, text=True, check=True)
        arrived = json.loads(run.stdout)
        assert PACKAGE in arrived
        assert [name for name in HEAVY if name in arrived] == []


def test_the_top_level_is_as_fixed() -> None:
    entries = {path.split("/")[0] for path in files_in_git()}
    assert {entry for entry in entries if not entry.startswith(".")} == TOP_LEVEL


def planted(path: str, text: str) -> Source:
    return Source(f"{PACKAGE}/{path}", text)


@pytest.mark.parametrize(
    ("path", "text"),
    [
        ("air/wrong.py", "from estimator.inputs.case import Case\n"),
        ("air/wrong.py", "from estimator.heat import demand\n"),
        ("air/wrong.py", "from estimator import climate\n"),
        ("inputs/wrong.py", "import estimator.air.leakage\n"),
        ("climate/wrong.py", "def f():\n    from estimator import money\n"),
        ("estimate.py", "from estimator.compare import run\n"),
        ("report/wrong.py", "if TYPE_CHECKING:\n    from estimator.ui.shell import page\n"),
        ("units.py", "from estimator.errors import Fault\n"),
        ("heat/wrong.py", "from ..inputs import case\n"),
        ("heat/wrong.py", "import estimator\n"),
        ("nowhere.py", "from estimator.units import Array\n"),
        ("sweep.py", "from estimator import nowhere\n"),
        ("__init__.py", "from estimator.report import table\n"),
    ],
)
def test_a_planted_wrong_import_is_found(path: str, text: str) -> None:
    assert len(direction_faults(planted(path, text))) == 1


def test_imports_the_right_way_are_not() -> None:
    assert (
        direction_faults(planted("air/right.py", "from estimator import units\nimport numpy, estimator.errors\n")) == []
    )
    assert (
        direction_faults(planted("ui/right.py", "from estimator.report import table\nfrom estimator.ui import x\n"))
        == []
    )


@pytest.mark.parametrize(
    ("path", "library"),
    [
        ("air/wrong.py", "pandas"),
        ("report/table.py", "plotly.graph_objects"),
        ("report/words.py", "streamlit"),
        ("estimate.py", "pvlib.solarposition"),
        ("climate/wrong.py", "pydantic"),
        ("money/wrong.py", "numpy_financial"),
    ],
)
def test_a_library_out_of_place_is_found(path: str, library: str) -> None:
    assert len(library_faults(planted(path, f"import {library}\n"))) == 1
    assert len(library_faults(planted(path, f"def f():\n    from {library} import x\n"))) == 1


def test_libraries_in_their_place_are_not() -> None:
    assert library_faults(planted("report/charts_months.py", "import plotly.graph_objects as go, numpy\n")) == []
    assert library_faults(planted("ui/pages/one.py", "import streamlit as st, json\n")) == []


@pytest.mark.parametrize(
    ("text", "faults"),
    [
        ("x = 1000.0 * y", 1),
        ("def f(q):\n    return q / 3600", 1),
        ("ZERO = 273.15", 1),
        ("def f(*, k=3.6):\n    return k", 1),
        ("HIGH = {'hall': 1000.0}\nLOW: tuple[float, ...] = (1000, 3.6)", 0),
        ("x = [100, 36, 3601.0, True]", 0),
    ],
)
def test_bare_conversions_are_found(text: str, faults: int) -> None:
    assert len(number_faults(planted("air/wrong.py", text))) == faults


@pytest.mark.parametrize(
    ("text", "faults"),
    [("a = b - c", 1), ("a += 1", 1), ("a = -b", 1), ("a = b % c", 1), ("a = -1\nb: int | None = f'{a}'", 0)],
)
def test_arithmetic_in_a_page_is_found(text: str, faults: int) -> None:
    assert len(arithmetic_faults(planted("ui/pages/wrong.py", text))) == faults


def test_long_files_and_files_without_a_question_are_found() -> None:
    assert size_faults(planted("air/fine.py", '"""Why?"""\n' + "x = 1\n" * 299)) == []
    assert len(size_faults(planted("air/long.py", '"""Why?"""\n' + "x = 1\n" * 300))) == 1
    assert len(size_faults(planted("air/mute.py", "x = 1\n"))) == 2
    assert len(size_faults(planted("air/mute.py", '"""Because."""\n'))) == 1
