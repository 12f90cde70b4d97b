"""Where do monthly means come from: the 21 UK regions in the package, or a table somebody has typed?

A table of one's own is a TOML file. Twelve figures, January first; all but the temperatures may be left out:

    name = "Fernby"
    latitude = 52.0          # °, north positive
    longitude = -1.5         # °, east positive
    altitude = 120.0         # m
    utc_offset = 0.0         # h, local standard time less UTC
    source = "whose figures these are"
    licence = "who may use them"
    temp_air = [4.1, 4.4, 6.3, 8.6, 11.6, 14.5, 16.7, 16.5, 14.0, 10.5, 6.9, 4.4]       # °C, monthly mean
    wind_speed = [4.8, 4.7, 4.5, 4.2, 4.0, 3.7, 3.6, 3.5, 3.7, 4.0, 4.2, 4.4]           # m/s at 10 m
    ghi = [28, 54, 97, 152, 191, 205, 192, 161, 119, 69, 35, 22]                        # W/m², mean of 24 hours
    daily_swing = [5.7, 6.3, 7.2, 8.6, 9.0, 8.8, 8.8, 8.4, 7.8, 6.6, 5.9, 5.7]          # K, highest less lowest
    daily_spread = [3.9, 3.5, 3.0, 2.6, 2.6, 2.3, 2.2, 2.0, 2.1, 2.6, 3.3, 3.8]         # K, of daily means
"""

from __future__ import annotations

import csv
import tomllib
from dataclasses import replace
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any

from estimator.climate.monthly import monthly_year
from estimator.climate.monthly_means import LIMITS, MonthlyMeans, means_faults
from estimator.climate.raw import TITLES, Place
from estimator.climate.text import file_text
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault, Fault
from estimator.units import MONTH_NAMES

NUMBERS = ("latitude", "longitude", "altitude", "utc_offset")
TEXTS = ("name", "source", "licence")
SYNTHETIC = "hours made from monthly means"
_DATA = "uk_monthly_normals"
_LONGEST_LINE = 1_000  # letters; keys of thousands of parts take the reader minutes
_LARGEST = 10**300  # beyond, no float holds an integer


def is_monthly_table(reference: str) -> bool:
    """Whether a reference is the path of a table of one's own, told by its ending."""
    return reference.strip().casefold().endswith(".toml")


def read_monthly_table(path: Path) -> ClimateYear:
    """The synthetic year of a table of monthly means; ClimateFault with everything that is wrong in it."""
    return monthly_year(monthly_means(file_text(path), where=path.name))


def monthly_means(text: str, *, where: str) -> MonthlyMeans:
    """Monthly means from the text of a table; ClimateFault with everything that is wrong in it."""
    if any(len(line) > _LONGEST_LINE for line in text.splitlines()):
        raise ClimateFault(
            Fault(where, f"a line of it has more than {_LONGEST_LINE:,} letters; write one entry a line.")
        )
    try:
        said = tomllib.loads(text)
    except (ValueError, RecursionError) as error:  # also what no integer and no nesting of Python holds
        raise ClimateFault(Fault(where, f"the table of monthly means cannot be read ({str(error)[:100]}).")) from None
    known = (*TEXTS, *NUMBERS, *LIMITS)
    faults = [
        Fault(f"{where}, {name}", f"there is no such entry; those of a monthly table are {', '.join(known)}.")
        for name in said
        if name not in known
    ]
    faults += [
        Fault(f"{where}, {name}", f"this must be {what}.")
        for group, what in ((TEXTS, "text in quotes"), (NUMBERS, "a number"))
        for name in group
        if not (isinstance(said.get(name), str) if group is TEXTS else _is_number(said.get(name)))
    ]
    faults += [
        Fault(f"{where}, {name}", "this must be twelve numbers in square brackets, January first.")
        for name in LIMITS
        if (name in said or name == "temp_air") and not _is_list_of_numbers(said.get(name))
    ]
    if faults:
        raise ClimateFault(*faults)
    means = MonthlyMeans(
        place=Place(
            name=said["name"],
            source=f"{said['source']}; {SYNTHETIC}",
            licence=said["licence"],
            latitude=float(said["latitude"]),
            longitude=float(said["longitude"]),
            altitude=float(said["altitude"]),
            utc_offset=float(said["utc_offset"]),
        ),
        **{name: tuple(float(value) for value in said[name]) for name in LIMITS if name in said},
    )
    wrong = [replace(fault, where=f"{where}, {fault.where}") for fault in means_faults(means)]
    if wrong:
        raise ClimateFault(*wrong)
    return means


def _is_number(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool) and abs(value) < _LARGEST


def _is_list_of_numbers(values: Any) -> bool:
    return isinstance(values, list) and all(_is_number(value) for value in values)


@cache
def uk_regions() -> dict[str, MonthlyMeans]:
    """Monthly means of the UK average and of the 21 regions of the UK, by name."""
    folder = files("estimator") / "data"
    note = tomllib.loads((folder / f"{_DATA}.toml").read_text(encoding="utf-8"))
    regions: dict[str, MonthlyMeans] = {}
    tables: dict[str, dict[str, tuple[float, ...]]] = {}
    places: dict[str, Place] = {}
    for row in csv.DictReader((folder / f"{_DATA}.csv").read_text(encoding="utf-8").splitlines()):
        longitude, altitude = note["places"][row["region"]]
        places[row["name"]] = Place(
            name=row["name"],
            latitude=float(row["latitude"]),
            longitude=longitude,
            altitude=altitude,
            utc_offset=note["utc_offset"],
            source=f"{note['source']}; {note['assumed']}; {SYNTHETIC}",
            licence=note["licence"],
        )
        values = tuple(float(row[month.lower()]) for month in MONTH_NAMES)
        tables.setdefault(row["name"], {})[row["quantity"]] = values
    for name, place in places.items():
        swing = None if name in note["islands"] else tuple(note["daily_swing"])
        regions[name] = MonthlyMeans(place=place, daily_swing=swing, **tables[name])
    return regions


@cache
def doubtful_cells() -> tuple[tuple[str, str], ...]:
    """Region and remark for each figure of the UK table that its copies do not agree on."""
    note = tomllib.loads((files("estimator") / "data" / f"{_DATA}.toml").read_text(encoding="utf-8"))
    return tuple(
        (cell["region"], f"{TITLES[cell['quantity']]}, {cell['month']}: {cell['said']}") for cell in note["doubtful"]
    )


def uk_year(name: str) -> ClimateYear:
    """The synthetic year of one UK region by its exact name, with a remark on any doubtful figure."""
    year = monthly_year(uk_regions()[name])
    remarks = tuple(remark for region, remark in doubtful_cells() if region == name)
    return replace(year, repairs=(*year.repairs, *remarks))
