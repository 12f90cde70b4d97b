"""How far does an option's saving reach: at a first look, and over all cases tried?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from estimator.drawn import difference
from estimator.draws import Ground, outcomes
from estimator.sample import FEW, MANY, Outcomes
from estimator.sure import Spread, spread
from estimator.tries import places


@dataclass(frozen=True, slots=True, kw_only=True)
class Reach:
    """An option against a baseline over so many cases: money and kg a year, and the share that pays back in time."""

    count: int
    net_saving: Spread
    carbon_saving: Spread
    paid_back: float  # share of the cases, 0 to 1
    years: float  # within which they pay back


def first_look(place: Ground) -> Outcomes:
    """Every option in `FEW` cases of the shortened year: what there is time for while somebody types."""
    return outcomes(place, places(len(place.inputs), count=FEW, start=1))


def full_look(place: Ground) -> Outcomes:
    """Every option in all cases of a sample, and nothing of it but these: what a printed range takes."""
    return outcomes(place, places(len(place.inputs), count=MANY, start=1))


def reach(found: Outcomes, *, option: str, baseline: str, years: float) -> Reach:
    """How far an option reaches against a baseline in outcomes of the same cases."""
    cases = difference(found[option], baseline=found[baseline])
    return Reach(
        count=cases.net_saving.size,
        net_saving=spread(cases.net_saving),
        carbon_saving=spread(cases.carbon_saving),
        paid_back=float(np.mean(cases.payback <= years)),
        years=years,
    )
