"""Which parts has the heat of the fresh air, and what is left of it once everything is taken off?

Numbers of one option against one baseline in one year, in the order in which they are told and drawn: what goes past
the exchanger, what it fails to keep, what the house leaks in addition, then what fans, frost heater and upkeep take.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from estimator.report import cash, figures
from estimator.report.drawing import Label
from estimator.units import to_hundredths

_NO_HEAT = 0.05  # kWh; less counts as nil
_NO_MONEY = 0.005  # half a hundredth of the currency; less counts as nil
_DEAREST_TAKE = 2.5  # all that is taken back is never drawn more than so many times as wide as all of the heat


@dataclass(frozen=True, slots=True, kw_only=True)
class Take:
    """What is taken back from the saving in a year; below nil where the option spares it."""

    name: str
    cost: float  # money
    meaning: Literal["electricity", "upkeep"] = "electricity"
    detail: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class FreshAir:
    """The numbers of one option against one baseline, of one year."""

    past: float  # kWh, air that never meets the exchanger
    lost: float  # kWh, passes the exchanger and is not kept
    kept: float  # kWh, what heaters of the unit give not counted
    saved: float  # kWh of heat the house needs less than with the baseline; may be negative
    baseline: str
    heat_price: float  # money for a kWh of useful heat
    takes: tuple[Take, ...]
    currency: str
    heater: float = 0.0  # kWh that the unit's own heaters give to the air
    exchanger: bool = True  # or a warmer room on the way in

    @property
    def total(self) -> float:
        """Heat for all fresh air [kWh]."""
        return self.past + self.lost + self.kept

    @property
    def left(self) -> float:
        """What is left of the worth of the saved heat [money]."""
        return self.saved * self.heat_price - sum(take.cost for take in self.takes)


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """One part that leaves or joins, with its labels."""

    size: float  # kWh of heat, or what buys as much
    meaning: str
    label: Label
    after: Label | None  # what the stream is from here on
    stream: Literal["air", "kept"]
    exchanger: bool = False
    money: bool = False

    @property
    def heat_side(self) -> bool:
        """Whether the stream is still fresh air when it gets here."""
        return self.exchanger or self.stream == "air"


def in_words(air: FreshAir) -> str:
    """The whole account for somebody who does not see the picture."""
    said = [f"Warming the year's fresh air takes {figures.energy(air.total)} of heat."]
    for stage in stages(air):
        verb = "Of this, " if not stage.money else "From its worth, "
        if stage.size < 0:
            verb = "To this comes "
        said.append(f"{verb}{stage.label.figure}: {stage.label.words}.")
        if stage.after is not None:
            said.append(f"{stage.after.figure}: {stage.after.words}.")
    end = result(air)
    return " ".join([*said, f"In the end {end.figure}: {end.words}."])


def stages(air: FreshAir) -> list[Stage]:
    """Every part that is not nil, in order; where one drops out, the state after it takes its place."""
    more = air.kept + air.heater - air.saved
    past, passes = (
        ("leaks past the exchanger", "passes the exchanger")
        if air.exchanger
        else ("comes in as cold as it is outdoors", "given by the loft on the way in")
    )
    leak = "more outdoor air in all" if more > 0 else "less outdoor air in all"
    heat = [
        Stage(
            size=air.past,
            meaning="lost",
            label=Label(figures.energy(air.past), past),
            after=Label(figures.energy(air.lost + air.kept), passes),
            stream="air" if air.lost else "kept",
        ),
        Stage(
            size=air.lost,
            meaning="lost",
            label=Label(figures.energy(air.lost), "lost in exchanger and ducts"),
            after=Label(figures.energy(air.kept), "kept", colour="kept"),
            stream="kept",
            exchanger=True,
        ),
        Stage(
            size=-air.heater,
            meaning="electricity",
            label=Label(figures.energy(air.heater), "added by the unit's own heater"),
            after=Label(figures.energy(air.kept + air.heater), "spares the heating as much", colour="kept"),
            stream="kept",
        ),
        Stage(
            size=more,
            meaning="lost" if more > 0 else "kept",
            label=Label(figures.energy(abs(more)), f"{leak} than with {air.baseline}"),
            after=_worth(air),
            stream="kept",
        ),
    ]
    told: list[Stage] = []
    for stage in heat:
        if abs(stage.size) >= _NO_HEAT:
            told.append(stage)
        elif told:
            told[-1] = replace(told[-1], after=stage.after)
    return told + [_take(air, take) for take in air.takes if abs(take.cost) >= _NO_MONEY]


def _worth(air: FreshAir) -> Label:
    sum_ = cash.money(abs(air.saved) * air.heat_price, air.currency)
    words = f"less heating, worth {sum_}" if air.saved >= 0 else f"more heating, for {sum_}"
    return Label(figures.energy(abs(air.saved)), words, colour="kept" if air.saved >= 0 else "ink")


def _take(air: FreshAir, take: Take) -> Stage:
    words = take.name if take.cost > 0 else f"less for {take.name}"
    label = Label(cash.money(abs(take.cost), air.currency), f"{words}, {take.detail}" if take.detail else words)
    meaning = take.meaning if take.cost > 0 else "kept"
    size = take.cost * _heat_per_money(air)
    return Stage(size=size, meaning=meaning, label=label, after=None, stream="kept", money=True)


def _heat_per_money(air: FreshAir) -> float:
    """kWh of heat that a unit of money buys; where heat costs next to nothing, what keeps the picture readable."""
    spent = sum(abs(take.cost) for take in air.takes if abs(take.cost) >= _NO_MONEY)
    widest = _DEAREST_TAKE * air.total / spent if spent else 0.0
    return min(1.0 / air.heat_price, widest) if air.heat_price > 0 else widest


def result(air: FreshAir) -> Label:
    """What is left in the end."""
    sum_ = cash.money(abs(air.left), air.currency)
    words = "left as a saving" if air.left >= 0 else "short: it costs more than it saves"
    return Label(f"{sum_} a year", words, size=21.0, colour="kept" if air.left >= 0 else "electricity")


def foot(air: FreshAir) -> str:
    """What the widths mean."""
    scale = "Drawn to scale: heat in kWh up to the dashed line"
    if _heat_per_money(air) * air.heat_price < 0.999:
        return f"{scale}; what follows has a scale of its own, since heat costs next to nothing here."
    price = cash.unit_price(to_hundredths(air.heat_price), air.currency)
    return f"{scale}, money after it, at {price} of heat."


def begin(air: FreshAir) -> Label:
    """What it starts from."""
    return Label(figures.energy(air.total), "warms the year's fresh air")
