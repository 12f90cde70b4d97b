"""How far does the verdict hang on the model of infiltration, and on how fans and leakage are joined?"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any, get_args

import numpy as np

from estimator.air import joining, leakage
from estimator.at_leakage import Ground, difference_at, ground, option_at
from estimator.climate.year import ClimateYear
from estimator.inputs.case import Case
from estimator.inputs.home import InfiltrationModel
from estimator.leak_range import house_q50

QUADRATURE, STEADY = "quadrature", "EN ISO 13789, one flow all year"
Join = Callable[..., Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """The house as one model and one way of joining see it: flows m³/h without windows, kWh, money and years."""

    model: InfiltrationModel
    joined: str
    infiltration: float  # 1/h, through the leaks alone
    option_air: float
    baseline_air: float
    heat_saved: float
    net_saving: float
    payback: float

    @property
    def pays(self) -> bool:
        """Whether anything is saved."""
        return self.net_saving > 0.0


def _quadrature(place: Ground) -> Join:
    del place
    return joining.envelope_flow


def _sub_additive(place: Ground) -> Join:
    del place

    def join(infiltration: Any, *, unbalanced: Any) -> Any:
        return joining.sub_additive_flow(infiltration, supply=0.0, extract=unbalanced)

    return join


def _iso_13789(place: Ground) -> Join:
    """The standard's own leak flow, the same in every hour, beside the unbalanced fan flow."""
    exponent = place.case.leakage.exponent
    at_test = leakage.leakage_flow(place.home.leakage_area, pressure=leakage.TEST_PRESSURE, exponent=exponent)

    def join(infiltration: Any, *, unbalanced: Any) -> Any:
        steady = unbalanced + joining.iso_13789_flow(at_test, supply=0.0, extract=unbalanced)
        return np.broadcast_to(steady, np.shape(infiltration))

    return join


def _national(place: Ground) -> Join:
    """The effective air change of whole-house extract; with balanced fans leakage counts in full."""
    del place

    def join(infiltration: Any, *, unbalanced: Any) -> Any:
        return joining.effective_extract(infiltration, fan=unbalanced)

    return join


JOINS: Mapping[str, Callable[[Ground], Join]] = MappingProxyType(
    {
        QUADRATURE: _quadrature,
        "sub-additive, ASHRAE 62.2": _sub_additive,
        STEADY: _iso_13789,
        "UK Standard Assessment Procedure, extract": _national,
    }
)
"""Ways of joining by the words shown; EN ISO 13789 has its own leak flow, whatever the model."""


def side_by_side(case: Case, year: ClimateYear, *, option: str, baseline: str) -> tuple[View, ...]:
    """The house under every model of infiltration and every way of joining; the first way is the estimator's own."""
    views = []
    for model in get_args(InfiltrationModel):
        place = ground(dataclasses.replace(case, leakage=dataclasses.replace(case.leakage, model=model)), year)
        q50 = np.array([house_q50(place.case)])
        for words, build in JOINS.items():
            if words == STEADY and model != case.leakage.model:
                continue  # the same under every model
            join = build(place)
            seen = difference_at(place, q50, option=option, baseline=baseline, join=join)
            views.append(
                View(
                    model=model,
                    joined=words,
                    infiltration=float(seen.air_changes[0]),
                    option_air=float(option_at(place, option, q50, join=join).own_air[0]),
                    baseline_air=float(option_at(place, baseline, q50, join=join).own_air[0]),
                    heat_saved=float(seen.heat_saved[0]),
                    net_saving=float(seen.net_saving[0]),
                    payback=float(seen.payback[0]),
                )
            )
    return tuple(views)
