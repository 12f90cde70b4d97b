"""Where can a weather year come from?

A new source is one function that returns a `ClimateYear` and one row in `SOURCES`; the contract test then
runs over every name it includes.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from difflib import get_close_matches
from importlib.util import find_spec
from pathlib import Path

from estimator.climate.files import read_year
from estimator.climate.kept_files import is_kept_file, kept_file
from estimator.climate.monthly_tables import is_monthly_table, read_monthly_table, uk_regions, uk_year
from estimator.climate.online import is_point, online_year
from estimator.climate.plain import noted_place
from estimator.climate.raw import Place
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault, Fault

_HERE = Path(__file__).resolve()
# In a checkout the demo climates lie at the top level; an installed package carries them inside.
_DEMO_FOLDERS = (_HERE.parents[2] / "climate_demo", _HERE.parents[1] / "_climate_demo")
DEMO_CLIMATES = {
    "Mild coast": "mild_coast.csv",
    "Inland vale": "inland_vale.csv",
    "Upland": "upland.csv",
    "Cold plain": "cold_plain.csv",
}
UK_REGIONS = tuple(uk_regions())
REAL_YEARS = {"Greensboro": "723170TYA.CSV", "Sand Point": "703165TY.csv", "Miami": "12839.tm2"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """One row of `SOURCES`: what it is, which references are its own, and how one becomes a year."""

    title: str
    owns: Callable[[str], bool]
    year: Callable[[str], ClimateYear]
    names: tuple[str, ...] = ()  # climates it includes, each of which can be chosen by name
    network: bool = field(default=False)
    place: Callable[[str], Place] | None = None  # where a named climate lies, where that can be told without its year


def demo_folder() -> Path:
    """Folder of the invented demo climates, in a checkout or in an installed package."""
    for folder in _DEMO_FOLDERS:
        if folder.is_dir():
            return folder
    raise ClimateFault(Fault("climate", "the demo climates are not where they should be; install the project again."))


def demo_year(reference: str) -> ClimateYear:
    """One of the four invented climates."""
    return read_year(demo_folder() / DEMO_CLIMATES[_named(reference, DEMO_CLIMATES)])


def real_year(reference: str) -> ClimateYear:
    """One of the typical years of real stations that pvlib carries in its own package."""
    name = _named(reference, REAL_YEARS)
    package = find_spec("pvlib")  # found, not imported: only its folder is asked for
    if package is None or package.origin is None:
        raise ClimateFault(Fault("climate", "pvlib is not installed, and with it the real years are missing."))
    year = read_year(Path(package.origin).parent / "data" / REAL_YEARS[name])
    return replace(year, name=name, source=f"{year.source}, {year.name}, as carried by pvlib")


def _named(reference: str, names: Iterable[str]) -> str:
    return next(name for name in names if _same(name, reference))


def _same(name: str, reference: str) -> bool:
    plain = (" ".join(text.casefold().replace("-", " ").replace("_", " ").split()) for text in (name, reference))
    return next(plain) == next(plain)


def _includes(names: Iterable[str]) -> Callable[[str], bool]:
    return lambda reference: any(_same(name, reference) for name in names)


def _is_path(reference: str) -> bool:
    path = Path(reference)
    return os.path.exists(reference) or bool(path.suffix) or len(path.parts) > 1


SOURCES = (
    Source(
        title="demo climates, invented",
        owns=_includes(DEMO_CLIMATES),
        year=demo_year,
        names=tuple(DEMO_CLIMATES),
        place=lambda name: noted_place(demo_folder() / DEMO_CLIMATES[name]),
    ),
    Source(
        title="real stations, offline",
        owns=_includes(REAL_YEARS),
        year=real_year,
        names=tuple(REAL_YEARS),
    ),
    Source(
        title="UK regions, hours made from monthly means, offline",
        owns=_includes(UK_REGIONS),
        year=lambda reference: uk_year(_named(reference, UK_REGIONS)),
        names=UK_REGIONS,
        place=lambda name: uk_regions()[name].place,
    ),
    Source(
        title="your own table of twelve monthly means (TOML)",
        owns=is_monthly_table,
        year=lambda reference: read_monthly_table(Path(os.path.expanduser(reference))),
    ),
    Source(
        title="any latitude and longitude, online (52.2,0.1)",
        owns=is_point,
        year=lambda reference: online_year(reference),
        network=True,
    ),
    Source(
        title="a weather file given on the dashboard and kept on this machine (kept:…)",
        owns=is_kept_file,
        year=lambda reference: kept_file(reference).year,
    ),
    Source(
        title="your own file (EPW, TMY3, TMY2 or a plain table)",
        owns=_is_path,
        year=lambda reference: read_year(Path(os.path.expanduser(reference))),
    ),
)


def names() -> list[str]:
    """Climates that can be chosen by name, offline."""
    return [name for source in SOURCES for name in source.names]


def load_year(reference: str) -> ClimateYear:
    """The checked year that a name or a file path stands for; ClimateFault in plain words if none does."""
    for source in SOURCES:
        if source.owns(reference):
            return source.year(reference)
    by_plain = {name.casefold(): name for name in names()}
    near = get_close_matches(reference.casefold(), by_plain, n=1)
    hint = f" Did you mean “{by_plain[near[0]]}”?" if near else ""
    raise ClimateFault(
        Fault(
            "climate",
            f"“{reference[:60]}” is neither an included climate nor a file.{hint} "
            f"Included are {', '.join(names())}; or give the path of a weather file, or a place like 52.2,0.1.",
        )
    )
