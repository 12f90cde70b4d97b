"""How much heat must the heating supply, when the house remembers the hours before?

The net load (loss minus gains) passes a first-order memory before its positive part counts: mass carries gains and cold
over hours to days.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.heat.memory import remembered, remembered_woven
from estimator.units import Array, Numeric

# Memory [h] = MASS_SHARE × heat capacity / loss coefficient + AIR_MEMORY. Fitted against the simple hourly method of
# ISO 13790:2008 on four real years; the tests hold the saved heat against that method anew.
MASS_SHARE = 0.33
AIR_MEMORY = 2.0  # h


def time_constant(heat_capacity: Numeric, loss_coefficient: Numeric) -> Any:
    """Memory of the house [h] from heat capacity [Wh/K] and whole heat loss coefficient [W/K]."""
    return MASS_SHARE * np.asarray(heat_capacity) / np.asarray(loss_coefficient) + AIR_MEMORY


def heat_with_memory(net_load: Array, *, memory: Numeric, step: float) -> Array:
    """Heat to be supplied in each row [W] from the net load [W], (…, rows): the positive part of what is remembered."""
    return np.maximum(remembered(net_load, memory=memory, step=step), 0.0)


def yearly_heat_with_memory(woven_load: Array, *, memory: Numeric, step: float) -> Any:
    """Heat to be supplied over the year [Wh], (…, 1), from the net load [W] of woven rows, which is used up."""
    felt = remembered_woven(woven_load, memory=memory, step=step)
    return np.sum(np.maximum(felt, 0.0, out=felt), axis=-1, keepdims=True) * step


def heat_at_fixed_base(
    ventilation_load: Array, temp_out: Array, *, temp_in: Numeric, fabric: Numeric, base: Numeric
) -> Array:
    """Heat to be supplied in each row [W] by degree-hours below a fixed base temperature [°C], without memory.

    The loss of every kelvin, fabric [W/K] and air together, counts over the degrees below the base. ventilation_load
    [W] at the full difference temp_in − temp_out. The base lies at or below temp_in.
    """
    degrees = np.maximum(np.asarray(base) - temp_out, 0.0)
    difference = np.where(degrees > 0.0, temp_in - temp_out, 1.0)
    return np.asarray((np.asarray(fabric) + ventilation_load / difference) * degrees)


def cold_rows(temp_difference: Array) -> Any:
    """Weight of each row [1/K], (…, rows), in the loss per kelvin: rows in which it is colder outside than inside.

    Alike in all of them and nil in the others, so that the weighted sum of the difference itself is one.
    """
    cold = np.asarray(temp_difference > 0.0, dtype=np.result_type(temp_difference, np.float32))
    degrees = np.einsum("...t,...t->...", temp_difference, cold)[..., None]
    return cold * np.divide(1.0, degrees, out=np.zeros_like(degrees), where=degrees > 0.0)


def loss_coefficient(loss: Array, cold: Array) -> Any:
    """Heat loss per kelvin [W/K], (…, 1), from the loss in each row [W] and the weights of `cold_rows`."""
    return np.einsum("...t,...t->...", loss, cold)[..., None]


def balance_temperature(temp_in: Numeric, *, mean_gain: Numeric, loss_per_kelvin: Numeric) -> Any:
    """Outdoor temperature [°C] below which the house needs heat: gains [W] carry the rest of the difference."""
    return np.asarray(temp_in) - np.asarray(mean_gain) / np.asarray(loss_per_kelvin)
