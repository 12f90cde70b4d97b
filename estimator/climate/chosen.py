"""Which year does a case mean, and may its weather be named to others?

The one way from the entries of a case to its weather, for pages, command line and tests alike: the year that
`place.climate` names, at the altitude and terrain of the home.
"""

from __future__ import annotations

from estimator.climate.clock import zone_of
from estimator.climate.kept_files import is_kept_file
from estimator.climate.monthly import monthly_year
from estimator.climate.monthly_means import MonthlyMeans
from estimator.climate.monthly_tables import SYNTHETIC
from estimator.climate.online import is_point, kept_year, point_of, what_leaves
from estimator.climate.raw import Place
from estimator.climate.site import at_site
from estimator.climate.sources import load_year, names
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault, Fault
from estimator.inputs import home
from estimator.inputs.case import Case
from estimator.inputs.month_lines import twelve
from estimator.inputs.months import MONTHLY, Months

OWN_FIGURES = "your own monthly means"
OWN_FILE = "a weather file of your own"
_FIGURES = {
    "temperature": "temp_air",
    "wind": "wind_speed",
    "sun": "ghi",
    "swing": "daily_swing",
    "spread": "daily_spread",
}


def case_year(case: Case, *, reference: str = "", online: bool = True) -> ClimateYear:
    """The checked year of a case at its home's site; ClimateFault in plain words.

    reference: to weather that stands in place of the case's own. online: whether a network may be asked; where it may
    not, a latitude and longitude whose year is not kept here is a fault. Warns of an altitude far from the station's.
    """
    return at_home(_year(case, reference or case.place.climate, online=online), case.place)


def at_home(year: ClimateYear, place: home.Place) -> ClimateYear:
    """A station's year at the altitude, and with the wind, of a home; itself where the case says nothing of them."""
    altitude = year.altitude if place.altitude is None else place.altitude
    return at_site(year, altitude=altitude, terrain=place.terrain, height=place.wind_height)


def _year(case: Case, reference: str, *, online: bool) -> ClimateYear:
    if reference == MONTHLY:
        return _of_months(case.months)
    if is_point(reference) and not online:
        year = kept_year(reference)
        if year is None:
            what = f"the weather of {point_of(reference).name} is not kept on this machine."
            raise ClimateFault(Fault("place.climate", f"{what} {what_leaves(point_of(reference))}"))
        return year
    return load_year(reference)


def _of_months(months: Months) -> ClimateYear:
    try:
        return monthly_year(means_of(months))
    except ClimateFault as fault:
        said = {ours: entry for entry, ours in _FIGURES.items()}
        raise ClimateFault(*(Fault(_entry(one.where, said), one.what) for one in fault.faults)) from None


def _entry(where: str, said: dict[str, str]) -> str:
    name, comma, month = where.partition(", ")
    return f"months.{said[name]}{comma}{month}" if name in said else where


def means_of(months: Months) -> MonthlyMeans:
    """The twelve figures of a case; ClimateFault where the temperatures are missing or a line cannot be read."""
    try:
        lines = {ours: twelve(getattr(months, said)) for said, ours in _FIGURES.items()}
    except ValueError as unreadable:
        raise ClimateFault(Fault("months", str(unreadable))) from None
    temperature = lines.pop("temp_air")
    if temperature is None:
        raise ClimateFault(Fault("months.temperature", "missing: write the twelve mean temperatures, January first."))
    zone = zone_of(months.longitude) if months.utc_offset is None else months.utc_offset
    place = Place(
        name=OWN_FIGURES,
        latitude=months.latitude,
        longitude=months.longitude,
        altitude=months.altitude,
        utc_offset=zone,
        source=f"monthly means that somebody typed; {SYNTHETIC}",
        licence="as their publisher states",
    )
    return MonthlyMeans(place=place, temp_air=temperature, **lines)


def can_travel(reference: str) -> bool:
    """Whether a reference may stand in a link: it tells of no file, and opens none that its writer could choose."""
    return reference in names() or reference == MONTHLY or is_point(reference) or is_kept_file(reference)


def kept_name(key: str) -> str:
    """What a kept year is called where people read it, by its key."""
    kind, _, rest = key.partition("_")
    if kind == "file":
        return f"{OWN_FILE}, {rest[:6]}…"
    return point_of(",".join(rest.split("_")[:2])).name if kind == "pvgis" else key


def spoken(reference: str) -> str:
    """What a reference is called where people read it."""
    if reference == MONTHLY:
        return OWN_FIGURES
    if is_kept_file(reference):
        return OWN_FILE
    return point_of(reference).name if is_point(reference) else reference
