"""How are prices by hour and by amount written in one line, and what is wrong with such a line?

A window is a price in hundredths, "at", two clock times, and the days where not every day: ``9 at 0:30-5:30`` or
``38.2 at 16:00-19:00 Mon-Fri`` or ``15 at 22:00-2:00 Sat,Sun``. A window past midnight counts for the days named, its
hours after midnight too. A block is ``31 beyond 150``: the price of each kWh beyond so many in a billing period.
A semicolon stands between windows or blocks.
"""

from __future__ import annotations

import re
from itertools import pairwise
from typing import NamedTuple

from estimator.inputs.faults import number_words, shown

DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
MOST_PRICE = 300.0  # hundredths per kWh
MOST_BLOCK = 50_000.0  # kWh
_WINDOW_FORM = "write price at from-to days, such as 38.2 at 16:00-19:00 Mon-Fri"
_BLOCK_FORM = "write price beyond kWh, such as 31 beyond 150"
_WINDOW = re.compile(r"(?P<price>\S+) at (?P<start>\S+?)-(?P<stop>[^\s-]+)(?: (?P<days>.+))?", re.ASCII)
_BLOCK = re.compile(r"(?P<price>\S+) beyond (?P<limit>\S+)", re.ASCII)
_NUMBER = re.compile(r"\d+(?:\.\d+)?", re.ASCII)
_TIME = re.compile(r"(\d{1,2}):(\d{2})", re.ASCII)
_HOURS, _MINUTES = 24, 60


class HourPrice(NamedTuple):
    """A price [hundredths/kWh] from one clock time to another [h], on some days (0 Monday)."""

    price: float
    start: float
    stop: float
    days: tuple[int, ...]


class BlockPrice(NamedTuple):
    """A price [hundredths/kWh] of each kWh beyond a limit [kWh] within a billing period."""

    price: float
    limit: float


def hour_prices(line: str) -> tuple[HourPrice, ...]:
    """The windows of a line, none for an empty one; ValueError with a sentence for every fault in it.

    >>> hour_prices("9 at 0:30-5:30; 15 at 22:00-2:00 Sat,Sun")[1]
    HourPrice(price=15.0, start=22.0, stop=2.0, days=(5, 6))
    """
    said: list[str] = []
    found = [window for text in _parts(line) if (window := _hour_price(text, said))]
    _refuse(said)
    return tuple(found)


def block_prices(line: str) -> tuple[BlockPrice, ...]:
    """The blocks of a line with rising limits, none for an empty one; ValueError with a sentence for every fault.

    >>> block_prices("31 beyond 150; 45 beyond 330")[0]
    BlockPrice(price=31.0, limit=150.0)
    """
    said: list[str] = []
    found = [block for text in _parts(line) if (block := _block_price(text, said))]
    for before, after in pairwise(found):
        if after.limit <= before.limit:
            said.append(f"{after.limit:g} kWh does not follow {before.limit:g} kWh. Put limits in rising order.")
    _refuse(said)
    return tuple(found)


def _parts(line: str) -> list[str]:
    return [" ".join(text.split()) for text in line.strip().rstrip(";").split(";")] if line.strip() else []


def _refuse(said: list[str]) -> None:
    if said:
        raise ValueError(" ".join(said))


def _hour_price(text: str, said: list[str]) -> HourPrice | None:
    match = _WINDOW.fullmatch(text)
    if match is None:
        said.append(f"{shown(text)} is no price of some hours: {_WINDOW_FORM}.")
        return None
    before = len(said)
    price = _price(match["price"], text, said)
    start, stop = (_time(match[key], text, said) for key in ("start", "stop"))
    days = _days(match["days"], text, said)
    if len(said) == before and start == stop and start > 0.0:
        said.append(f"{shown(text)} begins when it ends; write 0:00-24:00 for the whole day.")
    return HourPrice(price, start, stop, days) if len(said) == before else None


def _block_price(text: str, said: list[str]) -> BlockPrice | None:
    match = _BLOCK.fullmatch(text)
    if match is None:
        said.append(f"{shown(text)} is no price of a block: {_BLOCK_FORM}.")
        return None
    before = len(said)
    price = _price(match["price"], text, said)
    limit = _number(match["limit"])
    if limit is None or not 0.0 < limit <= MOST_BLOCK:
        said.append(f"{shown(match['limit'])} in {shown(text)} is no amount from above 0 to 50,000 kWh.")
    return BlockPrice(price, limit or 0.0) if len(said) == before else None


def _number(text: str) -> float | None:
    return float(text) if _NUMBER.fullmatch(text) else None


def _price(text: str, whole: str, said: list[str]) -> float:
    price = _number(text)
    if price is None or price > MOST_PRICE:
        point = " Write a decimal point." if "," in text else ""
        what = f"is no price from 0 to {number_words(MOST_PRICE)} hundredths (pence, cents) per kWh"
        said.append(f"{shown(text)} in {shown(whole)} {what}.{point}")
    return price or 0.0


def _time(text: str, whole: str, said: list[str]) -> float:
    match = _TIME.fullmatch(text)
    hour, minute = (int(match[1]), int(match[2])) if match else (_HOURS, 1)
    if minute >= _MINUTES or hour * _MINUTES + minute > _HOURS * _MINUTES:
        said.append(f"{shown(text)} in {shown(whole)} is no clock time from 0:00 to 24:00.")
    return hour + minute / _MINUTES


def _days(text: str | None, whole: str, said: list[str]) -> tuple[int, ...]:
    """Weekdays named by themselves or from one to another, Monday 0; every day where none is named."""
    if text is None:
        return tuple(range(len(DAYS)))
    known = {day.lower(): number for number, day in enumerate(DAYS)}
    found: set[int] = set()
    for part in text.split(","):
        first, *rest = [known.get(day.strip().lower()) for day in part.split("-")]
        last = rest[-1] if rest else first
        if first is None or last is None or len(rest) > 1:
            said.append(f"{shown(part.strip())} in {shown(whole)} is no day; write {', '.join(DAYS)} or Mon-Fri.")
        else:
            found |= {(first + step) % len(DAYS) for step in range((last - first) % len(DAYS) + 1)}
    return tuple(sorted(found))
