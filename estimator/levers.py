"""What would it take for an option to pay back in so many years, one lever at a time?

Each lever is moved alone, over what is plausible for it, on the full year and with all else at its best guess.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from estimator.climate.year import ClimateYear
from estimator.drawn import Difference, difference
from estimator.draws import outcomes_with
from estimator.inputs.case import Case
from estimator.inputs.catalogue import is_electric
from estimator.inputs.places import value_at
from estimator.leak_range import house_q50, with_q50
from estimator.survey.fill import filled
from estimator.sweep import root
from estimator.units import Array

LONGEST = 60.0  # years, as long as a life may be entered
POINTS = 25

Target = Callable[[Difference], Array]
"""How far the figures are beyond what is wanted; nil where they are just that."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lever:
    """Something to move: the paths it is entered at, and from where to where it is plausible."""

    name: str
    words: str
    unit: str
    paths: tuple[str, ...]
    low: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Needed:
    """What one lever would have to be. No values: nothing plausible of this alone would do, or nothing need change."""

    name: str
    words: str
    unit: str
    now: float
    values: tuple[float, ...]
    holds_now: bool
    low: float
    high: float


def levers(case: Case, *, option: str) -> tuple[Lever, ...]:
    """The levers of an option in a filled case, cost and life apart."""
    electric = is_electric(case.heating.fuel)
    # Where the heating is electric, both prices are one.
    power = ("prices.electricity", "prices.fuel") if electric else ("prices.electricity",)
    unit = f"options.{option}.unit."
    found: list[tuple[str, str, str, tuple[str, ...], float, float]] = []
    if not electric:
        found.append(("price of heat", "price of the heating fuel", "p/kWh", ("prices.fuel",), 0.5, 80.0))
    if case.prices.tariff.kind == "flat":
        found.append(("price of electricity", "price of electricity", "p/kWh", power, 0.5, 120.0))
    else:
        level = ("prices.tariff.level",)
        found.append(("price of electricity", "prices of the electricity tariff", "% of today's", level, 5.0, 500.0))
    found += [
        ("leakage", "leakage", "m³/(h m²) at 50 Pa", ("leakage.value",), 0.3, 20.0),
        ("fan power", "fan power", "W/(l/s)", (f"{unit}fan_power",), 0.1, 3.0),
    ]
    if value_at(case, f"{unit}effectiveness") > 0.0:
        found.append(("efficiency", "certified heat recovery", "%", (f"{unit}effectiveness",), 30.0, 97.0))
    return tuple(
        Lever(name=name, words=words, unit=unit_, paths=paths, low=low, high=high)
        for name, words, unit_, paths, low, high in found
    )


def what_would_it_take(
    case: Case, year: ClimateYear, *, option: str, baseline: str, years: float
) -> tuple[Needed, ...]:
    """For every lever, the value at which simple payback equals `years`, or that there is none."""

    def margin(figures: Difference) -> Array:
        return figures.net_saving * years - np.maximum(figures.net_capital, 0.0)

    whole = _by_q50(case)
    now = _at(whole, year, option=option, baseline=baseline, values={})
    return (
        *moved(whole, year, option=option, baseline=baseline, target=margin),
        cost_needed(now, years=years, currency=whole.prices.currency),
        life_needed(now, now_years=whole.worth.life),
    )


def moved(case: Case, year: ClimateYear, *, option: str, baseline: str, target: Target) -> tuple[Needed, ...]:
    """For every lever but cost and life, the values at which a target is just met."""
    whole = _by_q50(case)
    now = _at(whole, year, option=option, baseline=baseline, values={})
    found = []
    for lever in levers(whole, option=option):

        def beyond(value: Any, lever: Lever = lever) -> Array:
            column = np.atleast_1d(np.asarray(value, dtype=float))
            values = dict.fromkeys(lever.paths, column)
            return target(_at(whole, year, option=option, baseline=baseline, values=values))

        scan = np.geomspace(lever.low, lever.high, POINTS)
        found.append(
            Needed(
                name=lever.name,
                words=lever.words,
                unit=lever.unit,
                now=float(value_at(whole, lever.paths[0])),
                values=_crossings(beyond, scan),
                holds_now=bool(target(now)[0] >= 0.0),
                low=lever.low,
                high=lever.high,
            )
        )
    return tuple(found)


def cost_needed(now: Difference, *, years: float, currency: str) -> Needed:
    """The extra cost over the baseline that `years` of saving return; none where nothing is saved."""
    saving, capital = float(now.net_saving[0]), float(now.net_capital[0])
    return Needed(
        name="cost",
        words="cost beyond that of the baseline",
        unit=currency,
        now=capital,
        values=(saving * years,) if saving > 0.0 else (),
        holds_now=saving > 0.0 and capital <= saving * years,
        low=0.0,
        high=max(capital, 0.0),
    )


def life_needed(now: Difference, *, now_years: float) -> Needed:
    """The life that the kit must reach to pay back within it, whatever the years asked for."""
    payback = float(now.payback[0])
    return Needed(
        name="life",
        words="life of the kit",
        unit="years",
        now=now_years,
        values=(payback,) if payback <= LONGEST else (),
        holds_now=payback <= now_years,
        low=1.0,
        high=LONGEST,
    )


def best_guess(case: Case, year: ClimateYear, *, option: str, baseline: str) -> Difference:
    """The difference at the best guess, arrays (1,), on the full year."""
    return _at(_by_q50(case), year, option=option, baseline=baseline, values={})


def _by_q50(case: Case) -> Case:
    whole = filled(case).case
    return filled(with_q50(whole, house_q50(whole))).case


def _at(case: Case, year: ClimateYear, *, option: str, baseline: str, values: Mapping[str, Array]) -> Difference:
    found = outcomes_with(case, year, values, names=(option, baseline))
    return difference(found[option], baseline=found[baseline])


def _crossings(beyond: Callable[[Any], Array], scan: Array) -> tuple[float, ...]:
    known = beyond(scan)
    changes = np.flatnonzero((known[1:] > 0.0) != (known[:-1] > 0.0))
    return tuple(
        root(
            lambda value: float(beyond(value)[0]),
            low=float(scan[place]),
            high=float(scan[place + 1]),
            at_low=float(known[place]),
            at_high=float(known[place + 1]),
        )
        for place in changes
    )
