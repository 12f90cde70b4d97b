"""Which figures does an estimate report, with which unit and meaning?

Declared once: the document, the tables and the working are all read from these lists.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np

from estimator.estimate import OptionYear
from estimator.report.money_quantities import MONEY_COMPARED, MONEY_YEARLY
from estimator.report.reported import MONEY, Reported, plain
from estimator.units import to_kwh, to_m3h, to_percent, watt_per_m3h

__all__ = ["COMPARED", "MONEY", "MONTHLY", "YEARLY", "Reported", "hourly_columns"]


def _mean_m3h(name: str) -> Callable[[OptionYear], float]:
    return lambda option: float(np.mean(to_m3h(getattr(option.air, name))))


def _single(name: str) -> Callable[[OptionYear], float]:
    return lambda option: float(np.squeeze(getattr(option.heat, name)))


def _kept(option: OptionYear) -> float:
    return float(to_percent(np.squeeze(option.heat.effective_efficiency)))


def _specific_power(option: OptionYear) -> float:
    return float(watt_per_m3h(np.asarray(option.numbers.fan_power) * 1e-3))


YEARLY: tuple[Reported, ...] = (
    Reported("air_delivered", "m³/h", "mean outdoor air, windows included", _mean_m3h("delivered")),
    Reported(
        "infiltration", "m³/h", "mean air through leaks and open ventilators if no fan ran", _mean_m3h("infiltration")
    ),
    Reported("envelope_air", "m³/h", "mean air through the envelope with the fans running", _mean_m3h("envelope")),
    Reported("balanced_air", "m³/h", "mean air in and out through the unit", _mean_m3h("balanced")),
    Reported("window_air", "m³/h", "mean air added by windows so that no hour is short", _mean_m3h("windows")),
    Reported(
        "hours_short",
        "%",
        "share of hours short of the required air, before windows",
        lambda o: float(to_percent(np.mean(o.air.short))),
    ),
    Reported(
        "effective_efficiency", "%", "heat kept of the balanced air, pre-heater taken off, in heating hours", _kept
    ),
    Reported("loss_coefficient", "W/K", "heat lost per kelvin, fabric and air", _single("loss_coefficient")),
    Reported("mean_gain", "W", "mean gains in hours with heat", _single("mean_gain")),
    Reported("time_constant", "h", "how long the home remembers", _single("time_constant")),
    Reported(
        "balance_temperature", "°C", "outdoor temperature below which heat is needed", _single("balance_temperature")
    ),
    Reported("degree_hours", "K h", "heating demand per loss coefficient", _single("degree_hours")),
    Reported("heating_demand", "kWh", "useful heat for the rooms", plain("heating_demand")),
    Reported("specific_fan_power", "W/(m³/h)", "specific fan power at the reference flow", _specific_power),
    Reported("fan_electricity", "kWh", "fans and controls", plain("fan_electricity")),
    Reported(
        "frost_electricity", "kWh", "heaters of the unit: frost pre-heater, post-heater", plain("frost_electricity")
    ),
    Reported("electricity", "kWh", "fans, controls and heaters of the unit", plain("electricity")),
    Reported("fuel_energy", "kWh", "energy bought for heating the rooms", plain("fuel_energy")),
    Reported("hot_water_fuel", "kWh", "energy bought for hot water, the same in every option", plain("hot_water_fuel")),
    Reported("heat_bill", MONEY, "price of the energy for heating the rooms", plain("heat_bill")),
    Reported("ventilation_bill", MONEY, "price of the electricity for ventilation", plain("ventilation_bill")),
    Reported("household_bill", MONEY, "whole household, standing charges included", plain("household_bill")),
    Reported("heat_carbon", "kg", "CO2 equivalent of heating the rooms", plain("heat_carbon")),
    Reported(
        "ventilation_carbon", "kg", "CO2 equivalent of the electricity for ventilation", plain("ventilation_carbon")
    ),
    Reported("household_carbon", "kg", "CO2 equivalent of the whole household", plain("household_carbon")),
    Reported("capital", MONEY, "cost of fitting", plain("capital")),
    Reported("upkeep", MONEY, "filters and service a year", plain("upkeep")),
    *MONEY_YEARLY,
)

COMPARED: tuple[Reported, ...] = (
    Reported("heat_saved", "kWh", "useful heat saved a year", plain("heat_saved")),
    Reported("fuel_saved", "kWh", "bought energy for heat saved a year", plain("fuel_saved")),
    Reported("extra_electricity", "kWh", "more electricity for ventilation a year", plain("extra_electricity")),
    Reported("heat_bill_saving", MONEY, "saved on heat a year", plain("heat_bill_saving")),
    Reported(
        "extra_ventilation_bill",
        MONEY,
        "more paid for ventilation's electricity a year",
        plain("extra_ventilation_bill"),
    ),
    Reported("bill_saving", MONEY, "saved on the household's bills a year", plain("bill_saving")),
    Reported("extra_upkeep", MONEY, "more upkeep a year", plain("extra_upkeep")),
    Reported("net_saving", MONEY, "saved a year after upkeep", plain("net_saving")),
    Reported("carbon_saving", "kg", "CO2 equivalent saved a year", plain("carbon_saving")),
    Reported("net_capital", MONEY, "cost of fitting beyond the baseline's", plain("net_capital")),
    Reported("simple_payback", "years", "net capital over net saving of the first year", plain("simple_payback")),
    Reported(
        "heat_per_extra_electricity",
        "kWh/kWh",
        "heat saved for each extra kWh of electricity",
        plain("heat_per_extra_electricity"),
    ),
    Reported(
        "break_even_heat_per_electricity",
        "kWh/kWh",
        "heat each extra kWh of electricity must save to pay for itself",
        plain("break_even_heat_per_electricity"),
    ),
    Reported(
        "extra_fresh_air",
        "m³/h",
        "more outdoor air than the baseline, mean",
        lambda c: float(to_m3h(c.extra_fresh_air)),
    ),
    *MONEY_COMPARED,
)

MONTHLY: tuple[tuple[str, str, str], ...] = (
    ("air_delivered_m3h", "m³/h", "mean outdoor air, windows included"),
    ("infiltration_m3h", "m³/h", "mean air through leaks and open ventilators if no fan ran"),
    ("windows_m3h", "m³/h", "mean air added by windows"),
    ("effective_efficiency", "", "heat kept of the balanced air, in heating hours, as a fraction"),
    ("balance_temperature", "°C", "outdoor temperature below which heat is needed"),
    ("degree_hours", "K h", "heating demand per loss coefficient"),
    ("heating_demand", "kWh", "useful heat for the rooms"),
    ("fan_electricity", "kWh", "fans and controls"),
    ("frost_electricity", "kWh", "heaters of the unit: frost pre-heater, post-heater"),
    ("electricity", "kWh", "fans, controls and heaters of the unit"),
    ("fuel_energy", "kWh", "energy bought for heating the rooms"),
    ("bill", MONEY, "whole household"),
    ("carbon", "kg", "CO2 equivalent of the whole household"),
)


def hourly_columns(option: OptionYear) -> dict[str, Any]:
    """Hours of an option for a table: heat [kWh], electricity [kWh], flows [m³/h]."""
    return {
        "heat [kWh]": to_kwh(option.heat.heat),
        "pre-heater [kWh]": to_kwh(option.air.preheater),
        "outdoor air [m³/h]": to_m3h(option.air.delivered),
        "infiltration [m³/h]": to_m3h(option.air.infiltration),
    }
