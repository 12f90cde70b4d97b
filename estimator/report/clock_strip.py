"""How are the prices of a week drawn as strips of 24 hours, one for each run of days with the same prices?

Cheaper, ordinary and dearer hours differ in height as well as in colour, so that a grey copy tells them apart.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from estimator.inputs.prices import Prices
from estimator.inputs.tariff_lines import DAYS, hour_prices
from estimator.report import cash
from estimator.report.drawing import Look, document, safe, surface, text_width
from estimator.report.price_words import tariff_in_words
from estimator.units import HOURS_PER_DAY, from_percent

TITLE = "What electricity costs over the day"

_WIDTH = 358.0  # a screen of 390 px without its margins
_NAME, _STRIP = 18.0, 26.0  # heights of the name of the days above a strip, and of the strip
_ROW = _NAME + _STRIP + 14.0
_FOOT = 18.0
_SIZE = 12.5
_LOW, _MIDDLE = 0.45, 0.7  # of the strip's height, for cheaper and for ordinary hours
_TICKS = (0, 6, 12, 18, 24)


@dataclass(frozen=True, slots=True)
class Stretch:
    """One price [hundredths/kWh] from one clock time to another [h]."""

    start: float
    stop: float
    price: float


def stretches(prices: Prices, day: int) -> tuple[Stretch, ...]:
    """The prices of one day of the week (0 Monday), from midnight to midnight; later windows win, as in the bill."""
    level = float(from_percent(prices.tariff.level))
    base = (prices.electricity or 0.0) * level
    windows = hour_prices(prices.tariff.windows) if prices.tariff.kind == "time of use" else ()
    spans = [
        (start, stop, window.price * level)
        for window in windows
        if day in window.days
        for start, stop in _within_day(window.start, window.stop)
    ]
    edges = sorted({0.0, HOURS_PER_DAY, *(edge for start, stop, _ in spans for edge in (start, stop))})
    found: list[Stretch] = []
    for start, stop in pairwise(edges):
        price = next((price for first, last, price in reversed(spans) if first <= start < last), base)
        if found and found[-1].price == price:
            found[-1] = Stretch(found[-1].start, stop, price)
        else:
            found.append(Stretch(start, stop, price))
    return tuple(found)


def _within_day(start: float, stop: float) -> tuple[tuple[float, float], ...]:
    if stop > start:
        return ((start, stop),)
    return ((start, HOURS_PER_DAY), (0.0, stop))


def clock_strip(prices: Prices, *, look: Look = "auto", embed_font: bool = True) -> str:
    """The strips of a filled case's electricity tariff as one SVG document."""
    week: dict[tuple[Stretch, ...], list[int]] = {}
    for day in range(len(DAYS)):
        week.setdefault(stretches(prices, day), []).append(day)
    base = (prices.electricity or 0.0) * float(from_percent(prices.tariff.level))
    body = "".join(
        _strip(line, days, top=_ROW * number, base=base, currency=prices.currency)
        for number, (line, days) in enumerate(week.items())
    )
    foot = _ROW * len(week)
    ticks = "".join(
        f'<text class="quiet" x="{_x(hour):.1f}" y="{foot + 4.0:.1f}" font-size="{_SIZE}" font-weight="500" '
        f'text-anchor="{"start" if hour == 0 else "end" if hour == HOURS_PER_DAY else "middle"}">{hour}:00</text>'
        for hour in _TICKS
    )
    return document(
        f"{body}{ticks}",
        width=_WIDTH,
        height=foot + _FOOT,
        title=TITLE,
        words=tariff_in_words(prices),
        look=look,
        embed_font=embed_font,
    )


def _strip(line: tuple[Stretch, ...], days: list[int], *, top: float, base: float, currency: str) -> str:
    out = [f'<text class="ink" x="0" y="{top + 12.0:.1f}" font-size="{_SIZE}" font-weight="700">{_named(days)}</text>']
    foot = top + _NAME + _STRIP
    for part in line:
        left, right = _x(part.start), _x(part.stop)
        meaning, share = ("air", _MIDDLE)
        if part.price < base:
            meaning, share = "kept", _LOW
        elif part.price > base:
            meaning, share = "electricity", 1.0
        height = share * _STRIP
        out.append(
            f'<rect {surface(meaning)} x="{left:.1f}" y="{foot - height:.1f}" width="{right - left - 1.0:.1f}" '
            f'height="{height:.1f}"/>'
        )
        said = cash.unit_price(part.price, currency).partition("/")[0]
        if text_width(said, size=_SIZE) < right - left:
            middle = 0.5 * (left + right)
            out.append(
                f'<text class="ink" x="{middle:.1f}" y="{foot - height - 3.0:.1f}" font-size="{_SIZE}" '
                f'font-weight="500" text-anchor="middle">{safe(said)}</text>'
            )
    return "".join(out)


def _x(hour: float) -> float:
    return _WIDTH * hour / HOURS_PER_DAY


def _named(days: list[int]) -> str:
    if len(days) == len(DAYS):
        return "Every day"
    if len(days) > 2 and days == list(range(days[0], days[-1] + 1)):
        return f"{DAYS[days[0]]} to {DAYS[days[-1]]}"
    return ", ".join(DAYS[day] for day in days)
