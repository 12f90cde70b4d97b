"""Could these values be weather, and does their clock agree with the sun?"""

from __future__ import annotations

import numpy as np

from estimator.climate.raw import Place, RawYear
from estimator.climate.solar import Sun, sun_lag
from estimator.errors import Fault
from estimator.units import Array

# The limits of the EPW data dictionary (EnergyPlus, Auxiliary Programs) for temperature, humidity and
# pressure; wind beyond its 40 m/s occurs on hill tops; a cloud's edge can lift irradiance over 1,400 W/m².
# A pyranometer reads a few watts below nil at night.
LIMITS: dict[str, tuple[float, float, str]] = {
    "temp_air": (-70.0, 70.0, "°C"),
    "wind_speed": (0.0, 60.0, "m/s"),
    "ghi": (-20.0, 1700.0, "W/m²"),
    "dni": (-20.0, 1500.0, "W/m²"),
    "dhi": (-20.0, 1200.0, "W/m²"),
    "relative_humidity": (0.0, 110.0, "%"),
    "pressure": (31_000.0, 120_000.0, "Pa"),
}
# Above this an hour's air temperature has not been recorded on Earth (WMO record 56.7 °C).
HOTTEST_MEAN = 40.0  # °C, no inhabited place has a warmer year
WRONG_UNIT = {
    "temp_air": " Is it in Fahrenheit, in kelvin or in tenths of a degree?",
    "wind_speed": " Is it in tenths, in km/h or in knots?",
    "pressure": " Is it in hPa (mbar) instead of Pa?",
    "relative_humidity": " Is it a fraction, or another column?",
}
PLACE_LIMITS = {
    "latitude": (-90.0, 90.0, "°"),
    "longitude": (-180.0, 180.0, "°"),
    "altitude": (-500.0, 9000.0, "m"),
    "utc_offset": (-12.0, 14.0, "h"),
}
# Clouds move the mean hour of irradiance by half an hour at most; a clock this far off is wrong.
MOST_LAG = 1.25  # h


def place_faults(place: Place) -> list[Fault]:
    """What cannot be true of the place."""
    return [
        Fault(f"file header, {name.replace('_', ' ')}", f"{value:g} {unit} is not within {low:g} to {high:g}.")
        for name, (low, high, unit) in PLACE_LIMITS.items()
        if not low <= (value := float(getattr(place, name))) <= high
    ]


def range_faults(raw: RawYear) -> list[Fault]:
    """Columns with values that no weather has, each with its first row, the count and a guess at the cause."""
    faults = []
    for name, values in raw.columns.items():
        low, high, unit = LIMITS[name]
        wrong = np.flatnonzero((values < low) | (values > high))
        if wrong.size:
            first = wrong[0]
            count = f" ({wrong.size} such rows)" if wrong.size > 1 else ""
            faults.append(
                Fault(
                    f"row {raw.stamps.row[first]}, column {raw.label(name)}",
                    f"{values[first]:g} {unit} is not within {low:g} to {high:g}{count}." + WRONG_UNIT.get(name, ""),
                )
            )
    temp = raw.columns["temp_air"]
    if not faults and np.isfinite(temp).any() and np.nanmean(temp) > HOTTEST_MEAN:
        faults.append(
            Fault(
                f"column {raw.label('temp_air')}",
                f"the mean of the year is {np.nanmean(temp):.0f} °C." + WRONG_UNIT["temp_air"],
            )
        )
    return faults


def clock_faults(sun: Sun, ghi: Array) -> list[Fault]:
    """A clock that disagrees with the sun by more than weather can explain."""
    lag = sun_lag(sun, ghi)
    if abs(lag) <= MOST_LAG:
        return []
    side = "behind" if lag > 0.0 else "ahead of"
    return [
        Fault(
            "clock",
            f"the irradiance runs {abs(lag):.1f} h {side} the sun of this place: the time zone, the longitude "
            "or the order of rows is wrong. The file must count hours of local standard time.",
        )
    ]
