"""Which of a few answers does each home of a stock get, and for which reason?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from estimator.stock.outcome import Outcome

AT_ONCE, PAYS, SAVES, LOSES = "at once", "pays", "saves", "loses"
ANSWERS = (AT_ONCE, PAYS, SAVES, LOSES)
"""Pays back at once; within the life of the kit; saves, but not its cost within the life; saves nothing."""

TIGHT, SEAL_FIRST, NEITHER = "tight enough", "seal first", "neither"
TIGHTNESS = (TIGHT, SEAL_FIRST, NEITHER)
"""Saves at the leakage it has; only once sealed to the target; at neither leakage."""

WORTH_IT, TOO_DEAR, SEALING_TURNS, NO_HEAT, RUNNING_COST = (
    "worth it",
    "too dear",
    "sealing turns it",
    "no heat saved",
    "running cost",
)
REASONS = (WORTH_IT, TOO_DEAR, SEALING_TURNS, NO_HEAT, RUNNING_COST)

Codes = NDArray[np.intp]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Verdict:
    """Codes of n homes: places in `ANSWERS`, `TIGHTNESS`, `REASONS` and the outcome's `ROUTES`."""

    answer: Codes
    tightness: Codes
    reason: Codes
    route: Codes


def verdict(found: Outcome) -> Verdict:
    """The answers of n homes."""
    saves, sealed_saves = found.net_saving > 0.0, found.net_saving_sealed > 0.0
    answer = np.select(
        [saves & (found.payback <= 0.0), saves & (found.payback <= found.life), saves],
        [ANSWERS.index(AT_ONCE), ANSWERS.index(PAYS), ANSWERS.index(SAVES)],
        default=ANSWERS.index(LOSES),
    )
    reason = np.select(
        [answer <= ANSWERS.index(PAYS), saves, sealed_saves, found.heat_saved <= 0.0],
        [REASONS.index(WORTH_IT), REASONS.index(TOO_DEAR), REASONS.index(SEALING_TURNS), REASONS.index(NO_HEAT)],
        default=REASONS.index(RUNNING_COST),
    )
    tightness = np.select(
        [saves, sealed_saves], [TIGHTNESS.index(TIGHT), TIGHTNESS.index(SEAL_FIRST)], default=TIGHTNESS.index(NEITHER)
    )
    return Verdict(answer=answer, tightness=tightness, reason=reason, route=found.route)
