"""Do names, units and words agree wherever they stand?"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator

import pytest

from estimator.inputs.case import Case
from estimator.inputs.option import Option
from estimator.inputs.quantity import Quantity, declared
from tests.sources import PACKAGE, ROOT, Source, files_in_git, named, sources

UNITS = (
    *("m²", "m³", "m", "mm", "mm²", "°C", "%", "W", "W/K", "Wh/K", "W/(m K)", "m³/h", "W/(l/s)", "kWh", "kg/kWh", "Pa"),
    *(
        "p/kWh",
        "p/day",
        "money",
        "money/year",
        "money/m²",
        "m³/(h m²)",
        "1/year",
        "days",
        "years",
        "h",
        "°",
        "K",
        "kW",
        "kg",
        "%/year",
    ),
    *("kg/day", "dB(A)"),
)
"""Units of entries as the trade writes them; p is a hundredth of the currency, money the currency itself."""

UNITLESS = ("", "as named")  # a pure number; the unit that another entry names

ATOMS = {
    *(
        "m",
        "cm",
        "mm",
        "km",
        "bytes",
        "l",
        "s",
        "h",
        "d",
        "day",
        "days",
        "year",
        "years",
        "K",
        "°C",
        "°",
        "Pa",
        "W",
        "kW",
        "Wh",
        "kWh",
    ),
    *("J", "g", "kg", "mol", "p", "money", "person", "storey", "1", "0-1", "-", "%"),
}
"""What units in the docstrings of the inside are made of; powers, /, ( ) and blanks join them."""

ASIDES = ("dry air", "a year", "per row", "CO2 equivalent")  # may follow a unit

TEXT_FILES = (
    ".py",
    ".toml",
    ".md",
    ".css",
    ".html",
    ".js",
    ".json",
    ".csv",
    ".txt",
    ".cfg",
    ".yml",
    "/run",
    ".gitignore",
)

# Words that belong to how the project came about, not to what it is; cut in two so that this file is free of them.
FORBIDDEN = (
    r"\btran" r"scripts?\b",
    r"\bvid" r"eos?\b",
    r"\bse" r"ed\b(?!\s*=)",
    r"\bhel" r"pers?\b",
    r"\bthis bri" r"ef\b",
    r"\biss" r"ues?\s+#?\d",
    r"(?<![\w&])#\d{1,2}\b(?!\w)",
    r"\b(METHOD|CHE" r"CKS|STYLE|ECOSYSTEM|SCREENS|CAUTIONS)\.md\b",
    r"\.\./sha" r"red\b",
    r"(?<![\w.])/(wo" r"rk|tm" r"p|ro" r"ot|ho" r"me)/",
)  # fmt: skip


def public(nodes: list[ast.stmt]) -> Iterator[ast.FunctionDef | ast.ClassDef]:
    """Functions and classes that others may use, methods of such classes included."""
    for node in nodes:
        if isinstance(node, ast.FunctionDef | ast.ClassDef) and not node.name.startswith("_"):
            yield node
            if isinstance(node, ast.ClassDef):
                yield from public(node.body)


def mute(source: Source) -> list[str]:
    """Public functions and classes without a docstring."""
    return [
        f"{source.path}:{node.lineno}: {node.name} does not say what comes back"
        for node in public(source.tree.body)
        if not ast.get_docstring(node)
    ]


def is_unit(words: str) -> bool:
    """Whether words are made of the atoms of units alone."""
    for aside in ASIDES:
        words = words.replace(aside, "")
    return all(atom in ATOMS for atom in re.split(r"[\s/()²³⁴]+|\^n", words) if atom)


def unknown_units(source: Source) -> list[str]:
    """Square brackets in docstrings that hold no unit."""
    docs = [ast.get_docstring(node) or "" for node in public(source.tree.body)]
    found = [words for text in docs for words in re.findall(r"\[([^\[\]\n]+)\]", text)]
    return [f"{source.path}: [{words}] is no unit" for words in found if not is_unit(words)]


def forbidden(text: str) -> list[str]:
    """Forbidden words of a text, with their lines."""
    return [
        f"line {number}: {found[0]}"
        for number, line in enumerate(text.split("\n"), start=1)
        for pattern in FORBIDDEN
        if (found := re.search(pattern, line, re.I))
    ]


CORE = tuple(item for item in sources(PACKAGE) if item.room != "ui")
MEASURED = ("climate", "air", "heat", "money", "survey", "corridor", "estimate", "compare")
"""Rooms whose docstrings carry units in square brackets."""


@pytest.mark.parametrize("source", named(CORE))
def test_everything_public_says_what_it_gives(source: Source) -> None:
    assert mute(source) == []


@pytest.mark.parametrize("source", named(tuple(item for item in CORE if item.room in MEASURED)))
def test_units_in_docstrings_are_known(source: Source) -> None:
    assert unknown_units(source) == []


def test_units_of_entries_are_known() -> None:
    units = {item.unit for noun in (Case, Option) for item in declared(noun) if isinstance(item.spec, Quantity)}
    assert units <= {*UNITS, *UNITLESS}


def test_entries_are_declared_in_full() -> None:
    for noun in (Case, Option):
        for item in declared(noun):
            assert item.spec.meaning, item.path
            assert bool(item.spec.derived) == item.optional, item.path
            if isinstance(item.spec, Quantity):
                assert item.spec.low < item.spec.high, item.path
                assert item.optional or item.default is None or item.spec.source, item.path


@pytest.mark.parametrize("path", [path for path in files_in_git() if path.endswith(TEXT_FILES)])
def test_words_that_belong_elsewhere(path: str) -> None:
    assert forbidden((ROOT / path).read_text(encoding="utf-8")) == []


@pytest.mark.parametrize(
    "line",
    [
        "the tran" "script says",
        "see iss" "ue 12",
        "as in #" "7.",
        "a se" "ed was planted",
        "METHOD" ".md, section 2",
        "open('/wo" "rk/x')",
        "a hel" "per",
    ],
)  # fmt: skip
def test_a_planted_word_is_found(line: str) -> None:
    assert len(forbidden(f"fine\n{line}\n")) == 1


@pytest.mark.parametrize("line", ["colour = '#1a1a1a'", "&#39;", "an issue of money", "https://x.org/home/", "seed=1"])
def test_a_harmless_line_is_left_alone(line: str) -> None:
    assert forbidden(line) == []


def test_a_planted_silence_and_a_planted_unit_are_found() -> None:
    text = "class A:\n    def b(self): ...\n    def _c(self): ...\ndef d():\n    '''Heat [kWh] per [furlong].'''\n"
    source = Source("estimator/air/wrong.py", text)
    assert len(mute(source)) == 2
    assert unknown_units(source) == ["estimator/air/wrong.py: [furlong] is no unit"]
    assert all(is_unit(words) for words in ("m³/(h m²)", "J/kg dry air", "K d", "1/h", "(l/s)²/(cm⁴ K)"))
