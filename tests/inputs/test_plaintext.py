"""Is a file that is no case refused for the right reason, with line and column?"""

from __future__ import annotations

import json
import os
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.errors import Fault, InputFaults
from estimator.inputs.plaintext import (
    DEEPEST,
    LARGEST_FILE,
    LONGEST_LINE,
    plain,
    text_of_file,
    tree_of_text,
)


def refusal(text: str, *, name: str = "case.toml") -> Fault:
    with pytest.raises(InputFaults) as refused:
        tree_of_text(text, name=name)
    (fault,) = refused.value.faults
    return fault


@pytest.mark.parametrize(
    ("text", "place", "part"),
    [
        ("a = 1\na = 2\n", "line 2, column 6", "stands twice"),
        ("[home]\nx = 1\n[home]\ny = 2\n", "line 3, column 6", "stands twice"),
        ("a = 3,5\n", "line 1, column 6", "decimal point"),
        ("\n\na = big\n", "line 3, column 5", "text in quotes"),
        ("a =\n", "line 1, column 4", "Write a number"),
        ('a = "open\nb = 1\n', "line 1, column 10", "quotation mark is missing"),
        ("[home\n", "line 1, column 6", "opened and not closed"),
        ("a 1\n", "line 1, column 3", "key = value"),
        ("a = 1 b = 2\n", "line 1, column 7", "one entry a line"),
        ("a = {b = 1", "at its end", "opened and not closed"),
        ("a = '''x", "at its end", "opened and not closed"),
    ],
)
def test_toml_faults_name_line_and_column(text: str, place: str, part: str) -> None:
    fault = refusal(text)
    assert fault.where == f"case.toml, {place}"
    assert part in fault.what


def test_json_faults_name_line_and_column() -> None:
    fault = refusal('{"version": 1,\n "home": {,}}', name="case.json")
    assert fault.where == "case.json, line 2, column 11"
    assert '"home": {,}}' in fault.what


def test_json_that_is_no_table() -> None:
    assert "begins with {" in refusal("[1, 2]", name="x.json").what
    assert "begins with {" in refusal("7", name="x.json").what


@pytest.mark.parametrize("name", ["x.toml", "x.json", "x"])
def test_emptiness(name: str) -> None:
    assert "empty" in refusal(" \n\t\n", name=name).what


def test_the_ending_or_the_first_character_tells_the_form() -> None:
    assert tree_of_text('{"a": 1}', name="x.txt") == {"a": 1}
    assert tree_of_text("a = 1", name="pasted") == {"a": 1}
    assert tree_of_text('\ufeff{"a": 1}', name="pasted") == {"a": 1}
    assert "TOML" in refusal('{"a": 1}', name="x.TOML").what


def test_repeated_keys_of_json_are_found_at_their_place() -> None:
    found: list[Fault] = []
    tree = tree_of_text('{"a": 1, "a": 2, "b": {"c": 1, "c": 1, "c": 3}}', name="x.json")
    assert plain(tree, found) == {"a": 2, "b": {"c": 3}}
    assert [fault.where for fault in found] == ["a", "b.c"]


@pytest.mark.parametrize(("text", "name"), [("[" * 100_000, "x.json"), ('{"a":' * 50_000, "x.json")])
def test_brackets_without_end(text: str, name: str) -> None:
    assert "brackets" in refusal(text, name=name).what


def test_lists_inside_lists_without_end_in_toml() -> None:
    text = "a = " + "\n".join("[" * 500 for _ in range(100))
    assert "brackets" in refusal(text).what


def test_tables_too_deep() -> None:
    found: list[Fault] = []
    tree: dict[str, Any] = {}
    for _ in range(5000):
        tree = {"a": tree}
    assert json.dumps(plain(tree, found)).count("a") == DEEPEST - 1
    assert [fault.where for fault in found] == [".".join("a" * DEEPEST)]


@pytest.mark.parametrize("text", [f"a = 1{'0' * 5000}", f'{{"a": 1{"0" * 5000}}}'])
def test_numbers_without_end(text: str) -> None:
    found = refusal(text, name="x.json" if text.startswith("{") else "x.toml").what
    assert "too many digits" in found or f"longer than {LONGEST_LINE:,}" in found


def test_half_characters_and_keys_that_are_no_text() -> None:
    found: list[Fault] = []
    tree = {"title": "\ud800", "x\udfff": 1, 3: 1, "home": {"form": "flat"}}
    assert plain(tree, found) == {"home": {"form": "flat"}}
    assert [fault.where for fault in found] == ["title", "x?", "3"]
    assert all(str(fault).encode() for fault in found)


def test_too_much_text() -> None:
    assert "larger than 1,000,000 bytes" in refusal("# é\n" * (LARGEST_FILE // 5 + 1)).what


def refused_file(path: Path) -> Fault:
    with pytest.raises(InputFaults) as refused:
        text_of_file(path)
    (fault,) = refused.value.faults
    return fault


def test_files_that_are_none(tmp_path: Path) -> None:
    assert "no such file" in refused_file(tmp_path / "missing.toml").what
    assert "folder" in refused_file(tmp_path).what
    assert str(tmp_path) in refused_file(tmp_path).where


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no named pipes")
def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    assert "not an ordinary file" in refused_file(tmp_path / "pipe").what


@pytest.mark.parametrize(
    ("raw", "part"),
    [
        ("version = 1".encode("utf-16"), "UTF-16"),
        ("version = 1".encode("utf-16-be"), ""),
        ('\n\ncurrency = "£"'.encode("cp1252"), "not UTF-8"),
        (b"#" * (LARGEST_FILE + 1), "larger than"),
    ],
)
def test_files_in_another_encoding_or_too_large(tmp_path: Path, raw: bytes, part: str) -> None:
    file = tmp_path / "case.toml"
    file.write_bytes(raw)
    with pytest.raises(InputFaults) as refused:
        tree_of_text(text_of_file(file), name="case.toml")
    assert part in str(refused.value)


def test_a_wrong_encoding_names_its_line(tmp_path: Path) -> None:
    file = tmp_path / "case.toml"
    file.write_bytes('\n\ncurrency = "£"'.encode("cp1252"))
    assert refused_file(file).where == f"{file}, line 3"


@given(st.text(max_size=60), st.sampled_from(["x.toml", "x.json", "x"]))
def test_any_text_is_a_tree_or_refused_at_a_place(text: str, name: str) -> None:
    try:
        tree = tree_of_text(text, name=name)
    except InputFaults as refused:
        (fault,) = refused.faults
        tree = {"refused at": fault.where}
    assert isinstance(tree, dict)
    assert tree.get("refused at", name).startswith(name)
