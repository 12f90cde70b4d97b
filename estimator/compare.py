"""What does an option save against a named baseline, and does it pay back?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from estimator.climate.year import ClimateYear
from estimator.estimate import Estimate, OptionYear, estimate
from estimator.inputs.case import Case
from estimator.money import energy, worth
from estimator.plan import Plan, plan
from estimator.units import from_hundredths, from_percent


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Comparison:
    """An option against one baseline; every saving is baseline minus option. kWh, money, kg and years."""

    baseline: str
    option: str
    baseline_label: str
    option_label: str
    heat_saved: float
    fuel_saved: float
    extra_electricity: float
    bill_saving: float
    heat_bill_saving: float
    extra_ventilation_bill: float
    extra_upkeep: float
    net_saving: float
    carbon_saving: float
    net_capital: float
    simple_payback: float
    life: float
    heat_per_extra_electricity: float
    break_even_heat_per_electricity: float
    extra_fresh_air: float
    plan: Plan


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Result:
    """The estimate and its comparisons: every other option against the baseline, and against the house as today."""

    estimate: Estimate
    against_baseline: dict[str, Comparison]
    against_today: dict[str, Comparison]


def run(case: Case, year: ClimateYear) -> Result:
    """One call from case and year to both comparisons of every option."""
    done = estimate(case, year)
    base, today = done.options[case.baseline], done.options[case.today]
    return Result(
        estimate=done,
        against_baseline={
            n: compared(done, base, o) for n, o in done.options.items() if n not in (base.name, today.name)
        },
        against_today={n: compared(done, today, o) for n, o in done.options.items() if n != today.name},
    )


def compared(done: Estimate, base: OptionYear, option: OptionYear) -> Comparison:
    """One option against one baseline of the same estimate."""
    life = done.case.worth.life
    bill_saving = base.household_bill - option.household_bill
    extra_upkeep = option.upkeep - base.upkeep
    net_saving = bill_saving - extra_upkeep
    net_capital = option.capital - base.capital
    heat_saved = base.heating_demand - option.heating_demand
    extra_electricity = option.electricity - base.electricity
    return Comparison(
        baseline=base.name,
        option=option.name,
        baseline_label=base.label,
        option_label=option.label,
        heat_saved=heat_saved,
        fuel_saved=base.fuel_energy - option.fuel_energy,
        extra_electricity=extra_electricity,
        bill_saving=bill_saving,
        heat_bill_saving=base.heat_bill - option.heat_bill,
        extra_ventilation_bill=option.ventilation_bill - base.ventilation_bill,
        extra_upkeep=extra_upkeep,
        net_saving=net_saving,
        carbon_saving=base.household_carbon - option.household_carbon,
        net_capital=net_capital,
        simple_payback=float(worth.simple_payback(net_capital, net_saving=net_saving)),
        life=life,
        heat_per_extra_electricity=heat_saved / extra_electricity if extra_electricity else float("nan"),
        break_even_heat_per_electricity=_break_even(done, option),
        extra_fresh_air=float(np.mean(option.air.delivered) - np.mean(base.air.delivered)),
        plan=plan(option.yearly, baseline=base.yearly),
    )


def _break_even(done: Estimate, option: OptionYear) -> float:
    """Heat [kWh] that a kWh of electricity must save, at the mean prices that this option pays for both."""
    prices, heating = done.case.prices, done.case.heating
    electricity = from_hundredths(_known(prices.electricity))
    heat = from_hundredths(_known(prices.fuel)) / from_percent(_known(heating.efficiency))
    if done.supply.by_row or done.supply.shared:
        electricity = option.ventilation_bill / option.electricity if option.electricity > 0.0 else electricity
        heat = option.heat_bill / option.heating_demand if option.heating_demand > 0.0 else heat
    return float(energy.break_even_ratio(electricity, price_fuel=heat, efficiency=1.0))


def _known(value: float | None) -> float:
    if value is None:
        raise ValueError("an entry was left open: only a filled case can be compared")
    return value
