"""Does an untested house ever get a bare number, on the command line, in the document or on any page?

A figure that hangs on the leakage carries a range, or stands under words that say it is estimated.
"""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

import estimator.ui
from estimator import Case
from estimator.__main__ import main
from estimator.leak_range import leakage_span
from estimator.ui.shell import PAGES

FOLDER = Path(estimator.ui.__file__).parent / "pages"
SAID = re.compile(r"not tested|estimated|an estimate\b")
WITHOUT_LEAKAGE = ("weather.py", "trust.py", "many.py")  # nothing on them hangs on the leakage of this home
SPAN = leakage_span(Case())
BARE = re.compile(rf"(?<![\d.,]){SPAN.middle:.1f} (?:as named|m³/\(h m²\)(?! at 50 Pa, between))")
"""The middle of what an untested home of this age may leak, without the range beside it."""


def plain(text: str) -> str:
    return re.sub(r"[\s\u00a0\\]+", " ", re.sub(r"<style>.*?</style>|<[^>]+>", " ", text, flags=re.S))


def test_the_home_is_one_that_nobody_has_tested() -> None:
    assert not SPAN.tested
    assert BARE.search(f"leaks {SPAN.middle:.1f} m³/(h m²)")
    assert not BARE.search(SPAN.words)


@pytest.fixture
def untested(tmp_path: Path) -> str:
    (tmp_path / "home.toml").write_text("version = 1\n", encoding="utf-8")
    return str(tmp_path / "home.toml")


def test_every_table_of_the_command_line_says_so(untested: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["estimate", untested]) == 0
    said = capsys.readouterr().out
    assert not BARE.search(plain(said))
    heads = [line for line, rule in zip(said.splitlines(), said.splitlines()[1:], strict=False) if set(rule) == {"-"}]
    assert len(heads) == 4
    assert all("estimated" in head for head in heads[:3])


def test_the_document_has_a_range_or_the_word_beside_every_figure(
    untested: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["estimate", untested, "--json"]) == 0
    made = json.loads(capsys.readouterr().out)
    assert made["leakage"]["tag"] == "typical"
    for option in made["options"].values():
        assert SAID.search(option["rests_on"])
    for which in ("against_baseline", "against_today"):
        for found in made["comparisons"][which].values():
            assert set(found["over_leakage"]) == set(found["yearly"])
            assert SAID.search(found["rests_on"])


def show(page: str) -> AppTest:
    def script(path: str) -> None:
        import runpy

        from estimator.ui import live

        live.begin()
        runpy.run_path(path)
        live.finish()

    if page == PAGES[0][0]:  # it links to others, which needs all of them
        return AppTest.from_file(str(FOLDER.parent / "site" / "start.py"), default_timeout=120).run()
    return AppTest.from_function(script, kwargs={"path": str(FOLDER / page)}, default_timeout=120).run()


@pytest.mark.parametrize("page", [file for file, _, _ in PAGES])
def test_every_page_says_so(page: str) -> None:
    shown = show(page)
    assert not shown.exception
    parts = [item.proto.body for item in shown.get("html")]
    parts += [item.value for kind in ("markdown", "caption") for item in getattr(shown, kind)]
    words = plain(" ".join(parts))
    bare = BARE.search(words)
    assert not bare, words[max(bare.start() - 80, 0) : bare.end() + 40]
    assert page in WITHOUT_LEAKAGE or SAID.search(words)
