"""What is the house, who lives in it, and how leaky is it?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from estimator.inputs.quantity import STRICT, Entry, Quantity, Tag

Form = Literal["detached", "semi-detached", "terraced", "flat"]
Age = Literal["before 1920", "1920 to 1975", "1976 to 1995", "1996 to 2010", "2011 or later", "very low energy"]
Construction = Literal["solid masonry", "cavity masonry", "timber frame"]
Mass = Literal["very light", "light", "medium", "heavy", "very heavy"]
Shelter = Literal["none", "few", "some", "much", "full"]
Ground = Literal["slab", "basement", "crawlspace"]
Known = Literal["yes", "no", "unknown"]
LeakageMeasure = Literal["q50", "n50", "q4", "estimate"]
InfiltrationModel = Literal["basic", "enhanced", "annual"]
Terrain = Literal["water", "open", "suburb", "city"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Home:
    """The dwelling as surveyed. Entries left out (None) are worked out from the others in `fill`."""

    __pydantic_config__ = STRICT

    floor_area: Annotated[
        float,
        Quantity("m²", 15, 2000, "heated floor area, all storeys, inside the outer walls", "assumed", "demo home"),
    ] = 110.0
    storeys: Annotated[
        int | None, Quantity("", 1, 3, "heated storeys", derived="the form: one for a flat, two for any other home")
    ] = None
    ceiling_height: Annotated[
        float,
        Quantity("m", 1.9, 5, "mean height from floor to ceiling", "typical", "common practice, no source"),
    ] = 2.4
    volume: Annotated[
        float | None,
        Quantity("m³", 30, 10000, "heated air volume", derived="floor area times ceiling height"),
    ] = None
    envelope_area: Annotated[
        float | None,
        Quantity(
            "m²",
            40,
            6000,
            "walls, floor and roof around the heated volume, party walls included, as a pressure test counts them",
            derived="a rectangle one and a half times as long as wide, with the storeys and height given",
        ),
    ] = None
    form: Annotated[Form, Entry("how the house stands among its neighbours", "assumed", "demo home")] = "semi-detached"
    bedrooms: Annotated[int, Quantity("", 1, 12, "bedrooms", "assumed", "demo home")] = 3
    habitable_rooms: Annotated[
        int | None,
        Quantity("", 1, 20, "bedrooms and living rooms", derived="bedrooms plus one, plus one from four up"),
    ] = None
    people: Annotated[
        float | None,
        Quantity("", 0, 20, "people living there", derived="bedrooms, at least one and at most five"),
    ] = None
    bathrooms: Annotated[int, Quantity("", 0, 8, "bathrooms and shower rooms", "assumed", "demo home")] = 1
    toilets: Annotated[int, Quantity("", 0, 8, "separate toilets without a bath or shower", "assumed", "demo home")] = 1
    utility_rooms: Annotated[int, Quantity("", 0, 4, "utility or laundry rooms", "assumed", "demo home")] = 0
    age: Annotated[Age, Entry("when it was built or last rebuilt", "assumed", "demo home")] = "1976 to 1995"
    construction: Annotated[Construction, Entry("how its walls are built", "assumed", "demo home")] = "cavity masonry"
    fabric_loss: Annotated[
        float | None,
        Quantity(
            "W/K",
            5,
            3000,
            "heat lost through walls, roof, floor, windows and doors, ventilation not counted",
            derived="age, construction, form and size, with typical U-values",
        ),
    ] = None
    mass: Annotated[
        Mass | None,
        Entry("thermal mass class of ISO 13790", derived="construction and age: see the table of ages"),
    ] = None
    heat_capacity: Annotated[
        float | None,
        Quantity("Wh/K", 200, 200000, "heat stored by the inside of the house per kelvin", derived="mass class"),
    ] = None
    aperture_north: Annotated[
        float | None,
        Quantity("m²", 0, 100, "effective sun-collecting area facing north", derived="a share of the floor area"),
    ] = None
    aperture_east: Annotated[
        float | None,
        Quantity("m²", 0, 100, "effective sun-collecting area facing east", derived="a share of the floor area"),
    ] = None
    aperture_south: Annotated[
        float | None,
        Quantity("m²", 0, 100, "effective sun-collecting area facing south", derived="a share of the floor area"),
    ] = None
    aperture_west: Annotated[
        float | None,
        Quantity("m²", 0, 100, "effective sun-collecting area facing west", derived="a share of the floor area"),
    ] = None
    internal_gains: Annotated[
        float | None,
        Quantity(
            "W",
            0,
            5000,
            "mean heat from people, cooking, light and machines",
            derived="people and floor area",
        ),
    ] = None
    indoor_temperature: Annotated[
        float,
        Quantity(
            "°C",
            10,
            26,
            "mean indoor temperature in the heating season, all rooms, day and night",
            "typical",
            "between the 18 and 21 °C usual in heated homes; from memory",
        ),
    ] = 19.5
    moisture: Annotated[
        float | None,
        Quantity(
            "kg/day",
            0,
            60,
            "vapour given off indoors by people, cooking, washing and drying",
            derived="people, 2 kg each",
        ),
    ] = None
    moist_air: Annotated[
        float,
        Quantity(
            "%",
            20,
            95,
            "relative humidity indoors in a moist home, for the drain at its worst",
            "assumed",
            "common practice, no source",
        ),
    ] = 60.0
    open_flue: Annotated[
        Known,
        Entry(
            "an open-flued boiler, open fire, gas fire or stove that takes its air from the room",
            "assumed",
            "ask",
        ),
    ] = "unknown"
    radon_area: Annotated[Known, Entry("the house stands in a radon area", "assumed", "ask")] = "unknown"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Leakage:
    """How air gets through the envelope, tested or not."""

    __pydantic_config__ = STRICT

    measure: Annotated[
        LeakageMeasure,
        Entry(
            "q50: m³/(h m²) at 50 Pa; n50: air changes per hour at 50 Pa; q4: m³/(h m²) at 4 Pa; "
            "estimate: from age and construction",
            "assumed",
            "no test entered",
        ),
    ] = "estimate"
    value: Annotated[
        float | None,
        Quantity("as named", 0.01, 60, "leakage in the unit that its measure names", derived="age and construction"),
    ] = None
    basis: Annotated[
        Tag | None,
        Entry(
            "measured: by a pressure test; typical: from age and construction; assumed: a figure without a test",
            derived="typical for an estimate, assumed for a figure whose basis is not said",
        ),
    ] = None
    tests: Annotated[
        str,
        Entry(
            "pressure tests over the years and works between them, as in 2016-05 q50 9.2 (a note); 2019 works; "
            "2021-03 n50 4.1: the newest after the works is used where no other leakage is entered",
            "assumed",
            "none listed",
            longest=1000,
        ),
    ] = ""
    exponent: Annotated[
        float,
        Quantity("", 0.5, 1.0, "flow exponent of the leakage", "typical", "ASTM E779 convention; from memory"),
    ] = 0.65
    model: Annotated[
        InfiltrationModel,
        Entry(
            "basic: stack and wind from leakage area; enhanced: with flue and crawlspace; annual: n50/20 with shelter",
            "typical",
            "ASHRAE Fundamentals, basic model",
        ),
    ] = "basic"
    shelter: Annotated[
        Shelter,
        Entry(
            "none: open country; few: a few obstructions; some: buildings across the street; "
            "much: town gardens; full: neighbours close by",
            "typical",
            "ASHRAE Fundamentals 2001 ch. 26, shelter classes 1 to 5",
        ),
    ] = "some"
    ground: Annotated[Ground, Entry("what is under the floor (enhanced model only)", "assumed", "commonest case")] = (
        "slab"
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Place:
    """Where the weather comes from, and how the site differs from its station."""

    __pydantic_config__ = STRICT

    climate: Annotated[
        str,
        Entry(
            "name of an included climate, a weather file, a latitude and longitude such as 52.2,0.1, or "
            "monthly means for the twelve figures of the section months",
            "assumed",
            "demo climate",
            longest=400,
        ),
    ] = "Inland vale"
    altitude: Annotated[
        float | None,
        Quantity(
            "m",
            -400,
            6000,
            "altitude of the home: its air is colder than at a lower station by 6.5 K/km, and thinner",
            derived="the altitude that the weather is for: nothing is corrected",
        ),
    ] = None
    terrain: Annotated[
        Terrain,
        Entry(
            "land around the home for some 500 m, which slows the wind of the station: open as at a station; the "
            "leakage models have a shelter of their own, so change it only where the station stands otherwise",
            "typical",
            "weather stations stand on open land (World Meteorological Organization)",
        ),
    ] = "open"
    wind_height: Annotated[
        float,
        Quantity(
            "m",
            1,
            200,
            "height above ground that the wind is taken at",
            "typical",
            "weather stations measure at 10 m (World Meteorological Organization)",
        ),
    ] = 10.0
    start_weekday: Annotated[
        int,
        Quantity("", 0, 6, "weekday of 1 January: 0 is Monday, 6 Sunday", "assumed", "1 January 2026: Thursday"),
    ] = 3
