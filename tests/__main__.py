"""What must a change pass before it is taken?

`python -m tests` runs lint, format, types and tests, each whatever became of the others; words behind it go to pytest.
It ends with 1 where any of them failed.
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
MOST_WORKERS = 4  # each loads its own weather years and libraries
SPREAD = ("--dist", "loadfile", "--no-loadscope-reorder")  # in the order of tests/conftest.py: the longest first

STEPS = {
    "lint": ["ruff", "check", "."],
    "format": ["ruff", "format", "--check", "."],
    "types": ["mypy"],
}


def pytest_words(words: list[str]) -> list[str]:
    """The words pytest is started with: one worker a core for all tests, none beside it for chosen ones."""
    workers = min(os.cpu_count() or 1, MOST_WORKERS)
    spread = ["-n", str(workers), *SPREAD] if workers > 1 and not words else []
    return ["pytest", *spread, *words]


def passed(name: str, module: list[str]) -> bool:
    """Whether one step, a module of Python run at the top level, ends well."""
    print(f"== {name}: python -m {' '.join(module)}", flush=True)
    environment = {**os.environ, "PYTHONUTF8": "1"}
    return subprocess.run([sys.executable, "-m", *module], cwd=ROOT, env=environment, check=False).returncode == 0


def main(words: list[str]) -> int:
    """Run all steps and return 0 where all went well, else 1; the tests come last, so that their closing line does."""
    steps = {**STEPS, "tests": pytest_words(words)}
    failed = [name for name, module in steps.items() if not passed(name, module)]
    if failed:
        print(f"== failed: {', '.join(failed)}", file=sys.stderr)
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
