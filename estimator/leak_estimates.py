"""How leaky is an untested house by each published way of judging it?

The ways disagree, and that is shown: what an estimate cannot tell, a pressure test can.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from estimator.air import components, leakage
from estimator.inputs.case import Case
from estimator.leak_range import q50_of_area
from estimator.leak_span import LeakageSpan
from estimator.survey.fill import filled
from estimator.survey.typical import leakage_range, outdoor_surface
from estimator.units import air_changes

# Low, middle and high where the answer is not known.
_FLOORS: Mapping[str, tuple[float, float, float]] = MappingProxyType(
    {
        "solid": (0.0,) * 3,
        "suspended, sealed": (components.SUSPENDED_FLOOR_SEALED,) * 3,
        "suspended, unsealed": (components.SUSPENDED_FLOOR_UNSEALED,) * 3,
        "unknown": (0.0, components.SUSPENDED_FLOOR_SEALED, components.SUSPENDED_FLOOR_UNSEALED),
    }
)
_LOBBY_MISSING: Mapping[str, tuple[float, float, float]] = MappingProxyType(
    {"yes": (0.0,) * 3, "no": (1.0,) * 3, "unknown": (0.0, 1.0, 1.0)}
)
_STRIPPED: Mapping[str, tuple[float, float, float]] = MappingProxyType(
    {"all": (1.0,) * 3, "half": (0.5,) * 3, "none": (0.0,) * 3, "unknown": (1.0, 0.5, 0.0)}
)
# Low, middle and high class of workmanship by age; the classes name 1970 and today, the rest is a judgement.
_WORKMANSHIP: Mapping[str, tuple[str, str, str]] = MappingProxyType(
    {
        "before 1920": ("average", "leaky", "very leaky"),
        "1920 to 1975": ("average", "leaky", "very leaky"),
        "1976 to 1995": ("good", "average", "leaky"),
        "1996 to 2010": ("good", "average", "leaky"),
        "2011 or later": ("tight", "good", "average"),
        "very low energy": ("tight", "tight", "good"),
    }
)
# What the component method misses even with every answer known; assumed, no source.
COMPONENT_SPREAD = 0.25

BY_AGE, BY_COMPONENTS, BY_SURFACE, BY_FLOOR_AREA = (
    "by age", "by what can be seen", "by outer surface and workmanship", "by floor area",
)  # fmt: skip


def leakage_estimates(case: Case) -> Mapping[str, LeakageSpan]:
    """The span of q50 [m³/(h m²)] that each way gives for a case, by the name of the way, whether tested or not."""
    survey = filled(case)
    whole = survey.case
    low, middle, high = (float(value) for value in leakage_range(whole.home))
    return {
        BY_AGE: LeakageSpan(low=low, middle=middle, high=high, tag="typical", source="table of homes, from memory"),
        BY_COMPONENTS: _by_components(whole),
        BY_SURFACE: _by_surface(whole),
        BY_FLOOR_AREA: _by_floor_area(whole),
    }


def _by_components(case: Case) -> LeakageSpan:
    home, seen = case.home, case.draughts
    openings = components.opening_flow(
        chimneys=seen.chimneys, flues=seen.flues, passive_vents=seen.passive_vents, flueless_fires=seen.flueless_fires
    )
    through_openings = float(air_changes(openings, _known(home.volume)))
    structure = components.FRAME if home.construction == "timber frame" else components.MASONRY
    q50 = [
        float(
            components.equivalent_permeability(
                through_openings
                + components.fabric_air_changes(
                    storeys=_known(home.storeys),
                    structure=structure,
                    floor=floor,
                    lobby_missing=lobby,
                    stripped=stripped,
                )
            )
        )
        for floor, lobby, stripped in zip(
            _FLOORS[seen.floor], _LOBBY_MISSING[seen.lobby], _STRIPPED[seen.stripped], strict=True
        )
    ]
    return LeakageSpan(
        low=q50[0] * (1.0 - COMPONENT_SPREAD),
        middle=q50[1],
        high=q50[2] * (1.0 + COMPONENT_SPREAD),
        tag="typical",
        source="UK Standard Assessment Procedure 2012, section 2, open chimneys and flues included; from memory",
    )


def _by_surface(case: Case) -> LeakageSpan:
    surface = float(outdoor_surface(case.home))
    low, middle, high = (
        q50_of_area(float(components.leakage_by_surface(surface, unit_leakage=components.UNIT_LEAKAGE[word])), case)
        for word in _WORKMANSHIP[case.home.age]
    )
    source = "ASHRAE Handbook Fundamentals 2021, ch. 17, table 3; the class by age is a judgement"
    return LeakageSpan(low=low, middle=middle, high=high, tag="typical", source=source)


def _by_floor_area(case: Case) -> LeakageSpan:
    home = case.home
    figures = components.MULTI_FAMILY if home.form == "flat" else components.SINGLE_FAMILY
    low, middle, high = (
        q50_of_area(
            float(
                leakage.leakage_area(
                    components.leakage_by_floor_area(home.floor_area, per_area=figure),
                    pressure=leakage.REFERENCE_PRESSURE,
                    exponent=case.leakage.exponent,
                )
            ),
            case,
        )
        for figure in figures
    )
    return LeakageSpan(low=low, middle=middle, high=high, tag="typical", source="EN 15242:2007, table B.1, as retold")


def _known(value: Any) -> Any:
    if value is None:
        raise ValueError("an entry was left open: only a filled case can be judged")
    return value
