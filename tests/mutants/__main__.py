"""Which small changes of a module does no check notice? `python -m tests.mutants air.joining [TESTS...]`

Every change that cosmic-ray knows is made to the module, one at a time, in a copy of its text that stands in for it in
this process. First the published checks are asked, which takes milliseconds; what they do not notice goes on, in a copy
of the project, to the tests named. Needs cosmic-ray (`pip install cosmic-ray`).
"""

from __future__ import annotations

import ast
import difflib
import math
import shutil
import subprocess
import sys
import tempfile
import warnings
from collections.abc import Iterator
from importlib import import_module
from pathlib import Path
from types import ModuleType
from typing import Any

from estimator.evidence.run import Result, run_all
from tests.sources import ROOT

PATIENCE = 120.0  # s for the tests of one change


def changes(source: str) -> Iterator[str]:
    """The text of a module after each change, one at a time."""
    mutating: Any = import_module("cosmic_ray.mutating")
    plugins: Any = import_module("cosmic_ray.plugins")
    for name in plugins.operator_names():
        operator = plugins.get_operator(name)
        if operator.arguments():
            continue
        for occurrence in range(10_000):
            changed = mutating.mutate_code(source, operator(), occurrence)
            if changed is None:
                break
            if _runs_otherwise(source, changed):
                yield changed


def _runs_otherwise(source: str, changed: str) -> bool:
    """Whether a change is Python at all, and touches more than annotations, which nothing reads while it runs."""
    try:
        return _without_annotations(source) != _without_annotations(changed)
    except SyntaxError:
        return False


def _without_annotations(source: str) -> str:
    tree = ast.parse(source)
    for node in ast.walk(tree):
        for name in ("annotation", "returns"):
            if isinstance(getattr(node, name, None), ast.expr):
                setattr(node, name, ast.Constant(None))
    return ast.dump(tree)


def _asks(result: Result, name: str) -> bool:
    """Whether a check asks anything of a module, itself or for one of its inputs."""
    return any(path.startswith(f"{name}.") for path in (result.check.function, *result.inputs.values()))


def noticed_by_checks(module: ModuleType, text: str, usual: list[Result]) -> bool:
    """Whether a published check comes out otherwise once the text stands in for the module."""
    kept = dict(vars(module))
    try:
        exec(compile(text, str(module.__file__), "exec"), vars(module))
        after = run_all({result.check.file: result.check for result in usual}.values())
    except Exception:  # a module that does not even load is noticed
        return True
    finally:
        vars(module).clear()
        vars(module).update(kept)
    return any(
        was.passed != now.passed or math.isnan(was.ours) != math.isnan(now.ours)
        for was, now in zip(usual, after, strict=True)
    )


def noticed_by_tests(folder: Path, file: Path, text: str, tests: list[str]) -> bool:
    """Whether a test fails in a copy of the project with that text."""
    place = folder / file
    whole = place.read_text("utf-8")
    place.write_text(text, "utf-8")
    command = [sys.executable, "-m", "pytest", "-q", "-x", "-p", "no:cacheprovider", *tests]
    try:
        return subprocess.run(command, cwd=folder, capture_output=True, timeout=PATIENCE).returncode != 0
    except subprocess.TimeoutExpired:
        return True
    finally:
        place.write_text(whole, "utf-8")


def main(name: str, tests: list[str]) -> None:
    """Say how many changes were made, how many nobody noticed, and which."""
    module = import_module(f"estimator.{name}")
    file = Path(str(module.__file__)).relative_to(ROOT)
    source = (ROOT / file).read_text("utf-8")
    usual = [result for result in run_all() if _asks(result, name)]
    made, left = 0, []
    for text in changes(source):
        made += 1
        if not noticed_by_checks(module, text, usual):
            left.append(text)
    print(f"{name}: {made} changes; {len(left)} that {len(usual)} published values do not notice", flush=True)
    if tests:
        with tempfile.TemporaryDirectory() as held:
            folder = Path(held) / "project"
            shutil.copytree(ROOT, folder, ignore=shutil.ignore_patterns(".git", ".venv", "__pycache__", ".*_cache"))
            left = [text for text in left if not noticed_by_tests(folder, file, text, tests)]
        print(f"{len(left)} that {', '.join(tests)} do not notice either", flush=True)
    for text in left:
        shown = difflib.unified_diff(source.split("\n"), text.split("\n"), lineterm="", n=0)
        print(*(line for line in list(shown)[2:]), sep="\n")


if __name__ == "__main__":
    warnings.simplefilter("ignore")
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    main(sys.argv[1], sys.argv[2:])
