"""What is the weather of a station at a site higher, lower or rougher than it?

A hill is colder and its air thinner; a town slows the wind that an open airfield measures. Sun and relative humidity
are left as the station has them. Cold air that lies in valleys on clear nights is not in any of this.
"""

from __future__ import annotations

import warnings
from dataclasses import dataclass, replace

from estimator.climate.check import PLACE_LIMITS
from estimator.climate.solar import station_pressure
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault, ExtrapolationWarning, Fault

# ISO 2533:1975, standard atmosphere (ICAO), up to 11 km: 6.5 K/km. Mountain stations have 4 to 7 K/km by season.
LAPSE_RATE = 0.0065  # K/m
FARTHEST = 1000.0  # m of altitude over which one lapse rate is a fair guess; assumed
STATION_HEIGHT = 10.0  # m, World Meteorological Organization, Guide to Instruments and Methods of Observation


@dataclass(frozen=True, slots=True, kw_only=True)
class Terrain:
    """How wind grows with height over a kind of land: as a power of height, up to the layer's top."""

    exponent: float
    layer: float  # m


# ASHRAE Handbook Fundamentals 2017, ch. 24, table 1; from memory.
TERRAINS = {
    "water": Terrain(exponent=0.10, layer=210.0),
    "open": Terrain(exponent=0.14, layer=270.0),
    "suburb": Terrain(exponent=0.22, layer=370.0),
    "city": Terrain(exponent=0.33, layer=460.0),
}
STATION_TERRAIN = "open"


def wind_share(terrain: str, *, height: float = STATION_HEIGHT) -> float:
    """Wind at a height [m] over a terrain per wind at the station, 10 m over open land [-].

    ASHRAE Handbook Fundamentals 2017, ch. 24, eq. 4; for the terrain around a site for some 500 m up the wind, and
    not for its own fences and neighbours. ClimateFault for a terrain that is not in `TERRAINS`, or no height.
    """
    faults = []
    if terrain not in TERRAINS:
        faults.append(Fault("terrain", f"“{terrain[:30]}” is not one of {', '.join(TERRAINS)}."))
    if not 0.0 < height <= min(kind.layer for kind in TERRAINS.values()):
        faults.append(Fault("height", f"{height:g} m is not a height above ground within 0 to 210."))
    if faults:
        raise ClimateFault(*faults)
    station, site = TERRAINS[STATION_TERRAIN], TERRAINS[terrain]
    aloft = (station.layer / STATION_HEIGHT) ** station.exponent
    return float(aloft * (height / site.layer) ** site.exponent)


def at_site(
    year: ClimateYear, *, altitude: float, terrain: str = STATION_TERRAIN, height: float = STATION_HEIGHT
) -> ClimateYear:
    """The station's year at a site of another altitude [m], and with the wind of its terrain at a height [m].

    Temperature by the standard lapse rate; pressure, and with it density and the heat a volume of air carries, by the
    standard atmosphere. The infiltration models ask for wind at the *station* and have shelter of their own: leave
    the terrain open for them, unless the station itself is out of place. Beyond 1,000 m of difference an
    ExtrapolationWarning. What was changed stands in `repairs`.
    """
    low, high, _ = PLACE_LIMITS["altitude"]
    if not low <= altitude <= high:
        raise ClimateFault(Fault("altitude", f"{altitude:g} m is not within {low:g} to {high:g}."))
    share = wind_share(terrain, height=height)
    higher = altitude - year.altitude
    if abs(higher) > FARTHEST:
        warnings.warn(
            f"the site is {abs(higher):.0f} m {'above' if higher > 0.0 else 'below'} the station; "
            f"one lapse rate is a guess beyond {FARTHEST:.0f} m",
            ExtrapolationWarning,
            stacklevel=2,
        )
    told = []
    if higher:
        warmer = -LAPSE_RATE * higher
        told.append(
            f"altitude: {year.altitude:.0f} m taken to {altitude:.0f} m, {abs(warmer):.1f} K "
            f"{'warmer' if warmer > 0.0 else 'colder'} all year at 6.5 K/km"
        )
    if share != 1.0:
        told.append(f"wind: {share:.2f} times that of the station, for {terrain} at {height:g} m")
    return replace(
        year,
        altitude=altitude,
        temp_air=year.temp_air - LAPSE_RATE * higher,
        pressure=year.pressure * (station_pressure(altitude) / station_pressure(year.altitude)),
        wind_speed=year.wind_speed * share,
        repairs=(*year.repairs, *told),
    )
