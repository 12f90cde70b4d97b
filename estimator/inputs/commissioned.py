"""What was measured once the unit was fitted, with what, and when?

All of it is optional and entered after the works; the estimate is then redone with what was measured.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from estimator.inputs.quantity import STRICT, Entry, Quantity

TestMeasure = Literal["q50", "n50", "q4"]

_LONGEST = 600
_DATE = 10  # characters of a date


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Commissioned:
    """What was measured at commissioning, and the leakage test made after the works."""

    __pydantic_config__ = STRICT

    option: Annotated[str, Entry("name of the option that was fitted", "assumed", longest=60)] = "recovery"
    fed: Annotated[
        str,
        Entry("air measured into each fed room, m³/h, as in bedroom 41; living room 48", "assumed", longest=_LONGEST),
    ] = ""
    drawn: Annotated[
        str,
        Entry("air measured out of each room drawn from, m³/h, as in kitchen 45", "assumed", longest=_LONGEST),
    ] = ""
    power: Annotated[
        float | None,
        Quantity(
            "W",
            0,
            3000,
            "electrical power measured in ordinary use, all fans and controls, frost heater off",
            derived="nothing: it counts only once measured",
        ),
    ] = None
    instrument: Annotated[
        str, Entry("instrument the air was measured with, and its calibration", "assumed", longest=120)
    ] = ""
    date: Annotated[
        str, Entry("day of these measurements, year first: 2026-11-25", "assumed", longest=_DATE, plain="Measured on")
    ] = ""
    leakage_measure: Annotated[
        TestMeasure | None,
        Entry(
            "what the test after the works gives: q50 and q4 in m³/(h m²), n50 in air changes per hour",
            derived="nothing: it counts only once tested",
        ),
    ] = None
    leakage_value: Annotated[
        float | None,
        Quantity(
            "as named",
            0.01,
            60,
            "leakage found by the test after the works",
            derived="nothing: it counts only once tested",
        ),
    ] = None
    leakage_date: Annotated[
        str, Entry("day of the test after the works, year first: 2026-11-25", "assumed", longest=_DATE)
    ] = ""
