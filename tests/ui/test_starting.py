"""Does an installed package start the dashboard by itself, closed and complete as from a checkout?"""

from __future__ import annotations

import shutil
import tomllib
import urllib.request
from collections.abc import Iterator

import pytest

from tests.browser.harness import Server
from tests.load.cases import asked
from tests.load.session import Session, answer_in
from tests.sources import ROOT

LAID = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["tool"]["hatch"]["build"]["targets"]["wheel"]


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    """The package as its wheel lays it out, and nothing else of the project."""
    folder = tmp_path_factory.mktemp("installed")
    for name in LAID["packages"]:
        shutil.copytree(ROOT / name, folder / name, ignore=shutil.ignore_patterns("__pycache__"))
    for file, place in LAID["force-include"].items():
        (folder / place).parent.mkdir(exist_ok=True)
        (shutil.copytree if (ROOT / file).is_dir() else shutil.copy)(ROOT / file, folder / place)
    server = Server(installed=folder)
    server.start()
    yield server
    server.stop()


def test_its_first_page_says_what_the_package_says(installed: Server) -> None:
    """The climates it carries included."""
    (first, *_) = asked(11)
    session = Session(installed.port)
    try:
        assert answer_in(session.opened(first.link)) == first.answer
    finally:
        session.close()


def test_its_settings_came_along(installed: Server) -> None:
    """Letters of its own are served only where the settings say so; every answer carries its protection."""
    with urllib.request.urlopen(f"{installed.url}/app/static/newsreader.woff2") as letters:
        assert letters.read(4) == b"wOF2"
        assert letters.headers["referrer-policy"] == "no-referrer"
