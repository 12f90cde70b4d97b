"""Which included climate is nearest to a place, for want of its own?"""

from __future__ import annotations

from functools import cache
from math import asin, cos, radians, sin, sqrt

EARTH_RADIUS = 6371.0  # km, mean (IUGG)
_FAR = 300.0  # km beyond which the weather is likely another


def distance(latitude: float, longitude: float, *, to: tuple[float, float]) -> float:
    """Distance [km] over the ground to another latitude and longitude [°], by the haversine formula."""
    north, east, there_north, there_east = (radians(angle) for angle in (latitude, longitude, *to))
    chord = sin((there_north - north) / 2.0) ** 2
    chord += cos(north) * cos(there_north) * sin((there_east - east) / 2.0) ** 2
    return 2.0 * EARTH_RADIUS * asin(min(1.0, sqrt(chord)))


@cache
def _places() -> dict[str, tuple[float, float, bool]]:
    from estimator.climate.sources import SOURCES  # the list of sources has this module's users in it

    found = {}
    for source in SOURCES:
        for name in source.names:
            place = source.place(name) if source.place else source.year(name)
            found[name] = place.latitude, place.longitude, place.invented
    return found


def positions() -> dict[str, tuple[float, float]]:
    """Latitude and longitude [°] of the included climates of real places."""
    return {name: (north, east) for name, (north, east, invented) in _places().items() if not invented}


def nearest(latitude: float, longitude: float, *, count: int = 3) -> list[tuple[str, float]]:
    """The included climates nearest to a place with their distance [km], the nearest first; far ones only for want."""
    away = sorted((_away(name, latitude, longitude), name) for name in _places())[:count]
    return [(name, far) for at, (far, name) in enumerate(away) if at == 0 or far <= _FAR]


def _away(name: str, latitude: float, longitude: float) -> float:
    return distance(latitude, longitude, to=_places()[name][:2])


def next_best(latitude: float, longitude: float) -> str:
    """A sentence offering the nearest included climate, which needs no network, and the user's own file."""
    name, away = nearest(latitude, longitude, count=1)[0]
    invented = ", an invented one" if _places()[name][2] else ""
    far = "; so far away that its weather may be quite another" if away > _FAR else ""
    return (
        f"Without the network, the nearest included climate is “{name}”{invented}, {away:,.0f} km away{far}; "
        "or give a weather file of your own."
    )
