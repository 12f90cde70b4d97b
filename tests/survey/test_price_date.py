"""Is a price that somebody entered never said to be of the date of the table?"""

from __future__ import annotations

from dataclasses import replace

import pytest

from estimator import Case
from estimator.inputs.prices import Prices, Tariff
from estimator.survey.fill import filled

USUAL = Prices().dated


@pytest.mark.parametrize(
    ("prices", "said"),
    [
        (Prices(), USUAL),
        (Prices(fuel=6.9), f"natural gas as entered, without a date; all else {USUAL}"),
        (
            Prices(fuel=6.9, electricity=27.4),
            f"electricity and natural gas as entered, without a date; all else {USUAL}",
        ),
        (
            Prices(tariff=Tariff(kind="block", blocks="31 beyond 150")),
            f"electricity as entered, without a date; all else {USUAL}",
        ),
        (Prices(fuel=6.9, dated="my bill of May"), "my bill of May"),
    ],
)
def test_entered_prices_lose_the_date_of_the_table(prices: Prices, said: str) -> None:
    found = filled(replace(Case(), prices=prices))
    assert found.case.prices.dated == said
    assert found.origins["prices.dated"].value == said


def test_an_entered_price_without_a_date_rests_on_an_assumption() -> None:
    assert filled(replace(Case(), prices=Prices(fuel=6.9))).origins["prices.dated"].tag == "assumed"
