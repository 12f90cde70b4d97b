"""Has a flat one storey where nobody says, and does a file that says so keep its own?"""

from __future__ import annotations

import dataclasses

import numpy as np
import pytest

from estimator import Case, case_from_dict
from estimator.inputs.home import Form, Home
from estimator.survey.fill import filled


def storeys(case: Case) -> object:
    return filled(case).case.home.storeys


@pytest.mark.parametrize(("form", "expected"), [("flat", 1), ("terraced", 2), ("detached", 2)])
def test_a_flat_has_one_and_a_house_two(form: Form, expected: int) -> None:
    case = Case(home=Home(form=form))
    assert storeys(case) == expected
    assert filled(case).origins["home.storeys"].source == "worked out from the form of the home"


def test_what_is_entered_stands() -> None:
    case = case_from_dict({"version": 1, "home": {"form": "flat", "storeys": 2}})
    assert storeys(case) == 2
    assert filled(case).origins["home.storeys"].source == "entered"


def test_a_flat_on_one_floor_has_the_envelope_of_one_floor() -> None:
    """60 m² in a rectangle 1.5 to 1: 6.325 m by 9.487 m, 2.4 m high: 2 × 60 + 31.62 × 2.4 = 195.9 m²."""
    found = filled(Case(home=Home(form="flat", floor_area=60.0))).case.home.envelope_area
    assert found == pytest.approx(195.9, abs=0.05)


def test_a_column_of_forms_gets_each_its_own() -> None:
    forms = np.array([["flat"], ["detached"]], dtype=object)
    column = dataclasses.replace(Case(), home=Home(form=forms))  # type: ignore[arg-type]
    assert np.array_equal(storeys(column), [[1], [2]])  # type: ignore[arg-type]
