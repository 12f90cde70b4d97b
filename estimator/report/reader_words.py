"""What does each reader meet first under the answer: what is left to ask, plain shares, or the figures of the trade?"""

from __future__ import annotations

import numpy as np

from estimator.estimate import Estimate
from estimator.inputs.catalogue import is_electric
from estimator.leak_span import LeakageSpan
from estimator.report import leakage_said
from estimator.report.figures import flow, quantity, share
from estimator.report.fresh_air import FreshAir

_TO_ASK = {
    "home.floor_area": "the floor area",
    "leakage.value": "a pressure test",
    "prices.fuel": "the price on the heating bill",
    "prices.electricity": "the price of electricity",
    "home.indoor_temperature": "how warm it is kept",
}
"""What decides most and can be asked at the first visit."""


def to_ask(done: Estimate, span: LeakageSpan) -> str:
    """For who advises: which of the entries that decide most still stand at their usual values."""
    by_meter = is_electric(done.case.heating.fuel)
    left = [
        words
        for path, words in _TO_ASK.items()
        if not (by_meter and path == "prices.fuel")
        and (not span.tested if path == "leakage.value" else done.origins[path].source != "entered")
    ]
    if not left:
        return "What decides most has been asked and entered."
    *some, last = left
    listed = f"{', '.join(some)} and {last}" if some else last
    return f"Still to ask: {listed}. Until then usual values stand in."


def in_plain_words(air: FreshAir) -> str:
    """For who lives there: what becomes of the heat of the fresh air, without a unit; "" where there is none."""
    if air.total <= 0.0:
        return ""
    past, kept = (share(part / air.total) for part in (air.past, air.kept))
    return (
        f"Of the heat that warms your fresh air, the unit would keep {kept}. {past} would still leave through gaps and "
        "windows, where no unit can catch it."
    )


def of_the_trade(done: Estimate, span: LeakageSpan, *, option: str) -> str:
    """For who fits it: air needed, leakage, heat recovery on the certificate and in use, fan power."""
    year, path = done.options[option], f"options.{option}.unit"
    certified, power = done.origins[f"{path}.effectiveness"], done.origins[f"{path}.fan_power"]
    kept = float(np.squeeze(year.heat.effective_efficiency))
    told = [
        f"Fresh air needed {flow(float(np.squeeze(done.home.required)))}",
        f"air permeability q50 {leakage_said.stated(span)}",
    ]
    if kept > 0.0:
        told.append(f"heat recovery {quantity(float(certified.value), '%')} certified, {share(kept)} in use")
    told.append(f"specific fan power {quantity(float(power.value), power.unit)}")
    return f"{'; '.join(told)}."
