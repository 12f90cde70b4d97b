"""How sure is the answer, and what should be measured first?

Nothing here is a chance promised: it is what came out in so many cases tried with the ranges given.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

import numpy as np

from estimator.climate.year import ClimateYear
from estimator.drawn import Difference, some_cases
from estimator.draws import ground
from estimator.inputs.case import Case
from estimator.sample import HIGH, LOW, MANY, Sample, sample
from estimator.survey.ranges import Range
from estimator.units import Array


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """What comes out below which a tenth, a half and nine tenths of the cases lie; each is the value of a case."""

    low: float
    middle: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockError:
    """By how much the shortened year errs at most in the cases that took the full year as well."""

    hours_per_block: float
    cases: int
    heat_saved: float  # kWh
    net_saving: float  # money
    carbon_saving: float  # kg


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Swing:
    """What comes out where one input alone lies where a tenth of the cases lie below, and where a tenth lie above."""

    input: Range
    saving_at_low: float
    saving_at_high: float
    carbon_at_low: float
    carbon_at_high: float
    payback_at_low: float
    payback_at_high: float

    @property
    def width(self) -> float:
        """By how much the net saving swings [money a year]."""
        return abs(self.saving_at_high - self.saving_at_low)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Knowing:
    """What it would bring to know one input."""

    input: Range
    narrowing: float  # share of the spread (standard deviation) of the net saving that would go, 0 to 1
    changes: float  # in how many of 100 cases the verdict would be another one


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Sure:
    """An option against a baseline over all cases tried. Money, kWh and kg a year; years."""

    option: str
    baseline: str
    count: int
    start: int
    years: float  # the verdict: does it pay back within so many
    best: Difference  # the best guess, arrays (1,), on the shortened year
    cases: Difference
    net_saving: Spread
    heat_saved: Spread
    carbon_saving: Spread
    payback: Spread
    efficiency: Spread
    net_present_value: Spread  # money, all years and renewals counted
    discounted_payback: Spread  # years
    error: BlockError
    swings: tuple[Swing, ...]  # widest first
    knowing: tuple[Knowing, ...]  # what changes most verdicts first, then what narrows most

    def paid_back(self, years: float) -> float:
        """Share of the cases, 0 to 1, that pay back within so many years."""
        return float(np.mean(self.cases.payback <= years))


def sure(
    case: Case,
    year: ClimateYear,
    *,
    option: str,
    baseline: str,
    count: int = MANY,
    start: int = 1,
    years: float | None = None,
    widening: float = 1.0,
) -> Sure:
    """How sure an option is against a baseline.

    years: to pay back in, the life of the kit unless said otherwise; start: of the random numbers, the same ones every
    time; widening: all ranges wider by this together.
    """
    drawn = sample(ground(case, year), names=(option, baseline), count=count, start=start, widening=widening)
    return sure_of(drawn, option=option, baseline=baseline, years=years)


def sure_of(drawn: Sample, *, option: str, baseline: str, years: float | None = None) -> Sure:
    """As `sure`, of a sample drawn before: one sample serves every option and every baseline in it."""
    term = drawn.place.case.worth.life if years is None else years
    cases = drawn.drawn(option, baseline=baseline)
    best, swings = _swings(drawn, option=option, baseline=baseline)
    return Sure(
        option=option,
        baseline=baseline,
        count=drawn.where.shape[0],
        start=drawn.start,
        years=term,
        best=best,
        cases=cases,
        net_saving=spread(cases.net_saving),
        heat_saved=spread(cases.heat_saved),
        carbon_saving=spread(cases.carbon_saving),
        payback=spread(cases.payback),
        efficiency=spread(cases.efficiency),
        net_present_value=spread(cases.plan.net_present_value),
        discounted_payback=spread(cases.plan.discounted_payback),
        error=_block_error(drawn, option=option, baseline=baseline),
        swings=swings,
        knowing=_knowing(drawn.place.inputs, drawn.where, cases, years=term),
    )


def spread(values: Array) -> Spread:
    """The 10-50-90% of a sample; "never" is infinite and sorts last."""
    ordered = np.sort(values)

    def below(share: float) -> float:
        return float(ordered[ceil(share * ordered.size) - 1])

    return Spread(low=below(LOW), middle=below(0.5), high=below(HIGH))


def _swings(drawn: Sample, *, option: str, baseline: str) -> tuple[Difference, tuple[Swing, ...]]:
    found, inputs = drawn.one_at_a_time(option, baseline=baseline), len(drawn.place.inputs)
    swings = [
        Swing(
            input=item,
            saving_at_low=float(found.net_saving[1 + number]),
            saving_at_high=float(found.net_saving[1 + inputs + number]),
            carbon_at_low=float(found.carbon_saving[1 + number]),
            carbon_at_high=float(found.carbon_saving[1 + inputs + number]),
            payback_at_low=float(found.payback[1 + number]),
            payback_at_high=float(found.payback[1 + inputs + number]),
        )
        for number, item in enumerate(drawn.place.inputs)
    ]
    return some_cases(found, slice(1)), tuple(sorted(swings, key=lambda swing: -swing.width))


def _block_error(drawn: Sample, *, option: str, baseline: str) -> BlockError:
    short, full = drawn.block_errors(option, baseline=baseline)
    return BlockError(
        hours_per_block=drawn.place.blocks.weight,
        cases=full.net_saving.size,
        heat_saved=float(np.max(np.abs(short.heat_saved - full.heat_saved))),
        net_saving=float(np.max(np.abs(short.net_saving - full.net_saving))),
        carbon_saving=float(np.max(np.abs(short.carbon_saving - full.carbon_saving))),
    )


def _knowing(inputs: tuple[Range, ...], where: Array, cases: Difference, *, years: float) -> tuple[Knowing, ...]:
    """For each input: what is left of the range, and what the verdict would be, were its place known."""
    margin = cases.net_saving * years - np.maximum(cases.net_capital, 0.0)
    now = np.median(margin) > 0.0
    whole = float(np.std(cases.net_saving))
    found = []
    for number, item in enumerate(inputs):
        told = _told(where[:, number], cases.net_saving)
        expected = _told(where[:, number], margin)
        then = expected + np.median(margin - expected) > 0.0
        narrowing = 1.0 - float(np.std(cases.net_saving - told)) / whole if whole > 0.0 else 0.0
        found.append(Knowing(input=item, narrowing=narrowing, changes=100.0 * float(np.mean(then != now))))
    return tuple(sorted(found, key=lambda each: (-round(each.changes), -each.narrowing)))


def _told(where: Array, values: Array) -> Array:
    """What one input alone tells of a figure: a smooth curve through the cases, with a bend at the best guess."""
    below, above = np.minimum(where, 0.0), np.maximum(where, 0.0)
    terms = np.column_stack((np.ones_like(where), below, above, below**2, above**2))
    fitted, *_ = np.linalg.lstsq(terms, values, rcond=None)
    return np.asarray(terms @ fitted)
