"""What is a way of ventilating, from certificate to cost?

One type serves every option. What it leaves out (None) comes from the row of its kind in the catalogue.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Annotated, Literal

from estimator.inputs.cost import Cost
from estimator.inputs.quantity import STRICT, Entry, Quantity

Frost = Literal["none", "pre-heater", "throttle"]
Standing = Literal["inside", "outside"]
YesNo = Literal["yes", "no"]
Control = Literal["none", "clock", "central demand", "local demand", "by hand"]

_ROW = "the row of this kind in the catalogue"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Flows:
    """How much air, when."""

    __pydantic_config__ = STRICT

    supply: Annotated[
        float | None,
        Quantity("m³/h", 0, 3000, "supply air in ordinary use", derived="the air the home needs"),
    ] = None
    extract: Annotated[
        float | None,
        Quantity("m³/h", 0, 3000, "extract air in ordinary use", derived="the air the home needs"),
    ] = None
    imbalance: Annotated[
        float | None,
        Quantity(
            "%",
            -50,
            50,
            "by how much extract exceeds supply after commissioning, of the larger flow, where only one is given",
            derived=_ROW,
        ),
    ] = None
    running_share: Annotated[
        float | None, Quantity("%", 0, 100, "share of all hours in which the fans run", derived=_ROW)
    ] = None
    boost_flow: Annotated[
        float | None,
        Quantity("m³/h", 0, 4000, "flow while boosted", derived="boost rate of the wet rooms, or duty if larger"),
    ] = None
    boost_share: Annotated[float | None, Quantity("%", 0, 100, "share of all hours on boost", derived=_ROW)] = None
    setback_share: Annotated[
        float | None,
        Quantity("%", 0, 100, "share of all hours set back while people are at home, such as nights", derived=_ROW),
    ] = None
    setback_flow: Annotated[
        float | None, Quantity("%", 0, 100, "flow while set back, of ordinary flow", derived=_ROW)
    ] = None
    away_share: Annotated[
        float | None, Quantity("%", 0, 100, "share of all hours set low because nobody is at home", derived=_ROW)
    ] = None
    away_flow: Annotated[
        float | None,
        Quantity("%", 0, 100, "flow while nobody is at home, of ordinary flow; less air is needed then", derived=_ROW),
    ] = None
    control: Annotated[
        Control | None,
        Entry(
            "what lowers the mean flow by itself: 'by hand' takes the factor below, the others standard values",
            derived=_ROW,
        ),
    ] = None
    demand_factor: Annotated[
        float | None,
        Quantity("%", 20, 100, "mean flow of ordinary flow under demand control, entered by hand", derived=_ROW),
    ] = None
    demand_exponent: Annotated[
        float | None,
        Quantity("", 1, 2, "how fan power falls with the demand factor: 1 in step, 2 at variable speed", derived=_ROW),
    ] = None
    ventilator_area: Annotated[
        float | None,
        Quantity("mm²", 0, 200000, "equivalent area of all background ventilators that stand open", derived=_ROW),
    ] = None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Unit:
    """What the certificate says, and how the unit is set."""

    __pydantic_config__ = STRICT

    effectiveness: Annotated[
        float | None,
        Quantity(
            "%",
            0,
            99,
            "temperature ratio of the exchanger on the supply side, at its reference flow",
            derived=_ROW,
        ),
    ] = None
    reference_flow: Annotated[
        float | None,
        Quantity(
            "m³/h",
            5,
            3000,
            "flow at which the certificate gives ratio and power",
            derived="70% of boost or duty",
        ),
    ] = None
    largest_flow: Annotated[
        float | None,
        Quantity("m³/h", 5, 4000, "largest flow the unit moves through its ducts", derived="the boost flow"),
    ] = None
    points: Annotated[
        str | None,
        Entry(
            "several points of the certificate instead: m³/h, %, W/(l/s) each, as in 100 88 0.6; 200 84 0.9",
            derived=_ROW,
            longest=300,
        ),
    ] = None
    ratio_includes_fan_heat: Annotated[
        YesNo | None, Entry("whether the certificate's ratio has fan heat in it", derived=_ROW)
    ] = None
    fan_power: Annotated[
        float | None,
        Quantity(
            "W/(l/s)",
            0,
            5,
            "specific fan power, all fans and controls, per litre of the larger flow",
            derived=_ROW,
        ),
    ] = None
    fan_exponent: Annotated[
        float | None, Quantity("", 1, 2, "how specific fan power grows with flow", derived=_ROW)
    ] = None
    standby: Annotated[float | None, Quantity("W", 0, 50, "power drawn all year besides the fans", derived=_ROW)] = None
    fan_pressure: Annotated[
        float | None,
        Quantity("Pa", 10, 1000, "total pressure each fan works against in ordinary use, filters clean", derived=_ROW),
    ] = None
    filter_pressure_rise: Annotated[
        float | None,
        Quantity("Pa", 0, 400, "by how much a filter's resistance grows until it is changed", derived=_ROW),
    ] = None
    fan_heat_useful: Annotated[
        float | None,
        Quantity("%", 0, 100, "share of fan power that helps heating in heating hours", derived=_ROW),
    ] = None
    frost: Annotated[Frost | None, Entry("frost protection", derived=_ROW)] = None
    frost_set_point: Annotated[
        float | None,
        Quantity(
            "°C",
            -20,
            5,
            "temperature kept against frost: of the intake with a pre-heater, of the exhaust when throttling",
            derived=_ROW,
        ),
    ] = None
    post_heater: Annotated[
        YesNo | None, Entry("electric heater in the supply air; its heat spares the heating as much", derived=_ROW)
    ] = None
    post_heat_to: Annotated[
        float | None, Quantity("°C", 5, 30, "supply temperature that the post-heater keeps", derived=_ROW)
    ] = None
    internal_leakage: Annotated[
        float | None,
        Quantity(
            "%",
            0,
            20,
            "share of the flow that is extract air leaked or carried back into the supply inside the unit",
            derived=_ROW,
        ),
    ] = None
    sound: Annotated[
        float | None,
        Quantity(
            "dB(A)",
            10,
            90,
            "sound power level from the casing, as its maker declares it",
            derived="nothing: not known, ask",
        ),
    ] = None
    in_use_factor: Annotated[
        float | None,
        Quantity(
            "",
            0.3,
            1,
            "factor on the ratio in place of the duct calculation; 1 with ducts given",
            derived=_ROW,
        ),
    ] = None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Ducts:
    """Where the unit stands and the ducts that cost heat: cold ones in warm rooms, warm ones in cold rooms."""

    __pydantic_config__ = STRICT

    standing: Annotated[
        Standing | None, Entry("inside or outside the heated envelope (loft, garage)", derived=_ROW)
    ] = None
    zone_factor: Annotated[
        float | None,
        Quantity(
            "",
            0,
            1,
            "temperature of the unit's room outside the envelope: 0 as outdoors, 1 as indoors",
            derived=_ROW,
        ),
    ] = None
    intake: Annotated[float | None, Quantity("m", 0, 60, "length of the outdoor intake duct", derived=_ROW)] = None
    exhaust: Annotated[float | None, Quantity("m", 0, 60, "length of the exhaust duct", derived=_ROW)] = None
    supply: Annotated[
        float | None, Quantity("m", 0, 100, "length of main supply duct outside the envelope", derived=_ROW)
    ] = None
    extract: Annotated[
        float | None, Quantity("m", 0, 100, "length of main extract duct outside the envelope", derived=_ROW)
    ] = None
    bore: Annotated[float | None, Quantity("mm", 50, 500, "inner diameter of the main ducts", derived=_ROW)] = None
    insulation: Annotated[float | None, Quantity("mm", 0, 300, "thickness of duct insulation", derived=_ROW)] = None
    conductivity: Annotated[
        float | None, Quantity("W/(m K)", 0.015, 0.2, "conductivity of the insulation", derived=_ROW)
    ] = None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Option:
    """One way of ventilating the home."""

    __pydantic_config__ = STRICT

    kind: Annotated[str, Entry("row of the catalogue that fills in what is left out", "typical", longest=60)]
    label: Annotated[str, Entry("name shown beside its results", "assumed", longest=80)] = ""
    flows: Flows = field(default_factory=Flows)
    unit: Unit = field(default_factory=Unit)
    ducts: Ducts = field(default_factory=Ducts)
    cost: Cost = field(default_factory=Cost)
