"""How far is the heat saved from what the simple hourly method of ISO 13790 finds?

The figures come from a run over ten thousand random homes, which takes minutes, and are data, not worked out here.
What decides how far the two differ in a home is how much of its loss the heating has to meet. Where it is nearly all,
they agree; where sun and people meet most of it, both the saving and its error hang on a few days of spring and autumn.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib import resources

import numpy as np

from estimator.compare import Comparison
from estimator.estimate import Estimate

# The least share of the baseline's heat that a saving counted in the run; the error of less is taken as that of this.
LEAST_SAVED = 0.05


@dataclass(frozen=True, slots=True, kw_only=True)
class MethodError:
    """Errors on one climate, as shares: of the heat saved by the reference, and of the whole demand."""

    climate: str
    invented: bool  # a demo climate, else the year of a real place
    fitted: str  # whether the method's two constants were fitted on this climate: yes, perhaps, no
    median: float  # half of the homes are nearer than this
    nineteen_in_twenty: float
    worst: float
    wide: float  # share of homes that differ by more than 2.5 %
    beyond: int  # homes that differ by more than 6 % and also by more than 60 kWh
    bias: float  # median with its sign: below nil, the estimate saves less than the reference
    demand_bias: float  # the same for the demand itself


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """Homes of all climates whose heating meets about the same share of the loss; errors with sign, as shares.

    low and high are those of the climate where they lie widest.
    """

    up_to: float  # share of the loss met by heating, with the plain extract fan
    homes: int
    low: float  # at most one home in forty lies below, in any climate
    high: float  # at most one home in forty lies above, in any climate
    least: float
    most: float


@dataclass(frozen=True, slots=True, kw_only=True)
class MethodRun:
    """One run of the comparison."""

    date: str
    command: str
    reference: str
    homes: int  # on each climate
    climates: tuple[MethodError, ...]
    bands: tuple[Band, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Reference:
    """What the reference would probably find saved [kWh a year] where the estimate finds `saved`."""

    saved: float
    low: float
    high: float
    met_by_heating: float  # share of the baseline's loss
    band: Band


@cache
def method_run() -> MethodRun:
    """The last run that was written down."""
    text = resources.files("estimator").joinpath("data", "method_error.toml").read_text(encoding="utf-8")
    content = tomllib.loads(text)
    climates = tuple(MethodError(**row) for row in content.pop("climate"))
    bands = tuple(Band(**row) for row in content.pop("band"))
    return MethodRun(climates=climates, bands=bands, **content)


def met_by_heating(done: Estimate, option: str) -> float:
    """Share of an option's yearly loss that its heating meets; sun, people and machines meet the rest."""
    year = done.options[option].heat
    difference = done.shared.temp_difference
    loss = np.asarray(done.home.fabric_loss) * difference + year.ventilation_load
    whole = float(np.sum(np.where(difference > 0.0, loss, 0.0)))
    return float(np.sum(year.heat)) / whole if whole > 0.0 else 0.0


def band_of(share: float, run: MethodRun) -> Band:
    """The band of homes that a share met by heating belongs to."""
    return next((band for band in run.bands if share <= band.up_to), run.bands[-1])


def method_error(done: Estimate, comparison: Comparison, *, run: MethodRun | None = None) -> Reference | None:
    """Between which bounds the reference lies for 19 of 20 homes like this one; None in fixed-base mode.

    Fixed-base degree-days are another method, asked for by name, and were not held against the reference.
    """
    if done.home.fixed_base is not None:
        return None
    share = met_by_heating(done, comparison.baseline)
    band = band_of(share, run or method_run())
    saved = comparison.heat_saved
    least = max(abs(saved), LEAST_SAVED * done.options[comparison.baseline].heating_demand)
    bounds = sorted(saved - least * error / (1.0 + error) for error in (band.low, band.high))
    return Reference(saved=saved, low=bounds[0], high=bounds[1], met_by_heating=share, band=band)
