"""How much heat do the same homes need by the estimate and by the hourly method?

Homes in columns, the same numbers for both methods: the estimate takes them as home and option, the reference as five
resistances and one capacity. Both get the same air hour by hour, so that only the heat is compared.
"""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass
from typing import Any

import numpy as np

from estimator.climate.year import ClimateYear
from estimator.corridor import AirYear, HomeYear, air_year, heat_demand, home_year
from estimator.evidence.hourly import Homes, heating_need
from estimator.inputs.case import Case
from estimator.survey.fill import filled
from estimator.survey.numbers import DuctConductances, HomeNumbers, OptionNumbers, State, option_numbers
from estimator.units import Array, to_kwh

NO_DUCTS = DuctConductances(intake=0.0, exhaust=0.0, supply=0.0, extract=0.0)


@dataclass(frozen=True, kw_only=True)
class HeldHomes:
    """Homes in columns (n, 1) with two options, and the same homes as the reference knows them."""

    home: HomeNumbers
    extract: OptionNumbers
    recovery: OptionNumbers
    reference: Homes


@dataclass(frozen=True, kw_only=True)
class Held:
    """Yearly heat [kWh] of both options by both methods, shape (n,)."""

    extract: Array
    recovery: Array
    extract_reference: Array
    recovery_reference: Array
    loss: Array  # kWh a year with the extract fan, of the hours colder outside than inside

    @property
    def met_by_heating(self) -> Array:
        """Share of the loss that heating meets, with the extract fan."""
        return self.extract / self.loss

    @property
    def saved(self) -> Array:
        """Heat saved by recovery, by the estimate."""
        return self.extract - self.recovery

    @property
    def saved_reference(self) -> Array:
        """The same by the reference."""
        return self.extract_reference - self.recovery_reference

    @property
    def saving_error(self) -> Array:
        """Relative error of the heat saved."""
        return self.saved / self.saved_reference - 1.0

    @property
    def demand_error(self) -> Array:
        """Relative error of the demand itself, both options one after the other."""
        return np.concatenate(
            [self.extract / self.extract_reference - 1.0, self.recovery / self.recovery_reference - 1.0]
        )


def plain_option(*, supply: Any, extract: Any, effectiveness: Any = 0.0, ventilators: Any = 0.0) -> OptionNumbers:
    """An option with nothing about it: all day at one flow [m³/s], no fan power, no ducts, no frost protection.

    ventilators: effective leakage area of open background ventilators [m²].
    """
    catalogued = option_numbers(filled(Case()).case.options["extract"])
    return dataclasses.replace(
        catalogued,
        states=(State(share=1.0, supply=supply, extract=extract),),
        ventilator_leakage_area=ventilators,
        effectiveness=np.asarray(effectiveness, dtype=float),
        reference_flow=np.maximum(supply, extract),
        fan_power=0.0,
        fan_exponent=1.5,
        standby=0.0,
        fan_heat_useful=0.0,
        preheat_to=None,
        throttle_at=None,
        outside=False,
        zone_factor=0.0,
        ducts=NO_DUCTS,
    )


def held(homes: HeldHomes, year: ClimateYear) -> Held:
    """Heat of both options by the estimator and by the reference, in one weather year."""
    shared = home_year(homes.home, year)
    found: dict[str, Array] = {}
    for name, option in (("extract", homes.extract), ("recovery", homes.recovery)):
        air = air_year(homes.home, option, shared, top_up=True)
        found.setdefault("loss", _loss(homes, air, shared))  # of the extract fan, which is first
        heat = heat_demand(homes.home, option, shared, step=year.weight, top_up=True)
        found[name] = to_kwh(heat)[:, 0]
        found[f"{name}_reference"] = heating_need(
            homes.reference,
            temp_out=year.temp_air,
            temp_set=homes.home.temp_in,
            ventilation=ventilation_coefficient(homes, option, air, shared.heat_capacity),
            internal_gains=homes.home.internal_gains,
            solar_gains=shared.gain - homes.home.internal_gains,
        )
    return Held(**found)


def _loss(homes: HeldHomes, air: AirYear, shared: HomeYear) -> Array:
    """kWh a year that leave through fabric and air while it is colder outside."""
    per_kelvin = homes.home.fabric_loss + shared.heat_capacity * air.delivered
    return np.asarray(to_kwh(np.sum(per_kelvin * np.maximum(shared.temp_difference, 0.0), axis=-1)))


def ventilation_coefficient(homes: HeldHomes, option: OptionNumbers, air: AirYear, heat_capacity: float) -> Array:
    """W/K of all outdoor air; recovered heat as less air, as the reference method has it (clause 9.3)."""
    return np.asarray(heat_capacity * (air.delivered - option.effectiveness * air.balanced))
