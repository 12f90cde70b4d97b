"""Is what must be said about the air of the options said where it holds, and nowhere else?"""

from __future__ import annotations

from typing import Any

import pytest

from estimator import Case, run
from estimator.inputs.places import with_values
from estimator.report.remarks import prices_of_elsewhere, remarks
from estimator.survey.fill import filled
from tests.laws.settings import year_of


def said(**changes: Any) -> str:
    case = with_values(Case(), {name.replace("__", "."): value for name, value in changes.items()})
    return " ".join(remarks(run(case, year_of("Inland vale")))).replace("\u00a0", " ")


@pytest.mark.parametrize(("flow", "beyond"), [(120.0, False), (390.0, False), (450.0, True)])
def test_costs_of_fitting_are_meant_for_homes_of_usual_size(flow: float, beyond: bool) -> None:
    flows = {"options__recovery__flows__supply": flow, "options__recovery__flows__extract": flow}
    assert ("do not grow with the home" in said(**flows)) is beyond


def test_a_quotation_is_not_doubted() -> None:
    big = {f"options__recovery__flows__{side}": 450.0 for side in ("supply", "extract")}
    assert "heat recovery moves 450 m³/h" in said(**big)
    assert "heat recovery moves" not in said(**big, options__recovery__cost__kit=5200.0)


def test_another_currency_does_not_pass_for_other_prices() -> None:
    assert "not converted" not in said()
    abroad = said(prices__currency="kr")
    assert "Money is written in kr" in abroad
    assert "price of the heating fuel" in abroad
    assert "unit, ducts, work, filters, service" in abroad


def test_the_sums_doubted_are_told_of_a_case_without_its_result() -> None:
    survey = filled(with_values(Case(), {"prices.currency": "kr"}))
    told = prices_of_elsewhere(survey.case, survey.origins)
    assert len(told) == 1
    assert told[0] in said(prices__currency="kr").replace("\u00a0", " ")
    usual = filled(Case())
    assert prices_of_elsewhere(usual.case, usual.origins) == []


def test_only_sums_that_were_not_entered_are_doubted_abroad() -> None:
    told = said(prices__currency="kr", prices__fuel=90.0, prices__electricity=150.0)
    assert "price of" not in told
    sums = {"kit": 28000.0, "ducts": 9000.0, "day_rate": 5000.0, "filter_price": 400.0, "service": 200.0}
    costs = {f"options__{name}__cost__{part}": sum_ for name in ("extract", "recovery") for part, sum_ in sums.items()}
    assert "Money is written" not in said(prices__currency="kr", prices__fuel=90.0, prices__electricity=150.0, **costs)


def test_where_there_is_no_heat_to_save_it_is_said() -> None:
    assert "hardly anything to recover" not in said()
    assert "hardly anything to recover" in said(home__internal_gains=6000.0)
