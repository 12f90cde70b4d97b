"""Which figures of meters, roof and later years does an estimate report?

A figure that a case has no use for, as those of a roof without cells, is not a number (nan) and is left out of tables.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

import numpy as np

from estimator.bills import Roof
from estimator.compare import Comparison
from estimator.estimate import OptionYear
from estimator.report.reported import MONEY, Reported
from estimator.units import to_percent


def _billed(name: str) -> Callable[[OptionYear], float]:
    return lambda option: float(np.squeeze(getattr(option.bills, name)))


def _second(option: OptionYear) -> float:
    return _billed("second_energy")(option) or math.nan


def _roof(read: Callable[[Roof], Any]) -> Callable[[OptionYear], float]:
    return lambda option: math.nan if option.bills.roof is None else float(np.squeeze(read(option.bills.roof)))


def _planned(name: str) -> Callable[[Comparison], float]:
    return lambda comparison: float(np.squeeze(getattr(comparison.plan, name)))


MONEY_YEARLY: tuple[Reported, ...] = (
    Reported("second_energy", "kWh", "of that, bought for the second source of heat", _second),
    Reported("seasonal_factor", "kWh/kWh", "heat per unit bought of the first source", _billed("seasonal_factor")),
    Reported(
        "electricity_bill", MONEY, "of the household's bill, electricity, sales deducted", _billed("electricity_bill")
    ),
    Reported("fuel_bill", MONEY, "of the household's bill, fuel", _billed("fuel_bill")),
    Reported("roof_generated", "kWh", "generated on the roof", _roof(lambda roof: roof.generated)),
    Reported("grid_bought", "kWh", "bought from the grid", _roof(lambda roof: roof.bought)),
    Reported("roof_sold", "kWh", "sold to the grid", _roof(lambda roof: roof.sold)),
    Reported(
        "ventilation_not_sold",
        "kWh",
        "of the electricity for ventilation, not sold rather than bought",
        _roof(lambda roof: roof.ventilation.not_sold),
    ),
    Reported(
        "heating_not_sold",
        "kWh",
        "of the electricity for heat, not sold rather than bought",
        _roof(lambda roof: roof.heating.not_sold),
    ),
)

MONEY_COMPARED: tuple[Reported, ...] = (
    Reported("net_present_value", MONEY, "worth today of all years, renewals counted", _planned("net_present_value")),
    Reported(
        "internal_rate",
        "%",
        "yearly rate of return; none where there is no rate or more than one",
        lambda comparison: float(to_percent(np.squeeze(comparison.plan.internal_rate.rate))),
    ),
    Reported("lasting_payback", "years", "payback with all later costs", _planned("lasting_payback")),
    Reported("discounted_payback", "years", "the same, later money weighing less", _planned("discounted_payback")),
    Reported(
        "cost_per_kwh",
        "money/kWh",
        "discounted cost of each kWh of heat saved, ventilation's electricity in it",
        _planned("cost_per_kwh"),
    ),
    Reported("carbon_lifetime", "kg", "CO2 equivalent saved in all years", _planned("carbon_lifetime")),
    Reported("carbon_payback", "years", "until carbon saved outweighs what was embodied", _planned("carbon_payback")),
)
