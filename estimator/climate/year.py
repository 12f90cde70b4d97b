"""What is a checked weather year?"""

from __future__ import annotations

from dataclasses import dataclass

from estimator.units import HOURS_PER_YEAR, Array

FACADES = ("north", "east", "south", "west")


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ClimateYear:
    """One typical or real year, checked, in hours of local standard time stamped at their start.

    Arrays have shape (n,), n = 8760 for an hourly year; `facades` has shape (4, n), order `FACADES`.
    A shortened year has fewer rows of equal, larger `weight`, in order.
    """

    name: str
    latitude: float  # °, north positive
    longitude: float  # °, east positive
    altitude: float  # m
    utc_offset: float  # h, local standard time minus UTC
    source: str
    licence: str
    invented: bool
    temp_air: Array  # °C
    wind_speed: Array  # m/s at the weather station, 10 m
    ghi: Array  # W/m², horizontal
    dni: Array  # W/m², on a plane facing the sun
    dhi: Array  # W/m², horizontal
    relative_humidity: Array  # %
    pressure: Array  # Pa, at the station
    facades: Array  # W/m² on vertical planes facing north, east, south, west
    weight: float = 1.0  # h per row
    sun_moment: float = 0.5  # h after the stamp at which the sun was placed
    repairs: tuple[str, ...] = ()  # what was mended, in words

    @property
    def rows(self) -> int:
        """Number of rows."""
        return int(self.temp_air.shape[-1])

    def __post_init__(self) -> None:
        if abs(self.rows * self.weight - HOURS_PER_YEAR) > 1e-6:
            raise ValueError(f"{self.rows} rows of {self.weight} h are not a year of {HOURS_PER_YEAR:.0f} h")
