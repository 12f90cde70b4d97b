"""Do solar cells agree with pvlib's own chain, with the manual hour by hour, and with what roofs yield?"""

from __future__ import annotations

import math
from pathlib import Path

import numpy as np
import pandas as pd
import pvlib
import pytest
from pvlib import iotools
from pvlib.location import Location
from pvlib.modelchain import ModelChain
from pvlib.pvsystem import PVSystem

from estimator.climate import photovoltaics, solar
from estimator.climate.year import ClimateYear
from estimator.units import Array

LATITUDE, LONGITUDE, ALTITUDE, OFFSET = 36.1, -79.95, 273.0, -5.0
TILT, AZIMUTH = 35.0, 200.0


@pytest.fixture(scope="module")
def greensboro() -> ClimateYear:
    """The typical year of Greensboro that pvlib carries (NREL, TMY3); its hours are stamped at their end."""
    table, _ = iotools.read_tmy3(Path(pvlib.__file__).parent / "data" / "723170TYA.CSV", map_variables=True)
    column = {name: table[name].to_numpy(dtype=float) for name in ("temp_air", "wind_speed", "ghi", "dni", "dhi")}
    return ClimateYear(
        name="Greensboro",
        latitude=LATITUDE,
        longitude=LONGITUDE,
        altitude=ALTITUDE,
        utc_offset=OFFSET,
        source="TMY3",
        licence="public",
        invented=False,
        relative_humidity=table["relative_humidity"].to_numpy(dtype=float),
        pressure=table["pressure"].to_numpy(dtype=float) * 100.0,
        facades=np.zeros((4, 8760)),
        **column,
    )


@pytest.fixture(scope="module")
def ours(greensboro: ClimateYear) -> Array:
    return photovoltaics.yield_per_kw(greensboro, tilt=TILT, azimuth=AZIMUTH)


# The chain within pvlib 0.16 uses a name that pandas 3.1 gives up; our own code does not.
@pytest.mark.filterwarnings("ignore:DatetimeIndex.dayofyear")
def test_like_the_chain_of_pvlib(greensboro: ClimateYear, ours: Array) -> None:
    """The library runs the same manual from sun to socket on its own; the sky is the same, the sun its own."""
    system = PVSystem(
        surface_tilt=TILT,
        surface_azimuth=AZIMUTH,
        albedo=0.2,
        module_parameters={"pdc0": 1000.0, "gamma_pdc": -0.0047},
        inverter_parameters={"pdc0": 1000.0 / 1.1 / 0.96, "eta_inv_nom": 0.96},
        racking_model="close_mount",
        module_type="glass_glass",
    )
    place = Location(LATITUDE, LONGITUDE, altitude=ALTITUDE)
    chain = ModelChain.with_pvwatts(system, place, transposition_model="perez-driesse")
    times = pd.date_range("2021-01-01 00:30", periods=8760, freq="h", tz="Etc/GMT+5")
    weather = {name: getattr(greensboro, name) for name in ("ghi", "dni", "dhi", "temp_air", "wind_speed")}
    chain.run_model(pd.DataFrame(weather, index=times))
    reference = np.nan_to_num(chain.results.ac.to_numpy()) / 1000.0
    assert ours.sum() == pytest.approx(reference.sum(), rel=1e-3)
    np.testing.assert_allclose(ours, reference, atol=2e-3)


def test_manual_by_brute_force(greensboro: ClimateYear, ours: Array) -> None:
    """Each hour by the manual's own steps: glass by Snell and Bouguer, cell after King, losses, inverter curve."""
    sun = solar.sun_position(latitude=LATITUDE, longitude=LONGITUDE, altitude=ALTITUDE, utc_offset=OFFSET)
    light = solar.plane_irradiance(
        sun, ghi=greensboro.ghi, dni=greensboro.dni, dhi=greensboro.dhi, tilt=TILT, azimuth=AZIMUTH
    )
    keep = math.prod(1 - part / 100 for part in (2.0, 3.0, 2.0, 2.0, 0.5, 1.5, 1.0, 3.0))
    rated = 1000.0 / 1.1
    result = []
    for hour in range(8760):
        zenith, azimuth = math.radians(sun.zenith[hour]), math.radians(sun.azimuth[hour])
        tilt, facing = math.radians(TILT), math.radians(AZIMUTH)
        cosine = math.cos(zenith) * math.cos(tilt) + math.sin(zenith) * math.sin(tilt) * math.cos(azimuth - facing)
        direct = max(float(greensboro.dni[hour]) * cosine, 0.0)
        seen = direct * through_glass(cosine) + float(light[hour]) - direct
        wind = float(greensboro.wind_speed[hour])
        module = float(light[hour]) * math.exp(-2.98 - 0.0471 * wind) + float(greensboro.temp_air[hour])
        cell = module + float(light[hour]) / 1000.0
        power = seen * (1 - 0.0047 * (cell - 25.0)) * keep
        loading = power / (rated / 0.96)
        curve = -0.0162 * loading - 0.0059 / loading + 0.9858 if loading > 0.0 else 0.0
        result.append(min(max(0.96 / 0.9637 * curve * power, 0.0), rated) / 1000.0)
    np.testing.assert_allclose(ours, result, atol=1e-6)


def through_glass(cosine: float) -> float:
    """Light through 2 mm of glass of index 1.526, against light straight on (De Soto et al. 2006)."""
    if cosine <= 0.0:
        return 0.0
    at, straight = math.acos(min(cosine, 1.0)), 1e-6
    return transmitted(at) / transmitted(straight)


def transmitted(angle: float) -> float:
    inside = math.asin(math.sin(angle) / 1.526)
    less, more = inside - angle, inside + angle
    turned = 0.5 * ((math.sin(less) / math.sin(more)) ** 2 + (math.tan(less) / math.tan(more)) ** 2)
    return math.exp(-4.0 * 0.002 / math.cos(inside)) * (1.0 - turned)


def test_yield_of_real_roofs(greensboro: ClimateYear, ours: Array) -> None:
    """North Carolina yields 1,250 to 1,500 kWh a year and kW on southern roofs (common practice, no source)."""
    assert 1250.0 < ours.sum() < 1500.0
    assert ours.min() == 0.0
    assert ours.max() <= 1.0 / photovoltaics.CELLS_PER_INVERTER
    north = photovoltaics.yield_per_kw(greensboro, tilt=TILT, azimuth=20.0)
    assert north.sum() < 0.75 * ours.sum()


def test_default_losses_are_the_library_s() -> None:
    assert pvlib.pvsystem.pvwatts_losses() == pytest.approx(photovoltaics.LOSSES, abs=1e-4)


def test_a_shortened_year_is_refused(greensboro: ClimateYear) -> None:
    from estimator.climate.shorten import shortened

    with pytest.raises(ValueError, match="hourly year"):
        photovoltaics.yield_per_kw(shortened(greensboro, hours_per_block=4), tilt=TILT, azimuth=AZIMUTH)
