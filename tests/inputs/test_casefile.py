"""Is every fault of a case file said, plainly and all at once?"""

from __future__ import annotations

import copy
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.errors import Fault, InputFaults
from estimator.inputs.case import CASE_VERSION, Case
from estimator.inputs.casefile import (
    MIGRATIONS,
    case_from_dict,
    case_from_text,
    case_to_dict,
    newest,
    read_case,
)
from estimator.inputs.places import every_key
from estimator.inputs.template import commented_case
from tests.inputs.cases import said_of


def test_a_small_file_changes_what_it_says_and_nothing_else() -> None:
    case = case_from_text("version = 1\n[home]\nfloor_area = 87.5\nbedrooms = 2\n", name="small.toml")
    assert (case.home.floor_area, case.home.bedrooms) == (87.5, 2)
    assert case_to_dict(case, only_changes=True) == {"version": 1, "home": {"floor_area": 87.5, "bedrooms": 2}}


def test_toml_and_json_say_the_same() -> None:
    toml = 'version = 1\ntitle = "T"\n[options.a]\nkind = "heat recovery"\n[options.a.flows]\nsupply = 90\n'
    rest = {"baseline": "a", "today": "a"}
    tree = {"version": 1, "title": "T", "options": {"a": {"kind": "heat recovery", "flows": {"supply": 90}}}}
    from_toml = case_from_text(f'baseline = "a"\ntoday = "a"\n{toml}', name="x.toml")
    from_json = case_from_text(json.dumps(tree | rest), name="x.json")
    assert case_to_dict(from_toml) == case_to_dict(from_json) == case_to_dict(case_from_dict(tree | rest))


def test_null_in_json_is_an_entry_left_out_where_one_may_be() -> None:
    assert case_from_text('{"version": 1, "home": {"people": null}}', name="x").home.people is None
    assert "nothing (null)" in said_of({"version": 1, "home": {"floor_area": None}})["home.floor_area"]


@pytest.mark.parametrize(
    ("line", "where", "parts"),
    [
        ('floor_area = "big"', "floor_area", ('"big" is not a number', "15 to 2,000 m²", "heated floor area")),
        ('floor_area = "110"', "floor_area", ("Write it without quotes",)),
        ('floor_area = "110 m2"', "floor_area", ("without unit and quotes",)),
        ("floor_area = true", "floor_area", ("true is not a number",)),
        ("floor_area = 14.99", "floor_area", ("14.99 m² is too small", "without the line it is 110 m²")),
        ("floor_area = 2001", "floor_area", ("2,001 m² is too large",)),
        ("floor_area = nan", "floor_area", ("nan is not a finite number",)),
        ("floor_area = -inf", "floor_area", ("-inf is not a finite number",)),
        (f"floor_area = 1{'0' * 400}", "floor_area", ("about 1e400 m² is too large",)),
        ("floor_area = [110]", "floor_area", ("a list is not a number",)),
        ("floor_area = { m2 = 110 }", "floor_area", ("a table is not a number",)),
        ("floor_area = 2026-01-01", "floor_area", ("the date or time 2026-01-01 is not a number",)),
        ("storeys = 2.0", "storeys", ("2.0 is not a whole number", "without a decimal point: 2")),
        ("storeys = 1.5", "storeys", ("1.5 is not a whole number",)),
        ("storeys = nan", "storeys", ("nan is not a finite number",)),
        ("volume = 5", "volume", ("5 m³ is too small", "worked out from floor area times ceiling height")),
        ('form = "semi detached"', "form", ('"flat"', 'Did you mean "semi-detached"?')),
        ("form = 3", "form", ("3 is not known here",)),
        ('mass = "hevy"', "mass", ('Did you mean "heavy"?',)),
        ("flor_area = 100", "flor_area", ("not known under [home]", 'Did you mean "floor_area"?')),
        ("floor_area_m2 = 100", "floor_area_m2", ('Did you mean "floor_area"?',)),
        ("Floor-Area = 100", "Floor-Area", ('Did you mean "floor_area"?',)),
        ("climate = 'x'", "climate", ("It stands under [place].",)),
        ("effectivness = 90", "effectivness", ('"effectiveness" under [options.NAME.unit]',)),
        ("zzzz = 1", "zzzz", ("Known here: floor_area, storeys",)),
    ],
)
def test_one_wrong_line_under_home(line: str, where: str, parts: tuple[str, ...]) -> None:
    said = said_of(f"version = 1\n[home]\n{line}\n")
    assert list(said) == [f"home.{where}"]
    for part in parts:
        assert part in said[f"home.{where}"]


@pytest.mark.parametrize(
    ("lines", "where", "part"),
    [
        ("title = 2026-01-01", "title", "Write it in quotes"),
        (f'title = "{"x" * 121}"', "title", "a text of 121 characters is too long"),
        ('title = "two\\nlines"', "title", "a line break"),
        ("floor_area = 100", "floor_area", "It stands under [home]."),
        ("baselin = 'extract'", "baselin", 'Did you mean "baseline"?'),
        ("home = 3", "home", "write a table [home] with keys such as floor_area"),
        ("options = []", "options", "one table for each option, [options.NAME]"),
        ("[[options]]\nkind = 'heat recovery'", "options", "one table for each option"),
        ("[options]", "options", "none is given"),
        ("[recovery]\nkind = 'heat recovery'", "recovery", "An option stands under [options.recovery]."),
        ("tags = 'measured'", "tags", "write a table [tags]"),
        ("[tags]\nhome.floor_area = 'mesured'", "tags.home.floor_area", 'Did you mean "measured"?'),
        ("[tags]\n'home.flor_area' = 'measured'", "tags.home.flor_area", 'Did you mean "home.floor_area"?'),
    ],
)
def test_one_wrong_line_elsewhere(lines: str, where: str, part: str) -> None:
    said = said_of(f"version = 1\n{lines}\n")
    assert list(said) == [where]
    assert part in said[where]


def test_an_option_without_a_kind_hears_which_there_are() -> None:
    said = said_of("version = 1\nbaseline = 'a'\ntoday = 'a'\n[options.a]\nlabel = 'A'\n")
    assert list(said) == ["options.a.kind"]
    assert '"continuous extract"' in said["options.a.kind"]


def test_a_key_of_an_option_is_sought_in_the_same_option() -> None:
    text = (
        "version = 1\nbaseline = 'a'\ntoday = 'a'\n[options.a]\nkind = 'heat recovery'\n[options.a.unit]\nbore = 125\n"
    )
    assert "It stands under [options.a.ducts]." in said_of(text)["options.a.unit.bore"]


def test_all_faults_come_at_once_in_the_order_of_the_file() -> None:
    text = """
version = 1
baseline = "nobody"
[heating]
fuel = "gas"
[home]
storeys = 9
bedrooms = "three"
colour = "red"
[leakage]
measure = "n50"
[options.today]
kind = 3
[options.extract]
kind = "continuous extract"
flows = { supply = 1e9 }
[tags]
"home.nothing" = "measured"
"""
    said = said_of(text)
    alone = [
        "home.storeys",
        "home.bedrooms",
        "home.colour",
        "options.today.kind",
        "options.extract.flows.supply",
    ]
    assert list(said)[:5] == alone
    assert set(said) - set(alone) == {"baseline", "heating.fuel", "leakage.value", "tags.home.nothing"}


def test_what_could_not_be_read_is_not_held_against_the_rest() -> None:
    """A measure that is unreadable must not make its own value look idle, nor a lost option its own name wrong."""
    assert list(said_of('version = 1\n[leakage]\nmeasure = "q51"\nvalue = 4.0\n')) == ["leakage.measure"]
    text = "version = 1\nbaseline = 'a'\ntoday = 'a'\n[options.a]\nkind = 7\n[tags]\noptions.a.kind = 'typical'\n"
    assert list(said_of(text)) == ["options.a.kind"]
    assert list(said_of({"version": 1, "options": {"a": 3}})) == ["options.a"]
    assert list(said_of('version = 1\n[options."a.b"]\nkind = "heat recovery"\n')) == [
        "options.a.b",
        "baseline",
        "today",
    ]
    text = "version = 1\nbaseline = 'a'\ntoday = 'a'\n[option.a]\nkind = 'heat recovery'\n"
    assert list(said_of(text)) == ["option"]


@pytest.mark.parametrize("version", ["1", 1.0, True, None, [1], 0, -3])
def test_a_version_that_is_none(version: Any) -> None:
    assert list(said_of({"version": version, "zzz": 1})) == ["version"]


def test_the_version_comes_first() -> None:
    assert "missing" in said_of({"zzz": 1})["version"]
    said = said_of({"version": CASE_VERSION + 1, "zzz": 1})
    assert list(said) == ["version"]
    assert "newer release" in said["version"]
    assert "Update" in said["version"]


def test_older_versions_are_brought_forward_step_by_step(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("estimator.inputs.casefile.CASE_VERSION", 3)
    steps = {
        1: lambda tree: {**tree, "version": 2, "steps": ["one"]},
        2: lambda tree: {**tree, "version": 3, "steps": [*tree["steps"], "two"]},
    }
    old: dict[str, Any] = {"version": 1, "title": "kept"}
    kept = copy.deepcopy(old)
    assert newest(old, migrations=steps) == {"version": 3, "title": "kept", "steps": ["one", "two"]}
    assert old == kept
    assert newest({"version": 3}, migrations=steps) == {"version": 3}


def test_every_older_version_has_its_step() -> None:
    assert sorted(MIGRATIONS) == list(range(1, CASE_VERSION))
    assert Case().version == CASE_VERSION


def test_tags_may_stand_quoted_or_as_toml_reads_dotted_keys() -> None:
    quoted = case_from_text('version = 1\n[tags]\n"home.floor_area" = "typical"\n', name="x")
    dotted = case_from_text('version = 1\n[tags]\nhome.floor_area = "typical"\n', name="x")
    assert quoted.tags == dotted.tags == {"home.floor_area": "typical"}


def test_a_file_is_read_from_its_path(tmp_path: Path) -> None:
    file = tmp_path / "home.toml"
    file.write_bytes(b'\xef\xbb\xbfversion = 1\r\ntitle = "\xc3\xa9"\r\n')
    assert read_case(file).title == "é"


TREES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5),
    lambda inner: (
        st.lists(inner, max_size=2)
        | st.dictionaries(st.sampled_from(every_key()) | st.text(max_size=5), inner, max_size=4)
    ),
    max_leaves=12,
)


def outcome(read: Callable[[], Case]) -> tuple[Fault, ...]:
    """What reading says; nothing where it gives a case."""
    try:
        read()
    except InputFaults as refused:
        return refused.faults or (Fault("", "refused without a word"),)
    return ()


@given(st.dictionaries(st.sampled_from(every_key()), TREES, max_size=6))
def test_any_tree_is_a_case_or_a_list_of_plain_sentences(tree: dict[str, Any]) -> None:
    before = repr(tree)
    for fault in outcome(lambda: case_from_dict({**tree, "version": 1})):
        assert fault.where
        assert fault.what.endswith((".", "?"))
        assert "cannot stand here" not in fault.what  # the sentence for what nobody foresaw
    assert repr(tree) == before


@given(st.data())
def test_a_damaged_file_is_read_or_refused_at_a_place(data: st.DataObject) -> None:
    text = commented_case()
    start = data.draw(st.integers(0, len(text)))
    end = data.draw(st.integers(start, min(len(text), start + 40)))
    damaged = text[:start] + data.draw(st.text(max_size=6)) + text[end:]
    assert all(fault.where for fault in outcome(lambda: case_from_text(damaged, name="damaged.toml")))
