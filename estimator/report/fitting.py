"""What is known of one option as fitted: each line's cost over the leakage, installer's figures, ways of the air?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from estimator.air_paths import AirPaths, air_paths
from estimator.compare import Result
from estimator.estimate import Estimate
from estimator.inputs.case import Case
from estimator.inputs.places import with_values
from estimator.inputs.rooms import Rooms
from estimator.installed import Installed, installed
from estimator.line_costs import LineCost, line_costs
from estimator.points_lost import YearlyWorth, duct_worth
from estimator.room_plan import planned_rooms


@dataclass(frozen=True, slots=True, kw_only=True)
class Priced:
    """One line's cost at the home's own leakage, and its money at the low and the high end of it."""

    cost: LineCost
    low: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """What a change to the ducts saves a year, and its money at the low and the high end of the leakage."""

    worth: YearlyWorth
    low: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Fitting:
    """Everything said about one option as fitted.

    kept: least and most of the heat that comes back over the home's leakage, 0 to 1. rooms: as entered, or proposed
    where none are; proposed: which of the two.
    """

    option: str
    label: str
    done: Estimate
    sheet: Installed
    kept: tuple[float, float]
    lines: tuple[Priced, ...]
    changes: tuple[Change, ...]
    rooms: Rooms
    proposed: bool
    paths: AirPaths | None

    @property
    def case(self) -> Case:
        """The filled case."""
        return self.done.case

    @property
    def currency(self) -> str:
        """Sign or code of the money."""
        return self.done.case.prices.currency

    def line(self, path: str) -> Priced:
        """One line by its dotted path inside the option."""
        return next(line for line in self.lines if line.cost.path == path)


def with_exchanger(done: Estimate) -> tuple[str, ...]:
    """Names of the options whose air passes an exchanger."""
    return tuple(name for name, option in done.options.items() if np.any(option.numbers.effectiveness > 0.0))


def fitting(result: Result, ends: tuple[Result, Result], option: str) -> Fitting:
    """One option with an exchanger; `ends` are the same case at the low and the high end of its leakage."""
    done = result.estimate
    sheet = installed(done, option)
    if sheet is None:
        raise ValueError(f"{option} has no exchanger")
    low, high = (line_costs(end.estimate, option) for end in ends)
    lines = tuple(
        Priced(cost=cost, low=min(at.money for at in (cost, *others)), high=max(at.money for at in (cost, *others)))
        for cost, *others in zip(line_costs(done, option), low, high, strict=True)
    )
    worths = (sheet.worth, *(duct_worth(end.estimate, option) for end in ends))
    kept = [float(np.squeeze(at.estimate.options[option].heat.effective_efficiency)) for at in (result, *ends)]
    given = done.case.rooms
    entered = given.option == option and bool(given.fed or given.drawn or given.lines)
    rooms = given if entered else planned_rooms(done.case, option)
    return Fitting(
        option=option,
        label=done.options[option].label,
        done=done,
        sheet=sheet,
        kept=(min(kept), max(kept)),
        lines=lines,
        changes=tuple(
            Change(worth=each[0], low=min(at.money for at in each), high=max(at.money for at in each))
            for each in zip(*worths, strict=True)
        ),
        rooms=rooms,
        proposed=not entered,
        paths=air_paths(with_values(done.case, {"rooms": rooms})),
    )
