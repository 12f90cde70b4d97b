"""On which weather years of real places that the package does not carry is the method held against the reference?

Their files come with older releases of pvlib and are not carried here: `pip download pvlib==0.10.5 --no-deps
--no-binary :all:`, unpack, and name the folder `pvlib/data` in it. Two are typical years of Europe, one is a typical
year of high, sunny, inland Colorado, one the year 2021 of Burlington in Vermont.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from estimator import load_year
from estimator.climate.columns import Layout
from estimator.climate.plain import table_year
from estimator.climate.raw import Place
from estimator.climate.year import ClimateYear

_SUN = {"ghi": "GHI", "dni": "DNI", "dhi": "DHI"}
_COLORADO = Layout(
    place=Place(
        name="Northwest Colorado",
        latitude=40.5137,
        longitude=-108.5449,
        altitude=2000.0,
        utc_offset=-7.0,
        source="NREL PSM3, typical year 2017",
        licence="as carried by pvlib",
    ),
    columns={
        "month": "Month",
        "day": "Day",
        "hour": "Hour",
        "temp_air": "Temperature",
        "wind_speed": "Wind Speed",
        **_SUN,
        "pressure": "Pressure",
    },
    units={"pressure": "hPa"},
)
_BURLINGTON = Layout(
    place=Place(
        name="Burlington",
        latitude=44.465,
        longitude=-73.205,
        altitude=41.0,
        utc_offset=-5.0,
        source="satellite and model, year 2021",
        licence="as carried by pvlib",
    ),
    columns={
        "temp_air": "Dry-bulb (C)",
        "wind_speed": "Wspd (m/s)",
        "relative_humidity": "RHum (%)",
        "time": "time",
        "ghi": "GHI (W/m^2)",
        "dni": "DNI (W/m^2))",
        "dhi": "DHI (W/m^2)",
    },
    stamp="end",
)


def _table(name: str, layout: Layout, clean: Callable[[str], str]) -> Callable[[Path], ClimateYear]:
    def read(folder: Path) -> ClimateYear:
        text = clean((folder / name).read_text(encoding="latin-1"))
        return table_year(text.encode(), layout, name=name)[0]

    return read


def _file(name: str, title: str) -> Callable[[Path], ClimateYear]:
    return lambda folder: replace(load_year(str(folder / name)), name=title)


def _one_time_column(text: str) -> str:
    """Date and time in one column, as the reader of tables takes them."""
    first, header, *rows = text.splitlines()
    del first
    joined = [" ".join(row.split(",", 2)[:2]) + "," + row.split(",", 2)[2] for row in rows]
    return "\n".join(["time," + header.split(",", 2)[2], *joined])


REAL_YEARS: dict[str, Callable[[Path], ClimateYear]] = {
    "Amsterdam": _file("NLD_Amsterdam062400_IWEC.epw", "Amsterdam"),
    "Piedmont": _file("tmy_45.000_8.000_2005_2016.epw", "Piedmont"),
    "Burlington": _table(
        "Burlington, United States SolarAnywhere Time Series 2021 Lat_44_465 Lon_-73_205 TMY3 format.csv",
        _BURLINGTON,
        _one_time_column,
    ),
    "Northwest Colorado": _table("test_psm3_tmy-2017.csv", _COLORADO, lambda text: text),
}
