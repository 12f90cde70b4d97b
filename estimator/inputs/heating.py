"""What heats the home, with one source or with two, and at which temperatures does a heat pump work?"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Annotated, Literal

from estimator.inputs.quantity import STRICT, Entry, Quantity

DemandMode = Literal["memory", "fixed base"]
PumpMode = Literal["constant", "hourly"]
PumpSource = Literal["air", "ground"]

_MACHINES = "Staffell et al., Energy & Environmental Science 5 (2012), mean of tests of air-source machines"
_PRACTICE = "common practice, no source"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Pump:
    """How a heat pump works from hour to hour; used only where it is not taken at one seasonal efficiency."""

    __pydantic_config__ = STRICT

    mode: Annotated[
        PumpMode,
        Entry(
            "constant: the seasonal efficiency in every hour; hourly: from the temperatures of source and flow",
            "typical",
            "the method of this estimator",
        ),
    ] = "constant"
    source: Annotated[PumpSource, Entry("where it takes its heat from", "typical", _PRACTICE)] = "air"
    ground_temperature: Annotated[
        float,
        Quantity("°C", -5, 25, "temperature of the source where that is the ground, all year", "assumed", _PRACTICE),
    ] = 7.0
    grade: Annotated[
        float,
        Quantity("%", 20, 70, "real over ideal performance between source and flow", "typical", _MACHINES),
    ] = 37.0
    least_lift: Annotated[
        float,
        Quantity(
            "K", 5, 50, "difference between flow and source below which it gains nothing more", "typical", _MACHINES
        ),
    ] = 25.0
    design_flow: Annotated[
        float, Quantity("°C", 25, 80, "flow temperature on the coldest days", "assumed", _PRACTICE)
    ] = 50.0
    design_outdoors: Annotated[
        float, Quantity("°C", -30, 15, "outdoor temperature of the coldest days", "assumed", _PRACTICE)
    ] = -3.0
    mild_flow: Annotated[float, Quantity("°C", 20, 80, "flow temperature on mild days", "assumed", _PRACTICE)] = 32.0
    mild_outdoors: Annotated[
        float,
        Quantity(
            "°C",
            0,
            25,
            "outdoor temperature of mild days; the flow goes straight between the two",
            "assumed",
            _PRACTICE,
        ),
    ] = 15.0
    capacity: Annotated[
        float,
        Quantity(
            "kW",
            0,
            200,
            "largest heat it gives, the second source adding what is missing; 0: large enough for every hour",
            "assumed",
            "large enough",
        ),
    ] = 0.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Second:
    """What else heats the home: a stated share of every hour, and whatever a heat pump cannot give."""

    __pydantic_config__ = STRICT

    fuel: Annotated[
        str, Entry("the second source: a row of the table of fuels", "assumed", "back-up heater", longest=60)
    ] = "direct electric"
    share: Annotated[
        float,
        Quantity("%", 0, 100, "share of the heat of every hour that it gives", "assumed", "one source heats the home"),
    ] = 0.0
    efficiency: Annotated[
        float | None,
        Quantity("%", 20, 700, "useful heat per unit of its fuel over the season", derived="the row of its fuel"),
    ] = None
    price: Annotated[
        float | None,
        Quantity("p/kWh", 0, 300, "price of a bought kWh of its fuel", derived="the row of its fuel"),
    ] = None
    carbon: Annotated[
        float | None,
        Quantity("kg/kWh", 0, 2, "CO2 equivalent of a kWh of its fuel", derived="the row of its fuel"),
    ] = None


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
    pump: Pump = field(default_factory=Pump)
    second: Second = field(default_factory=Second)
