"""What did the meter count in a year, and how much of it was for heating?

The house as aired today: hot water, cooking and, on an electricity meter, all other use are taken off; what is left is
brought from the winter of the bill to the winter of the weather year by their degree-days.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from estimator.climate.year import ClimateYear
from estimator.errors import Fault, InputFaults
from estimator.estimate import OptionYear, estimate
from estimator.heat.degrees import degree_hours
from estimator.inputs.case import Case
from estimator.inputs.catalogue import is_electric
from estimator.inputs.quantity import Quantity
from estimator.units import DAYS_PER_YEAR, HOURS_PER_DAY, from_hundredths

UK_BASE = 15.5  # °C, of the degree-days published in the United Kingdom

ENERGY = Quantity("kWh", 100, 200000, "what the meter of the heating fuel counted in a year")
MONEY = Quantity("money", 20, 50000, "what was paid for it in a year, standing charge and tax included")
COOKING = Quantity("kWh", 0, 3000, "of the same fuel, for cooking")
OTHER_HEAT = Quantity("kWh", 0, 50000, "heat a year from anything else, such as a stove")
DEGREE_DAYS = Quantity("K d", 200, 9000, "heating degree-days of the bill's own twelve months")
_LIMITS = {"energy": ENERGY, "money": MONEY, "cooking": COOKING, "other_heat": OTHER_HEAT, "degree_days": DEGREE_DAYS}


@dataclass(frozen=True, slots=True, kw_only=True)
class Bill:
    """Twelve months of the heating fuel as somebody has them: either energy [kWh] or money, the rest where known.

    cooking: kWh of the same fuel. other_heat: useful kWh from anything else. degree_days: of the bill's own twelve
    months [K d], below `base` [°C].
    """

    energy: float | None = None
    money: float | None = None
    cooking: float = 0.0
    other_heat: float = 0.0
    degree_days: float | None = None
    base: float = UK_BASE


@dataclass(frozen=True, slots=True, kw_only=True)
class Metered:
    """A year's count of the meter and its parts [kWh of fuel].

    weather: what the winter of the weather year asks of that of the bill. other_heat: useful kWh.
    """

    total: float
    hot_water: float
    cooking: float
    other_electricity: float
    other_heat: float
    weather: float
    weather_known: bool
    degree_days: float  # of the weather year, below the base of the bill [K d]

    @property
    def left(self) -> float:
        """For heating in the year of the bill; on an electricity meter, for fans as well."""
        return self.total - self.hot_water - self.cooking - self.other_electricity

    @property
    def for_heating(self) -> float:
        """The same in the winter of the weather year."""
        return self.left * self.weather

    def with_hot_water(self, factor: float) -> Metered:
        """The same count, were more or less of it hot water."""
        return dataclasses.replace(self, hot_water=self.hot_water * factor)

    def with_weather(self, factor: float) -> Metered:
        """The same count, were its winter another one."""
        return dataclasses.replace(self, weather=self.weather * factor)


def metered(case: Case, year: ClimateYear, bill: Bill, *, own_year: ClimateYear | None = None) -> Metered:
    """A bill in its parts, for a filled case; InputFaults where it cannot be the bill of a heated house.

    own_year: weather of the very year of the bill, where it is to be used in place of `year`.
    """
    if faults := [*_faults(bill)]:
        raise InputFaults(faults)
    on_one_meter = is_electric(case.heating.fuel)
    if on_one_meter and case.roof.size > 0.0:
        what = (
            "cells on the roof share the meter of the heating, so that its count tells no use: no bill can be matched."
        )
        raise InputFaults([Fault("roof.size", what)])
    days = float(degree_hours(year.temp_air, base=bill.base, step=year.weight)) / HOURS_PER_DAY
    corrects = bill.degree_days is not None and own_year is None
    found = Metered(
        total=_total(case, bill, on_one_meter=on_one_meter),
        hot_water=today_year(case, own_year or year).hot_water_fuel,
        cooking=bill.cooking,
        other_electricity=case.prices.other_electricity if on_one_meter else 0.0,
        other_heat=bill.other_heat,
        weather=days / bill.degree_days if corrects and bill.degree_days else 1.0,
        weather_known=corrects or own_year is not None,
        degree_days=days,
    )
    if found.left <= 0.0:
        raise InputFaults([_nothing_left(found)])
    return found


def today_year(case: Case, year: ClimateYear) -> OptionYear:
    """The option in place in a filled case, estimated alone."""
    alone = dataclasses.replace(case, options={case.today: case.options[case.today]}, baseline=case.today)
    return estimate(alone, year).options[case.today]


def on_this_meter(case: Case, option: OptionYear) -> float:
    """Energy for heat [kWh a year] that the meter of the first heat source counts."""
    both = is_electric(case.heating.fuel) and is_electric(case.heating.second.fuel)
    found = option.bills.first_energy + (option.bills.second_energy if both else 0.0)
    return float(np.squeeze(found))


def _faults(bill: Bill) -> Iterator[Fault]:
    if (bill.energy is None) == (bill.money is None):
        given = "both were" if bill.energy is not None else "neither was"
        yield Fault("bill", f"{given} given: enter either the kWh of a year or what they cost.")
    for name, limits in _LIMITS.items():
        value = getattr(bill, name)
        if value is not None and not limits.low <= value <= limits.high:
            allowed = f"Write a number from {limits.low:g} to {limits.high:g} {limits.unit}: {limits.meaning}."
            yield Fault(f"bill.{name}", f"{value:g} is outside the limits. {allowed}")


def _total(case: Case, bill: Bill, *, on_one_meter: bool) -> float:
    if bill.energy is not None:
        return bill.energy
    prices = case.prices
    price = prices.electricity if on_one_meter else prices.fuel
    standing = prices.electricity_standing if on_one_meter else prices.fuel_standing
    if on_one_meter and prices.tariff.kind != "flat":
        what = "has several prices, so that money tells no kWh: enter the kWh."
        raise InputFaults([Fault("prices.tariff.kind", f"a tariff of the kind {prices.tariff.kind!r} {what}")])
    if bill.money is None or not price:
        raise InputFaults([Fault("prices.fuel", "the price is nil, so that money tells no kWh: enter the kWh.")])
    charge = float(from_hundredths(standing or 0.0)) * DAYS_PER_YEAR
    if bill.money <= charge:
        what = f"{bill.money:,.0f} a year is no more than the standing charge of {charge:,.0f}: enter a whole year."
        raise InputFaults([Fault("bill.money", what)])
    return (bill.money - charge) / float(from_hundredths(price))


def _nothing_left(found: Metered) -> Fault:
    parts = [("hot water", found.hot_water), ("cooking", found.cooking), ("other electricity", found.other_electricity)]
    taken = ", ".join(f"{kwh:,.0f} kWh for {words}" for words, kwh in parts if kwh > 0.0)
    return Fault(
        "bill",
        f"{found.total:,.0f} kWh a year leave nothing for heating once {taken} are taken off. Is it a whole year? "
        "If so, enter less hot water or fewer people.",
    )
