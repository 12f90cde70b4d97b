"""How much water drips from the extract air as the exchanger cools it?

Room air leaves its heat in the exchanger. Where that takes it below its dew point, what it cannot hold runs to the
drain. Latent heat serves only to find how cold the air leaves: the heat recovered is that of the exchanger, whatever
the air holds. Ice is counted as the water it will be; what its freezing gives is left out.
"""

from __future__ import annotations

from typing import Any, NamedTuple

import numpy as np

from estimator.air import moist
from estimator.air.properties import density
from estimator.units import Numeric


class Dripping(NamedTuple):
    """Water that drips [kg/s], exhaust air as it leaves the exchanger [°C], vapour it still holds [kg/kg dry air]."""

    water: Any
    leaving: Any
    vapour: Any


def dry_air_flow(flow: Numeric, *, pressure: Numeric) -> Any:
    """Dry air moved [kg/s] by a fan flow [m³/s] at a site pressure [Pa]: fans are rated on room air."""
    return density(pressure=pressure) * np.asarray(flow)


def outdoor_vapour(temp_out: Numeric, *, relative_humidity: Numeric, pressure: Numeric) -> Any:
    """Vapour in outdoor air [kg/kg dry air] from its temperature [°C], share of saturation [0-1], pressure [Pa].

    The share is taken over ice in frost. Stations report it over water, where air holds up to 1.1 times as much at
    -10 °C: 0.16 g/kg at most, which errs towards a dry home.
    """
    vapour = np.asarray(relative_humidity) * moist.saturation_pressure(temp_out)
    return moist.humidity_ratio(vapour, pressure=pressure)


def room_vapour(outdoor: Numeric, *, moisture: Numeric, air: Numeric, temp_in: Numeric, pressure: Numeric) -> Any:
    """Vapour in room air [kg/kg dry air] where `moisture` [kg/s] is carried away by all the outdoor `air` [kg/s].

    Steady in each hour, at most saturated at `temp_in` [°C]: what is beyond that settles on cold walls.
    """
    return np.minimum(
        np.asarray(outdoor) + np.asarray(moisture) / np.asarray(air),
        moist.saturation_humidity_ratio(temp_in, pressure=pressure),
    )


def dripping(*, temp: Numeric, vapour: Numeric, exchanged: Numeric, air: Numeric, pressure: Numeric) -> Dripping:
    """What drips where extract air of `temp` [°C] and `vapour` [kg/kg dry air] gives up `exchanged` [W].

    air: its dry mass flow [kg/s], above nil. The exhaust temperature solves
    h(T, w) − h(Tx, min(w, w_sat(Tx))) = exchanged/air; the water is air (w − w_sat(Tx)). Where the exchanger warms the
    extract air (summer), nothing drips.
    """
    held = moist.enthalpy(temp, humidity_ratio=vapour)
    leaving = moist.temperature_at_enthalpy(
        held - np.asarray(exchanged) / np.asarray(air), humidity_ratio=vapour, pressure=pressure
    )
    left = np.minimum(vapour, moist.saturation_humidity_ratio(leaving, pressure=pressure))
    return Dripping(water=np.asarray(air) * (np.asarray(vapour) - left), leaving=leaving, vapour=left)
