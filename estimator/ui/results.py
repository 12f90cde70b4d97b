"""What comes out for the case on screen?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Literal

import streamlit as st

from estimator.compare import Comparison, Result, run
from estimator.inputs.case import Case
from estimator.leak_range import leakage_span, with_q50
from estimator.leak_span import LeakageSpan
from estimator.report.palette import PALETTES, Palette
from estimator.ui import at_hand, state

Against = Literal["baseline", "today"]


@dataclass(frozen=True, eq=False)
class Outcome:
    """The result in the middle and, once somebody asks, at both ends of the home's leakage."""

    case: Case
    span: LeakageSpan
    middle: Result

    @cached_property
    def low(self) -> Result:
        """At the low end."""
        return run(with_q50(self.case, self.span.low), self.middle.estimate.year)

    @cached_property
    def high(self) -> Result:
        """At the high end."""
        return run(with_q50(self.case, self.span.high), self.middle.estimate.year)

    def options(self) -> tuple[str, ...]:
        """Names of the options that may be asked about: neither the baseline nor the home's own state."""
        return tuple(self.middle.against_baseline)

    def comparison(self, option: str, against: Against) -> Comparison:
        """One option against the baseline or against today."""
        return _of(self.middle, against)[option]

    def ends(self, option: str, against: Against) -> tuple[Comparison, Comparison]:
        """The same at both ends of the range."""
        return _of(self.low, against)[option], _of(self.high, against)[option]


def _of(result: Result, against: Against) -> dict[str, Comparison]:
    return result.against_baseline if against == "baseline" else result.against_today


def outcome() -> Outcome:
    """The result of the case on screen, worked out once for each case."""
    case = state.case()
    kept = st.session_state.get("outcome")
    if kept is None or kept.case is not case:
        kept = Outcome(case, leakage_span(case, survey=state.survey()), run(case, at_hand.year(case)))
        st.session_state["outcome"] = kept
    return kept


def palette() -> Palette:
    """The palette of the scheme that the page is shown in."""
    return PALETTES["dark" if st.context.theme.type == "dark" else "light"]
