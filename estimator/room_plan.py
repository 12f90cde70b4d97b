"""Which rooms would be fed and drawn from in this home, and by which ways, before anybody has drawn a plan?"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Mapping

from estimator.air.requirement import CONTINUOUS_HIGH_EXTRACT
from estimator.inputs.case import Case
from estimator.inputs.rooms import Rooms

# A living room takes as much of the supply air as this many bedrooms; common practice, no source.
LIVING_ROOM = 1.5
PASSAGE = "hall"
_LEAST = 0.05  # m³/h: less is rounding


def planned_rooms(case: Case, option: str) -> Rooms:
    """Rooms, flows and ways of a filled case for one option, through one hall: a proposal by rules of the trade.

    Supply air goes to bedrooms and living rooms; extract air is shared out by the high rates of the wet rooms in
    Approved Document F vol. 1 (2021). Each wet room in turn is given air from the next fed rooms, so that there are as
    few ways as can be. The case's own doors, areas and branches stay.
    """
    home, flows = case.home, case.options[option].flows
    living = max(int(home.habitable_rooms or 0) - home.bedrooms, 1)
    fed = _shared(
        float(flows.supply or 0.0),
        {**_numbered("bedroom", home.bedrooms, 1.0), **_numbered("living room", living, LIVING_ROOM)},
    )
    kitchen, bathroom, utility, toilet = CONTINUOUS_HIGH_EXTRACT
    drawn = _shared(
        float(flows.extract or 0.0),
        {
            "kitchen": kitchen,
            **_numbered("bathroom", home.bathrooms, bathroom),
            **_numbered("utility room", home.utility_rooms, utility),
            **_numbered("toilet", home.toilets, toilet),
        },
    )
    lines = {f"{start} > {PASSAGE} > {end}": flow for start, end, flow in _ways(fed, drawn)}
    return dataclasses.replace(
        case.rooms, option=option, fed=_written(fed), drawn=_written(drawn), lines=_written(lines), doors=""
    )


def _numbered(name: str, count: int, weight: float) -> dict[str, float]:
    if count == 1:
        return {name: weight}
    return {f"{name} {number}": weight for number in range(1, count + 1)}


def _shared(flow: float, weights: Mapping[str, float]) -> dict[str, float]:
    """A flow [m³/h] shared out by weight, to a tenth, with the sum kept."""
    total = sum(weights.values())
    shares = {name: round(flow * weight / total, 1) for name, weight in weights.items()}
    last = next(reversed(shares))
    shares[last] += round(flow, 1) - sum(shares.values())
    return shares


def _ways(fed: Mapping[str, float], drawn: Mapping[str, float]) -> Iterator[tuple[str, str, float]]:
    """From, to and flow: wet rooms in turn take what the fed rooms have left. What does not balance stays without."""
    left = dict(fed)
    for end, wanted in drawn.items():
        for start, there in left.items():
            flow = min(wanted, there)
            if flow > _LEAST:
                yield start, end, flow
                left[start], wanted = there - flow, wanted - flow


def _written(entries: Mapping[str, float]) -> str:
    return "; ".join(f"{name} {value:.1f}" for name, value in entries.items() if value > _LEAST)
