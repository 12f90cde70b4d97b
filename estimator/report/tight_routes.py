"""Which way pays: leave, seal, recover or both, what is the first step, and how tight to seal for the money?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from estimator.at_leakage import option_at
from estimator.report import cash, figures
from estimator.report.leakage_said import leakage, unit
from estimator.report.rows import Rows
from estimator.report.tight import Against, Tightness
from estimator.report.tight_sheets import leakages, paybacks, shares, span_of, sums
from estimator.routes import LEAVE, RECOVER, SEAL, Route, best_targets, sealing_cost

_FIRST = {LEAVE: "leave the house as it is", SEAL: "seal", RECOVER: "fit the recovery unit"}
_LEVELS = ("low", "middling", "high")
_WORTH_SAYING = 0.01  # of all hours
_LACKING = ": part of its saving is air that is missing"


@dataclass(frozen=True, slots=True, kw_only=True)
class SealTo:
    """The best leakage to seal to at one cost of sealing: over the house's leakage, what it costs and leaves.

    q50: None where no sealing pays even in the leakiest house thought possible. Money over the life, not discounted.
    """

    q50: float | None
    cost: tuple[float, float]
    life_gain: tuple[float, float]


def four_routes(found: Tightness, against: Against) -> Rows:
    """The four routes, each over the leakage of the house and the cost of sealing."""
    life, money = figures.years(found.case.worth.life), found.currency
    rows = []
    for name in against.routes[0].routes:
        ways = [each.routes[name] for each in against.routes]
        label = ways[1].label
        missing = max(_missing(found, way) for way in ways) >= _WORTH_SAYING
        rows.append(
            (
                f"{label[:1].upper()}{label[1:]}{_LACKING if missing and name != LEAVE else ''}",
                leakages([way.q50 for way in ways]),
                sums([cost for way in ways for cost in way.cost], money),
                sums([way.net_saving for way in ways], money),
                "nothing spent" if name == LEAVE else paybacks([back for way in ways for back in way.payback]),
                sums([gain for way in ways for gain in way.life_gain], money),
                span_of([way.carbon_saving for way in ways], "kg"),
                span_of([way.own_air for way in ways], "m³/h"),
                shares([way.short for way in ways]),
            )
        )
    return Rows(
        caption=f"Starting from {against.words}",
        head=(
            "Route",
            f"Leaks, {unit()}",
            "Cost",
            "Net saving a year",
            "Payback",
            f"Left after {life}",
            "Carbon saved a year",
            "Fresh air, windows shut",
            "Hours short of air",
        ),
        rows=tuple(rows),
    )


def _missing(found: Tightness, way: Route) -> float:
    """Share of hours in which a route leaves the house short of air, windows opened in thought counted."""
    opened = found.place.home.top_up and way.option != found.case.today
    return 0.0 if opened else way.short


def first_step(against: Against) -> str:
    """Which first step leaves most money over the life, and whether that holds over leakage and cost."""
    chosen = {
        max(_FIRST, key=lambda name: each.routes[name].life_gain[level])
        for each in against.routes
        for level in range(len(_LEVELS))
    }
    likely = against.routes[1].first_step.name
    best = (
        "no first step pays for itself" if likely == LEAVE else f"the first step that pays most is to {_FIRST[likely]}"
    )
    if chosen == {likely}:
        return f"From {against.words}, {best}, whatever leakage and cost of sealing turn out to be."
    others = [name for name in _FIRST if name in chosen and name != likely]
    steps = " or ".join(f"to {_FIRST[name]}" for name in others if name != LEAVE)
    else_ = " or ".join(filter(None, (f"it is {steps}" if steps else "", "no step pays" if LEAVE in others else "")))
    return f"From {against.words}, {best} at a middling leakage and cost of sealing; elsewhere in their ranges {else_}."


def short_of_air(against: Against) -> str:
    """What sealing alone would do to the air, nothing where the fans bring enough."""
    short = max(each.routes[SEAL].short for each in against.routes)
    if short < _WORTH_SAYING:
        return ""
    return (
        f"Sealing alone, from {against.words}, would leave it short of fresh air in {figures.share(short)} of all "
        "hours: never seal without a plan for ventilation."
    )


def seal_to(found: Tightness, *, option: str) -> tuple[SealTo, SealTo, SealTo]:
    """The best leakage to seal to at low, middling and high cost, with one option's ventilation running.

    Every halving costs the same, so the best leakage is the same from wherever the house starts; it is sought from the
    leaky end of what is known.
    """
    place, span, case = found.place, found.span, found.case
    targets = best_targets(found.ends[-1], option=option)
    starts = np.array([span.low, span.high])
    ends = np.minimum(starts, np.array([[target.q50] for target in targets]))
    bills = option_at(place, option, np.concatenate([starts, ends.ravel()])).bill
    before, after = bills[:2], bills[2:].reshape(ends.shape)
    area = float(case.home.envelope_area or np.nan)
    found_costs = sealing_cost(case.sealing, area=area, start=starts, end=ends)
    costs = np.array([found_costs[level][level] for level in range(len(_LEVELS))])
    gains = (before - after) * case.worth.life - costs
    low, middle, high = (
        SealTo(
            q50=target.q50 if target.pays else None,
            cost=(float(costs[level].min()), float(costs[level].max())),
            life_gain=(float(gains[level].min()), float(gains[level].max())),
        )
        for level, target in enumerate(targets)
    )
    return low, middle, high


def targets(found: Tightness) -> Rows:
    """Best leakage for the money, with and without recovery."""
    rows = []
    for option, words in ((found.case.baseline, found.baseline.words), (found.option, found.option_label)):
        rows.append((f"With {words}", *(_target(found, each) for each in seal_to(found, option=option))))
    step = found.case.sealing
    prices = (cash.money(each, found.currency) for each in (step.step_low, step.step, step.step_high))
    return Rows(
        caption="Best leakage to seal to",
        head=(
            "",
            *(f"At {level} cost, {price} per m² and halving" for level, price in zip(_LEVELS, prices, strict=True)),
        ),
        rows=tuple(rows),
    )


def _target(found: Tightness, best: SealTo) -> str:
    if best.q50 is None:
        return "do not seal for the money"
    where = "" if best.q50 <= found.span.low else ", if it leaks more than that"
    return (
        f"{figures.joined(leakage(best.q50), unit())}{where}: costs {sums(best.cost, found.currency)}, leaves "
        f"{sums(best.life_gain, found.currency)}"
    )
