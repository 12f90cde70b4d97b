"""Does a case survive the journey through an address, and is a broken link named instead of half used?"""

from __future__ import annotations

import base64
import json
import re
import zlib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator import load_year, run
from estimator.errors import InputFaults
from estimator.inputs.case import Case
from estimator.inputs.casefile import case_from_dict, case_to_dict
from estimator.ui import link
from estimator.ui.tree import EMPTY, Tree, entries, with_entry

CHANGES = {
    "home.floor_area": 145.5,
    "home.bedrooms": 4,
    "home.form": "detached",
    "leakage.measure": "q50",
    "leakage.value": 4.2,
    "prices.currency": "€",
    "prices.fuel": 11.25,
    "place.climate": "Upland",
    "options.recovery.unit.effectiveness": 88.0,
    "worth.life": 15.0,
}


def changed(changes: dict[str, object]) -> Tree:
    tree = EMPTY
    for path, value in changes.items():
        tree = with_entry(tree, path, value)
    return tree


@given(st.lists(st.sampled_from(sorted(CHANGES)), unique=True))
def test_a_case_comes_back_as_it_went(paths: list[str]) -> None:
    if {"leakage.measure", "leakage.value"} & set(paths):
        paths = [*paths, "leakage.measure", "leakage.value"]  # a test without its figure is no case
    tree = changed({path: CHANGES[path] for path in paths})
    text = link.to_link(tree)
    assert re.fullmatch(r"[A-Za-z0-9_.-]*", text)  # RFC 3986, unreserved letters: nothing to escape in a query
    back = link.from_link(text) if text else EMPTY
    assert back == tree
    assert case_to_dict(case_from_dict(back)) == case_to_dict(case_from_dict(tree))


def test_a_case_of_defaults_needs_no_link_and_a_changed_one_a_short_one() -> None:
    assert link.to_link(EMPTY) == ""
    assert len(link.to_link(changed(CHANGES))) < 500  # a line that mail programs and chat do not break


def test_names_titles_and_the_users_own_paths_stay_at_home() -> None:
    tree = changed(
        {
            **CHANGES,
            "title": "Mx Example, 3 Example Street",
            "options.recovery.label": "offer for Mx Example",
            "place.climate": "C:\\Users\\example\\weather.epw",
        }
    )
    text = link.to_link(tree)
    carried = dict(entries(link.from_link(text)))
    assert "xample" not in json.dumps(carried)
    assert carried["home.floor_area"] == 145.5
    assert carried["options.recovery.unit.effectiveness"] == 88.0
    assert case_from_dict(link.from_link(text)).options["recovery"].unit.effectiveness == 88.0
    assert carried["options.extract.label"] == Case().options["extract"].label


OPTIONS = {
    name: {"kind": option["kind"]} for name, option in case_to_dict(Case())["options"].items() if name != "recovery"
}
OF_SOMEBODY = {
    "version": 1,
    "today": "as at Xample's",
    "rooms": {
        "option": "offer of Xample",
        "fed": "Xample's den 43; bedroom 2 50",
        "drawn": "kitchen 47; Xample bath 46",
        "lines": "Xample's den > landing > Xample bath 43; bedroom 2 > hall > kitchen 47",
        "doors": "landing > Xample bath 12000",
    },
    "commissioned": {"option": "offer of Xample", "fed": "Xample's den 41", "instrument": "hood 7 of Xample"},
    "options": {
        "as at Xample's": OPTIONS["today"],
        "extract": OPTIONS["extract"],
        "offer of Xample": {"kind": case_to_dict(Case())["options"]["recovery"]["kind"], "label": "by Xample"},
    },
    "tags": {"options.offer of Xample.kind": "assumed"},
}


def test_rooms_and_options_named_by_somebody_are_numbered_and_every_figure_stays() -> None:
    back = link.from_link(link.to_link(OF_SOMEBODY))
    assert "xample" not in json.dumps(back).lower()
    assert back["rooms"]["lines"] == "room 1 > landing > room 2 43; bedroom 2 > hall > kitchen 47"
    assert back["commissioned"]["fed"] == "room 1 41"
    assert link.from_link(link.to_link(back)) == back  # a link of a link says the same
    ours, theirs = case_from_dict(OF_SOMEBODY), case_from_dict(back)
    assert list(ours.options) != list(theirs.options)
    year = load_year(ours.place.climate)
    for before, after in zip(
        run(ours, year).against_baseline.values(), run(theirs, year).against_baseline.values(), strict=True
    ):
        assert after.net_saving == before.net_saving


def packed(tree: object) -> str:
    return base64.urlsafe_b64encode(zlib.compress(json.dumps(tree).encode())).decode().rstrip("=")


GOOD = packed({"version": 1, "home": {"floor_area": 90.0}})


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "does not begin with a version"),
        (GOOD, "does not begin with a version"),
        ("²." + GOOD, "does not begin with a version"),
        ("0." + GOOD, "no form"),
        ("2." + GOOD, "newer release: version 2"),
        ("9" * 5000 + "." + GOOD, "newer release"),
        ("1." + GOOD[:-6], "cut short"),
        ("1.", "cut short"),
        ("1." + GOOD[:8] + "!" + GOOD[9:], "damaged"),
        ("1." + GOOD.swapcase(), "damaged"),
        ("1." + base64.urlsafe_b64encode(b"plain").decode(), "damaged"),
        ("1." + packed([1, 2]), "not a case"),
        ("1." + packed({"home": {}}), "not a case"),
        (
            "1." + base64.urlsafe_b64encode(zlib.compress(b'{"version":1,"a":NaN}')).decode(),
            "damaged",
        ),
        ("1." + packed({"version": 1, "title": "x" * 10_000_000}), "too long"),
        ("1." + "A" * 70_000, "no form"),
        ("1." + base64.urlsafe_b64encode(zlib.compress(b"[" * 50_000)).decode(), "damaged"),
    ],
)
def test_a_link_that_cannot_be_read_says_why(text: str, said: str) -> None:
    with pytest.raises(InputFaults, match=re.escape(said)) as refused:
        link.from_link(text)
    assert "was not used" in str(refused.value)


def test_a_link_with_a_case_of_a_newer_release_is_named_by_the_reader_of_cases() -> None:
    with pytest.raises(InputFaults, match="newer release"):
        case_from_dict(link.from_link("1." + packed({"version": 99})))


@given(st.text(max_size=40))
def test_no_text_whatever_does_harm(text: str) -> None:
    with pytest.raises(InputFaults):
        link.from_link("1." + text)
