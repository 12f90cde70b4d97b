"""Which homes is the degree-hour estimate held against the reference in?

Random homes in columns, the same numbers for both methods: the estimator takes them as home and option, the reference
as five resistances and one capacity. Both get the same air hour by hour, so that only the heat is compared.
"""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from estimator import Case
from estimator.air import leakage, requirement
from estimator.air.infiltration import Setting
from estimator.climate.year import ClimateYear
from estimator.corridor import AirYear, HomeYear, air_year, heat_demand, home_year
from estimator.survey.fill import filled
from estimator.survey.numbers import (
    DuctConductances,
    HomeNumbers,
    OptionNumbers,
    State,
    home_numbers,
    option_numbers,
)
from estimator.units import Array, from_mm2, to_kwh
from tests.reference.iso13790 import CAPACITY_PER_FLOOR, Homes, heating_need

NO_DUCTS = DuctConductances(intake=0.0, exhaust=0.0, supply=0.0, extract=0.0)


@dataclass(frozen=True, kw_only=True)
class Sample:
    """Random homes in columns (n, 1), and the same homes as the reference knows them."""

    n50: Array  # 1/h
    glazing: Array  # m² of sun-collecting area per m² of floor
    mass_class: NDArray[np.intp]
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
        return self.extract - self.recovery

    @property
    def saved_reference(self) -> Array:
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


def sample(count: int, *, draw: int) -> Sample:
    """`count` random homes: 45-220 m², n50 0.6-10, fabric 0.5-3 W/K per m² of floor, five masses, glazing 5-14 %.

    Windows take their share of the fabric with U-values of 0.8 to 2.8 W/(m² K); the rest is opaque. The sun-collecting
    area is the whole of the glazing, without frames, shade or the glass's own loss: the hard case for a method that
    knows gains only as a sum.
    """
    rng = np.random.default_rng(draw)

    def column(low: float, high: float) -> Array:
        return rng.uniform(low, high, (count, 1))

    area, n50 = column(45.0, 220.0), np.exp(column(np.log(0.6), np.log(10.0)))
    fabric, glazing = area * column(0.5, 3.0), column(0.05, 0.14)
    mass_class = (np.arange(count) % 5).astype(np.intp)
    sides = rng.dirichlet(np.ones(4), count)
    bedrooms = np.clip(np.round(area / 30.0), 1.0, 5.0)
    volume = area * column(2.3, 2.7)
    capacity = CAPACITY_PER_FLOOR[mass_class][:, None] * area / 3600.0
    required = requirement.england_2021(floor_area=area, bedrooms=bedrooms, people=0.0, habitable_rooms=bedrooms + 1.0)
    home = dataclasses.replace(
        home_numbers(filled(Case()).case),
        volume=volume,
        leakage_area=leakage.leakage_area(n50 * volume / 3600.0, pressure=50.0),
        setting=Setting(storeys=rng.integers(1, 4, (count, 1)), shelter=rng.integers(1, 6, (count, 1))),
        infiltration_model="basic",
        fabric_loss=fabric,
        heat_capacity=capacity,
        apertures=tuple(area * glazing * sides[:, side : side + 1] for side in range(4)),  # type: ignore[arg-type]
        internal_gains=area * column(2.0, 6.0),
        temp_in=column(18.0, 21.0),
        required=required,
        top_up=True,
        fixed_base=None,
    )
    # Approved Document F vol. 1 (2021), from memory: 4,000 mm² for each habitable room with continuous extract.
    ventilators = leakage.ventilator_leakage_area(from_mm2(4000.0 * (bedrooms + 1.0)))
    window = area * glazing * column(0.8, 2.8)
    return Sample(
        n50=n50[:, 0],
        glazing=glazing[:, 0],
        mass_class=mass_class,
        home=home,
        extract=plain_option(supply=0.0, extract=required, ventilators=ventilators),
        recovery=plain_option(supply=required, extract=required, effectiveness=column(0.7, 0.93)),
        reference=Homes(
            floor_area=area[:, 0],
            opaque=(fabric - window)[:, 0],
            window=window[:, 0],
            mass_class=mass_class,
        ),
    )


def held(homes: Sample, year: ClimateYear) -> Held:
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
            ventilation=_coefficient(homes, option, air, shared.heat_capacity),
            internal_gains=homes.home.internal_gains,
            solar_gains=shared.gain - homes.home.internal_gains,
        )
    return Held(**found)


def _loss(homes: Sample, air: AirYear, shared: HomeYear) -> Array:
    """kWh a year that leave through fabric and air while it is colder outside."""
    per_kelvin = homes.home.fabric_loss + shared.heat_capacity * air.delivered
    return np.asarray(to_kwh(np.sum(per_kelvin * np.maximum(shared.temp_difference, 0.0), axis=-1)))


def _coefficient(homes: Sample, option: OptionNumbers, air: AirYear, heat_capacity: float) -> Array:
    """W/K of all outdoor air; recovered heat as less air, as the reference method has it (clause 9.3)."""
    return np.asarray(heat_capacity * (air.delivered - option.effectiveness * air.balanced))
