"""Which files are ours, and how does one of them parse?"""

from __future__ import annotations

import ast
import os
import shutil
import subprocess
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).resolve().parents[1]
PACKAGE = "estimator"


@dataclass(frozen=True, slots=True)
class Source:
    """One Python file: its path below the top level, with slashes, and its text."""

    path: str
    text: str

    @property
    def tree(self) -> ast.Module:
        """The parsed file."""
        return ast.parse(self.text, filename=self.path)

    @property
    def module(self) -> str:
        """Dotted name of the module."""
        return self.path.removesuffix(".py").removesuffix("/__init__").replace("/", ".")

    @property
    def room(self) -> str:
        """The part of the package the file belongs to: a folder or module below it, "__init__" for its front."""
        parts = self.path.removesuffix(".py").split("/")
        return parts[1] if len(parts) > 1 else parts[0]


@cache
def sources(folder: str = "") -> tuple[Source, ...]:
    """Every Python file of a top-level folder, or of the package, the tests and the top level."""
    found = [(ROOT / name).rglob("*.py") for name in ([folder] if folder else [PACKAGE, "tests"])]
    paths = sorted(path for group in found for path in group) + ([] if folder else sorted(ROOT.glob("*.py")))
    return tuple(Source(path.relative_to(ROOT).as_posix(), path.read_text(encoding="utf-8")) for path in paths)


def named(items: tuple[Source, ...]) -> list[Any]:
    """The same files as test parameters that carry their path."""
    return [pytest.param(item, id=item.path) for item in items]


def files_in_git() -> tuple[str, ...]:
    """Paths of all files that git tracks or would track; skips where there is no git, which fails in CI."""
    if shutil.which("git") is None or not (ROOT / ".git").exists():
        if os.environ.get("CI"):
            pytest.fail("CI runs in a clone, with git")
        pytest.skip("this copy is no git clone")
    command = ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
    listed = subprocess.run(command, cwd=ROOT, check=True, capture_output=True).stdout.decode("utf-8")
    return tuple(path for path in listed.split("\0") if path and (ROOT / path).is_file())
