"""How much electricity would solar cells on the roof give in each hour?

The model PVWatts (Dobos, PVWatts Version 5 Manual, NREL 2014) through pvlib: light on the plane less what the glass
turns away, cells as warm as sun and wind make them, a flat share of losses, and an inverter.
"""

from __future__ import annotations

import numpy as np

from estimator.climate.solar import GROUND_ALBEDO, plane_irradiance, sun_position
from estimator.climate.year import ClimateYear
from estimator.units import Array, from_percent, to_kwh

# PVWatts Version 5 Manual: standard crystalline cells, default losses, inverter and its size relative to the cells.
POWER_PER_KELVIN = -0.0047  # 1/K from 25 °C
LOSSES = 14.0757  # %: soiling 2, shade 3, mismatch 2, wiring 2, joints 0.5, first light 1.5, nameplate 1, outages 3
INVERTER_EFFICIENCY = 0.96
CELLS_PER_INVERTER = 1.1
# Sandia's cell temperature for modules close to a roof (King et al. 2004), as named in pvlib.
_MOUNTING = "close_mount_glass_glass"
_INSTALLED = 1000.0  # W


def yield_per_kw(
    year: ClimateYear, *, tilt: float, azimuth: float, losses: float = LOSSES, albedo: float = GROUND_ALBEDO
) -> Array:
    """Alternating current per installed kW of cells [kWh per row], shape (8760,).

    tilt: ° from the horizontal; azimuth: ° from north through east; losses: % of direct current, shade included.
    Nearby shade has no shape here: it is a share of the losses. ValueError for a shortened year, whose sun is not known
    hour by hour: take the yield of the hourly year and add up its hours.
    """
    from pvlib import iam, inverter, pvsystem, temperature

    if year.weight != 1.0:
        raise ValueError(f"a year in rows of {year.weight:g} h was given; solar cells need an hourly year")
    whole, direct, angle = _plane_light(year, tilt, azimuth, albedo)
    seen = direct * np.nan_to_num(iam.physical(angle)) + (whole - direct)
    warmth = temperature.TEMPERATURE_MODEL_PARAMETERS["sapm"][_MOUNTING]
    cell = temperature.sapm_cell(whole, year.temp_air, year.wind_speed, **warmth)
    current = pvsystem.pvwatts_dc(seen, cell, pdc0=_INSTALLED, gamma_pdc=POWER_PER_KELVIN)
    limit = _INSTALLED / CELLS_PER_INVERTER / INVERTER_EFFICIENCY
    power = inverter.pvwatts(current * (1.0 - from_percent(losses)), pdc0=limit, eta_inv_nom=INVERTER_EFFICIENCY)
    return np.asarray(to_kwh(power), dtype=float)


def _plane_light(year: ClimateYear, tilt: float, azimuth: float, albedo: float) -> tuple[Array, Array, Array]:
    """Light on the plane [W/m²], the direct part of it [W/m²] and its angle from the normal [°]."""
    from pvlib import irradiance

    sun = sun_position(
        latitude=year.latitude,
        longitude=year.longitude,
        altitude=year.altitude,
        utc_offset=year.utc_offset,
        moment=year.sun_moment,
    )
    whole = plane_irradiance(sun, ghi=year.ghi, dni=year.dni, dhi=year.dhi, tilt=tilt, azimuth=azimuth, albedo=albedo)
    angle = np.asarray(irradiance.aoi(tilt, azimuth, sun.zenith, sun.azimuth), dtype=float)
    direct = irradiance.beam_component(tilt, azimuth, sun.zenith, sun.azimuth, year.dni)
    return whole, np.asarray(direct, dtype=float), angle
