"""How are range and money drawn on paper, where nothing can be pointed at?

Two pictures as self-contained SVG: the range of the yearly saving against each baseline, and what has come back of the
extra cost by year. Labels stand on the marks; the table beside each says the same in figures.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from estimator.report import cash
from estimator.report.drawing import Look, document, safe, text_width
from estimator.units import Array

SPANS = "Saved in a year: eight of ten cases lie within each bar, the best guess at its mark"
DESK = 480.0
PHONE = 358.0  # a screen of 390 px without its margins
_SIZE = 13.0
_ROW = 58.0
_SHORTEST = 3.0  # a piece of a dashed line that is worth drawing
_PLOT = 190.0
_STEPS = (1.0, 2.0, 2.5, 5.0, 10.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A saving below which a tenth and nine tenths of the cases lie, and at the best guess [money a year]."""

    words: str
    low: float
    best: float
    high: float

    def said(self, currency: str) -> str:
        """The span in words, rounded as its own width bears."""
        low, high, best = (
            cash.money(each, currency, within=(self.low, self.high)) for each in (self.low, self.high, self.best)
        )
        return f"{self.words} {low} to {high}, best guess {best}"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Course:
    """Money since the fitting [money] at the end of each year from nil, (years + 1,) each."""

    low: Array
    best: Array
    high: Array


def spans(
    rows: Sequence[Span],
    currency: str,
    *,
    title: str,
    words: str,
    look: Look = "light",
    before: str = "against ",
    width: float = DESK,
) -> str:
    """Each range as a bar with the best guess marked, on one scale with nil.

    Letters go with it unless it is for paper. before: what stands before the words of each row. width: in pixels.
    """
    low = min(0.0, *(min(row.low, row.best) for row in rows))
    high = max(0.0, *(max(row.high, row.best) for row in rows))
    room = text_width(cash.money(-1e4, currency), size=_SIZE) + 8.0

    def across(value: float) -> float:
        return room + (value - low) / max(high - low, 1e-9) * (width - 2.0 * room)

    out, nil = [], across(0.0)
    clear: list[float] = []  # heights at which words stand across the line of nil, which stops for them
    for number, row in enumerate(rows):
        y = number * _ROW + 30.0
        x1, x2, best = across(row.low), across(row.high), across(row.best)
        out.append(_text(0.0, y - 12.0, f"{before}{row.words}", "ink", bold=True))
        if text_width(f"{before}{row.words}", size=_SIZE, weight=700) + 3.0 > nil:
            clear.append(y - 12.0)
        out.append(f'<rect class="kept" x="{x1:.1f}" y="{y:.1f}" width="{max(x2 - x1, 2.0):.1f}" height="12"/>')
        out.append(f'<rect class="ink" x="{best - 1.5:.1f}" y="{y - 3.0:.1f}" width="3" height="18"/>')
        for x, end, anchor in ((x1 - 5.0, row.low, "end"), (x2 + 5.0, row.high, "start")):
            out.append(_text(x, y + 11.0, cash.money(end, currency, within=(row.low, row.high)), "ink", anchor=anchor))
    foot = len(rows) * _ROW
    for top, end_at in zip([4.0, *(at + 4.0 for at in clear)], [*(at - _SIZE for at in clear), foot], strict=True):
        if end_at > top + _SHORTEST:
            out.append(
                f'<line class="ink-line" x1="{nil:.1f}" y1="{top:.1f}" x2="{nil:.1f}" y2="{end_at:.1f}" '
                'stroke-dasharray="2 3"/>'
            )
    out.append(_text(nil, foot + 14.0, "nothing saved", "quiet", anchor=_anchor(nil, width)))
    return document(
        "".join(out), width=width, height=foot + 20.0, title=title, words=words, look=look, embed_font=look == "auto"
    )


def course(found: Course, currency: str, *, title: str, words: str) -> str:
    """The best guess as a line within its band, against the level at which the cost is back."""
    years = np.arange(found.best.size, dtype=float)
    low, high = float(min(found.low.min(), 0.0)), float(max(found.high.max(), 0.0))
    marks = [mark for mark in round_levels(low, high) if low <= mark <= high]
    left = max(text_width(cash.money(mark, currency), size=_SIZE) for mark in marks) + 8.0

    def at(year: float, money: float) -> str:
        x = left + year / max(years[-1], 1.0) * (DESK - left - 8.0)
        y = 8.0 + (high - money) / max(high - low, 1e-9) * (_PLOT - 16.0)
        return f"{x:.1f} {y:.1f}"

    band = [at(y, m) for y, m in zip(years, found.high, strict=True)]
    band += [at(y, m) for y, m in zip(years[::-1], found.low[::-1], strict=True)]
    line = [at(y, m) for y, m in zip(years, found.best, strict=True)]
    out = [f'<path class="air" d="M{"L".join(band)}Z"/>']
    for mark in marks:
        left_end, level = at(0.0, mark).split()
        style = 'class="ink-line" stroke-width="1.2"' if mark == 0.0 else 'class="lost-line" stroke-width=".4"'
        out.append(f'<line {style} x1="{left_end}" y1="{level}" x2="{DESK - 8.0:.1f}" y2="{level}"/>')
        out.append(_text(left - 6.0, float(level) + 4.5, cash.money(mark, currency), "quiet", anchor="end"))
    out.append(f'<path class="kept-line" stroke-width="2.2" d="M{"L".join(line)}"/>')
    for year in range(0, int(years[-1]) + 1, 5 if years[-1] > 8 else 1):
        x = float(at(float(year), 0.0).split()[0])
        out.append(_text(x, _PLOT + 14.0, f"{year}", "quiet", anchor="end" if year == years[-1] else "middle"))
    out.append(_text(left, _PLOT + 32.0, "years after fitting", "quiet"))
    return document(
        "".join(out), width=DESK, height=_PLOT + 38.0, title=title, words=words, look="light", embed_font=False
    )


def round_levels(low: float, high: float) -> list[float]:
    """Round levels for about five lines."""
    rough = max((high - low) / 5.0, 1e-9)
    power = 10.0 ** np.floor(np.log10(rough))
    step = next(float(factor * power) for factor in _STEPS if factor * power >= rough)
    return [float(step * n) for n in range(int(np.floor(low / step)), int(np.ceil(high / step)) + 1)]


def _anchor(x: float, width: float) -> str:
    return "start" if x < 60.0 else "end" if x > width - 60.0 else "middle"


def _text(x: float, y: float, words: str, colour: str, *, anchor: str = "start", bold: bool = False) -> str:
    weight = 700 if bold else 500
    return (
        f'<text class="{colour}" x="{x:.1f}" y="{y:.1f}" font-size="{_SIZE:g}" font-weight="{weight}" '
        f'text-anchor="{anchor}">{safe(words)}</text>'
    )
