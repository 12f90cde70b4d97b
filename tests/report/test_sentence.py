"""Does the sentence of a case read as a person would say it?"""

from __future__ import annotations

import pytest

from estimator import Case
from estimator.estimate import estimate
from estimator.inputs.places import with_values
from estimator.leak_range import leakage_span
from estimator.report.sentence import case_sentence
from tests.laws.settings import year_of


@pytest.mark.parametrize(
    ("fuel", "price", "said"),
    [
        ("natural gas", {"prices.fuel": 9.0}, "heated by natural gas at 9p/kWh"),
        ("direct electric", {"prices.electricity": 30.0}, "heated by electricity at 30p/kWh"),
        ("heat pump", {"prices.electricity": 30.0}, "heated by a heat pump, electricity at 30p/kWh"),
        ("heat pump", {"prices.fuel": 18.0}, "heated by a heat pump, electricity at 18p/kWh"),
    ],
)
def test_what_heats_is_told_with_the_price_of_what_it_takes(fuel: str, price: dict[str, float], said: str) -> None:
    case = with_values(Case(), {"heating.fuel": fuel, **price})
    pieces = case_sentence(estimate(case, year_of("Inland vale")), leakage_span(case))
    assert said in "".join(words + entry for words, entry in pieces)
