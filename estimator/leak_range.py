"""How leaky may this house be, and what does the estimate say at either end?

A home without a pressure test never gets a bare number: its leakage is a span, and so is everything built on it.
"""

from __future__ import annotations

import dataclasses

from estimator.air import leakage
from estimator.climate.year import ClimateYear
from estimator.compare import Result, run
from estimator.inputs.case import Case
from estimator.inputs.pressure_tests import pressure_log
from estimator.leak_span import TEST_UNCERTAINTY, LeakageSpan
from estimator.leak_tests import History, PressureTest, history
from estimator.survey.fill import Filled, filled
from estimator.survey.numbers import home_leakage_area
from estimator.survey.typical import leakage_range
from estimator.units import to_m3h

# A figure without a test or a table behind it: half to double; common practice, no source.
GUESS_LOW, GUESS_HIGH = 0.5, 2.0


def house_q50(case: Case) -> float:
    """Leakage of a filled case as q50 [m³/(h m²)], whatever its test measured."""
    return float(q50_of_area(home_leakage_area(case.home, case.leakage), case))


def q50_of_area(area: float, case: Case) -> float:
    """q50 [m³/(h m²)] of an effective leakage area [m²] in a filled case."""
    flow = leakage.leakage_flow(area, pressure=leakage.TEST_PRESSURE, exponent=case.leakage.exponent)
    return float(to_m3h(flow)) / float(case.home.envelope_area or float("nan"))


def with_q50(case: Case, q50: float) -> Case:
    """The same case at another leakage [m³/(h m²) at 50 Pa]; what the figure rests on stays as it was."""
    basis = case.leakage.basis or filled(case).case.leakage.basis
    return dataclasses.replace(case, leakage=dataclasses.replace(case.leakage, measure="q50", value=q50, basis=basis))


def leakage_span(case: Case, *, survey: Filled | None = None) -> LeakageSpan:
    """Low, middle and high leakage of a case; survey: the same case without gaps, where somebody has it already.

    A test is uncertain by a tenth, and by its drift where several are listed. A typical figure spreads as its age does
    in the table of homes. A guess spreads at least from half to double.
    """
    survey = survey or filled(case)
    whole, origin = survey.case, survey.origins["leakage.value"]
    if (tests := _history(whole)) is not None:
        return tests.span
    middle = house_q50(whole)
    table_low, table_middle, table_high = leakage_range(whole.home)
    below, above = float(table_low) / float(table_middle), float(table_high) / float(table_middle)
    tag = origin.tag
    if tag == "measured":
        below, above = 1.0 - TEST_UNCERTAINTY, 1.0 + TEST_UNCERTAINTY
        source = "pressure test, uncertain by 10% (EN ISO 9972, calm weather; from memory)"
    elif tag == "typical":
        source = f"spread of homes of this age; {origin.source}"
    else:
        below, above = min(below, GUESS_LOW), max(above, GUESS_HIGH)
        source = "a figure without a test, half to double at least; common practice, no source"
    return LeakageSpan(low=middle * below, middle=middle, high=middle * above, tag=tag, source=source)


def pressure_history(case: Case) -> History | None:
    """What the listed pressure tests say of the house, None where the leakage in use is not the newest of them."""
    return _history(filled(case).case)


def _history(whole: Case) -> History | None:
    log = pressure_log(whole.leakage.tests)
    last = log.newest
    if last is None or (whole.leakage.measure, whole.leakage.value) != (last.measure, last.value):
        return None
    tests = [PressureTest(when=test.when, q50=tested_q50(whole, test.measure, test.value)) for test in log.valid]
    return history(tests, today=max(last.when, float(whole.prices.carbon_year)))


def tested_q50(case: Case, measure: str, value: float) -> float:
    """A test's figure as q50 [m³/(h m²)] of a filled case."""
    return house_q50(
        dataclasses.replace(case, leakage=dataclasses.replace(case.leakage, measure=measure, value=value))  # type: ignore[arg-type]
    )


def over_leakage_range(case: Case, year: ClimateYear) -> tuple[Result, Result, Result]:
    """Both comparisons at the low, the middle and the high leakage of a case; the middle is the case itself."""
    span = leakage_span(case)
    return run(with_q50(case, span.low), year), run(case, year), run(with_q50(case, span.high), year)
