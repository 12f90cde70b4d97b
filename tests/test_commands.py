"""Do README, the clean machine and every system run the same commands?"""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from tests.__main__ import BESIDE, FIRST, SPREAD, main, pytest_words
from tests.sources import ROOT

README = (ROOT / "README.md").read_text(encoding="utf-8")
CI = ROOT / ".ci" / "run"


def command(heading: str, system: str) -> list[str]:
    """The steps of the command under a heading of README, for "sh" or "bat"."""
    section = README.split(f"\n## {heading}\n")[1].split("\n## ")[0]
    (block,) = re.findall(rf"```{system}\n(.*?)\n```", section, re.S)
    return re.split(r" && |\n", block)


def test_the_clean_machine_ends_with_the_test_command() -> None:
    last = CI.read_text(encoding="utf-8").strip().split("\n")[-1]
    assert last == " && ".join(command("Test", "sh"))


def test_the_clean_machine_stops_at_any_failure_and_demands_a_browser() -> None:
    text = CI.read_text(encoding="utf-8")
    assert text.startswith("#!/usr/bin/env bash\n")
    assert "\nset -euo pipefail\n" in text
    assert "\nexport ESTIMATOR_NEEDS_BROWSER=1" in text
    if os.name == "posix":
        assert os.access(CI, os.X_OK)
        subprocess.run(["bash", "-n", str(CI)], check=True)


@pytest.mark.parametrize(("heading", "steps"), [("Start", 3), ("Test", 4)])
def test_each_command_is_the_same_on_every_system(heading: str, steps: int) -> None:
    posix, windows = command(heading, "sh"), command(heading, "bat")
    translated = [
        step.replace("python3 ", "py ").replace(".venv/bin/python", r".venv\Scripts\python") for step in posix
    ]
    assert windows == translated
    assert len(posix) == steps


def test_the_job_stands_at_the_very_top() -> None:
    title, first = README.split("\n\n")[:2]
    assert title.startswith("# ")
    assert "heat recovery" in first.lower()
    assert not first.startswith(("#", "!", "[", "<", "`"))


def test_chosen_tests_run_alone_and_all_tests_spread(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "cpu_count", lambda: 2)
    assert pytest_words([]) == ["pytest", "-n", "2", *SPREAD]
    assert pytest_words(["tests/air", "-x"]) == ["pytest", "tests/air", "-x"]
    monkeypatch.setattr(os, "cpu_count", lambda: None)
    assert pytest_words([]) == ["pytest"]


@pytest.mark.parametrize(("steps", "name"), [(FIRST, "lint"), (BESIDE, "types")], ids=["before", "beside"])
def test_every_step_runs_and_one_failure_fails_all(
    monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str], steps: dict[str, list[str]], name: str
) -> None:
    monkeypatch.setattr("tests.__main__.pytest_words", lambda words: ["platform", *words])
    for each in (FIRST, BESIDE):
        for step in each:
            monkeypatch.setitem(each, step, ["platform"])
    assert main([]) == 0
    monkeypatch.setitem(steps, name, ["no_such_module_here"])
    assert main([]) == 1
    said = capfd.readouterr()
    assert said.out.count("== tests: python -m platform") == 2
    assert said.out.count("== types: python -m ") == 2
    assert f"== failed: {name}" in said.err
    assert "No module named no_such_module_here" in said.out + said.err


BROWSER_TEST = """
import pytest

@pytest.mark.browser
def test_one():
    pytest.skip("no browser found")

def test_other():
    pytest.skip("not for a browser")
"""


@pytest.mark.parametrize(
    ("environment", "closing"),
    [
        ({}, "2 skipped"),
        ({"CI": "true"}, "1 failed, 1 skipped"),
        ({"ESTIMATOR_NEEDS_BROWSER": "1"}, "1 failed, 1 skipped"),
    ],
)
def test_a_skipped_browser_test_fails_where_there_must_be_a_browser(
    tmp_path: Path, environment: dict[str, str], closing: str
) -> None:
    (tmp_path / "test_skipping.py").write_text(BROWSER_TEST, encoding="utf-8")
    (tmp_path / "pytest.ini").write_text("[pytest]\nmarkers = browser\n", encoding="utf-8")
    clean = {key: value for key, value in os.environ.items() if key not in ("CI", "ESTIMATOR_NEEDS_BROWSER")}
    words = [
        "-p",
        "tests.conftest",
        "-p",
        "no:cacheprovider",
        "--rootdir",
        str(tmp_path),
        "-c",
        str(tmp_path / "pytest.ini"),
    ]
    run = subprocess.run(
        [sys.executable, "-m", "pytest", *words, str(tmp_path)],
        cwd=ROOT,
        env={**clean, **environment},
        capture_output=True,
        text=True,
        check=False,
    )
    assert closing in run.stdout.strip().split("\n")[-1]
    assert run.returncode == (1 if "failed" in closing else 0)
