"""Where does the sun stand, and how much of it falls on a plane?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import ArrayLike

from estimator.units import HOURS_PER_DAY, Array

# A year in the middle of the leap cycle: its dates miss the sun of any other year by at most half a day.
REFERENCE_YEAR = 2021
HOURS = 8760
MID_HOUR = 0.5  # h after the stamp, the fair place for a mean over the hour
# Grass, bare soil and paving together; the usual default of solar handbooks.
GROUND_ALBEDO = 0.2
VERTICAL = 90.0  # ° from the horizontal
FACADE_AZIMUTHS = (0.0, 90.0, 180.0, 270.0)  # ° from north through east, in the order of `year.FACADES`
_DEGREES_PER_HOUR = 15.0
_MINUTES_PER_DEGREE = 4.0


@dataclass(frozen=True, slots=True, eq=False)
class Sun:
    """The sun over one place, one row per hour of the year; arrays of shape (8760,)."""

    zenith: Array  # ° from overhead, refraction included
    azimuth: Array  # ° from north through east
    normal_extra: Array  # W/m² outside the atmosphere, on a plane facing the sun
    hour_angle: Array  # ° before (-) or after (+) true noon, within ±180

    @property
    def height(self) -> Array:
        """Cosine of the zenith, nil while the sun is down [-]."""
        return np.maximum(np.cos(np.radians(self.zenith)), 0.0)


@lru_cache(maxsize=4)  # reading a year, checking it and standing in for a column ask for the same sun
def sun_position(
    *, latitude: float, longitude: float, altitude: float, utc_offset: float, moment: float = MID_HOUR
) -> Sun:
    """Sun at `moment` [h] after each full hour of local standard time (NREL's algorithm, by pvlib)."""
    import pandas as pd
    from pvlib import irradiance, solarposition

    start = pd.Timestamp(year=REFERENCE_YEAR, month=1, day=1, tz="UTC") + pd.Timedelta(hours=moment - utc_offset)
    times = pd.date_range(start, periods=HOURS, freq="h")
    place = solarposition.get_solarposition(times, latitude, longitude, altitude=altitude)
    clock = np.arange(HOURS) % HOURS_PER_DAY + moment - utc_offset
    angle = (
        _DEGREES_PER_HOUR * (clock - HOURS_PER_DAY / 2.0)
        + longitude
        + place["equation_of_time"].to_numpy() / _MINUTES_PER_DEGREE
    )
    return Sun(
        zenith=_fixed(place["apparent_zenith"].to_numpy()),
        azimuth=_fixed(place["azimuth"].to_numpy()),
        normal_extra=_fixed(irradiance.get_extra_radiation(times.day_of_year.to_numpy())),
        hour_angle=_fixed((angle + 180.0) % 360.0 - 180.0),
    )


def _fixed(values: ArrayLike) -> Array:
    """A copy that nobody can write into, since others have the same."""
    held = np.array(values, dtype=float)
    held.setflags(write=False)
    return held


def plane_irradiance(
    sun: Sun, *, ghi: Array, dni: Array, dhi: Array, tilt: float, azimuth: float, albedo: float = GROUND_ALBEDO
) -> Array:
    """Irradiance on a plane [W/m²], shape (8760,), of direct, sky and ground-reflected light.

    tilt: ° from the horizontal; azimuth: ° from north through east. The sky is that of Perez (1990) in
    the continuous form of Driesse et al. (2024), by pvlib: it knows the brighter horizon, which walls see
    most of, and is steadier at low sun than skies that divide by the sun's height.
    """
    from pvlib import atmosphere, irradiance

    parts = irradiance.get_total_irradiance(
        tilt,
        azimuth,
        sun.zenith,
        sun.azimuth,
        dni,
        ghi,
        dhi,
        dni_extra=sun.normal_extra,
        airmass=atmosphere.get_relative_airmass(sun.zenith),
        albedo=albedo,
        model="perez-driesse",
    )
    return np.asarray(parts["poa_global"], dtype=float)


def facade_irradiance(sun: Sun, *, ghi: Array, dni: Array, dhi: Array) -> Array:
    """Irradiance [W/m²] on vertical planes facing north, east, south and west, shape (4, 8760)."""
    return np.stack(
        [
            plane_irradiance(sun, ghi=ghi, dni=dni, dhi=dhi, tilt=VERTICAL, azimuth=azimuth)
            for azimuth in FACADE_AZIMUTHS
        ]
    )


def sun_lag(sun: Sun, ghi: Array) -> float:
    """How many hours the irradiance runs behind (+) or ahead (-) of the sun, from its mean hour angle.

    Nil for a clock that agrees with the sun; clouds that prefer mornings or afternoons move it by up to
    about half an hour. Nil also where there is no irradiance to judge by.
    """
    total = float(ghi.sum())
    return float((ghi * sun.hour_angle).sum()) / total / _DEGREES_PER_HOUR if total > 0.0 else 0.0


def station_pressure(altitude: float) -> float:
    """Air pressure [Pa] of the standard atmosphere at an altitude [m], by pvlib."""
    from pvlib.atmosphere import alt2pres

    return float(alt2pres(altitude))
