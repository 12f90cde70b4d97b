"""How are money, carbon and bills over months and years drawn, with their ranges, later costs and crossings on them?"""

from __future__ import annotations

from collections.abc import Sequence
from html import escape
from math import isfinite

import numpy as np
import plotly.graph_objects as go

from estimator.report import cash, figures
from estimator.report.charts_frame import Drawing
from estimator.report.life import Event, Life, Path, carbon_path, events, money_path
from estimator.report.life_carbon import Bills
from estimator.report.palette import BASELINE_MARK, OPTION_MARKS, Palette
from estimator.units import MONTH_NAMES

_HEIGHT = 330
_ROOM = 0.16  # above the highest value, for labels
_BELOW = 0.2  # below the lowest, for the label of what is laid out and of later costs under it
_LIFTED = 34  # px; a later cost is named so far above the line
_LOWERED = 54  # px; and so far below it, clear of what is laid out
_LATE = 0.6  # of the years: a crossing after that is named below the line of nil, clear of the end
_APART = 0.07  # of the height: the least distance between two labels
_MOST_EVENTS = 4
_SIGNS = {"square": "■", "circle": "●", "diamond": "◆", "triangle-up": "▲", "cross": "✚", "x": "✖"}
"""How a marker is written in a label."""


def money(life: Life, *, palette: Palette) -> go.Figure:
    """Money saved less what was laid out since the fitting, its band, and what is paid later."""
    path, currency = money_path(life), life.currency
    drawing = _path(path, palette, hover=f"{currency} %{{y:,.0f}}", title=f"{currency} since fitting")
    _label_end(drawing, path, words=cash.money(float(path.best[-1]), currency))
    _label_start(drawing, path, words=f"{cash.money(float(path.best[0]), currency)} laid out")
    for number, event in enumerate(_shown(events(life))):
        _mark(drawing, path, event, life, number)
    return drawing.figure()


def carbon(life: Life, *, palette: Palette) -> go.Figure:
    """Carbon saved since the fitting, embodied carbon against it, and where the two cross."""
    path = carbon_path(life)
    drawing = _path(path, palette, hover="%{y:,.0f} kg", title="kg of CO₂ equivalent saved")
    _label_end(drawing, path, words=figures.carbon(round(float(path.best[-1]))))
    crossing = float(life.plan.carbon_payback)
    if isfinite(crossing) and 0.0 < crossing <= path.years[-1]:
        drawing.dot(crossing, 0.0)
        drawing.pointer(
            f"back after {figures.years(crossing)}", colour=palette.quiet,
            x=crossing, y=0.0, ax=0, ay=-28 if crossing < _LATE * path.years[-1] else 30,
        )  # fmt: skip
    if path.best[0] < 0.0:
        _label_start(drawing, path, words=f"{figures.carbon(-float(path.best[0]))} to make it")
    return drawing.figure()


def bills(found: Sequence[Bills], *, baseline: str, currency: str, palette: Palette) -> go.Figure:
    """The whole bill of each option by month, each line named with its year."""
    drawing = Drawing(palette, height=_HEIGHT)
    names = list(MONTH_NAMES)
    others = iter(OPTION_MARKS)
    every = np.concatenate([bill.months for bill in found])
    top, bottom = float(every.max()), float(min(every.min(), 0.0))
    span = (top - bottom) or 1.0
    for number, bill in enumerate(sorted(found, key=lambda bill: -bill.year)):
        mark = BASELINE_MARK if bill.name == baseline else next(others)
        colour = getattr(palette, mark.colour)
        drawing.scatter(
            x=names, y=bill.months.tolist(), mode="lines+markers",
            line={"color": colour, "width": 2, "dash": mark.dash},
            marker={"symbol": mark.symbol, "size": 8, "color": colour},
            hover=f"%{{x}}, {escape(bill.label)}: {currency} %{{y:,.0f}}",
        )  # fmt: skip
        # The lines meet in summer: names stand in the empty middle of the year, dearest on top.
        drawing.note(
            f"{_SIGNS[mark.symbol]} <b>{escape(bill.label)}</b>: {cash.money(bill.year, currency)} a year",
            colour=palette.ink if mark.colour == "lost" else colour,
            x=5.5, y=top - number * 2.0 * _APART * span, bgcolor=palette.ground,
        )  # fmt: skip
    reach = [bottom - 0.5 * _BELOW * span, top + _ROOM * span]
    drawing.across(showgrid=False, tickangle=0, tickvals=names[::2])
    drawing.upwards(title=f"{currency} a month", tickformat=",", nticks=6, range=reach)
    return drawing.figure()


def _path(path: Path, palette: Palette, *, hover: str, title: str) -> Drawing:
    """A path with its band over the years; hover: what is told of a year."""
    drawing = Drawing(palette, height=_HEIGHT)
    years = path.years.tolist()
    drawing.band(years, path.low.tolist(), path.high.tolist())
    # Payments count at the end of their year: steps would hide nothing, but read worse than a line.
    drawing.scatter(
        x=years, y=path.best.tolist(), mode="lines", line={"color": palette.kept, "width": 3},
        hover=f"after %{{x:.0f}} years: {hover}",
    )  # fmt: skip
    drawing.across(title="years after fitting", showgrid=False, nticks=8, range=[0.0, years[-1]])
    drawing.upwards(title=title, tickformat=",", nticks=6, range=_ends(path))
    return drawing


def _ends(path: Path) -> list[float]:
    every = np.concatenate([[0.0], path.best, path.low, path.high])
    span = float(np.ptp(every)) or 1.0
    return [float(every.min()) - _BELOW * span, float(every.max()) + _ROOM * span]


def _label_end(drawing: Drawing, path: Path, *, words: str) -> None:
    last, end = float(path.years[-1]), float(path.best[-1])
    drawing.dot(last, end, cliponaxis=False)
    drawing.note(
        f"<b>{words}</b>", colour=drawing.palette.kept,
        x=last, y=end, xanchor="right", yanchor="bottom", xshift=-8, yshift=4,
    )  # fmt: skip


def _label_start(drawing: Drawing, path: Path, *, words: str) -> None:
    drawing.note(
        words, colour=drawing.palette.quiet,
        x=0.0, y=float(path.best[0]), xanchor="left", yanchor="top", xshift=8, yshift=-4,
    )  # fmt: skip


def _shown(found: Sequence[Event]) -> Sequence[Event]:
    """The dearest later costs, in the order of their years."""
    dearest = sorted(found, key=lambda event: -event.amount)[:_MOST_EVENTS]
    return sorted(dearest, key=lambda event: event.year)


def _mark(drawing: Drawing, path: Path, event: Event, life: Life, number: int) -> None:
    """What is paid in a later year, above the line where it falls and below it where the baseline is spared it."""
    who = "" if event.of_option else f"{life.words}: "
    off = -_LIFTED if number % 2 == 0 else _LOWERED
    further = 20 * (number // 2 % 2)
    drawing.pointer(
        f"{who}{event.words}", colour=drawing.palette.quiet,
        x=event.year, y=float(path.best[event.year]), ax=0, ay=off - further if off < 0 else off + further,
        bgcolor=drawing.palette.ground,
    )  # fmt: skip
