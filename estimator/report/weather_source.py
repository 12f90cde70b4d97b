"""Where does the weather come from, what was done to it, and what is kept of it here?"""

from __future__ import annotations

from datetime import UTC, datetime

from estimator.air.properties import density
from estimator.climate import nearby
from estimator.climate.cache import Kept
from estimator.climate.chosen import kept_name
from estimator.climate.plausible import ReadReport
from estimator.climate.site import FARTHEST, LAPSE_RATE, wind_share
from estimator.climate.year import ClimateYear
from estimator.inputs.home import Place
from estimator.report import figures
from estimator.report.rows import Rows

_HIGHER = 1000.0  # m, for which the change of temperature is said
_MEGABYTE = 1e6


def source(year: ClimateYear) -> str:
    """Whose year it is, and where."""
    return f"Weather now: {place(year)} {_sentence(year.source)} Licence: {year.licence}."


def place(year: ClimateYear) -> str:
    """Name and position of a year."""
    invented = ", an invented climate" if year.invented else ""
    north = f"{abs(year.latitude):.2f}° {'S' if year.latitude < 0 else 'N'}"
    east = f"{abs(year.longitude):.2f}° {'W' if year.longitude < 0 else 'E'}"
    where = f"{north}, {east}"
    named = year.name if where == year.name else f"{year.name}{invented}; {where}"
    return f"{named}, {figures.quantity(year.altitude, 'm')} above the sea."


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:].rstrip('.')}."


def site(station: ClimateYear, home: ClimateYear, entered: Place) -> str:
    """How the home's weather differs from the station's, and by which rate."""
    told = [_altitude(station, home, entered)]
    if (share := wind_share(entered.terrain, height=entered.wind_height)) != 1.0:
        told.append(
            f"Wind is {figures.share(share)} of the station's, for {entered.terrain} land at "
            f"{figures.quantity(entered.wind_height, 'm')} (ASHRAE Fundamentals)."
        )
    return " ".join(told)


def _lapse() -> str:
    rate = f"{figures.quantity(_HIGHER * LAPSE_RATE, 'K')} for each {figures.quantity(_HIGHER, 'm')}"
    return f"{rate}, the rate of the standard atmosphere (ISO 2533)"


def _altitude(station: ClimateYear, home: ClimateYear, entered: Place) -> str:
    weight = density(pressure=float(home.pressure.mean()))
    heavy = f"Its air weighs {figures.quantity(weight, 'kg/m³')} at {figures.temperature(20.0)}"
    if entered.altitude is None:
        return (
            f"Taken as it is, {figures.quantity(station.altitude, 'm')} above the sea; with the home's own altitude it "
            f"is corrected by {_lapse()}. {heavy}."
        )
    warmer = float(home.temp_air.mean() - station.temp_air.mean())
    lighter = weight / density(pressure=float(station.pressure.mean())) - 1.0
    by = "" if abs(lighter) < 5e-4 else f", {figures.share(abs(lighter))} {'more' if lighter > 0 else 'less'}"
    heat = f" than at the station, and each cubic metre carries so much {'more' if lighter > 0 else 'less'} heat"
    far = (
        " So far above or below the station one rate is a guess." if abs(entered.altitude - station.altitude) > FARTHEST
        else ""
    )  # fmt: skip
    return (
        f"The station lies at {figures.quantity(station.altitude, 'm')}, the home at "
        f"{figures.quantity(entered.altitude, 'm')}: {figures.quantity(abs(warmer), 'K')} "
        f"{'warmer' if warmer > 0 else 'colder'} all year, {_lapse()}. {heavy}{by}{heat if by else ''}.{far}"
    )


def became(report: ReadReport) -> tuple[tuple[str, tuple[str, ...], str], ...]:
    """What became of a weather file: headings, their sentences, and what stands there where there are none."""
    return (
        ("Read", report.read, "nothing"),
        ("Not in the file, and what stands in", report.missing, "nothing"),
        ("Repaired", report.repaired, "nothing"),
        ("Implausible", report.implausible, "nothing that is looked for"),
    )


def nearest(latitude: float, longitude: float) -> list[tuple[str, str]]:
    """Included climates near a place, each with the words of a button that uses it."""
    return [
        (name, f"Use {name}, {figures.quantity(away, 'km')} away") for name, away in nearby.nearest(latitude, longitude)
    ]


def kept(years: list[Kept], *, limit: int) -> Rows:
    """What is kept on this machine, the newest used first."""
    total = sum(one.size for one in years)
    return Rows(
        caption="Weather kept on this machine",
        note=f"{_megabytes(total)} of at most {_megabytes(limit)}; the longest unused goes first.",
        head=("Weather", "Size", "Last used"),
        rows=tuple(
            (kept_name(one.key), _megabytes(one.size), datetime.fromtimestamp(one.used, UTC).date().isoformat())
            for one in years
        ),
        words=frozenset({0, 2}),
    )


def _megabytes(size: int) -> str:
    return figures.quantity(size / _MEGABYTE, "MB", figures=2)
