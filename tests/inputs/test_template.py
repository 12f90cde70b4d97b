"""Does the commented case file explain every entry, and read back to the case it was made from?"""

from __future__ import annotations

import re
import tomllib

import pytest

from estimator.inputs.case import Case
from estimator.inputs.casefile import case_from_text, case_to_dict
from estimator.inputs.option import Option
from estimator.inputs.places import ANY_NAME, entry_at, first_sentence, keys_at, own_entries, sections, with_value
from estimator.inputs.quantity import Declared, Quantity
from estimator.inputs.template import commented_case, example_text

TEXT = commented_case()
ENTRIES = [(place, item) for place, noun in sections().items() for item in own_entries(noun)]
LEFT_OUT = [(place, item) for place, item in ENTRIES if item.optional]


def flowing(text: str) -> str:
    """The text with its comments on one line each, so that a sentence is found wherever it was broken."""
    return re.sub(r"\n# ", " ", text)


def test_it_reads_back_to_the_default_case_exactly() -> None:
    assert case_to_dict(case_from_text(TEXT, name="case.toml")) == case_to_dict(Case())


def test_it_reads_back_to_any_case_it_was_made_from() -> None:
    case = case_from_text(example_text(), name="example.toml")
    assert case_to_dict(case_from_text(commented_case(case), name="case.toml")) == case_to_dict(case)
    lone = Case(options={"only": Option(kind="heat recovery")}, baseline="only", today="only")
    assert case_to_dict(case_from_text(commented_case(lone), name="case.toml")) == case_to_dict(lone)


@pytest.mark.parametrize(("place", "item"), ENTRIES, ids=[".".join((*place, item.name)) for place, item in ENTRIES])
def test_every_entry_is_explained(place: tuple[str, ...], item: Declared) -> None:
    heading = f"[{'.'.join(place).replace(ANY_NAME, 'recovery')}]" if place else "# A case"
    start = TEXT.index(f"{heading}")
    section = TEXT[start : TEXT.find("\n[", start + 1)]
    line = re.search(rf"^(# )?{item.name} =.*$", section, re.M)
    assert line
    assert bool(line[1]) == item.optional
    remark = flowing(section[: line.start()]).rsplit("\n\n", 1)[-1]
    assert item.spec.meaning in remark
    assert item.spec.source in remark
    assert item.spec.derived in remark
    if item.spec.source and isinstance(item.spec, Quantity) and not item.optional:
        assert item.spec.tag in remark
    for choice in item.choices:
        assert str(choice) in remark
    if isinstance(item.spec, Quantity):
        assert f"{item.spec.low:,.10g} to {item.spec.high:,.10g}" in remark


@pytest.mark.parametrize(("place", "item"), LEFT_OUT, ids=[".".join((*place, item.name)) for place, item in LEFT_OUT])
def test_taking_the_mark_away_and_writing_a_value_sets_just_that_entry(place: tuple[str, ...], item: Declared) -> None:
    value = item.choices[0] if item.choices else item.kind(item.spec.high if isinstance(item.spec, Quantity) else "")
    written = f'"{value}"' if item.choices else repr(value)
    heading = f"[{'.'.join(place).replace(ANY_NAME, 'recovery')}]"
    before, after = TEXT.split(f"\n{heading}\n")
    after = re.sub(rf"^# {item.name} =$", f"{item.name} = {written}", after, count=1, flags=re.M)
    tree = tomllib.loads(f"{before}\n{heading}\n{after}")
    usual = case_to_dict(Case())
    for key in place:
        key = key.replace(ANY_NAME, "recovery")
        tree, usual = tree[key], usual[key]
    assert {key: part for key, part in tree.items() if part != usual.get(key, {})} == {item.name: value}


def test_values_worked_out_are_shown_rounded_behind_the_mark() -> None:
    shown = commented_case(
        worked_out={"home.volume": 264.123456, "home.mass": "light", "options.recovery.cost.kit": 9.0}
    )
    assert "\n# volume = 264.1\n" in shown
    assert '\n# mass = "light"\n' in shown
    assert "\n# kit = 9.0\n" in shown
    assert case_to_dict(case_from_text(shown, name="x")) == case_to_dict(Case())


def test_no_line_runs_off_the_page() -> None:
    assert max(len(line) for line in TEXT.splitlines()) <= 110


def test_the_option_explained_in_full_is_the_one_in_question() -> None:
    assert "# effectiveness =" in TEXT[TEXT.index("[options.recovery.unit]") :]
    assert TEXT.count("# effectiveness =") == 1
    other = commented_case(with_value(Case(), "baseline", "recovery"))
    assert "[options.extract.unit]" in other
    assert "[options.recovery.unit]" not in other


def test_the_example_is_an_invented_home_that_can_be_read() -> None:
    text = example_text()
    case = case_from_text(text, name="example.toml")
    assert "invented" in case.title
    assert case.leakage.basis == "measured"
    assert {case.baseline, case.today} < set(case.options)


def test_places_know_only_what_is_declared() -> None:
    assert keys_at(("options",)) == keys_at(("nowhere",)) == ()
    assert entry_at(("home",), "nothing") is None
    assert entry_at(("nowhere",), "floor_area") is None
    assert all(first_sentence(noun) and "None" not in first_sentence(noun) for noun in sections().values())
