"""Which rooms are fed, which are drawn from, and through which doors does the air pass between them?

All of it is optional, and each list is one line of text: entries with a semicolon between them.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from estimator.inputs.quantity import STRICT, Entry, Quantity

_LONGEST = 1500


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Rooms:
    """The way of the air from fed rooms to rooms drawn from, in m³/h of ordinary use."""

    __pydantic_config__ = STRICT

    option: Annotated[str, Entry("name of the option these rooms belong to", "assumed", longest=60)] = "recovery"
    fed: Annotated[
        str, Entry("rooms fed, with m³/h, as in bedroom 43; living room 50", "assumed", longest=_LONGEST)
    ] = ""
    drawn: Annotated[
        str, Entry("rooms drawn from, with m³/h, as in kitchen 47; bathroom 46", "assumed", longest=_LONGEST)
    ] = ""
    lines: Annotated[
        str,
        Entry(
            "ways of the air with m³/h, as in bedroom > landing > bathroom 43; living room > hall > kitchen 47",
            "assumed",
            longest=_LONGEST,
        ),
    ] = ""
    doors: Annotated[
        str,
        Entry(
            "doors unlike the rest: free area in mm², or fire, as in landing > bathroom 12000; hall > kitchen fire",
            "assumed",
            longest=_LONGEST,
        ),
    ] = ""
    door_area: Annotated[
        float,
        Quantity(
            "mm²",
            100,
            100000,
            "free area under every other door",
            "typical",
            "Approved Document F vol. 1 (2021): 7,600 mm², a gap of 10 mm under a door of 760 mm; from memory",
        ),
    ] = 7600.0
    branch_flow: Annotated[
        float,
        Quantity(
            "m³/h",
            5,
            200,
            "most that one branch from the distribution box carries",
            "assumed",
            "about 3 m/s in a round pipe of 75 mm outer diameter; common practice, no source",
        ),
    ] = 30.0
