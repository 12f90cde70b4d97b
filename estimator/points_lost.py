"""Where did each point of efficiency between certificate and house go, and what is mending it worth a year?"""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass
from typing import Any

import numpy as np

from estimator.corridor import air_year, heat_year
from estimator.estimate import Estimate, OptionYear, estimate
from estimator.inputs.places import with_values
from estimator.survey.certificate import read_certificate
from estimator.survey.numbers import DuctConductances, OptionNumbers, State
from estimator.units import to_kwh

_NO_DUCTS = DuctConductances(intake=0.0, exhaust=0.0, supply=0.0, extract=0.0)

METRE = 1.0  # m, of each of the two ducts that cost heat
MORE_INSULATION = 25.0  # mm


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """Efficiency once one more thing of the real installation is counted.

    efficiency: share of the heat of the balanced air that comes back, 0 to 1, heaters taken off, over the hours with
    heat. lost: points that this step takes, negative where it gives. heating: useful heat the home then takes [kWh a
    year]; heaters: their electricity [kWh a year]; both None for what only a test bench sees.
    """

    name: str
    words: str
    efficiency: float
    lost: float
    heating: float | None
    heaters: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class YearlyWorth:
    """What a change on site saves a year: useful heat and electricity [kWh], money; negative where it costs."""

    name: str
    words: str
    heat: float
    electricity: float
    money: float


def efficiency_steps(done: Estimate, name: str) -> tuple[Step, ...]:
    """From the certificate to the house as estimated, one thing at a time; none for an option without an exchanger.

    The last step's efficiency is the `effective_efficiency` of the option; each step has its own hours with heat.
    Unequal flows raise the share kept of the balanced air; the rest of the larger flow passes through leaks instead.
    """
    option = done.options[name]
    numbers = option.numbers
    if not np.any(numbers.effectiveness > 0.0):
        return ()
    printed = float(read_certificate(done.case.options[name].unit).printed)
    alone = float(np.squeeze(numbers.effectiveness))
    bare = dataclasses.replace(
        numbers,
        states=tuple(_balanced(state) for state in numbers.states),
        ducts=_NO_DUCTS, outside=False, preheat_to=None, throttle_at=None, post_heat_to=None,
    )  # fmt: skip
    ducted = dataclasses.replace(bare, ducts=numbers.ducts, outside=numbers.outside)
    unequal = dataclasses.replace(ducted, states=numbers.states)
    frost = dataclasses.replace(unequal, preheat_to=numbers.preheat_to, throttle_at=numbers.throttle_at)
    counted = [
        ("certificate", "as printed, at its reference flow", printed, None, None),
        ("unit", "without leakage inside the unit, with the in-use factor", alone, None, None),
        *(
            (step, words, *_counted(done, name, changed))
            for step, words, changed in (
                ("duty", "at the flows set here, boost included", bare),
                ("ducts", "with the ducts and the room the unit stands in", ducted),
                ("imbalance", "with the flows as commissioned", unequal),
                ("frost", "with frost protection", frost),
                ("post-heater", "as estimated", numbers),
            )
        ),
    ]
    before = [counted[0], *counted]
    return tuple(
        Step(name=step, words=words, efficiency=now, lost=last[2] - now, heating=heating, heaters=heaters)
        for last, (step, words, now, heating, heaters) in zip(before, counted, strict=False)
    )


def _balanced(state: State) -> State:
    larger = np.maximum(state.supply, state.extract)
    return dataclasses.replace(state, supply=larger, extract=larger)


def _counted(done: Estimate, name: str, numbers: OptionNumbers) -> tuple[float, float, float]:
    """Effective efficiency, useful heat and heaters' electricity [kWh a year] with these numbers of the option."""
    step = done.year.weight
    air = air_year(done.home, numbers, done.shared, top_up=done.home.top_up and name != done.case.today)
    heat = heat_year(done.home, numbers, done.shared, air, step=step)
    return (
        heat.effective_efficiency.item(),
        float(to_kwh(np.sum(heat.heat) * step)),
        float(to_kwh(np.sum(air.preheater) * step)),
    )


def duct_worth(done: Estimate, name: str) -> tuple[YearlyWorth, ...]:
    """What insulating the ducts saves a year, what 25 mm more of it would, and what another metre of duct costs.

    Each is the difference of two full estimates. The ducts that cost heat are intake and exhaust of a unit in the
    heated envelope, supply and extract of one outside it; a metre more is one of each. Empty without an exchanger.
    """
    ducts = done.case.options[name].ducts
    names = ("supply", "extract") if ducts.standing == "outside" else ("intake", "exhaust")
    lengths = {end: float(getattr(ducts, end) or 0.0) for end in names}
    if not np.any(done.options[name].numbers.effectiveness > 0.0):
        return ()
    thickness = float(ducts.insulation or 0.0)
    path = f"options.{name}.ducts."
    now = done.options[name]
    bare = _changed(done, name, {f"{path}insulation": 0.0})
    thicker = _changed(done, name, {f"{path}insulation": thickness + MORE_INSULATION})
    longer = _changed(done, name, {f"{path}{end}": length + METRE for end, length in lengths.items()})
    both = " and ".join(names)
    return (
        _saved("insulation", f"{thickness:g} mm round the ducts, against none", before=bare, after=now),
        _saved("more insulation", f"{MORE_INSULATION:g} mm more round the ducts", before=now, after=thicker),
        _saved("another metre", f"{METRE:g} m more of {both} duct each", before=now, after=longer),
    )


def _changed(done: Estimate, name: str, values: dict[str, Any]) -> OptionYear:
    return estimate(with_values(done.case, values), done.year).options[name]


def _saved(name: str, words: str, *, before: OptionYear, after: OptionYear) -> YearlyWorth:
    return YearlyWorth(
        name=name,
        words=words,
        heat=before.heating_demand - after.heating_demand,
        electricity=before.electricity - after.electricity,
        money=before.household_bill - after.household_bill,
    )
