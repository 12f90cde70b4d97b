"""From heat lost to net saving: which sums does a comparison consist of?

Only sums over the hours of a result that is already there; whatever is physics was worked out before. The parts of the
fresh air's heat are those of the hours in which the option is heated.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from estimator.compare import Comparison, Result
from estimator.estimate import Estimate, OptionYear
from estimator.monthly import months
from estimator.report.figures import energy
from estimator.report.fresh_air import FreshAir, Take
from estimator.units import Array, from_hundredths, from_percent, to_kwh

_SMALL_SHARE = 0.1  # of the fans' cost: a frost heater below it is named together with them


def fresh_air(done: Estimate, comparison: Comparison) -> FreshAir:
    """Where the heat of an option's fresh air goes, and what is left against a baseline."""
    option, base = done.options[comparison.option], done.options[comparison.baseline]
    heated = option.heat.heat > 0.0
    step = done.year.weight

    def summed(power: Array) -> float:
        return float(to_kwh(np.sum(np.where(heated, power, 0.0)) * step))

    carried = done.shared.heat_capacity * done.shared.temp_difference
    through = summed(carried * option.air.balanced)
    heater = summed(option.air.preheater)
    kept = summed(option.air.recovered) - heater
    # Air drawn through a warmer room passes no exchanger: what that room gives is no heat of the other way in.
    warmed = kept if through == 0.0 else 0.0
    return FreshAir(
        past=summed(carried * (option.air.envelope + option.air.windows)) - warmed,
        lost=through + warmed - kept,
        kept=kept,
        heater=heater,
        exchanger=through > 0.0,
        saved=comparison.heat_saved,
        baseline=comparison.baseline_label,
        heat_price=_heat_price(done, comparison),
        takes=_takes(done, option, base, comparison),
        currency=done.case.prices.currency,
    )


def _heat_price(done: Estimate, comparison: Comparison) -> float:
    """Money for a kWh of useful heat, as the comparison paid it."""
    if comparison.heat_saved:
        return comparison.heat_bill_saving / comparison.heat_saved
    return float(from_hundredths(done.case.prices.fuel or 0.0) / from_percent(done.case.heating.efficiency or 100.0))


def _takes(done: Estimate, option: OptionYear, base: OptionYear, comparison: Comparison) -> tuple[Take, ...]:
    more = comparison.extra_electricity
    price = comparison.extra_ventilation_bill / more if more else 0.0
    fans = option.fan_electricity - base.fan_electricity
    frost = option.frost_electricity - base.frost_electricity
    upkeep = Take(name="filters and service", cost=comparison.extra_upkeep, meaning="upkeep")
    if abs(frost) < _SMALL_SHARE * abs(fans):
        name = "fans and frost heater" if frost else "fans"
        return (Take(name=name, cost=comparison.extra_ventilation_bill, detail=energy(abs(more))), upkeep)
    return (
        Take(name="fans", cost=fans * price, detail=energy(abs(fans))),
        Take(name="frost heater", cost=frost * price, detail=energy(abs(frost))),
        upkeep,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Sums:
    """One comparison as money, year by year: what comes in, what goes out."""

    heat: float  # saved on heat
    electricity: float  # more for ventilation's electricity
    upkeep: float  # more for filters and service
    net: float


def sums(comparison: Comparison) -> Sums:
    """The yearly saving and what it consists of."""
    return Sums(
        heat=comparison.heat_bill_saving,
        electricity=comparison.extra_ventilation_bill,
        upkeep=comparison.extra_upkeep,
        net=comparison.net_saving,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Carbon:
    """Carbon of one option in a year, heat's and electricity's apart [kg]."""

    label: str
    heat: float
    electricity: float

    @property
    def total(self) -> float:
        """Both together."""
        return self.heat + self.electricity


def carbon_pair(done: Estimate, comparison: Comparison) -> tuple[Carbon, Carbon]:
    """Carbon of the baseline and of the option."""
    base, option = (
        Carbon(label=found.label, heat=found.heat_carbon, electricity=found.ventilation_carbon)
        for found in (done.options[comparison.baseline], done.options[comparison.option])
    )
    return base, option


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthsSaved:
    """Twelve figures each [kWh]."""

    heat: Array
    electricity: Array  # more for fans and frost heater
    demand: Array  # of the option: where the heating season is


def months_saved(result: Result, comparison: Comparison) -> MonthsSaved:
    """Heat saved against more electricity, month by month."""
    done = result.estimate
    base, option = (months(done, done.options[name]) for name in (comparison.baseline, comparison.option))
    return MonthsSaved(
        heat=base.heating_demand - option.heating_demand,
        electricity=option.electricity - base.electricity,
        demand=option.heating_demand,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Payback:
    """Money since the day of fitting [money], one figure a year from nil to the horizon."""

    years: Array
    middle: Array
    low: Array
    high: Array
    life: float
    cost: float


def payback_path(comparison: Comparison, ends: tuple[Comparison, ...]) -> Payback:
    """What has come back of the extra cost of fitting, at the middle and at the worst and best of a range."""
    years = np.arange(0.0, np.ceil(comparison.life * 1.25) + 1.0)
    savings = [found.net_saving for found in (comparison, *ends)]
    paths = [found * years - comparison.net_capital for found in (comparison.net_saving, min(savings), max(savings))]
    return Payback(
        years=years, middle=paths[0], low=paths[1], high=paths[2], life=comparison.life, cost=comparison.net_capital
    )
