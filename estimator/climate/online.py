"""How does a latitude and longitude become a weather year, and what leaves the machine for it?

Asked for is a typical year of PVGIS, the service of the European Commission's Joint Research Centre. What is
sent is the place, rounded; what comes back is kept (`cache`), so that a place is asked for once.
"""

from __future__ import annotations

import hashlib
import logging
import os
import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from math import floor
from urllib.parse import urlsplit

from estimator.climate.cache import Cache, standard_cache
from estimator.climate.check import PLACE_LIMITS
from estimator.climate.clean import checked_year
from estimator.climate.clock import turned, zone_of
from estimator.climate.nearby import next_best
from estimator.climate.pvgis import Answer, Form, answer_from, unpacked
from estimator.climate.raw import Place, RawYear
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault, Fault

URL = "https://re.jrc.ec.europa.eu/api/v5_3/"
URL_VARIABLE = "ESTIMATOR_PVGIS_URL"  # another address of the same service
TIMEOUT = 30.0  # s
GRID = 0.05  # °, some 5 km: PVGIS's weather is no finer, and a home is not given away
LICENCE = "© European Union, CC BY 4.0 (from memory): free to use with the source named"
_NUMBER = r"([+-]?\d{1,3}(?:\.\d*)?)\s*°?\s*"
_POINT = re.compile(
    rf"\s*{_NUMBER}([NS])?\s*[,;\s]\s*{_NUMBER}([EW])?\s*(?:[,;\s]\s*UTC\s*([+-]?\d{{1,2}})(?::([0-5]\d))?)?\s*",
    re.IGNORECASE,
)
MINUTES_PER_HOUR = 60
_LOG = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True, kw_only=True)
class Point:
    """A place as asked for: rounded to `GRID`, with the hours of its standard time before UTC."""

    latitude: float
    longitude: float
    utc_offset: float

    @property
    def reference(self) -> str:
        """The place as `point_of` reads it back, with its zone where that is not the one of its longitude."""
        zone = self.utc_offset
        hours, minutes = divmod(round(abs(zone) * MINUTES_PER_HOUR), MINUTES_PER_HOUR)
        told = f",UTC{'-' if zone < 0.0 else '+'}{hours}" + (f":{minutes:02d}" if minutes else "")
        return f"{self.latitude:.2f},{self.longitude:.2f}{'' if zone == zone_of(self.longitude) else told}"

    @property
    def name(self) -> str:
        """The place in words of a map."""
        north, east = "S" if self.latitude < 0.0 else "N", "W" if self.longitude < 0.0 else "E"
        return f"{abs(self.latitude):.2f}° {north}, {abs(self.longitude):.2f}° {east}"


def is_point(reference: str) -> bool:
    """Whether a reference reads as latitude and longitude: “52.2,0.1”, “52.2° N 0.1° W”, “40.4,-3.7,UTC+1”."""
    return _POINT.fullmatch(reference) is not None


def point_of(reference: str) -> Point:
    """The rounded place a reference means; without a stated zone that of its longitude. ClimateFault."""
    found = _POINT.fullmatch(reference)
    if found is None:
        what = f"“{reference[:40]}” is no latitude and longitude; write them like 52.2,0.1 or 52.2° N, 0.1° W."
        raise ClimateFault(Fault("climate", what))
    north, south_mark, east, west_mark, hours, minutes = found.groups()
    latitude = _rounded(float(north) * (-1.0 if (south_mark or "").upper() == "S" else 1.0))
    longitude = _rounded(float(east) * (-1.0 if (west_mark or "").upper() == "W" else 1.0))
    zone = zone_of(longitude)
    if hours is not None:
        zone = float(hours) + (-1.0 if hours.startswith("-") else 1.0) * float(minutes or 0) / MINUTES_PER_HOUR
    given = {"latitude": latitude, "longitude": longitude, "utc_offset": zone}
    faults = [
        Fault(f"climate, {name.replace('_', ' ')}", f"{value:g} {unit} is not within {low:g} to {high:g}.")
        for name, value in given.items()
        for low, high, unit in [PLACE_LIMITS[name]]
        if not low <= value <= high
    ]
    if faults:
        raise ClimateFault(*faults)
    return Point(**given)


def service(url: str | None = None) -> str:
    """Address of the service: as given, as the environment says, or the standard one."""
    return url or os.environ.get(URL_VARIABLE) or URL


def what_leaves(point: Point, *, url: str | None = None, cache: Cache | None = None) -> str:
    """What leaves this machine for a place, and to whom, to be told before it does."""
    cache = standard_cache() if cache is None else cache
    if _kept(point, service(url), cache) is not None:
        return f"Nothing leaves this machine: the year of {point.name} is kept in {cache.folder}."
    host = urlsplit(service(url)).netloc
    whose = "PVGIS, a service of the European Commission" if service(url) == URL else "a service like PVGIS"
    kept = f" The answer is kept in {cache.folder}." if cache.folder else ""
    return (
        f"A request goes to {host} ({whose}) for a typical weather year. It tells latitude {point.latitude:.2f} and "
        f"longitude {point.longitude:.2f}, rounded to {GRID}°, and, as every request does, the internet address of "
        f"this machine. Nothing else about home or people is sent.{kept}"
    )


def online_year(
    reference: str,
    *,
    url: str | None = None,
    timeout: float = TIMEOUT,
    form: Form = "json",
    cache: Cache | None = None,
    tell: Callable[[str], None] = _LOG.warning,
    waiting: Callable[[float], None] | None = None,
) -> ClimateYear:
    """The checked typical year of a place, kept or asked for; ClimateFault with the next best choice.

    tell: given the sentence of `what_leaves` before a request; by default the log, which shows it on the error
    stream. waiting: given the seconds gone by while the service is waited for.
    """
    point, url = point_of(reference), service(url)
    cache = standard_cache() if cache is None else cache
    if (kept := kept_year(reference, url=url, cache=cache)) is not None:
        return kept
    tell(what_leaves(point, url=url, cache=cache))
    today = datetime.now(UTC).date().isoformat()
    try:
        answer = answer_from(
            url, latitude=point.latitude, longitude=point.longitude, timeout=timeout, form=form, waiting=waiting
        )
        year = _year(answer, point, url=url, fetched=today)
    except ClimateFault as fault:
        what = "; ".join(str(one) for one in fault.faults)
        if fault.faults[0].where:
            what = f"the answer of {urlsplit(url).netloc} cannot be used: {what}"
        raise ClimateFault(
            Fault(f"climate of {point.name}", f"{what} {next_best(point.latitude, point.longitude)}")
        ) from None
    not_kept = cache.put(_key(point, url), answer.packed(fetched=today))
    return replace(year, repairs=(*year.repairs, f"downloaded year: {not_kept}")) if not_kept else year


def kept_year(reference: str, *, url: str | None = None, cache: Cache | None = None) -> ClimateYear | None:
    """The year of a place where it is kept on this machine, else None; nothing is asked of any network."""
    point, url = point_of(reference), service(url)
    found = _kept(point, url, standard_cache() if cache is None else cache)
    return None if found is None else _year(found[0], point, url=url, fetched=found[1].get("fetched", "earlier"))


def _rounded(angle: float) -> float:
    return round(round(angle / GRID) * GRID, 2) + 0.0  # no minus nil


def _key(point: Point, url: str) -> str:
    return f"pvgis_{point.latitude:+.2f}_{point.longitude:+.2f}_{hashlib.sha256(url.encode()).hexdigest()[:8]}"


def _kept(point: Point, url: str, cache: Cache) -> tuple[Answer, dict[str, str]] | None:
    content = cache.get(_key(point, url))
    return None if content is None else unpacked(content)


def _year(answer: Answer, point: Point, *, url: str, fetched: str) -> ClimateYear:
    """The answer's rows on the clock of the place: values, hours and the sun's moment turned together.

    Where the zone is not of whole hours, a row belongs to the local hour in which it falls, and the sun's moment
    has the rest.
    """
    whole = floor(point.utc_offset)
    data = f", from {answer.made_from}" if answer.made_from else ""
    return checked_year(
        RawYear(
            place=Place(
                name=point.name,
                latitude=answer.latitude,
                longitude=answer.longitude,
                altitude=answer.altitude,
                utc_offset=point.utc_offset,
                source=f"typical year of PVGIS (European Commission, Joint Research Centre){data}; "
                f"{urlsplit(url).netloc}, fetched {fetched}",
                licence=LICENCE,
            ),
            stamps=turned(answer.stamps, whole),
            columns=answer.columns,
            moment=answer.moment + point.utc_offset - whole,
        )
    )
