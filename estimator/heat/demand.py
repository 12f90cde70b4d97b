"""How much heat must the heating supply, when the house remembers the hours before?

The net load (loss minus gains) passes a first-order memory before its positive part counts: mass carries gains and cold
over hours to days.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.units import Array, Numeric

# Memory [h] = MASS_SHARE × heat capacity / loss coefficient + AIR_MEMORY. Fitted against the simple hourly method of
# ISO 13790:2008 on four real years; the tests hold the saved heat against that method anew.
MASS_SHARE = 0.33
AIR_MEMORY = 2.0  # h


def time_constant(heat_capacity: Numeric, loss_coefficient: Numeric) -> Any:
    """Memory of the house [h] from heat capacity [Wh/K] and whole heat loss coefficient [W/K]."""
    return MASS_SHARE * np.asarray(heat_capacity) / np.asarray(loss_coefficient) + AIR_MEMORY


def remembered(load: Array, *, memory: Numeric, step: float) -> Array:
    """The load as the house feels it: y_t = a y_(t-1) + (1 − a) x_t, periodic over the year.

    load: any unit, (…, rows), float32 stays float32; memory [h]: a float or a column (n, 1), 0 for none; step: hours
    per row. The mean over the year is unchanged. y is the sum of (1 − a) a^k x_(t-k) over all k: with the first m terms
    known, those to 2m are the same ones m rows earlier times a^m, so that a year takes about ten rounds.
    """
    load = np.asarray(load, dtype=np.result_type(load, np.float32))
    memory_ = np.asarray(memory, dtype=load.dtype)
    keep = np.exp(np.divide(-step, memory_, out=np.full_like(memory_, -np.inf), where=memory_ > 0.0))
    felt = (1.0 - keep) * load
    rows, back = load.shape[-1], 1
    least = np.finfo(load.dtype).eps / 8.0
    # What lies far below the last digit is nil: processors take a hundred times as long over numbers next to nothing.
    while np.any(keep := np.where(keep > least, keep, np.zeros_like(keep))):
        earlier = keep * felt
        turn = back % rows
        felt[..., turn:] += earlier[..., : rows - turn]
        felt[..., :turn] += earlier[..., rows - turn :]
        keep, back = keep * keep, 2 * back
    return felt


def heat_with_memory(net_load: Array, *, memory: Numeric, step: float) -> Array:
    """Heat to be supplied in each row [W] from the net load [W], (…, rows): the positive part of what is remembered."""
    return np.maximum(remembered(net_load, memory=memory, step=step), 0.0)


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


def loss_coefficient(loss: Array, temp_difference: Array) -> Any:
    """Heat loss per kelvin [W/K], shape (…, 1), over the rows in which it is colder outside than inside."""
    cold = np.asarray(temp_difference > 0.0, dtype=np.result_type(loss, np.float32))
    difference = np.einsum("...t,...t->...", temp_difference, cold)[..., None]
    total = np.einsum("...t,...t->...", loss, cold)[..., None]
    return np.divide(total, difference, out=np.zeros(np.broadcast(total, difference).shape), where=difference > 0.0)


def balance_temperature(temp_in: Numeric, *, mean_gain: Numeric, loss_per_kelvin: Numeric) -> Any:
    """Outdoor temperature [°C] below which the house needs heat: gains [W] carry the rest of the difference."""
    return np.asarray(temp_in) - np.asarray(mean_gain) / np.asarray(loss_per_kelvin)
