"""What does each option take and cost in a year?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from estimator.climate.year import ClimateYear
from estimator.corridor import AirYear, HeatYear, HomeYear, air_year, heat_year, home_year
from estimator.inputs.case import Case
from estimator.inputs.catalogue import is_electric
from estimator.inputs.cost import Cost
from estimator.money import carbon, energy, tariffs, worth
from estimator.survey.fill import Filled, Origin, filled
from estimator.survey.numbers import HomeNumbers, OptionNumbers, home_numbers, option_numbers
from estimator.units import HOURS_PER_YEAR, from_hundredths, from_percent, to_kwh


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
    options: Mapping[str, OptionYear]


def estimate(case: Case, year: ClimateYear) -> Estimate:
    """Energy, bill and carbon of every option of a case in a weather year.

    The option named `today` gets no windows opened in thought: it stands for the bill as it is.
    """
    survey: Filled = filled(case)
    whole = survey.case
    home = home_numbers(whole)
    shared = home_year(home, year)
    options = {name: _option_year(name, whole, home, shared, year) for name in whole.options}
    return Estimate(case=whole, origins=survey.origins, year=year, home=home, shared=shared, options=options)


def _option_year(name: str, case: Case, home: HomeNumbers, shared: HomeYear, year: ClimateYear) -> OptionYear:
    option = case.options[name]
    numbers = option_numbers(option)
    step = year.weight
    air = air_year(home, numbers, shared, top_up=home.top_up and name != case.today)
    heat = heat_year(home, numbers, shared, air, step=step)
    fans = float(np.squeeze(to_kwh(air.fans * HOURS_PER_YEAR)))
    frost = float(to_kwh(np.sum(air.preheater) * step))
    useful = float(to_kwh(np.sum(heat.heat) * step))
    prices, efficiency = case.prices, float(from_percent(_filled(case.heating.efficiency)))
    fuel = float(energy.fuel_energy(useful, efficiency=efficiency))
    hot_water = float(energy.fuel_energy(_filled(prices.hot_water), efficiency=efficiency))
    price_electricity = float(from_hundredths(_filled(prices.electricity)))
    price_fuel = float(from_hundredths(_filled(prices.fuel)))
    household = tariffs.flat_bill(
        prices.other_electricity + fans + frost,
        price=price_electricity,
        standing_per_day=from_hundredths(_filled(prices.electricity_standing)),
    ) + tariffs.flat_bill(
        fuel + hot_water,
        price=price_fuel,
        standing_per_day=0.0 if is_electric(case.heating.fuel) else from_hundredths(_filled(prices.fuel_standing)),
    )
    factor_electricity, factor_fuel = _filled(prices.electricity_carbon), _filled(prices.fuel_carbon)
    return OptionYear(
        name=name,
        label=option.label or name,
        numbers=numbers,
        air=air,
        heat=heat,
        heating_demand=useful,
        fan_electricity=fans,
        frost_electricity=frost,
        fuel_energy=fuel,
        hot_water_fuel=hot_water,
        heat_bill=fuel * price_fuel,
        ventilation_bill=(fans + frost) * price_electricity,
        household_bill=float(household),
        heat_carbon=float(carbon.emission(fuel, factor=factor_fuel)),
        ventilation_carbon=float(carbon.emission(fans + frost, factor=factor_electricity)),
        household_carbon=float(
            carbon.emission(fuel + hot_water, factor=factor_fuel)
            + carbon.emission(prices.other_electricity + fans + frost, factor=factor_electricity)
        ),
        capital=option_capital(option.cost),
        upkeep=option_upkeep(option.cost),
    )


def option_capital(cost: Cost) -> float:
    """Cost of fitting an option [money] from its filled parts."""
    parts = sum(_filled(part) for part in (cost.kit, cost.ducts, cost.electrical, cost.commissioning, cost.making_good))
    return float(
        worth.capital(
            parts=parts,
            people=_filled(cost.people),
            days=_filled(cost.days),
            day_rate=_filled(cost.day_rate),
            vat_percent=_filled(cost.vat),
            grant=_filled(cost.grant),
        )
    )


def option_upkeep(cost: Cost) -> float:
    """Yearly upkeep of an option [money/year] from its filled parts."""
    return float(
        worth.upkeep(
            filter_sets=_filled(cost.filter_sets),
            filter_price=_filled(cost.filter_price),
            service=_filled(cost.service),
        )
    )


def _filled(value: Any) -> Any:
    if value is None:
        raise ValueError("an entry was left open: only a filled case can be estimated")
    return value
