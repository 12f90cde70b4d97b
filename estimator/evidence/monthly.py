"""How much heat does a home need by the monthly method of ISO 13790:2008?

The balance of each month by itself: what leaves, less the share of the gains that is of use (clauses 7.2.1 and 12.2).
Written apart from the estimate, as a second reference for it: it knows no hours, and gets the mean of each month.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.units import HOURS_PER_DAY, MONTH_DAYS, Array, Numeric, to_kwh

# Table 9, monthly method, dwellings heated all day: exponent 1 + time constant / 15 h.
LEAST_EXPONENT = 1.0
REFERENCE_HOURS = 15.0
_DAY_ENDS = np.cumsum(MONTH_DAYS)[:-1]


def exponent(time_constant: Numeric, *, least: float = LEAST_EXPONENT, reference: float = REFERENCE_HOURS) -> Any:
    """How sharply gains turn useless as they outgrow the loss; time constant [h] of the house (equation 54).

    least, reference [h]: 1 and 15 for months, 0.8 and 30 for whole seasons.
    """
    return least + np.asarray(time_constant) / reference


def gain_utilisation(ratio: Numeric, *, exponent: Numeric) -> Any:
    """Share of the gains that is of use (equations 50 and 51); ratio: gains over loss, above nil."""
    ratio, power = np.asarray(ratio, dtype=float), np.asarray(exponent, dtype=float)
    even = np.isclose(ratio, 1.0)
    apart = np.where(even, 0.5, ratio)
    return np.where(even, power / (power + 1.0), (1.0 - apart**power) / (1.0 - apart ** (power + 1.0)))


def heat_needed(*, loss: Numeric, gains: Numeric, exponent: Numeric) -> Any:
    """What the heating must supply in a period, in the unit of loss and gains; none where nothing is lost."""
    loss, gains = np.asarray(loss, dtype=float), np.asarray(gains, dtype=float)
    lost = loss > 0.0
    ratio = np.divide(gains, loss, out=np.ones(np.broadcast(loss, gains).shape), where=lost)
    return np.where(lost, loss - gain_utilisation(ratio, exponent=exponent) * gains, 0.0)


def monthly_means(hourly: Array) -> Array:
    """Twelve means of hourly values, (…, 8760) to (…, 12)."""
    days = np.asarray(hourly).reshape(*np.shape(hourly)[:-1], -1, int(HOURS_PER_DAY))
    return np.stack([month.mean(axis=(-2, -1)) for month in np.split(days, _DAY_ENDS, axis=-2)], axis=-1)


def heating_need(
    *, temp_difference: Array, fabric: Numeric, ventilation: Array, gains: Array, heat_capacity: Numeric
) -> Array:
    """Need of the year [kWh], shape (homes,), from hourly arrays of which the months' means are taken.

    temp_difference: indoors less outdoors [K]; fabric, ventilation [W/K]; gains [W]; heat_capacity [Wh/K].
    """
    per_kelvin = np.asarray(fabric) + monthly_means(ventilation)
    hours = HOURS_PER_DAY * np.array(MONTH_DAYS)
    need = heat_needed(
        loss=per_kelvin * monthly_means(temp_difference) * hours,
        gains=monthly_means(gains) * hours,
        exponent=exponent(np.asarray(heat_capacity) / per_kelvin),
    )
    return np.asarray(to_kwh(need.sum(axis=-1)))
