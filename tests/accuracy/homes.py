"""Which homes is the degree-hour estimate held against the reference in?

Random homes in columns, for `estimator.evidence.held`.
"""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from estimator import Case
from estimator.air import leakage, requirement
from estimator.air.infiltration import Setting
from estimator.evidence.held import HeldHomes, plain_option
from estimator.evidence.hourly import CAPACITY_PER_FLOOR, Homes
from estimator.survey.fill import filled
from estimator.survey.numbers import home_numbers
from estimator.units import Array, from_mm2


@dataclass(frozen=True, kw_only=True)
class Sample(HeldHomes):
    """Random homes, and what was drawn for them."""

    n50: Array  # 1/h
    glazing: Array  # m² of sun-collecting area per m² of floor
    mass_class: NDArray[np.intp]


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
