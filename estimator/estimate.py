"""What does each option take and cost in a year?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from estimator.bills import Bills, bills
from estimator.climate.year import ClimateYear
from estimator.corridor import AirYear, HeatYear, HomeYear, air_year, heat_year, home_year
from estimator.costs import option_capital, option_upkeep
from estimator.inputs.case import Case
from estimator.plan import Terms, Yearly, terms, yearly
from estimator.supply import Supply, supply
from estimator.survey.fill import Filled, Origin, filled
from estimator.survey.numbers import HomeNumbers, OptionNumbers, home_numbers, option_numbers


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class OptionYear:
    """One option over the year. Energy kWh, money in the case's currency, carbon kg.

    `air` and `heat` keep the hours, so that every figure can be traced.
    """

    name: str
    label: str
    numbers: OptionNumbers
    air: AirYear
    heat: HeatYear
    heating_demand: float
    fan_electricity: float
    frost_electricity: float
    fuel_energy: float
    hot_water_fuel: float
    heat_bill: float
    ventilation_bill: float
    household_bill: float
    heat_carbon: float
    ventilation_carbon: float
    household_carbon: float
    capital: float
    upkeep: float
    bills: Bills
    yearly: Yearly

    @property
    def electricity(self) -> float:
        """Electricity of fans, controls and frost protection [kWh]."""
        return self.fan_electricity + self.frost_electricity


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Estimate:
    """All options of one case in one weather year, with every input used and its origin."""

    case: Case
    origins: Mapping[str, Origin]
    year: ClimateYear
    home: HomeNumbers
    shared: HomeYear
    supply: Supply
    options: Mapping[str, OptionYear]


def estimate(case: Case, year: ClimateYear) -> Estimate:
    """Energy, bill and carbon of every option of a case in a weather year.

    The option named `today` gets no windows opened in thought: it stands for the bill as it is.
    """
    survey: Filled = filled(case)
    whole = survey.case
    home = home_numbers(whole)
    shared = home_year(home, year)
    bought, on = supply(whole, year), terms(whole)
    return Estimate(
        case=whole,
        origins=survey.origins,
        year=year,
        home=home,
        shared=shared,
        supply=bought,
        options={name: _option_year(name, whole, home, shared, year, bought, on) for name in whole.options},
    )


def _option_year(
    name: str, case: Case, home: HomeNumbers, shared: HomeYear, year: ClimateYear, bought: Supply, on: Terms
) -> OptionYear:
    option = case.options[name]
    numbers = option_numbers(option)
    air = air_year(home, numbers, shared, top_up=home.top_up and name != case.today)
    heat = heat_year(home, numbers, shared, air, step=year.weight)
    first_year = bills(bought, heat=heat.heat, fans=air.fans, preheater=air.preheater)
    return OptionYear(
        name=name,
        label=option.label or option.kind,
        numbers=numbers,
        air=air,
        heat=heat,
        heating_demand=_one(first_year.useful_heat),
        fan_electricity=_one(first_year.fans),
        frost_electricity=_one(first_year.frost),
        fuel_energy=_one(first_year.first_energy + first_year.second_energy),
        hot_water_fuel=_one(first_year.hot_water),
        heat_bill=_one(first_year.heat_bill),
        ventilation_bill=_one(first_year.ventilation_bill),
        household_bill=_one(first_year.household_bill),
        heat_carbon=_one(first_year.heat_carbon),
        ventilation_carbon=_one(first_year.ventilation_carbon),
        household_carbon=_one(first_year.household_carbon),
        capital=_one(option_capital(option.cost)),
        upkeep=_one(option_upkeep(option.cost)),
        bills=first_year,
        yearly=yearly(option.cost, first_year, on=on, standing=name == case.today),
    )


def _one(figure: Any) -> float:
    return float(np.squeeze(figure))
