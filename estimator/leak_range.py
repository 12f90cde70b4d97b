"""How leaky may this house be, and what does the estimate say at either end?

A home without a pressure test never gets a bare number: its leakage is a span, and so is everything built on it.
"""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass

from estimator.air import leakage
from estimator.climate.year import ClimateYear
from estimator.compare import Result, run
from estimator.inputs.case import Case
from estimator.inputs.quantity import Tag
from estimator.survey.fill import Filled, filled
from estimator.survey.numbers import home_leakage_area
from estimator.survey.typical import leakage_range
from estimator.units import to_m3h

# EN ISO 9972 puts the overall uncertainty of a test in calm weather below 10 %; from memory.
TEST_UNCERTAINTY = 0.10
# A figure without a test or a table behind it: half to double; common practice, no source.
GUESS_LOW, GUESS_HIGH = 0.5, 2.0


@dataclass(frozen=True, slots=True, kw_only=True)
class LeakageSpan:
    """Leakage of a home as far as it is known: q50 [m³/(h m²)], what that rests on, and why the span is so wide."""

    low: float
    middle: float
    high: float
    tag: Tag
    source: str

    @property
    def tested(self) -> bool:
        """Whether a pressure test stands behind it."""
        return self.tag == "measured"

    @property
    def words(self) -> str:
        """The span in one line, tested and guessed told apart."""
        said = {"measured": "tested", "typical": "not tested, an estimate", "assumed": "not tested, a guess"}
        return f"{self.middle:.1f} m³/(h m²) at 50 Pa, between {self.low:.1f} and {self.high:.1f}: {said[self.tag]}"


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


def leakage_span(case: Case) -> LeakageSpan:
    """Low, middle and high leakage of a case.

    A test is uncertain by a tenth. A typical figure spreads as its age does in the table of homes. A guess spreads at
    least from half to double.
    """
    survey: Filled = filled(case)
    whole, origin = survey.case, survey.origins["leakage.value"]
    middle = house_q50(whole)
    table_low, table_middle, table_high = leakage_range(whole.home)
    below, above = float(table_low) / float(table_middle), float(table_high) / float(table_middle)
    tag = origin.tag
    if tag == "measured":
        below, above = 1.0 - TEST_UNCERTAINTY, 1.0 + TEST_UNCERTAINTY
        source = "pressure test, uncertain by 10 % (EN ISO 9972, calm weather; from memory)"
    elif tag == "typical":
        source = f"spread of homes of this age; {origin.source}"
    else:
        below, above = min(below, GUESS_LOW), max(above, GUESS_HIGH)
        source = "a figure without a test, half to double at least; common practice, no source"
    return LeakageSpan(low=middle * below, middle=middle, high=middle * above, tag=tag, source=source)


def over_leakage_range(case: Case, year: ClimateYear) -> tuple[Result, Result, Result]:
    """Both comparisons at the low, the middle and the high leakage of a case; the middle is the case itself."""
    span = leakage_span(case)
    return run(with_q50(case, span.low), year), run(case, year), run(with_q50(case, span.high), year)
