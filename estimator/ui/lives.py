"""What does the case on screen pay over its years, worked out once for each case and option?"""

from __future__ import annotations

from dataclasses import dataclass

from estimator.compare import Result
from estimator.estimate import Estimate
from estimator.report.life import Life, lives
from estimator.report.sure_words import Tried
from estimator.ui import sureness
from estimator.ui.results import outcome


@dataclass(frozen=True, slots=True, eq=False)
class Shown:
    """One option of the case on screen over its years, against every baseline."""

    option: str
    result: Result
    tried: Tried
    lives: tuple[Life, ...]

    @property
    def done(self) -> Estimate:
        """The estimate behind it."""
        return self.result.estimate


def shown(option: str) -> Shown:
    """One option in the estimate and in all cases tried."""
    result, tried = outcome().middle, sureness.shown(option)
    case = result.estimate.case
    comparisons = {case.baseline: result.against_baseline[option], case.today: result.against_today[option]}
    return Shown(option, result, tried, lives(tried, comparisons))
