"""What does energy cost and emit, now and later, what does the roof give, and over which years is money counted?"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Annotated, Literal

from estimator.inputs.quantity import STRICT, Entry, Quantity

TariffKind = Literal["flat", "time of use", "block"]
Billing = Literal["month", "quarter", "year"]
Weekday = Literal["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"]
DaylightSaving = Literal["none", "Europe", "North America", "Australia, south-east", "New Zealand"]
LoadShape = Literal["measured mean of many homes", "out in the daytime", "even at all hours"]
GridPath = Literal["constant", "falling"]
MoneyTerms = Literal["real", "nominal"]

_PRACTICE = "common practice, no source"
_UNCHANGED = "as today: nobody knows"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Tariff:
    """How electricity is priced over hours and amounts, and when the household uses it."""

    __pydantic_config__ = STRICT

    kind: Annotated[
        TariffKind,
        Entry(
            "flat: one price; time of use: other prices at the hours named below; block: other prices beyond the kWh "
            "named below; the price of electricity stands at all other hours, or for the first block",
            "typical",
            "the price cap is flat",
        ),
    ] = "flat"
    windows: Annotated[
        str,
        Entry(
            "hours with their own price, hundredths per kWh, clock time: 9 at 0:30-5:30; 38 at 16:00-19:00 Mon-Fri",
            "assumed",
            "none",
            longest=400,
        ),
    ] = ""
    blocks: Annotated[
        str,
        Entry(
            "prices in hundredths beyond so many kWh of a billing period: 31 beyond 150; 45 beyond 330",
            "assumed",
            "none",
            longest=200,
        ),
    ] = ""
    billing: Annotated[Billing, Entry("billing period in which the kWh of a block count", "typical", _PRACTICE)] = (
        "month"
    )
    daylight_saving: Annotated[
        DaylightSaving,
        Entry("whose rule of summer time the clock follows", "typical", "Directive 2000/84/EC; from memory"),
    ] = "Europe"
    first_day: Annotated[Weekday, Entry("weekday of 1 January in the year counted", "assumed", "as in 2026")] = (
        "Thursday"
    )
    level: Annotated[
        float,
        Quantity("%", 5, 500, "all prices of this tariff against those entered", "typical", "as entered"),
    ] = 100.0
    household: Annotated[
        LoadShape,
        Entry(
            "how the household's other electricity, and hot water where electric, lies over the day",
            "typical",
            "representative profile H0 (VDEW 1999), Germany",
        ),
    ] = "measured mean of many homes"


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
    export: Annotated[
        float | None,
        Quantity("p/kWh", 0, 300, "price paid for a kWh sold to the grid", derived="the table of fuels"),
    ] = None
    electricity_growth: Annotated[
        float,
        Quantity(
            "%/year",
            -10,
            20,
            "growth of the price of electricity, in the money chosen under worth",
            "assumed",
            _UNCHANGED,
        ),
    ] = 0.0
    fuel_growth: Annotated[
        float,
        Quantity(
            "%/year", -10, 20, "growth of the price of fuel, in the money chosen under worth", "assumed", _UNCHANGED
        ),
    ] = 0.0
    carbon_path: Annotated[
        GridPath,
        Entry("carbon of electricity in later years: constant, or falling to the figure below", "assumed", _UNCHANGED),
    ] = "constant"
    carbon_year: Annotated[
        int, Quantity("", 2000, 2100, "first year counted, in which carbon is as entered", "assumed", "this year")
    ] = 2026
    carbon_end_year: Annotated[
        int,
        Quantity(
            "", 2001, 2150, "year in which the path has come down, level thereafter", "assumed", "a plan, no fact"
        ),
    ] = 2035
    carbon_end: Annotated[
        float,
        Quantity("kg/kWh", 0, 2, "CO2 equivalent of a kWh of electricity then", "assumed", "a plan; from memory"),
    ] = 0.05
    tariff: Tariff = field(default_factory=Tariff)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Roof:
    """Solar cells on the roof."""

    __pydantic_config__ = STRICT

    size: Annotated[
        float, Quantity("kW", 0, 100, "installed peak power of the cells; 0: none", "assumed", "none on the roof")
    ] = 0.0
    tilt: Annotated[float, Quantity("°", 0, 90, "tilt from the horizontal", "typical", _PRACTICE)] = 35.0
    azimuth: Annotated[
        float, Quantity("°", 0, 360, "facing, from north (0) over east (90) to south (180)", "assumed", "due south")
    ] = 180.0
    losses: Annotated[
        float,
        Quantity("%", 0, 80, "losses of wiring, dirt, age and shade", "typical", "PVWatts Version 5 Manual, NREL 2014"),
    ] = 14.0757


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Worth:
    """Over which years money is counted, and how later money weighs."""

    __pydantic_config__ = STRICT

    life: Annotated[
        float,
        Quantity("years", 1, 60, "years the kit is expected to serve", "assumed", "common practice, no source"),
    ] = 20.0
    horizon: Annotated[
        int | None, Quantity("years", 1, 60, "whole years over which money is counted", derived="the life of the kit")
    ] = None
    discount: Annotated[
        float,
        Quantity(
            "%/year",
            -5,
            30,
            "by how much money a year later weighs less",
            "typical",
            "The Green Book, HM Treasury: 3.5% real in years 0 to 30; through a secondary text",
        ),
    ] = 3.5
    terms: Annotated[
        MoneyTerms,
        Entry(
            "real: discount and growth above inflation, all in today's money; nominal: inflation is in them",
            "typical",
            "The Green Book, HM Treasury; through a secondary text",
        ),
    ] = "real"
    inflation: Annotated[
        float,
        Quantity(
            "%/year",
            -2,
            20,
            "general inflation, by which upkeep and renewals grow in nominal terms",
            "typical",
            "aim of the Bank of England",
        ),
    ] = 2.0
