"""Do whole households' bills and carbon come out as published?"""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from estimator import Case, load_year
from estimator.bills import Bills, bills
from estimator.inputs.places import with_values
from estimator.supply import supply
from estimator.survey.fill import filled


def household(values: dict[str, Any], *, heat: float) -> Bills:
    """A year of a household that needs so much useful heat [kWh], evenly, and no ventilation."""
    case = filled(with_values(Case(), values)).case
    power = np.full(8760, heat / 8.760)
    return bills(supply(case, load_year("Inland vale")), heat=power, fans=0.0, preheater=np.zeros(8760))


# Ofgem, typical household at the price cap, Great Britain, direct debit, VAT included: 2,700 kWh of electricity and
# 11,500 kWh of gas; unit rates and totals through secondary texts.
@pytest.mark.parametrize(
    ("electricity", "day", "gas", "gas_day", "published"),
    [(27.69, 54.75, 5.93, 35.09, 1758), (24.67, 57.21, 5.74, 29.09, 1641)],
)
@pytest.mark.parametrize("kind", ["flat", "time of use", "block"])
def test_price_cap(kind: str, electricity: float, day: float, gas: float, gas_day: float, published: float) -> None:
    """To the pound, also where a tariff by hour or block charges the same price everywhere."""
    values = {
        "prices.electricity": electricity, "prices.electricity_standing": day, "prices.fuel": gas,
        "prices.fuel_standing": gas_day, "prices.other_electricity": 2700.0, "prices.hot_water": 2000.0,
        "heating.efficiency": 80.0, "prices.tariff.kind": kind,
        "prices.tariff.windows": f"{electricity} at 0:30-5:30" if kind == "time of use" else "",
        "prices.tariff.blocks": f"{electricity} beyond 100" if kind == "block" else "",
    }  # fmt: skip
    found = household(values, heat=11_500 * 0.8 - 2000.0)
    # Published unit rates are rounded to 0.01 p, which moves the bill by up to 0.7 pounds.
    assert float(found.household_bill[0]) == pytest.approx(published, abs=1.0)


def test_carbon_to_the_gram() -> None:
    """UK government conversion factors 2025: 1,000 kWh of electricity at the socket 195.53 kg, of gas 182.96 kg."""
    values = {"prices.other_electricity": 1000.0, "prices.hot_water": 0.0, "heating.efficiency": 100.0}
    found = household(values, heat=1000.0)
    assert float(found.electricity_carbon[0]) == pytest.approx(195.53, abs=5e-4)
    assert float(found.fuel_carbon[0]) == pytest.approx(182.96, abs=5e-4)
    assert float(found.household_carbon[0]) == pytest.approx(378.49, abs=5e-4)
