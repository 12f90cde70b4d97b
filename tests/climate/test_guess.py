"""Are columns of tables that weather services write guessed as their makers mean them? Headers from memory."""

from __future__ import annotations

import pytest

from estimator.climate.guess import guessed_columns, guessed_unit

PVGIS = ["time(UTC)", "T2m", "RH", "G(h)", "Gb(n)", "Gd(h)", "IR(h)", "WS10m", "WD10m", "SP"]
OPEN = ["time", "temperature_2m (°C)", "dew_point_2m (°C)", "wind_speed_10m (km/h)", "wind_direction_10m (°)"]


def test_the_columns_of_a_public_service_are_found() -> None:
    assert guessed_columns(PVGIS) == {
        "time": "time(UTC)",
        "temp_air": "T2m",
        "relative_humidity": "RH",
        "ghi": "G(h)",
        "dni": "Gb(n)",
        "dhi": "Gd(h)",
        "wind_speed": "WS10m",
        "pressure": "SP",
    }


def test_dew_point_and_direction_are_not_taken_for_temperature_and_wind() -> None:
    found = guessed_columns(OPEN)
    assert found == {"time": OPEN[0], "temp_air": OPEN[1], "wind_speed": OPEN[3]}
    assert guessed_columns(["dew point", "wind direction"]) == {}


def test_our_own_names_mean_themselves_and_no_header_is_used_twice() -> None:
    own = ["month", "day", "hour", "temp_air", "wind_speed", "ghi", "dni", "dhi", "relative_humidity"]
    assert guessed_columns(own) == {name: name for name in own}
    found = guessed_columns(["Temp", "Temp 2", "Wind", "Solar radiation"])
    assert len(set(found.values())) == len(found)


@pytest.mark.parametrize(
    ("name", "header", "unit"),
    [
        ("temp_air", "Temp (°F)", "°F"),
        ("temp_air", "T2m", "°C"),
        ("temp_air", "temp_K", "K"),
        ("wind_speed", "wind_speed_10m (km/h)", "km/h"),
        ("wind_speed", "Wind (knots)", "knots"),
        ("wind_speed", "Wind mph", "mph"),
        ("ghi", "Global kJ/m2", "kJ/m²"),
        ("pressure", "mslp hPa", "hPa"),
        ("pressure", "Pressure", "Pa"),
    ],
)
def test_a_unit_in_a_header_is_taken(name: str, header: str, unit: str) -> None:
    assert guessed_unit(name, header) == unit
