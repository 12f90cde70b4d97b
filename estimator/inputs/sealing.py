"""Where does an untested house let air through, and what would sealing it cost?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from estimator.inputs.home import Known
from estimator.inputs.quantity import STRICT, Entry, Quantity

Floor = Literal["solid", "suspended, sealed", "suspended, unsealed", "unknown"]
Stripped = Literal["all", "half", "none", "unknown"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Draughts:
    """What can be seen of the ways air takes, for a house without a pressure test."""

    __pydantic_config__ = STRICT

    chimneys: Annotated[int, Quantity("", 0, 8, "open chimneys, not blocked or capped", "assumed", "ask")] = 0
    flues: Annotated[
        int, Quantity("", 0, 8, "open flues of boilers, stoves or fires that take air from the room", "assumed", "ask")
    ] = 0
    passive_vents: Annotated[
        int, Quantity("", 0, 12, "upright ducts that draw air out without a fan", "assumed", "ask")
    ] = 0
    flueless_fires: Annotated[int, Quantity("", 0, 6, "gas fires without a flue", "assumed", "ask")] = 0
    floor: Annotated[Floor, Entry("timber ground floor above a ventilated void, or solid", "assumed", "ask")] = (
        "unknown"
    )
    lobby: Annotated[Known, Entry("a lobby with a second door behind the main door", "assumed", "ask")] = "unknown"
    stripped: Annotated[Stripped, Entry("how many of the windows and doors have draught seals", "assumed", "ask")] = (
        "unknown"
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Sealing:
    """How far the house could be sealed, and for how much. Each halving of the leakage is one step of equal cost."""

    __pydantic_config__ = STRICT

    target: Annotated[
        float,
        Quantity(
            "m³/(h m²)",
            0.3,
            40,
            "leakage at 50 Pa to seal down to; nothing is sealed where the house is as tight already",
            "typical",
            "Approved Document F vol. 1 (2021): 3 as built parts less airtight homes from the rest; from memory",
        ),
    ] = 3.0
    tightest: Annotated[
        float,
        Quantity(
            "m³/(h m²)",
            0.3,
            40,
            "tightest leakage that sealing can reach here",
            "assumed",
            "common practice, no source",
        ),
    ] = 1.5
    step_low: Annotated[
        float,
        Quantity(
            "money/m²",
            0,
            500,
            "low cost of halving the leakage, per m² of envelope, tax included",
            "assumed",
            "no source; ask for the quotation",
        ),
    ] = 5.0
    step: Annotated[
        float,
        Quantity(
            "money/m²",
            0,
            500,
            "middling cost of halving the leakage, per m² of envelope, tax included",
            "assumed",
            "no source; ask for the quotation",
        ),
    ] = 12.0
    step_high: Annotated[
        float,
        Quantity(
            "money/m²",
            0,
            500,
            "high cost of halving the leakage, per m² of envelope, tax included",
            "assumed",
            "no source; ask for the quotation",
        ),
    ] = 25.0
