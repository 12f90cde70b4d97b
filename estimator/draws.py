"""What does every option take and cost if the uncertain inputs lie elsewhere within their ranges?

Cases stand as homes on the first axis and take the very corridor of the estimate, on a year shortened to blocks of
consecutive hours. One case serves all options alike: the same house, winter, prices and care.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any

import numpy as np

from estimator.bills import bills
from estimator.climate.shorten import shortened
from estimator.climate.year import ClimateYear
from estimator.corridor import air_year, heat_year, home_year
from estimator.costs import option_capital, option_upkeep
from estimator.inputs.case import Case
from estimator.inputs.places import value_at, with_values
from estimator.leak_range import leakage_span
from estimator.money import worth
from estimator.plan import Plan, Yearly, plan, terms, yearly
from estimator.supply import needs_rows, supply
from estimator.survey.fill import filled
from estimator.survey.numbers import home_numbers, option_numbers
from estimator.survey.ranges import WEATHER, Range, ranges
from estimator.units import Array

HOURS_PER_BLOCK = 6
# Rows of all homes handled at once: what fits the second level of a processor's cache.
_ROWS_AT_ONCE = 48_000
# How a drawn figure moves the weather: what leaves it as it is, and what it does to the hours.
_WEATHER: Mapping[str, tuple[float, Callable[[Any, Any], Any]]] = MappingProxyType(
    {"weather.temp_air": (0.0, np.add), "weather.wind_speed": (1.0, np.multiply)}
)


_BY_YEAR = ("later", "embodied", "grid_factor")


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Ground:
    """A filled case, its weather in full and in blocks, and the ranges of its inputs."""

    case: Case
    year: ClimateYear
    blocks: ClimateYear
    inputs: tuple[Range, ...]
    bill_of_hours: Mapping[str, float] = field(default_factory=dict)
    """Of each option at the best guess, the bill by hours over that by blocks; none where the hour does not matter."""


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
    yearly: Yearly  # the same year as the years after it are counted from


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Difference:
    """An option against a baseline in n cases: arrays (n,); every saving is baseline minus option."""

    heat_saved: Array  # kWh
    net_saving: Array  # money a year, upkeep counted
    carbon_saving: Array  # kg
    net_capital: Array  # money
    payback: Array  # years, infinite where nothing is saved
    efficiency: Array  # of the option, 0 to 1
    plan: Plan  # over the years, (n, years + 1)


def ground(case: Case, year: ClimateYear, *, hours_per_block: int = HOURS_PER_BLOCK) -> Ground:
    """The case surveyed once, its ranges found once, and the year shortened once.

    Where the bill depends on the hour, blocks blur it, and much alike in all cases: so the best guess is worked out by
    hours too, and every bill by blocks is corrected by what it finds. Left of the error of net saving is at most 2.9
    money a year in 640 cases of eight kinds of tariff, roof and heat pump on two years, 8.3 without the correction.
    """
    survey, span = filled(case), leakage_span(case)
    place = Ground(
        case=survey.case,
        year=year,
        blocks=shortened(year, hours_per_block=hours_per_block),
        inputs=ranges(survey, leakage=(span.low / span.middle, span.high / span.middle)),
    )
    if not needs_rows(survey.case):
        return place
    best = np.zeros((1, len(place.inputs)))
    blurred, full = outcomes(place, best), outcomes(place, best, full_year=True)
    known = {name: (float(full[name].bill[0]), float(found.bill[0])) for name, found in blurred.items()}
    return dataclasses.replace(
        place, bill_of_hours={name: hours / blocks for name, (hours, blocks) in known.items() if blocks > 0.0}
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
    found = _in_pieces(place.case, year, where.shape[0], names, lambda part: _moved(place, where[part]), place.year)
    if full_year:
        return found
    return {name: _corrected(each, place.bill_of_hours.get(name, 1.0)) for name, each in found.items()}


def _corrected(found: Outcome, factor: float) -> Outcome:
    """An outcome with its bill, and the bill of later years with it, brought from blocks to hours."""
    if factor == 1.0:
        return found
    more = found.bill * (factor - 1.0)
    later = dataclasses.replace(found.yearly, electricity_bill=found.yearly.electricity_bill + more)
    return dataclasses.replace(found, bill=found.bill + more, yearly=later)


def outcomes_with(
    case: Case, year: ClimateYear, values: Mapping[str, Array], *, names: Iterable[str] | None = None
) -> dict[str, Outcome]:
    """The options named of a filled case with n values, (n,), at each of the dotted paths given; once without any."""
    count = max((len(column) for column in values.values()), default=1)
    # Leakage stands as a column whatever moves, so that every flow is one of n homes.
    columns = {"leakage.value": np.full(count, value_at(case, "leakage.value")), **values}
    return _in_pieces(
        case, year, count, names, lambda part: {path: column[part][:, None] for path, column in columns.items()}, year
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
        plan=plan(option.yearly, baseline=baseline.yearly),
    )


def some_cases(figures: Any, part: slice) -> Any:
    """Some of the cases of a noun of arrays with cases on the first axis."""
    if isinstance(figures, np.ndarray):
        return figures[part]
    if not dataclasses.is_dataclass(figures) or isinstance(figures, type):
        return figures
    names = [item.name for item in dataclasses.fields(figures)]
    return dataclasses.replace(figures, **{name: some_cases(getattr(figures, name), part) for name in names})


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
    hourly: ClimateYear,
) -> dict[str, Outcome]:
    wanted = tuple(case.options) if names is None else tuple(dict.fromkeys(names))
    size = max(1, _ROWS_AT_ONCE // year.rows)
    pieces: dict[str, list[Outcome]] = {name: [] for name in wanted}
    for first in range(0, count, size):
        part = slice(first, min(first + size, count))
        for name, piece in _piece(case, year, wanted, moved(part), part.stop - first, hourly).items():
            pieces[name].append(piece)
    return {name: joined(found) for name, found in pieces.items()}


def joined(pieces: Sequence[Any]) -> Any:
    """Nouns of the same kind, each of some cases, as one of all of them; what is no array is the same in all."""
    first = pieces[0]
    if isinstance(first, np.ndarray):
        return np.concatenate(pieces)
    if not dataclasses.is_dataclass(first) or isinstance(first, type):
        return first
    names = [item.name for item in dataclasses.fields(first)]
    return dataclasses.replace(first, **{name: joined([getattr(piece, name) for piece in pieces]) for name in names})


def _each(noun: Any, count: int) -> Any:
    """A noun with every figure once for each of `count` cases; what goes by years keeps them on its last axis."""
    found = {}
    for item in dataclasses.fields(noun):
        value = getattr(noun, item.name)
        if dataclasses.is_dataclass(value):
            value = _each(value, count)
        elif isinstance(value, np.ndarray):
            value = np.broadcast_to(value, (count, value.shape[-1]) if item.name in _BY_YEAR else (count,))
        found[item.name] = value
    return dataclasses.replace(noun, **found)


def _piece(
    case: Case,
    year: ClimateYear,
    wanted: tuple[str, ...],
    moved: Mapping[str, Any],
    count: int,
    hourly: ClimateYear,
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
    bought, on = supply(here, year, hourly=hourly), terms(here)
    found = {}
    for name in wanted:
        option = here.options[name]
        numbers = option_numbers(option)
        air = air_year(home, numbers, shared, top_up=home.top_up and name != case.today)
        heat = heat_year(home, numbers, shared, air, step=year.weight)
        first = bills(bought, heat=heat.heat, fans=air.fans, preheater=air.preheater)
        found[name] = Outcome(
            heat=_column(first.useful_heat, count),
            electricity=_column(first.fans + first.frost, count),
            bill=_column(first.heat_bill + first.ventilation_bill, count),
            carbon=_column(first.heat_carbon + first.ventilation_carbon, count),
            capital=_column(option_capital(option.cost), count),
            upkeep=_column(option_upkeep(option.cost), count),
            efficiency=_column(heat.effective_efficiency, count),
            yearly=_each(yearly(option.cost, first, on=on, standing=name == case.today), count),
        )
    return found


def _column(figure: Any, count: int) -> Array:
    return np.broadcast_to(figure, (count, 1))[:, 0].copy()
