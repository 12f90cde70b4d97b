"""Seal first, recover first, both, or neither: which way pays in this home?

Every route is counted from leaving the house as it is, with the ventilation it starts from. Two questions, never mixed:
start from the ventilation in place, or from the new plain extract that would give the same air.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import NamedTuple

import numpy as np

from estimator.at_leakage import Ground, OptionAt, option_at
from estimator.inputs.case import Case
from estimator.inputs.sealing import Sealing
from estimator.leak_range import house_q50
from estimator.money import worth
from estimator.units import Array

LEAVE, SEAL, RECOVER, BOTH = "leave", "seal", "recover", "seal then recover"
LABELS: Mapping[str, str] = MappingProxyType(
    {LEAVE: "leave as is", SEAL: "seal only", RECOVER: "recover only", BOTH: "seal, then recover"}
)
# Enough for the best leakage to within half a hundredth of itself, where the gain is flat.
GRID, ZOOMED, ZOOMS = 25, 9, 2


class Spread(NamedTuple):
    """A figure at the low, the middling and the high cost of sealing."""

    low: float
    middle: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Route:
    """One way to go, against leaving as is. Money, kWh, kg and years; flows m³/h.

    life_gain: net saving over the life less the cost, not discounted. own_air and short: mean fresh air, and share of
    hours with less than the required air, both without windows.
    """

    name: str
    q50: float
    option: str
    cost: Spread
    heat_saved: float
    net_saving: float
    carbon_saving: float
    payback: Spread
    life_gain: Spread
    own_air: float
    short: float

    @property
    def label(self) -> str:
        """What is done."""
        return LABELS[self.name]


@dataclass(frozen=True, slots=True, kw_only=True)
class Target:
    """The leakage at which sealing leaves most money over the life: what it costs and gains against not sealing."""

    q50: float
    cost: float
    life_gain: float

    @property
    def pays(self) -> bool:
        """Whether any sealing leaves more money than none."""
        return self.life_gain > 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Routes:
    """The four routes by name, and what they start from: a ventilation option and a leakage [m³/(h m²)]."""

    start: str
    option: str
    q50: float
    routes: Mapping[str, Route]

    @property
    def first_step(self) -> Route:
        """Which first step leaves most money over the life at middling cost: sealing, recovering, or none."""
        return max((self.routes[name] for name in (LEAVE, SEAL, RECOVER)), key=lambda route: route.life_gain.middle)

    @property
    def best(self) -> Route:
        """Which of the four leaves most money over the life at middling cost."""
        return max(self.routes.values(), key=lambda route: route.life_gain.middle)


def sealing_cost(sealing: Sealing, *, area: float, start: Array, end: Array) -> tuple[Array, Array, Array]:
    """Low, middling and high cost [money] of sealing an envelope [m²] from one q50 to another; nil if not tighter."""
    halvings = np.maximum(np.log2(np.asarray(start) / np.asarray(end)), 0.0)
    return (sealing.step_low * area * halvings, sealing.step * area * halvings, sealing.step_high * area * halvings)


def routes(place: Ground, *, option: str, start: str) -> Routes:
    """The four routes of a home, with the ventilation `start` where nothing is recovered and `option` where it is."""
    q50 = np.array([house_q50(place.case)])
    leakages = route_leakages(place.case, q50)
    years = {name: option_at(place, name, leakages) for name in {option, start}}
    (found,) = routes_over(place, q50, years=years, option=option, start=start)
    return found


def route_leakages(case: Case, q50: Array) -> Array:
    """The leakages [m³/(h m²)] that the routes from n leakages need, (2 n,): as they are, then each one sealed."""
    return np.concatenate([q50, np.minimum(case.sealing.target, q50)])


def routes_over(
    place: Ground, q50: Array, *, years: Mapping[str, OptionAt], option: str, start: str
) -> tuple[Routes, ...]:
    """The four routes from each of n leakages [m³/(h m²)]; years: each option at their `route_leakages`."""
    leakages, count = route_leakages(place.case, q50), len(q50)
    found = []
    for now in range(count):
        ways = {LEAVE: (start, now), SEAL: (start, count + now), RECOVER: (option, now), BOTH: (option, count + now)}
        four = {
            name: _route(name, place, option=which, at=at, now=now, leakages=leakages, years=years[which],
                         left=years[start])
            for name, (which, at) in ways.items()
        }  # fmt: skip
        found.append(Routes(start=start, option=option, q50=float(q50[now]), routes=four))
    return tuple(found)


def _route(
    name: str, place: Ground, *, option: str, at: int, now: int, leakages: Array, years: OptionAt, left: OptionAt
) -> Route:
    """One route; now, at: where among the leakages the house stands and where the route leads."""
    case = place.case
    fitted = years.capital - left.capital
    saving = float(left.bill[now] - years.bill[at]) - (years.upkeep - left.upkeep)
    area = float(case.home.envelope_area or np.nan)
    sealing = sealing_cost(case.sealing, area=area, start=leakages[now], end=leakages[at])
    costs = [float(cost) + fitted for cost in sealing]
    return Route(
        name=name,
        q50=float(leakages[at]),
        option=option,
        cost=Spread(*costs),
        heat_saved=float(left.heat[now] - years.heat[at]),
        net_saving=saving,
        carbon_saving=float(left.carbon[now] - years.carbon[at]),
        payback=Spread(*(float(worth.simple_payback(cost, net_saving=saving)) for cost in costs)),
        life_gain=Spread(*(saving * case.worth.life - cost for cost in costs)),
        own_air=float(years.own_air[at]),
        short=float(years.short[at]),
    )


def best_targets(place: Ground, *, option: str) -> tuple[Target, Target, Target]:
    """Best leakage to seal to at the low, the middling and the high cost of sealing, under one option's ventilation.

    A grid from the tightest leakage within reach to the house's own, then ever finer grids around its best point, the
    three costs side by side.
    """
    case = place.case
    now = house_q50(case)
    area = float(case.home.envelope_area or np.nan)
    points = np.tile(np.geomspace(min(case.sealing.tightest, now), now, GRID), (3, 1))
    bills = np.tile(option_at(place, option, points[0]).bill, (3, 1))
    unsealed = float(bills[0, -1])
    for zoom in range(ZOOMS + 1):
        costs = np.array(
            [sealing_cost(case.sealing, area=area, start=np.array(now), end=points[level])[level] for level in range(3)]
        )
        gains = (unsealed - bills) * case.worth.life - costs
        top = np.argmax(gains, axis=-1)
        if zoom < ZOOMS:
            rows = np.arange(3)
            left, right = points[rows, np.maximum(top - 1, 0)], points[rows, np.minimum(top + 1, points.shape[1] - 1)]
            points = np.linspace(left, right, ZOOMED, axis=-1)
            bills = option_at(place, option, points.ravel()).bill.reshape(points.shape)
    low, middle, high = (
        Target(q50=float(points[i, top[i]]), cost=float(costs[i, top[i]]), life_gain=float(gains[i, top[i]]))
        for i in range(3)
    )
    return low, middle, high
