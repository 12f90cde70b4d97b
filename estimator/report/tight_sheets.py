"""Which figures stand behind the answer about tightness, in tables that never show an untested house a bare number?"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from estimator.at_leakage import option_at
from estimator.leak_estimates import leakage_estimates
from estimator.models import side_by_side
from estimator.report import cash, figures
from estimator.report.findings_tight import NAMES, said
from estimator.report.rows import Rows
from estimator.report.tight import LEAKAGE_UNIT, Against, Tightness, leakage, span_words
from estimator.routes import LEAVE, RECOVER, SEAL, best_targets, sealing_cost
from estimator.sweep import TOLD, told

_SIDES = {"pays": "would save", "does not pay": "would not save", "on both sides": "cannot be told"}
_FIRST = {LEAVE: "leave the house as it is", SEAL: "seal", RECOVER: "fit the recovery unit"}
_LEVELS = ("low", "middling", "high")
_WORTH_SAYING = 0.01  # of all hours
_BEYOND = 100.0  # years; nobody can use a longer figure


@dataclass(frozen=True, slots=True, kw_only=True)
class SealTo:
    """The best leakage to seal to at one cost of sealing: over the house's leakage, what it costs and leaves.

    q50: None where no sealing pays even in the leakiest house thought possible. Money over the life, not discounted.
    """

    q50: float | None
    cost: tuple[float, float]
    life_gain: tuple[float, float]


def house(found: Tightness) -> Rows:
    """The house itself, over what is known of its leakage, in both comparisons."""
    both, money = (found.baseline, found.today), found.currency
    return Rows(
        caption=f"This house at {span_words(found.span)}",
        head=("", *(f"Against {one.words}" for one in both)),
        rows=(
            ("Fresh air that passes the exchanger", *(_shares(one.here.through_exchanger) for one in both)),
            ("Heat saved a year", *(_span(one.here.heat_saved, "kWh") for one in both)),
            ("Net saving a year", *(_sums(one.here.net_saving, money) for one in both)),
            ("Extra cost", *(cash.money(one.here.net_capital, money) for one in both)),
            ("Payback", *(paybacks(one.here.payback) for one in both)),
            ("Carbon saved a year", *(_span(one.here.carbon_saving, "kg") for one in both)),
        ),
    )


def over_leakage(found: Tightness) -> Rows:
    """What is drawn over leakage, as figures: the same for every house of this kind, however leaky it is itself."""
    both = (found.baseline, found.today)
    columns = [("net_saving", one) for one in both] + [("payback", one) for one in both]
    columns += [("heat_saved", one) for one in both] + [("through_exchanger", found.baseline)]
    rows = []
    for tick, at in zip(TOLD, told(found.baseline.sweep.figures), strict=True):
        curve = found.baseline.sweep.figures
        entries = (said(found, what, float(getattr(one.sweep.figures, what)[at])) for what, one in columns)
        rows.append((f"{tick:g}", f"{curve.n50[at]:.1f}", f"{curve.air_changes[at]:.2f}", *entries))
    head = (f"{NAMES[what]}, against {one.words}" for what, one in columns[:-1])
    return Rows(
        caption="A home like this one at other leakages",
        head=(f"{LEAKAGE_UNIT} at 50 Pa", "n50, 1/h", "Mean, 1/h", *head, NAMES["through_exchanger"]),
        rows=tuple(rows),
    )


def four_routes(found: Tightness, against: Against) -> Rows:
    """The four routes, each over the leakage of the house and the cost of sealing."""
    life, money = figures.years(found.case.worth.life), found.currency
    rows = []
    for name in against.routes[0].routes:
        ways = [each.routes[name] for each in against.routes]
        label = ways[1].label
        rows.append(
            (
                f"{label[:1].upper()}{label[1:]}",
                _leakages([way.q50 for way in ways]),
                _sums([cost for way in ways for cost in way.cost], money),
                _sums([way.net_saving for way in ways], money),
                "nothing spent" if name == LEAVE else paybacks([back for way in ways for back in way.payback]),
                _sums([gain for way in ways for gain in way.life_gain], money),
                _span([way.carbon_saving for way in ways], "kg"),
                _span([way.own_air for way in ways], "m³/h"),
                _shares([way.short for way in ways]),
            )
        )
    return Rows(
        caption=f"Starting from {against.words}",
        head=(
            "Route",
            f"Leaks, {LEAKAGE_UNIT}",
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


def first_step(against: Against) -> str:
    """Which first step leaves most money over the life, and whether that holds over leakage and cost."""
    chosen = {
        max(_FIRST, key=lambda name: each.routes[name].life_gain[level])
        for each in against.routes
        for level in range(len(_LEVELS))
    }
    likely = against.routes[1].first_step.name
    if chosen == {likely}:
        return f"First step that pays most, from {against.words}: {_FIRST[likely]}, whatever leakage and cost turn out."
    others = " or ".join(_FIRST[name] for name in _FIRST if name in chosen and name != likely)
    return (
        f"First step that pays most, from {against.words}: {_FIRST[likely]}, at a middling leakage and cost of "
        f"sealing; {others}, at others in their ranges."
    )


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


def models(found: Tightness) -> Rows:
    """The house under every model of infiltration and every way of joining, against the baseline."""
    seen = [side_by_side(end.case, end.year, option=found.option, baseline=found.case.baseline) for end in found.ends]
    rows = []
    for views in zip(*seen, strict=True):
        savings = [view.net_saving for view in views]
        rows.append(
            (
                f"{views[0].model}; {views[0].joined}",
                _range(f"{min(v.infiltration for v in views):.2f}", f"{max(v.infiltration for v in views):.2f}"),
                _span([view.option_air for view in views], "m³/h"),
                _span([view.baseline_air for view in views], "m³/h"),
                _span([view.heat_saved for view in views], "kWh"),
                _sums(savings, found.currency),
                paybacks([view.payback for view in views]),
            )
        )
    return Rows(
        caption=f"Models of infiltration and ways of joining, against {found.baseline.words}",
        head=(
            "Model; joined by",
            "Through leaks, 1/h",
            f"Air, {found.option_label}",
            f"Air, {found.baseline.words}",
            "Heat saved a year",
            "Net saving a year",
            "Payback",
        ),
        rows=tuple(rows),
    )


def estimates(found: Tightness) -> Rows:
    """What each published way of judging an untested house says, and on which side that would put it."""
    rows = [
        (
            f"{way[:1].upper()}{way[1:]}",
            span_words(span),
            _SIDES[found.baseline.sweep.saving.side_of(span)],
            _SIDES[found.today.sweep.saving.side_of(span)],
            f"{span.source[:1].upper()}{span.source[1:]}",
        )
        for way, span in leakage_estimates(found.case).items()
    ]
    return Rows(
        caption="Estimates without a test",
        head=(
            "Judged",
            "Leakage at 50 Pa",
            f"Against {found.baseline.words}",
            f"Against {found.today.words}",
            "Source",
        ),
        rows=tuple(rows),
    )


def paybacks(spans: Iterable[float]) -> str:
    """Years until the cost is back, over a range; never is the worst."""
    spans = sorted(float(span) for span in spans)
    best, worst = _back(spans[0]), _back(spans[-1])
    if best == worst:
        return best
    if math.isinf(spans[-1]) or spans[-1] > _BEYOND or spans[0] <= 0.0:
        return f"{best}, at worst {worst}"
    return f"{spans[0]:.0f} to {worst}"


def _back(span: float) -> str:
    if math.isinf(span):
        return "never"
    if span <= 0.0:
        return "at once"
    return f"over {figures.years(_BEYOND)}" if span > _BEYOND else figures.years(span)


def _target(found: Tightness, best: SealTo) -> str:
    if best.q50 is None:
        return "do not seal for the money"
    where = "" if best.q50 <= found.span.low else ", if it leaks more than that"
    return (
        f"{figures.joined(leakage(best.q50), LEAKAGE_UNIT)}{where}: costs {_sums(best.cost, found.currency)}, leaves "
        f"{_sums(best.life_gain, found.currency)}"
    )


def _range(low: str, high: str) -> str:
    return low if low == high else f"{low} to {high}"


def _leakages(values: Iterable[float]) -> str:
    values = list(values)
    return _range(leakage(min(values)), leakage(max(values)))


def _sums(values: Iterable[float], currency: str) -> str:
    values = [float(value) for value in values]
    low, high = cash.rounded_range(min(values), max(values))
    return _range(cash.money(low, currency), cash.money(high, currency))


def _span(values: Iterable[float], unit: str) -> str:
    values = [float(value) for value in values]
    low, high = cash.rounded_range(min(values), max(values))
    return figures.joined(_range(figures.number(low), figures.number(high)), unit)


def _shares(values: Iterable[float]) -> str:
    values = [float(value) for value in values]
    return _range(figures.share(min(values)), figures.share(max(values)))
