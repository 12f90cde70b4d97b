"""What does every option take and cost if the uncertain inputs lie elsewhere within their ranges?

Cases stand as homes on the first axis and take the very corridor of the estimate, on a year shortened to blocks of
consecutive hours. One case serves all options alike: the same house, winter, prices and care.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any

import numpy as np

from estimator.climate.shorten import shortened
from estimator.climate.year import ClimateYear
from estimator.corridor import air_year, heat_year, home_year
from estimator.inputs.case import Case
from estimator.inputs.cost import Cost
from estimator.inputs.places import value_at, with_values
from estimator.leak_range import leakage_span
from estimator.money import carbon, energy, worth
from estimator.survey.fill import filled
from estimator.survey.numbers import home_numbers, option_numbers
from estimator.survey.ranges import WEATHER, Range, ranges
from estimator.units import HOURS_PER_YEAR, Array, from_hundredths, from_percent, to_kwh

HOURS_PER_BLOCK = 6
# Rows of all homes handled at once: what fits the second level of a processor's cache.
_ROWS_AT_ONCE = 48_000
# How a drawn figure moves the weather: what leaves it as it is, and what it does to the hours.
_WEATHER: Mapping[str, tuple[float, Callable[[Any, Any], Any]]] = MappingProxyType(
    {"weather.temp_air": (0.0, np.add), "weather.wind_speed": (1.0, np.multiply)}
)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Ground:
    """A filled case, its weather in full and in blocks, and the ranges of its inputs."""

    case: Case
    year: ClimateYear
    blocks: ClimateYear
    inputs: tuple[Range, ...]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Outcome:
    """One option in n cases: arrays (n,). kWh, money and kg a year; efficiency 0 to 1."""

    heat: Array
    electricity: Array
    bill: Array  # heat and ventilation; standing charges and other uses are the same for every option
    carbon: Array
    capital: Array
    upkeep: Array
    efficiency: Array  # heat recovered less pre-heater, over the heat of the balanced flow, in hours with heat


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Difference:
    """An option against a baseline in n cases: arrays (n,); every saving is baseline minus option."""

    heat_saved: Array  # kWh
    net_saving: Array  # money a year, upkeep counted
    carbon_saving: Array  # kg
    net_capital: Array  # money
    payback: Array  # years, infinite where nothing is saved
    efficiency: Array  # of the option, 0 to 1


def ground(case: Case, year: ClimateYear, *, hours_per_block: int = HOURS_PER_BLOCK) -> Ground:
    """The case surveyed once, its ranges found once, and the year shortened once."""
    survey, span = filled(case), leakage_span(case)
    return Ground(
        case=survey.case,
        year=year,
        blocks=shortened(year, hours_per_block=hours_per_block),
        inputs=ranges(survey, leakage=(span.low / span.middle, span.high / span.middle)),
    )


def places(inputs: int, *, count: int, start: int) -> Array:
    """Where each input stands in each case, (count, inputs), from -1 (lowest) over 0 (best guess) to 1 (highest).

    Latin hypercube: every input is spread evenly over its own likelihood; `start` sets the random numbers going, the
    same ones every time. Half of the cases lie on either side of the best guess, their density falling straight to nil
    at the end.
    """
    from scipy.stats import qmc  # half a second to import, and only sampling needs it

    return place_of_rank(np.asarray(qmc.LatinHypercube(d=inputs, rng=start).random(count)))


def place_of_rank(rank: Any) -> Array:
    """Place from -1 to 1 below which a share `rank` (0 to 1) of all cases lies; 0 at one half."""
    away = 2.0 * np.asarray(rank, dtype=float) - 1.0
    return np.asarray(np.sign(away) * (1.0 - np.sqrt(1.0 - np.abs(away))))


def outcomes(
    place: Ground, where: Array, *, names: Iterable[str] | None = None, full_year: bool = False
) -> dict[str, Outcome]:
    """The options named (all of them otherwise) in the cases `where`, places (n, inputs) as `places` gives them."""
    year = place.year if full_year else place.blocks
    return _in_pieces(place.case, year, where.shape[0], names, lambda part: _moved(place, where[part]))


def outcomes_with(
    case: Case, year: ClimateYear, values: Mapping[str, Array], *, names: Iterable[str] | None = None
) -> dict[str, Outcome]:
    """The options named of a filled case with n values, (n,), at each of the dotted paths given; once without any."""
    count = max((len(column) for column in values.values()), default=1)
    # Leakage stands as a column whatever moves, so that every flow is one of n homes.
    columns = {"leakage.value": np.full(count, value_at(case, "leakage.value")), **values}
    return _in_pieces(
        case, year, count, names, lambda part: {path: column[part][:, None] for path, column in columns.items()}
    )


def difference(option: Outcome, *, baseline: Outcome) -> Difference:
    """One option against one baseline, case by case."""
    net_saving = baseline.bill - option.bill - (option.upkeep - baseline.upkeep)
    net_capital = option.capital - baseline.capital
    return Difference(
        heat_saved=baseline.heat - option.heat,
        net_saving=net_saving,
        carbon_saving=baseline.carbon - option.carbon,
        net_capital=net_capital,
        payback=np.asarray(worth.simple_payback(net_capital, net_saving=net_saving)),
        efficiency=option.efficiency,
    )


def _moved(place: Ground, where: Array) -> dict[str, Any]:
    """Every drawn entry as a column (n, 1); where several inputs move one entry, each moves what the last one left."""
    moved: dict[str, Any] = {}
    for number, item in enumerate(place.inputs):
        column = where[:, number, None]
        for path in item.ends:
            if path not in moved:
                moved[path] = _WEATHER[path][0] if path in _WEATHER else value_at(place.case, path)
            moved[path] = item.drawn(path, moved[path], column)
    return moved


def _in_pieces(
    case: Case,
    year: ClimateYear,
    count: int,
    names: Iterable[str] | None,
    moved: Callable[[slice], Mapping[str, Any]],
) -> dict[str, Outcome]:
    wanted = tuple(case.options) if names is None else tuple(dict.fromkeys(names))
    size = max(1, _ROWS_AT_ONCE // year.rows)
    pieces: dict[str, list[Outcome]] = {name: [] for name in wanted}
    for first in range(0, count, size):
        part = slice(first, min(first + size, count))
        for name, piece in _piece(case, year, wanted, moved(part), part.stop - first).items():
            pieces[name].append(piece)
    fields = [item.name for item in dataclasses.fields(Outcome)]
    return {
        name: Outcome(**{each: np.concatenate([getattr(piece, each) for piece in found]) for each in fields})
        for name, found in pieces.items()
    }


def _piece(
    case: Case, year: ClimateYear, wanted: tuple[str, ...], moved: Mapping[str, Any], count: int
) -> dict[str, Outcome]:
    entries = {path: value for path, value in moved.items() if path not in _WEATHER}
    weather = {
        path.removeprefix(WEATHER): join(getattr(year, path.removeprefix(WEATHER)), moved[path])
        for path, (_, join) in _WEATHER.items()
        if path in moved
    }
    here, year = with_values(case, entries), dataclasses.replace(year, **weather)
    home = home_numbers(here)
    shared = home_year(home, year)
    found = {}
    for name in wanted:
        option = here.options[name]
        numbers = option_numbers(option)
        air = air_year(home, numbers, shared, top_up=home.top_up and name != case.today)
        heat = heat_year(home, numbers, shared, air, step=year.weight)
        useful = to_kwh(np.sum(heat.heat, axis=-1, keepdims=True) * year.weight)
        frost = to_kwh(np.sum(air.preheater, axis=-1, keepdims=True) * year.weight)
        figures = {
            "heat": useful,
            "electricity": to_kwh(air.fans * HOURS_PER_YEAR) + frost,
            "efficiency": heat.effective_efficiency,
            "capital": _capital(option.cost),
            "upkeep": worth.upkeep(
                filter_sets=_known(option.cost.filter_sets),
                filter_price=_known(option.cost.filter_price),
                service=_known(option.cost.service),
            ),
        }
        figures |= _bill_and_carbon(here, useful, figures["electricity"])
        found[name] = Outcome(
            **{each: np.broadcast_to(value, (count, 1))[:, 0].copy() for each, value in figures.items()}
        )
    return found


def _bill_and_carbon(case: Case, useful: Any, electricity: Any) -> dict[str, Any]:
    prices = case.prices
    fuel = energy.fuel_energy(useful, efficiency=from_percent(_known(case.heating.efficiency)))
    return {
        "bill": fuel * from_hundredths(_known(prices.fuel)) + electricity * from_hundredths(_known(prices.electricity)),
        "carbon": carbon.emission(fuel, factor=_known(prices.fuel_carbon))
        + carbon.emission(electricity, factor=_known(prices.electricity_carbon)),
    }


def _capital(cost: Cost) -> Any:
    parts: Any = 0.0
    for part in (cost.kit, cost.ducts, cost.electrical, cost.commissioning, cost.making_good):
        parts = parts + _known(part)
    return worth.capital(
        parts=parts,
        people=_known(cost.people),
        days=_known(cost.days),
        day_rate=_known(cost.day_rate),
        vat_percent=_known(cost.vat),
        grant=_known(cost.grant),
    )


def _known(value: Any) -> Any:
    if value is None:
        raise ValueError("an entry was left open: only a filled case can be drawn")
    return value
