"""What does an option bring over the years against a named baseline, in money and in carbon?

Years stand on the last axis, today first. Payments within a year count at its end. All rates are of one kind, real or
nominal as the case says; in nominal terms upkeep and renewals grow with inflation.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from estimator.bills import Bills
from estimator.costs import embodied_carbon, later_costs, option_capital, option_upkeep
from estimator.inputs.case import Case
from estimator.inputs.cost import Cost
from estimator.inputs.prices import Prices
from estimator.money import carbon, cash, worth
from estimator.units import Array, from_percent


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Terms:
    """On which terms later years are counted, the same for every option of a case: fractions a year, shapes (…,)."""

    years: int
    electricity_growth: Any
    fuel_growth: Any
    other_growth: float
    discount: Any
    grid_now: Any  # kg/kWh
    grid_factor: Array  # kg/kWh in each of the years from the first, (…, years)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Yearly:
    """What an option takes in its first year, shapes (…,), and what it costs later by year, (…, years + 1)."""

    electricity_bill: Any  # money, all that goes by the price of electricity
    fuel_bill: Any
    ventilation_bill: Any
    grid_energy: Any  # kWh
    electricity_carbon: Any  # kg
    fuel_carbon: Any
    useful_heat: Any  # kWh
    capital: Any  # money
    upkeep: Any  # money/year
    later: Array  # money
    embodied: Array  # kg
    terms: Terms


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Plan:
    """An option against one baseline, year by year, today first: (…, years + 1); every saving is baseline minus option.

    flows: money saved in each year less what is laid out; outlays: extra cost beyond the baseline's, ventilation's
    electricity in it, bills for heat left out; heat_saved: kWh; carbon_saved: kg, embodied carbon against it.
    """

    flows: Array
    outlays: Array
    heat_saved: Array
    carbon_saved: Array
    grid_factor: Array  # kg/kWh in each of the years from the first, (…, years)
    discount: Any  # a year, fraction

    @property
    def years(self) -> int:
        """Whole years counted."""
        return int(self.flows.shape[-1]) - 1

    @property
    def cumulative(self) -> Array:
        """Money up to the end of each year, undiscounted."""
        return np.asarray(cash.cumulative(self.flows))

    @property
    def net_present_value(self) -> Any:
        """Worth of it all today [money]."""
        return worth.net_present_value(self.flows, rate=self.discount)

    @property
    def internal_rate(self) -> worth.ReturnRate:
        """Yearly rate of return (fraction), nan where there is none or more than one."""
        return worth.internal_rate(self.flows)

    @property
    def lasting_payback(self) -> Any:
        """Years until what was laid out has come back for good, later costs counted, undiscounted; may be infinite."""
        return worth.lasting_payback(self.flows)

    @property
    def discounted_payback(self) -> Any:
        """The same, later money weighing less."""
        return worth.discounted_payback(self.flows, rate=self.discount)

    @property
    def cost_per_kwh(self) -> Any:
        """Discounted cost of each kWh of heat saved [money/kWh]; infinite where none is."""
        return worth.cost_per_saved_kwh(self.outlays, saved=self.heat_saved, rate=self.discount)

    @property
    def carbon_cumulative(self) -> Array:
        """Carbon saved up to the end of each year [kg], embodied carbon against it."""
        return np.asarray(cash.cumulative(self.carbon_saved))

    @property
    def carbon_lifetime(self) -> Any:
        """Carbon saved in all years together [kg], embodied carbon against it."""
        return np.sum(self.carbon_saved, axis=-1)

    @property
    def carbon_payback(self) -> Any:
        """Years until the carbon saved outweighs what was embodied, for good; may be infinite."""
        return worth.lasting_payback(self.carbon_saved)


def terms(case: Case) -> Terms:
    """The terms of a filled case."""
    years, prices, nominal = horizon(case), case.prices, case.worth.terms == "nominal"
    return Terms(
        years=years,
        electricity_growth=_fraction(prices.electricity_growth),
        fuel_growth=_fraction(prices.fuel_growth),
        other_growth=float(_fraction(case.worth.inflation)) if nominal else 0.0,
        discount=_fraction(case.worth.discount),
        grid_now=_row(prices.electricity_carbon),
        grid_factor=grid_factor(prices, years=years),
    )


def yearly(cost: Cost, first_year: Bills, *, on: Terms, standing: bool) -> Yearly:
    """An option's first year and its later costs on the terms of its case; standing: in place today."""
    return Yearly(
        electricity_bill=_row(first_year.electricity_bill),
        fuel_bill=_row(first_year.fuel_bill),
        ventilation_bill=_row(first_year.ventilation_bill),
        grid_energy=_row(first_year.grid_energy),
        electricity_carbon=_row(first_year.electricity_carbon),
        fuel_carbon=_row(first_year.fuel_carbon),
        useful_heat=_row(first_year.useful_heat),
        capital=_row(option_capital(cost)),
        upkeep=_row(option_upkeep(cost)),
        later=later_costs(cost, years=on.years, growth=on.other_growth),
        embodied=embodied_carbon(cost, years=on.years, standing=standing),
        terms=on,
    )


def plan(option: Yearly, *, baseline: Yearly) -> Plan:
    """One option against one baseline of the same case."""
    on = option.terms
    outlays = cash.growing(option.upkeep - baseline.upkeep, growth=on.other_growth, years=on.years)
    outlays = outlays + option.later - baseline.later
    outlays[..., 0] += option.capital - baseline.capital
    saved = cash.growing(
        baseline.electricity_bill - option.electricity_bill, growth=on.electricity_growth, years=on.years
    ) + cash.growing(baseline.fuel_bill - option.fuel_bill, growth=on.fuel_growth, years=on.years)
    fans = option.ventilation_bill - baseline.ventilation_bill
    return Plan(
        flows=saved - outlays,
        outlays=outlays + cash.growing(fans, growth=on.electricity_growth, years=on.years),
        heat_saved=cash.growing(baseline.useful_heat - option.useful_heat, years=on.years),
        carbon_saved=_carbon_saved(option, baseline),
        grid_factor=on.grid_factor,
        discount=on.discount,
    )


def horizon(case: Case) -> int:
    """Whole years over which the money of a filled case is counted."""
    if case.worth.horizon is None:
        raise ValueError("an entry was left open: only a filled case has a horizon")
    return int(case.worth.horizon)


def grid_factor(prices: Prices, *, years: int) -> Array:
    """Carbon of a kWh of electricity [kg/kWh] in each year from the first, (…, years), on the stated path."""
    now = np.asarray(_row(prices.electricity_carbon))[..., None]
    if prices.carbon_path == "constant":
        return np.repeat(now, years, axis=-1)
    # Straight from the factor of now to that of the end, level thereafter.
    gone = carbon.stated_path(
        prices.carbon_year,
        years=years,
        known_years=(prices.carbon_year, prices.carbon_end_year),
        known_factors=(0.0, 1.0),
    )
    return np.asarray(now * (1.0 - gone) + prices.carbon_end * gone)


def _carbon_saved(option: Yearly, baseline: Yearly) -> Array:
    """Carbon saved by year [kg]: electricity on the grid's path, fuel as it is, embodied carbon in its years."""
    grid = np.asarray(baseline.grid_energy - option.grid_energy)
    # What does not follow the grid's factor: fuel, and electric heat that was given a factor of its own.
    electric = baseline.electricity_carbon - option.electricity_carbon - grid * option.terms.grid_now
    own = np.asarray(electric + baseline.fuel_carbon - option.fuel_carbon)
    saved = carbon.yearly_emission(grid, path=option.terms.grid_factor) + own[..., None]
    today = np.zeros((*saved.shape[:-1], 1))
    return np.concatenate((today, saved), axis=-1) + baseline.embodied - option.embodied


def _fraction(percent: Any) -> Any:
    return _row(from_percent(np.asarray(percent, dtype=float)))


def _row(value: Any) -> Any:
    """A figure of each home without the axis of time: (…, 1) becomes (…,)."""
    number = np.asarray(value, dtype=float)
    return number[..., 0] if number.ndim else number
