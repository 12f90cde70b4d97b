"""What must a change pass before it is taken?

`python -m tests` runs lint, format, types and tests, each whatever became of the others; words behind it go to pytest.
It ends with 1 where any of them failed. Types are looked at beside the tests, whose workers leave a core idle at the
beginning and at the end.
"""

from __future__ import annotations

import os
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
MOST_WORKERS = 4  # each loads its own weather years and libraries
SPREAD = ("--dist", "loadfile", "--no-loadscope-reorder")  # in the order of tests/conftest.py: the longest first

FIRST = {"lint": ["ruff", "check", "."], "format": ["ruff", "format", "--check", "."]}
BESIDE = {"types": ["mypy"]}


def pytest_words(words: list[str]) -> list[str]:
    """The words pytest is started with: one worker a core for all tests, none beside it for chosen ones."""
    workers = min(os.cpu_count() or 1, MOST_WORKERS)
    spread = ["-n", str(workers), *SPREAD] if workers > 1 and not words else []
    return ["pytest", *spread, *words]


def passed(name: str, module: list[str], *, beside: bool = False) -> bool:
    """Whether one step, a module of Python run at the top level, ends well. beside: say all of it at its end."""
    head = f"== {name}: python -m {' '.join(module)}"
    if not beside:
        print(head, flush=True)
    done = subprocess.run(
        [sys.executable, "-m", *module],
        cwd=ROOT,
        env={**os.environ, "PYTHONUTF8": "1"},
        check=False,
        encoding="utf-8",
        stdout=subprocess.PIPE if beside else None,
        stderr=subprocess.STDOUT if beside else None,
    )
    if beside:
        print(f"\n{head}\n{done.stdout}", end="", flush=True)
    return done.returncode == 0


def main(words: list[str]) -> int:
    """Run all steps and return 0 where all went well, else 1; the tests come last, so that their closing line does."""
    well = {name: passed(name, module) for name, module in FIRST.items()}
    with ThreadPoolExecutor(len(BESIDE)) as beside:
        asked = {name: beside.submit(passed, name, module, beside=True) for name, module in BESIDE.items()}
        well["tests"] = passed("tests", pytest_words(words))
        well |= {name: done.result() for name, done in asked.items()}
    failed = [name for name, went_well in well.items() if not went_well]
    if failed:
        print(f"== failed: {', '.join(failed)}", file=sys.stderr)
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
