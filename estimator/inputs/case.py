"""What is one whole case: a home, its air, its heating, prices, and the options to compare?"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Annotated, Literal

from estimator.inputs.home import Home, Leakage, Place
from estimator.inputs.months import Months
from estimator.inputs.option import Option
from estimator.inputs.quantity import STRICT, Entry, Quantity, Tag
from estimator.inputs.rooms import Rooms
from estimator.inputs.sealing import Draughts, Sealing

CASE_VERSION = 1

AirRule = Literal["England 2021", "ASHRAE 62.2", "EN 16798-1 category II", "entered"]
DemandMode = Literal["memory", "fixed base"]
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


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Heating:
    """What heats the home, and how its demand is worked out."""

    __pydantic_config__ = STRICT

    fuel: Annotated[
        str, Entry("what heats the home: a row of the table of fuels", "assumed", "demo home", longest=60)
    ] = "natural gas"
    efficiency: Annotated[
        float | None,
        Quantity(
            "%",
            20,
            700,
            "useful heat per unit of fuel over the season; a heat pump stands above 100",
            derived="the row of the fuel",
        ),
    ] = None
    mode: Annotated[
        DemandMode,
        Entry(
            "memory: gains and thermal mass decide when heat is needed; fixed base: degree-hours at one base",
            "typical",
            "the method of this estimator",
        ),
    ] = "memory"
    base_temperature: Annotated[
        float,
        Quantity("°C", 0, 25, "base of the degree-hours in fixed-base mode", "typical", "UK degree-day practice"),
    ] = 15.5


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Prices:
    """What energy costs and emits. Prices in hundredths (pence, cents), so that no decimal mark is needed."""

    __pydantic_config__ = STRICT

    currency: Annotated[str, Entry("sign or code of the currency", "assumed", "demo", longest=4)] = "£"
    dated: Annotated[
        str, Entry("when and where the prices were valid", "typical", "the table of fuels", longest=120)
    ] = "Great Britain average price cap, July to September 2026"
    electricity: Annotated[
        float | None,
        Quantity("p/kWh", 0, 300, "price of a bought kWh of electricity", derived="the table of fuels"),
    ] = None
    electricity_standing: Annotated[
        float | None, Quantity("p/day", 0, 1000, "electricity standing charge", derived="the table of fuels")
    ] = None
    fuel: Annotated[
        float | None,
        Quantity("p/kWh", 0, 300, "price of a bought kWh of heating fuel", derived="the row of the fuel"),
    ] = None
    fuel_standing: Annotated[
        float | None,
        Quantity("p/day", 0, 1000, "standing charge of the heating fuel", derived="the row of the fuel"),
    ] = None
    electricity_carbon: Annotated[
        float | None,
        Quantity(
            "kg/kWh",
            0,
            2,
            "CO2 equivalent of a kWh of electricity at the socket",
            derived="the table of fuels",
        ),
    ] = None
    fuel_carbon: Annotated[
        float | None,
        Quantity("kg/kWh", 0, 2, "CO2 equivalent of a kWh of heating fuel", derived="the row of the fuel"),
    ] = None
    other_electricity: Annotated[
        float,
        Quantity(
            "kWh",
            0,
            50000,
            "the household's other electricity a year",
            "typical",
            "Ofgem typical use, 2,700 kWh",
        ),
    ] = 2700.0
    hot_water: Annotated[
        float | None,
        Quantity("kWh", 0, 20000, "useful heat for hot water a year", derived="500 kWh, and 600 for each person"),
    ] = None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Worth:
    """Over which life the money is counted."""

    __pydantic_config__ = STRICT

    life: Annotated[
        float,
        Quantity("years", 1, 60, "years the kit is expected to serve", "assumed", "common practice, no source"),
    ] = 20.0


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
    heating: Heating = field(default_factory=Heating)
    prices: Prices = field(default_factory=Prices)
    worth: Worth = field(default_factory=Worth)
    options: dict[str, Option] = field(default_factory=_options)
    tags: dict[str, Tag] = field(default_factory=dict)
    """Said by the user: what an entered value rests on, by dotted path; entered values count as measured otherwise."""
