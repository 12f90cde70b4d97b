"""What does every option take and cost if the uncertain inputs lie elsewhere within their ranges?

Cases stand as homes on the first axis and take the very corridor of the estimate, on a year shortened to blocks of
consecutive hours. One case serves all options alike: the same house, winter, prices and care.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any

import numpy as np

from estimator.bills import bills
from estimator.climate.shorten import shortened
from estimator.climate.year import ClimateYear
from estimator.corridor import air_year, heat_year, home_year
from estimator.costs import option_capital, option_upkeep
from estimator.drawn import Outcome, joined, of_each
from estimator.inputs.case import Case
from estimator.inputs.places import value_at, with_values
from estimator.leak_range import leakage_span
from estimator.plan import terms, yearly
from estimator.supply import needs_rows, supply
from estimator.survey.fill import filled
from estimator.survey.numbers import home_numbers, option_numbers
from estimator.survey.ranges import WEATHER, Range, ranges
from estimator.units import Array

HOURS_PER_BLOCK = 6
# Rows of all homes handled at once. Fewer are nearer to a processor's caches, but two threads then hold each other up
# in the Python between two steps of NumPy: 2,000 cases took 0.81 s with so many, 0.92 with half, 1.54 with a quarter.
_ROWS_AT_ONCE = 96_000
# The allocator of Linux hands freed memory back to the system from twice the largest block that it has seen freed, and
# getting it again for every piece took a fifth of the time of a sample. So it is shown one larger than any of ours.
_LARGE_BLOCK = 1 << 23  # bytes
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
    bill_of_hours: Mapping[str, float] = field(default_factory=dict)
    """Of each option at the best guess, the bill by hours over that by blocks; none where the hour does not matter."""


def ground(case: Case, year: ClimateYear, *, hours_per_block: int = HOURS_PER_BLOCK) -> Ground:
    """The case surveyed once, its ranges found once, and the year shortened once.

    Where the bill depends on the hour, blocks blur it, and much alike in all cases: so the best guess is worked out by
    hours too, and every bill by blocks is corrected by what it finds. Left of the error of net saving is at most 2.9
    money a year in 640 cases of eight kinds of tariff, roof and heat pump on two years, 8.3 without the correction.
    """
    survey = filled(case)
    span = leakage_span(case, survey=survey)
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
    np.empty(_LARGE_BLOCK, dtype=np.uint8)
    pieces: dict[str, list[Outcome]] = {name: [] for name in wanted}
    for first in range(0, count, size):
        part = slice(first, min(first + size, count))
        for name, piece in _piece(case, year, wanted, moved(part), part.stop - first, hourly).items():
            pieces[name].append(piece)
    return {name: joined(found) for name, found in pieces.items()}


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
            yearly=of_each(yearly(option.cost, first, on=on, standing=name == case.today), count),
        )
    return found


def _column(figure: Any, count: int) -> Array:
    return np.broadcast_to(figure, (count, 1))[:, 0].copy()
