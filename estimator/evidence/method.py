"""How far is the heat saved from what the simple hourly method of ISO 13790 finds?

The figures come from a run over random homes and are data, not worked out here: the reference belongs to the tests.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from importlib import resources


@dataclass(frozen=True, slots=True, kw_only=True)
class MethodError:
    """Errors on one climate, as shares: of the heat saved by the reference, and of the whole demand."""

    climate: str
    invented: bool  # a demo climate, else the typical year of a real station
    fitted: bool  # whether the method's two constants were fitted on this climate
    median: float  # half of the homes are nearer than this
    nineteen_in_twenty: float
    worst: float
    bias: float  # median with its sign: below nil, the estimate saves less than the reference
    demand_bias: float  # the same for the demand itself


@dataclass(frozen=True, slots=True, kw_only=True)
class MethodRun:
    """One run of the comparison."""

    date: str
    command: str
    reference: str
    homes: int  # on each climate
    climates: tuple[MethodError, ...]


def method_run() -> MethodRun:
    """The last run that was written down."""
    text = resources.files("estimator").joinpath("data", "method_error.toml").read_text(encoding="utf-8")
    content = tomllib.loads(text)
    climates = tuple(MethodError(**row) for row in content.pop("climate"))
    return MethodRun(climates=climates, **content)
