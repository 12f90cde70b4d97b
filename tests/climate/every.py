"""Which sources of weather are there, each with the monthly means that its own text states?

Read here as simply as can be, without the package: first to last hour of each month by the file's own rows.
"""

from __future__ import annotations

import csv
from collections.abc import Callable
from importlib.resources import files
from pathlib import Path

import numpy as np
import pandas as pd
import pvlib

from estimator.climate.cache import Cache
from estimator.climate.chosen import case_year
from estimator.climate.columns import Layout
from estimator.climate.kept_files import file_read, keep, kept_file
from estimator.climate.online import online_year
from estimator.climate.raw import Place
from estimator.climate.sources import DEMO_CLIMATES, REAL_YEARS, demo_folder, load_year, names
from estimator.climate.year import ClimateYear
from estimator.inputs.casefile import case_from_dict
from estimator.units import Array
from tests.climate.conftest import PLACE, PVLIB_DATA
from tests.climate.replay import Replay, Row, as_json, replaying

MADE = ("a place, replayed", "an uploaded table", "an uploaded EPW file", "a table of monthly means", "typed months")
EVERY = (*names(), *MADE)
HILL = Place(
    name="Fernby",
    latitude=36.1,
    longitude=-79.95,
    altitude=273.0,
    utc_offset=-5.0,
    source="a table that a test has made",
    licence="none",
)
LAYOUT = Layout(
    place=HILL,
    columns={"time": "When", "temp_air": "Temp °F", "wind_speed": "Wind kt", "ghi": "Sun", "relative_humidity": "RH"},
    units={"temp_air": "°F", "wind_speed": "knots"},
)
TYPED = {
    "temperature": "4.1 4.4 6.3 8.6 11.6 14.5 16.7 16.5 14.0 10.5 6.9 4.4",
    "wind": "4.8 4.7 4.5 4.2 4.0 3.7 3.6 3.5 3.7 4.0 4.2 4.4",
}
TABLE = """name = "Fernby"
latitude = 52.0
longitude = -1.5
altitude = 120.0
utc_offset = 0.0
source = "figures made up by a test"
licence = "none"
temp_air = [4.1, 4.4, 6.3, 8.6, 11.6, 14.5, 16.7, 16.5, 14.0, 10.5, 6.9, 4.4]
"""


def table_of(tmy3: pd.DataFrame) -> bytes:
    """Greensboro as somebody's table: Fahrenheit, knots (1 knot is 1,852 m/h), a clock that starts each hour."""
    when = pd.date_range("2019-01-01", periods=len(tmy3), freq="h").strftime("%Y-%m-%d %H:%M")
    columns = {
        "When": when,
        "Temp °F": tmy3["temp_air"].to_numpy() * 1.8 + 32.0,
        "Wind kt": tmy3["wind_speed"].to_numpy() * 3600.0 / 1852.0,
        "Sun": tmy3["ghi"].to_numpy(),
        "RH": tmy3["relative_humidity"].to_numpy(),
    }
    return pd.DataFrame(columns).to_csv(index=False).encode()


def loader(name: str, *, folder: Path, tmy3: pd.DataFrame, epw: list[str], server: Replay) -> Callable[[], ClimateYear]:
    """A function that reads the source from its beginning each time."""
    cache = Cache(folder / "kept")
    if name == "a place, replayed":
        return lambda: online_year(PLACE, url=server.url, cache=cache, tell=lambda _: None)
    if name in ("an uploaded table", "an uploaded EPW file"):
        table = name.endswith("table")
        content = table_of(tmy3) if table else "\n".join(epw).encode()
        read = file_read(content, name="year", layout=LAYOUT if table else None)
        assert keep(read, cache=cache) == ""
        return lambda: kept_file(read.reference, cache=cache).year
    if name == "a table of monthly means":
        path = folder / "fernby.toml"
        path.write_text(TABLE, encoding="utf-8")
        return lambda: load_year(str(path))
    if name == "typed months":
        case = case_from_dict({"version": 1, "place": {"climate": "monthly means"}, "months": TYPED})
        return lambda: case_year(case)
    return lambda: load_year(name)


def means_told(name: str, tmy3: pd.DataFrame) -> Array:
    """Twelve mean temperatures [°C] by the source's own text."""
    if name in DEMO_CLIMATES:
        rows = np.loadtxt(demo_folder() / DEMO_CLIMATES[name], delimiter=",", skiprows=1, usecols=(0, 3))
        return np.array([rows[rows[:, 0] == month, 1].mean() for month in range(1, 13)])
    if name in REAL_YEARS:
        path = PVLIB_DATA / REAL_YEARS[name]
        frame = pvlib.iotools.read_tmy2(path)[0] if path.suffix == ".tm2" else pvlib.iotools.read_tmy3(path)[0]
        return by_calendar((frame["DryBulb"] / 10.0 if path.suffix == ".tm2" else frame["temp_air"]).to_numpy())
    if name in ("a table of monthly means", "typed months"):
        return np.array([float(word) for word in TYPED["temperature"].split()])
    if name in MADE:
        return by_calendar(tmy3["temp_air"].to_numpy())
    text = (files("estimator") / "data" / "uk_monthly_normals.csv").read_text(encoding="utf-8")
    row = next(row for row in csv.DictReader(text.splitlines()) if (row["name"], row["quantity"]) == (name, "temp_air"))
    months = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
    return np.array([float(row[month]) for month in months])


def by_calendar(hours: Array) -> Array:
    """Twelve means of 8,760 hours from 1 January on."""
    month = pd.date_range("2019-01-01", periods=8760, freq="h").month
    return np.asarray(pd.Series(hours).groupby(month).mean(), dtype=float)


Broken = Callable[[pd.DataFrame, list[str], list[Row]], ClimateYear]
_LEAP, _GAP = (31 + 28) * 24, 4000  # rows after which 29 February stands, and of the hour that is missing


def table_with_gaps(tmy3: pd.DataFrame, epw: list[str], rows: list[Row]) -> ClimateYear:
    """A table of a leap year with one value left out."""
    head, *lines = table_of(tmy3).decode().splitlines()
    when, _, *rest = lines[_GAP].split(",")
    lines[_GAP] = ",".join([when, "-9999", *rest])
    february = [line.replace("2019-02-28", "2020-02-29") for line in lines[_LEAP - 24 : _LEAP]]
    content = "\n".join([head, *lines[:_LEAP], *february, *lines[_LEAP:]]).encode()
    return file_read(content, name="year", layout=LAYOUT).year


def epw_with_gaps(tmy3: pd.DataFrame, epw: list[str], rows: list[Row]) -> ClimateYear:
    """An EPW file of a leap year; 99.9 stands for a missing temperature (EPW data dictionary)."""
    head, lines = epw[:8], epw[8:]
    fields = lines[_GAP].split(",")
    lines[_GAP] = ",".join([*fields[:6], "99.9", *fields[7:]])
    february = [",".join(["2020", "2", "29", *line.split(",")[3:]]) for line in lines[_LEAP - 24 : _LEAP]]
    return file_read("\n".join([*head, *lines[:_LEAP], *february, *lines[_LEAP:]]).encode(), name="year").year


def answer_with_gaps(tmy3: pd.DataFrame, epw: list[str], rows: list[Row]) -> ClimateYear:
    """An answer of the service whose February is that of a leap year, with one value of 9999."""
    rows[_GAP]["T2m"] = 9999.0
    february = [{**row, "time(UTC)": row["time(UTC)"].replace("20070228", "20080229")} for row in
                rows[_LEAP - 24 : _LEAP]]  # fmt: skip
    with replaying() as server:
        server.body = as_json([*rows[:_LEAP], *february, *rows[_LEAP:]])
        return online_year(PLACE, url=server.url, cache=Cache(None), tell=lambda _: None)


BROKEN: tuple[Broken, ...] = (table_with_gaps, epw_with_gaps, answer_with_gaps)
