"""What does a household's meter come to, counted hour by hour in plain Python?

Nothing of the package's money is used here. Taken as given are an option's hourly heat and ventilation, the yield of a
kW of cells, and the household's proportions over the day; the calendar is that of the standard library.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import numpy as np

from estimator import ClimateYear, OptionYear
from estimator.climate.photovoltaics import yield_per_kw
from estimator.inputs.case import Case
from estimator.money.household import SHAPES

ELECTRIC = ("direct electric", "heat pump")
BEGIN = {"month": range(1, 13), "quarter": (1, 4, 7, 10), "year": (1,)}


@dataclass
class Counted:
    """What the hours add up to: kWh, money, kg."""

    household: float = 0.0
    carbon: float = 0.0
    bought: float = 0.0
    sold: float = 0.0
    generated: float = 0.0
    pump: list[float] = field(default_factory=list)
    second: float = 0.0
    fuel: float = 0.0
    fans_not_sold: float = 0.0
    heat_not_sold: float = 0.0
    months: list[float] = field(default_factory=lambda: [0.0] * 12)


def price_now(case: Case, moment: datetime, *, quarter: float) -> float:
    """Price [p/kWh] of time-of-use cases at a quarter of an hour: written out for the windows the tests use."""
    time = moment.hour + quarter
    price = case.prices.electricity or 0.0
    if "9 at 0:30-5:30" in case.prices.tariff.windows and 0.5 <= time < 5.5:
        price = 9.0
    if "38 at 16:00-19:00 Mon-Fri" in case.prices.tariff.windows and moment.weekday() < 5 and 16 <= time < 19:
        price = 38.0
    if "15 at 22:00-2:00 Sat,Sun" in case.prices.tariff.windows and moment.weekday() >= 5 and (time >= 22 or time < 2):
        price = 15.0
    return price


def performance(case: Case, outdoors: float) -> float:
    """Heat per unit bought of the first source in an hour."""
    pump = case.heating.pump
    if pump.mode == "constant":
        return (case.heating.efficiency or 0.0) / 100.0
    if outdoors <= pump.design_outdoors:
        water = pump.design_flow
    elif outdoors >= pump.mild_outdoors:
        water = pump.mild_flow
    else:
        along = (outdoors - pump.design_outdoors) / (pump.mild_outdoors - pump.design_outdoors)
        water = pump.design_flow - along * (pump.design_flow - pump.mild_flow)
    lift = water - (outdoors if pump.source == "air" else pump.ground_temperature)
    if lift < pump.least_lift:
        lift = pump.least_lift
    return pump.grade / 100.0 * (water + 273.15) / lift


def counted(case: Case, option: OptionYear, year: ClimateYear) -> Counted:
    """A filled case's year with one option; 2026, clocks of London, rows of one hour."""
    found, prices, heating = Counted(), case.prices, case.heating
    electric, second_electric = heating.fuel in ELECTRIC, heating.second.fuel in ELECTRIC
    shape = SHAPES[prices.tariff.household]
    clocks = [
        (datetime(2026, 1, 1, tzinfo=UTC) + timedelta(hours=h)).astimezone(ZoneInfo("Europe/London"))
        for h in range(8760)
    ]
    proportions = []
    for moment in clocks:
        day = {5: shape.saturday, 6: shape.sunday}.get(moment.weekday(), shape.working_day)
        proportions.append(day[moment.hour] * shape.months[moment.month - 1])
    whole = sum(proportions)
    sun = [0.0] * 8760
    if case.roof.size > 0.0:
        each = yield_per_kw(year, tilt=case.roof.tilt, azimuth=case.roof.azimuth, losses=case.roof.losses)
        sun = [case.roof.size * float(value) for value in each]
    water = (prices.hot_water or 0.0) / ((heating.efficiency or 0.0) / 100.0)
    fans = float(np.squeeze(option.air.fans)) / 1000.0
    meter, kwh_in_period, begun = 0.0, 0.0, set()
    for h in range(8760):
        moment, standard = clocks[h], datetime(2026, 1, 1) + timedelta(hours=h)
        heat = float(np.squeeze(option.heat.heat)[h]) / 1000.0
        frost = float(np.squeeze(option.air.preheater)[h]) / 1000.0
        second = heat * heating.second.share / 100.0
        first = heat - second
        if 0.0 < heating.pump.capacity < first:
            second += first - heating.pump.capacity
            first = heating.pump.capacity
        taken = first / performance(case, float(year.temp_air[h]))
        added = second / ((heating.second.efficiency or 0.0) / 100.0)
        found.pump.append(taken)
        found.second += added
        found.fuel += 0.0 if electric else taken
        other = (prices.other_electricity + (water if electric else 0.0)) * proportions[h] / whole
        for_heat = (taken if electric else 0.0) + (added if second_electric else 0.0)
        net = other + for_heat + fans + frost - sun[h]
        left = max(sun[h] - other, 0.0)
        found.heat_not_sold += min(left, for_heat)
        left = max(left - for_heat, 0.0)
        found.fans_not_sold += min(left, fans + frost)
        bought, sold = max(net, 0.0), max(-net, 0.0)
        found.generated += sun[h]
        found.bought += bought
        found.sold += sold
        cost = -sold * (prices.export or 0.0)
        if prices.tariff.kind == "block":
            period = (standard.month, standard.month in BEGIN[prices.tariff.billing])
            if period[1] and period[0] not in begun:
                begun.add(period[0])
                kwh_in_period = 0.0
            cost += bought * 0.0
            while bought > 1e-12:
                price, room = prices.electricity or 0.0, 150.0 - kwh_in_period
                if kwh_in_period >= 330.0:
                    price, room = 45.0, float("inf")
                elif kwh_in_period >= 150.0:
                    price, room = 31.0, 330.0 - kwh_in_period
                part = min(bought, room)
                cost += part * price
                kwh_in_period += part
                bought -= part
        elif prices.tariff.kind == "time of use":
            for quarter in (0.0, 0.25, 0.5, 0.75):
                cost += bought / 4.0 * price_now(case, moment, quarter=quarter)
        else:
            cost += bought * (prices.electricity or 0.0)
        if not electric:
            cost += (taken + water / 8760.0) * (prices.fuel or 0.0)
        if not second_electric:
            cost += added * (heating.second.price or 0.0)
        standing = ((prices.electricity_standing or 0.0) + (0.0 if electric else prices.fuel_standing or 0.0)) / 24.0
        meter += (cost + standing) / 100.0
        found.months[standard.month - 1] += (cost + standing) / 100.0
        grid = other + for_heat + fans + frost
        found.carbon += grid * (prices.electricity_carbon or 0.0)
        found.carbon += 0.0 if electric else (taken + water / 8760.0) * (prices.fuel_carbon or 0.0)
        found.carbon += 0.0 if second_electric else added * (heating.second.carbon or 0.0)
    found.household = meter
    return found
