"""What holds for all tests, whatever machine they run on?

Property tests have no time limit, which a busy machine would break, and in CI the same draws every time. On a machine
that is there to run browser tests, skipping one is a failure. Included years are read once: hundreds of tests ask for
one by its name, and reading it takes longer than most of what they do with it.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Generator
from functools import cache
from importlib.util import find_spec
from pathlib import Path

import numpy as np
import pytest
from hypothesis import HealthCheck, settings

from estimator.climate import sources
from estimator.climate.files import read_year
from estimator.climate.year import ClimateYear

BROWSER_TESTS = Path(__file__).parent / "browser"


_TABLE = "table: "


@pytest.fixture
def table(record_property: Callable[[str, object], None]) -> Callable[[str, str], None]:
    """Puts a line under a title at the end of the tests' output, whichever worker the test ran on."""
    return lambda title, line: record_property(f"{_TABLE}{title}", line)


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Print the tables that tests have made, each once."""
    tables: dict[str, list[str]] = {}
    for report in terminalreporter.getreports("passed"):
        for name, line in report.user_properties if report.when == "call" else ():
            if name.startswith(_TABLE):
                tables.setdefault(name.removeprefix(_TABLE), []).append(line)
    for title, lines in tables.items():
        terminalreporter.write_line("")
        terminalreporter.write_line(title)
        for line in lines:
            terminalreporter.write_line(line)


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Files that take long come first, so that no worker is left with one at the end; within a file nothing moves."""
    marked = {item.path for item in items if item.get_closest_marker("slow")}
    items.sort(key=lambda item: (not item.path.is_relative_to(BROWSER_TESTS), item.path not in marked))


def browser_needed() -> bool:
    """Whether this machine must have a browser: CI, or one that says so."""
    return bool(os.environ.get("CI") or os.environ.get("ESTIMATOR_NEEDS_BROWSER"))


def included() -> tuple[Path, ...]:
    """Folders of the years that can be asked for by name."""
    pvlib = find_spec("pvlib")
    assert pvlib is not None
    assert pvlib.origin is not None
    return sources.demo_folder(), Path(pvlib.origin).parent / "data"


@cache
def _kept(path: Path) -> ClimateYear:
    year = read_year(path)
    for name in year.__slots__:
        if isinstance(values := getattr(year, name), np.ndarray):
            values.setflags(write=False)  # whoever writes into a year that others read fails
    return year


def _read(path: Path) -> ClimateYear:
    return _kept(path) if path.parent in included() else read_year(path)


sources.read_year = _read  # type: ignore[attr-defined]


settings.register_profile(
    "house", deadline=None, derandomize=browser_needed(), suppress_health_check=[HealthCheck.too_slow]
)
settings.load_profile("house")


def refuse(report: pytest.TestReport | pytest.CollectReport) -> None:
    """Turn a skip into a failure that keeps its reason."""
    if report.skipped and not hasattr(report, "wasxfail") and browser_needed():
        report.outcome = "failed"
        report.longrepr = f"skipped, but this machine must run browser tests: {report.longrepr}"


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item: pytest.Item) -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """A test with the mark `browser` that skips."""
    report = yield
    if item.get_closest_marker("browser"):
        refuse(report)
    return report


@pytest.hookimpl(wrapper=True)
def pytest_make_collect_report(
    collector: pytest.Collector,
) -> Generator[None, pytest.CollectReport, pytest.CollectReport]:
    """A whole file of browser tests that skips."""
    report = yield
    if collector.path.is_relative_to(BROWSER_TESTS):
        refuse(report)
    return report
