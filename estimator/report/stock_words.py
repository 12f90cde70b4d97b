"""What is said of a home among many, and of the whole stock?"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from estimator.inputs.quantity import Tag

ANSWERS: Mapping[str, str] = MappingProxyType(
    {
        "at once": "pays at once",
        "pays": "pays back within its life",
        "saves": "saves, but not its cost within its life",
        "loses": "does not pay back",
    }
)
TIGHTNESS: Mapping[str, str] = MappingProxyType(
    {
        "tight enough": "tight enough: it saves as the house stands",
        "seal first": "seal first: it saves only once sealed",
        "neither": "it saves neither as the house stands nor sealed",
    }
)
REASONS: Mapping[str, str] = MappingProxyType(
    {
        "worth it": "The heat saved is worth more over its life than electricity, upkeep and what it costs more.",
        "too dear": "It saves every year, but less over its life than it costs more than the baseline.",
        "sealing turns it": "Too much air comes through leaks and passes the exchanger by; once sealed it saves.",
        "no heat saved": "So leaky that plain extract, which draws in place of the leaks, needs no more heat.",
        "running cost": "Its electricity and upkeep cost more than the heat it saves, sealed or not.",
    }
)
RESTS_ON: Mapping[Tag, str] = MappingProxyType(
    {
        "measured": "",
        "typical": " Leakage is estimated from age, not tested.",
        "assumed": " Leakage is a figure without a test.",
    }
)
ERROR_OF = (
    ("heat saved", "kWh a year"),
    ("net saving", "money a year"),
    ("frost protection", "kWh a year"),
    ("payback, where there is one", "years"),
)
"""Figures whose error is told, in the order in which a screening notes them, with their units."""


def reason(key: str, basis: Tag) -> str:
    """Why a home gets its answer, and what its leakage rests on where nobody has tested it."""
    return REASONS[key] + RESTS_ON[basis]
