"""Which twelve figures describe the weather of a place that has no year of hours?

Read where the climate of the case is "monthly means". Each quantity is one line of twelve numbers with blanks between,
January first, and so stays within the case wherever it goes.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated

from estimator.inputs.quantity import STRICT, Entry, Quantity

MONTHLY = "monthly means"
"""What `place.climate` says where the twelve figures stand for the weather."""

QUANTITIES: Mapping[str, str] = {"temperature": "°C", "wind": "m/s", "sun": "W/m²", "swing": "K", "spread": "K"}
"""Entries of twelve figures, each with its unit; temperature is needed."""

_LONGEST = 200


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Months:
    """A place with twelve figures for each quantity that is known of it, for the climate "monthly means"."""

    __pydantic_config__ = STRICT

    latitude: Annotated[
        float, Quantity("°", -90, 90, "latitude of the place, north positive", "assumed", "the middle of England")
    ] = 52.5
    longitude: Annotated[
        float, Quantity("°", -180, 180, "longitude of the place, east positive", "assumed", "the middle of England")
    ] = -1.5
    altitude: Annotated[
        float, Quantity("m", -400, 6000, "altitude that the figures are for", "assumed", "the middle of England")
    ] = 100.0
    utc_offset: Annotated[
        float | None,
        Quantity("h", -12, 14, "local standard time less UTC", derived="longitude, 15° an hour"),
    ] = None
    temperature: Annotated[
        str,
        Entry("mean temperature of each month, °C, as in 4 4 6 9 12 15 17 16 14 10 7 4", "assumed", longest=_LONGEST),
    ] = ""
    wind: Annotated[
        str,
        Entry("mean wind of each month, m/s at 10 m over open land; may be left empty", "assumed", longest=_LONGEST),
    ] = ""
    sun: Annotated[
        str,
        Entry(
            "mean irradiance on the flat of each month, W/m² over day and night; may be left empty",
            "assumed",
            longest=_LONGEST,
        ),
    ] = ""
    swing: Annotated[
        str, Entry("mean daily swing of each month, K, highest less lowest; may be left empty", "assumed",
                   longest=_LONGEST)
    ] = ""  # fmt: skip
    spread: Annotated[
        str,
        Entry(
            "standard deviation of the daily means within each month, K; may be left empty",
            "assumed",
            longest=_LONGEST,
        ),
    ] = ""
