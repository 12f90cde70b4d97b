"""What is one whole case: a home, its air, its heating, prices, and the options to compare?"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Annotated, Literal

from estimator.inputs.commissioned import Commissioned
from estimator.inputs.heating import Heating
from estimator.inputs.home import Home, Leakage, Place
from estimator.inputs.months import Months
from estimator.inputs.option import Option
from estimator.inputs.prices import Prices, Roof, Worth
from estimator.inputs.quantity import STRICT, Entry, Quantity, Tag
from estimator.inputs.rooms import Rooms
from estimator.inputs.sealing import Draughts, Sealing

CASE_VERSION = 1

AirRule = Literal["England 2021", "ASHRAE 62.2", "EN 16798-1 category II", "entered"]
YesNo = Literal["yes", "no"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class AirNeed:
    """How much fresh air the home needs."""

    __pydantic_config__ = STRICT

    rule: Annotated[
        AirRule,
        Entry("rule set for the whole-dwelling rate", "typical", "Approved Document F vol. 1 (2021)"),
    ] = "England 2021"
    entered: Annotated[
        float | None,
        Quantity("m³/h", 5, 3000, "whole-dwelling rate, where the rule is 'entered'", derived="the rule set"),
    ] = None
    no_option_short: Annotated[
        YesNo,
        Entry(
            "air an option lacks in an hour is added as plain outdoor air, so that none looks cheap by giving less",
            "typical",
            "the method of this estimator",
        ),
    ] = "yes"


def _options() -> dict[str, Option]:
    return {
        "today": Option(kind="intermittent fans", label="as aired today"),
        "extract": Option(kind="continuous extract", label="new plain extract"),
        "recovery": Option(kind="heat recovery", label="heat recovery"),
    }


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Case:
    """Everything one estimate needs, weather apart.

    `baseline` names the option that savings are counted from, `today` the one that is in place now; both stand as two
    separate comparisons and are never mixed.
    """

    __pydantic_config__ = STRICT

    version: Annotated[Literal[1], Entry("version of this file's form", "assumed")] = 1
    title: Annotated[str, Entry("a name for the case; stays in the file", "assumed", longest=120)] = ""
    baseline: Annotated[str, Entry("the option savings are counted from", longest=60)] = "extract"
    today: Annotated[str, Entry("the option in place now", longest=60)] = "today"
    place: Place = field(default_factory=Place)
    months: Months = field(default_factory=Months)
    home: Home = field(default_factory=Home)
    leakage: Leakage = field(default_factory=Leakage)
    draughts: Draughts = field(default_factory=Draughts)
    sealing: Sealing = field(default_factory=Sealing)
    air: AirNeed = field(default_factory=AirNeed)
    rooms: Rooms = field(default_factory=Rooms)
    commissioned: Commissioned = field(default_factory=Commissioned)
    heating: Heating = field(default_factory=Heating)
    prices: Prices = field(default_factory=Prices)
    roof: Roof = field(default_factory=Roof)
    worth: Worth = field(default_factory=Worth)
    options: dict[str, Option] = field(default_factory=_options)
    tags: dict[str, Tag] = field(default_factory=dict)
    """Said by the user: what an entered value rests on, by dotted path; entered values count as measured otherwise."""
