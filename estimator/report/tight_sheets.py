"""Which figures stand behind the answer about tightness, in tables that never show an untested house a bare number?"""

from __future__ import annotations

import math
from collections.abc import Iterable

from estimator.inputs.case import Case
from estimator.inputs.pressure_tests import pressure_log
from estimator.leak_estimates import leakage_estimates
from estimator.leak_range import pressure_history, tested_q50
from estimator.models import side_by_side
from estimator.report import cash, figures
from estimator.report.findings_tight import NAMES, said
from estimator.report.leakage_said import bound, leakage, span_words, unit
from estimator.report.rows import Rows
from estimator.report.tight import Tightness
from estimator.sweep import TOLD, told

_SIDES = {"pays": "would save", "does not pay": "would not save", "on both sides": "cannot be told"}
_BEYOND = 100.0  # years; nobody can use a longer figure


def house(found: Tightness) -> Rows:
    """The house itself, over what is known of its leakage, in both comparisons."""
    both, money = (found.baseline, found.today), found.currency
    return Rows(
        caption=f"This house at {span_words(found.span)}",
        head=("", *(f"Against {one.words}" for one in both)),
        rows=(
            ("Fresh air that passes the exchanger", *(shares(one.here.through_exchanger) for one in both)),
            ("Heat saved a year", *(span_of(one.here.heat_saved, "kWh") for one in both)),
            ("Net saving a year", *(sums(one.here.net_saving, money) for one in both)),
            ("Extra cost", *(cash.money(one.here.net_capital, money) for one in both)),
            ("Payback", *(paybacks(one.here.payback) for one in both)),
            ("Carbon saved a year", *(span_of(one.here.carbon_saving, "kg") for one in both)),
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
        rows.append((bound(tick), f"{curve.n50[at]:.1f}", f"{curve.air_changes[at]:.2f}", *entries))
    head = (f"{NAMES[what]}, against {one.words}" for what, one in columns[:-1])
    return Rows(
        caption="A home like this one at other leakages",
        head=(f"{unit()} at 50 Pa", "n50, 1/h", "Mean, 1/h", *head, NAMES["through_exchanger"]),
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
                either(f"{min(v.infiltration for v in views):.2f}", f"{max(v.infiltration for v in views):.2f}"),
                span_of([view.option_air for view in views], "m³/h"),
                span_of([view.baseline_air for view in views], "m³/h"),
                span_of([view.heat_saved for view in views], "kWh"),
                sums(savings, found.currency),
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


def tests(found: Tightness, case: Case) -> Rows:
    """Every pressure test and all works in the list of the case, oldest first, and which test is used."""
    log, history = pressure_log(case.leakage.tests), pressure_history(case)
    rows = [
        (
            test.when,
            (
                test.date,
                f"{test.measure} {figures.number(test.value)}",
                figures.joined(leakage(tested_q50(found.case, test.measure, test.value)), unit()),
                _use(test is log.newest and history is not None, test in log.valid),
                test.note,
            ),
        )
        for test in log.tests
    ]
    rows += [(one.when, (one.date, "works", "", "tests before do not count", one.note)) for one in log.works]
    return Rows(
        caption="Pressure tests over the years",
        head=("When", "What", "At 50 Pa", "Counts", "Note"),
        rows=tuple(row for _, row in sorted(rows)),
    )


def _use(newest: bool, valid: bool) -> str:
    if newest:
        return "yes: the newest, used here"
    return "for the drift" if valid else "no: works since then"


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


def either(low: str, high: str) -> str:
    """One entry where both ends read alike, else both."""
    return low if low == high else f"{low} to {high}"


def leakages(values: Iterable[float]) -> str:
    """Leakages as a range, without their unit."""
    values = list(values)
    return either(leakage(min(values)), leakage(max(values)))


def sums(values: Iterable[float], currency: str) -> str:
    """Sums of money as a range, rounded as its width bears."""
    values = [float(value) for value in values]
    low, high = cash.rounded_range(min(values), max(values))
    return either(cash.money(low, currency), cash.money(high, currency))


def span_of(values: Iterable[float], measure: str) -> str:
    """Figures with their metric unit as a range."""
    values = [float(figures.converted(value, measure)) for value in values]
    low, high = cash.rounded_range(min(values), max(values))
    return figures.joined(either(figures.number(low), figures.number(high)), figures.unit_shown(measure))


def shares(values: Iterable[float]) -> str:
    """Shares as a range."""
    values = [float(value) for value in values]
    return either(figures.share(min(values)), figures.share(max(values)))
