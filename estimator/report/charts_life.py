"""How are money, carbon and bills over months and years drawn, with their ranges, later costs and crossings on them?"""

from __future__ import annotations

from collections.abc import Sequence
from html import escape
from math import isfinite

import numpy as np
import plotly.graph_objects as go

from estimator.report import cash, figures
from estimator.report.charts import laid_out
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
    end = float(path.best[-1])
    figure = _path(path, palette, hover=f"after %{{x:.0f}} years: {currency} %{{y:,.0f}}<extra></extra>")
    low, high = _ends(path)
    _label_end(figure, path, palette, words=cash.money(end, currency))
    _label_start(figure, path, palette, words=f"{cash.money(float(path.best[0]), currency)} laid out")
    for number, event in enumerate(_shown(events(life))):
        _mark(figure, path, event, life, palette, number)
    figure.update_xaxes(title="years after fitting", showgrid=False, nticks=8, range=[0.0, float(path.years[-1])])
    figure.update_yaxes(title=f"{currency} since fitting", tickformat=",", nticks=6, range=[low, high])
    return laid_out(figure, palette, height=_HEIGHT)


def carbon(life: Life, *, palette: Palette) -> go.Figure:
    """Carbon saved since the fitting, embodied carbon against it, and where the two cross."""
    path = carbon_path(life)
    figure = _path(path, palette, hover="after %{x:.0f} years: %{y:,.0f} kg<extra></extra>")
    low, high = _ends(path)
    _label_end(figure, path, palette, words=figures.carbon(round(float(path.best[-1]))))
    crossing = float(life.plan.carbon_payback)
    if isfinite(crossing) and 0.0 < crossing <= path.years[-1]:
        figure.add_scatter(x=[crossing], y=[0.0], mode="markers", marker=_dot(palette), hoverinfo="skip")
        figure.add_annotation(
            x=crossing,
            y=0.0,
            ay=-28 if crossing < _LATE * path.years[-1] else 30,
            ax=0,
            text=f"back after {figures.years(crossing)}",
            arrowcolor=palette.quiet,
            font={"color": palette.quiet},
        )
    if path.best[0] < 0.0:
        _label_start(figure, path, palette, words=f"{figures.carbon(-float(path.best[0]))} to make it")
    figure.update_xaxes(title="years after fitting", showgrid=False, nticks=8, range=[0.0, float(path.years[-1])])
    figure.update_yaxes(title="kg of CO₂ equivalent saved", tickformat=",", nticks=6, range=[low, high])
    return laid_out(figure, palette, height=_HEIGHT)


def bills(found: Sequence[Bills], *, baseline: str, currency: str, palette: Palette) -> go.Figure:
    """The whole bill of each option by month, each line named with its year."""
    figure = go.Figure()
    names = list(MONTH_NAMES)
    others = iter(OPTION_MARKS)
    every = np.concatenate([bill.months for bill in found])
    top, bottom = float(every.max()), float(min(every.min(), 0.0))
    span = (top - bottom) or 1.0
    for number, bill in enumerate(sorted(found, key=lambda bill: -bill.year)):
        mark = BASELINE_MARK if bill.name == baseline else next(others)
        colour = getattr(palette, mark.colour)
        figure.add_scatter(
            x=names,
            y=bill.months.tolist(),
            mode="lines+markers",
            line={"color": colour, "width": 2, "dash": mark.dash},
            marker={"symbol": mark.symbol, "size": 8, "color": colour},
            hovertemplate=f"%{{x}}, {escape(bill.label)}: {currency} %{{y:,.0f}}<extra></extra>",
        )
        # The lines meet in summer: names stand in the empty middle of the year, dearest on top.
        figure.add_annotation(
            x=5.5,
            y=top - number * 2.0 * _APART * span,
            text=f"{_SIGNS[mark.symbol]} <b>{escape(bill.label)}</b>: {cash.money(bill.year, currency)} a year",
            showarrow=False,
            font={"color": palette.ink if mark.colour == "lost" else colour},
            bgcolor=palette.ground,
        )
    figure.update_xaxes(showgrid=False, tickangle=0, tickvals=names[::2])
    figure.update_yaxes(
        title=f"{currency} a month", tickformat=",", nticks=6, range=[bottom - 0.5 * _BELOW * span, top + _ROOM * span]
    )
    return laid_out(figure, palette, height=_HEIGHT)


def _path(path: Path, palette: Palette, *, hover: str) -> go.Figure:
    years = path.years.tolist()
    figure = go.Figure()
    figure.add_scatter(
        x=[*years, *reversed(years)],
        y=[*path.high.tolist(), *reversed(path.low.tolist())],
        fill="toself",
        fillcolor=palette.air,
        line={"width": 0},
        hoverinfo="skip",
    )
    # Payments count at the end of their year: steps would hide nothing, but read worse than a line.
    figure.add_scatter(
        x=years, y=path.best.tolist(), mode="lines", line={"color": palette.kept, "width": 3}, hovertemplate=hover
    )
    return figure


def _ends(path: Path) -> tuple[float, float]:
    every = np.concatenate([[0.0], path.best, path.low, path.high])
    span = float(np.ptp(every)) or 1.0
    return float(every.min()) - _BELOW * span, float(every.max()) + _ROOM * span


def _dot(palette: Palette) -> dict[str, object]:
    return {"color": palette.kept, "size": 9, "line": {"color": palette.ground, "width": 2}}


def _label_end(figure: go.Figure, path: Path, palette: Palette, *, words: str) -> None:
    last, end = float(path.years[-1]), float(path.best[-1])
    figure.add_scatter(x=[last], y=[end], mode="markers", marker=_dot(palette), hoverinfo="skip", cliponaxis=False)
    figure.add_annotation(
        x=last,
        y=end,
        xanchor="right",
        yanchor="bottom",
        xshift=-8,
        yshift=4,
        showarrow=False,
        text=f"<b>{words}</b>",
        font={"color": palette.kept},
    )


def _label_start(figure: go.Figure, path: Path, palette: Palette, *, words: str) -> None:
    figure.add_annotation(
        x=0.0,
        y=float(path.best[0]),
        xanchor="left",
        yanchor="top",
        xshift=8,
        yshift=-4,
        showarrow=False,
        text=words,
        font={"color": palette.quiet},
    )


def _shown(found: Sequence[Event]) -> Sequence[Event]:
    """The dearest later costs, in the order of their years."""
    dearest = sorted(found, key=lambda event: -event.amount)[:_MOST_EVENTS]
    return sorted(dearest, key=lambda event: event.year)


def _mark(figure: go.Figure, path: Path, event: Event, life: Life, palette: Palette, number: int) -> None:
    """What is paid in a later year, above the line where it falls and below it where the baseline is spared it."""
    who = "" if event.of_option else f"{life.words}: "
    off = -_LIFTED if number % 2 == 0 else _LOWERED
    further = 20 * (number // 2 % 2)
    figure.add_annotation(
        x=event.year,
        y=float(path.best[event.year]),
        ax=0,
        ay=off - further if off < 0 else off + further,
        text=f"{who}{event.words}",
        arrowcolor=palette.quiet,
        arrowwidth=1,
        arrowhead=0,
        font={"color": palette.quiet},
        bgcolor=palette.ground,
    )
