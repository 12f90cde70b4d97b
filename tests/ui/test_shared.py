"""Whose trying of all cases may somebody else be shown: the very same case's, unless it says something private?"""

from __future__ import annotations

import dataclasses
from collections import OrderedDict

import pytest

from estimator.climate.sources import load_year
from estimator.climate.year import ClimateYear
from estimator.inputs.casefile import case_from_dict
from estimator.ui import sureness
from estimator.ui.tree import EMPTY, Tree, with_entry


@pytest.fixture(autouse=True)
def nobody_before(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sureness, "_LAST", OrderedDict())


@pytest.fixture
def year() -> ClimateYear:
    return load_year(case_from_dict(EMPTY).place.climate)


def asked(tree: Tree, year: ClimateYear) -> sureness._Drawn:
    """What a visitor of that case is given."""
    return sureness._shared(tree, case_from_dict(tree), year)


def of_area(area: float) -> Tree:
    return with_entry(EMPTY, "home.floor_area", area)


def test_who_asks_the_same_is_given_the_same(year: ClimateYear) -> None:
    assert asked(of_area(90.0), year) is asked(of_area(90.0), year)


def test_another_case_and_another_weather_are_worked_out_anew(year: ClimateYear) -> None:
    one = asked(of_area(90.0), year)
    assert asked(of_area(91.0), year) is not one
    assert asked(of_area(90.0), dataclasses.replace(year)) is not one


@pytest.mark.parametrize("path", ["title", "options.extract.label", "prices.dated"])
def test_what_one_person_wrote_is_given_to_nobody_else(year: ClimateYear, path: str) -> None:
    tree = with_entry(EMPTY, path, "Ludo Vantongeren")
    assert asked(tree, year) is not asked(tree, year)
    assert not sureness._LAST


def test_those_asked_for_last_are_kept(monkeypatch: pytest.MonkeyPatch, year: ClimateYear) -> None:
    monkeypatch.setattr(sureness, "_MOST", 2)
    first, second = (asked(of_area(area), year) for area in (90.0, 91.0))
    assert asked(of_area(90.0), year) is first
    asked(of_area(92.0), year)
    assert asked(of_area(90.0), year) is first
    assert asked(of_area(91.0), year) is not second
