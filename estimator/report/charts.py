"""How are yearly saving, carbon, payback and months drawn, readable on a phone and in a grey copy?

Every chart is a Plotly figure of plain numbers with labels on the marks instead of a legend; its title stands in the
page as a sentence (`estimator.report.findings`). Colours and surfaces come from the palette.
"""

from __future__ import annotations

from html import escape
from typing import Any

import numpy as np
import plotly.graph_objects as go

from estimator.report import cash, figures
from estimator.report.ledger import Carbon, MonthsSaved, Payback, Sums
from estimator.report.palette import SANS_STACK, SURFACES, Palette
from estimator.units import MONTH_NAMES

_SHAPES = {"plain": "", "dotted": ".", "hatched": "/", "barred": "-"}
_SEASON = 0.02  # of the year's heat: a month with more belongs to the heating season
_LABEL = 13
_EDGE = 1.22  # room beside the longest bar for its label

CONFIG = {"displayModeBar": False, "responsive": True, "scrollZoom": False, "doubleClick": False}
"""For the page: a chart is to be read, and a thumb scrolls past it."""


def bar_style(palette: Palette, meaning: str) -> dict[str, Any]:
    """Colour and surface of a bar of one meaning."""
    colour = getattr(palette, meaning)
    shape = _SHAPES[SURFACES[meaning]]
    return {
        "color": colour,
        "line": {"width": 0},
        "pattern": {"shape": shape, "fgcolor": palette.ground, "size": 6, "solidity": 0.25, "fillmode": "overlay"},
    }


def laid_out(figure: go.Figure, palette: Palette, *, height: int) -> go.Figure:
    """The figure with letters, axes and colours as every picture has them; height [px]."""
    figure.update_layout(
        height=height,
        margin={"l": 4, "r": 4, "t": 8, "b": 8},
        paper_bgcolor="rgba(0,0,0,0)",
        plot_bgcolor="rgba(0,0,0,0)",
        font={"family": SANS_STACK, "size": _LABEL, "color": palette.ink},
        showlegend=False,
        dragmode=False,
        hoverlabel={"bgcolor": palette.raised, "font": {"color": palette.ink, "family": SANS_STACK}},
        bargap=0.35,
    )
    axis = {
        "automargin": True,
        "fixedrange": True,
        "gridcolor": palette.rule,
        "zerolinecolor": palette.ink,
        "zerolinewidth": 1,
        "tickfont": {"size": _LABEL, "color": palette.quiet},
        "title": {"font": {"size": _LABEL, "color": palette.quiet}, "standoff": 8},
    }
    figure.update_layout(xaxis=axis, yaxis=axis)
    return figure


def saving(found: Sums, *, currency: str, palette: Palette) -> go.Figure:
    """What the year's saving consists of, from the heat down to what is left."""
    rows = (
        ("saved on heat", found.heat, 0.0, "kept"),
        ("electricity", -found.electricity, found.heat, "electricity"),
        ("upkeep", -found.upkeep, found.heat - found.electricity, "upkeep"),
        ("left" if found.net >= 0 else "short", found.net, 0.0, "kept" if found.net >= 0 else "electricity"),
    )
    figure = go.Figure()
    for words, size, base, meaning in rows:
        figure.add_bar(
            y=[words],
            x=[size],
            base=[base],
            orientation="h",
            marker=bar_style(palette, meaning),
            hovertemplate=f"{words}: {cash.exact_money(size, currency)}<extra></extra>",
        )
        figure.add_annotation(
            y=words,
            x=max(base, base + size),
            text=f"<b>{cash.money(size, currency)}</b>",
            showarrow=False,
            xanchor="left",
            xshift=6,
            font={"color": palette.ink},
        )
    ends = [0.0, *(value for _, size, base, _ in rows for value in (base, base + size))]
    span = (max(ends) - min(ends)) or 1.0
    figure.update_xaxes(
        title=f"{currency} a year",
        tickprefix="",
        nticks=5,
        range=[min(ends) - 0.03 * span, max(ends) + (_EDGE - 1) * span],
    )
    figure.update_yaxes(autorange="reversed", showgrid=False)
    return laid_out(figure, palette, height=280)


def carbon(base: Carbon, option: Carbon, *, palette: Palette) -> go.Figure:
    """Carbon of heating and of ventilation's electricity, for baseline and option."""
    figure = go.Figure()
    rows = (base, option)
    for meaning, part in (("lost", "heat"), ("electricity", "electricity")):
        figure.add_bar(
            y=[escape(row.label) for row in rows],
            x=[getattr(row, part) for row in rows],
            orientation="h",
            marker=bar_style(palette, meaning),
            name=part,
            hovertemplate=f"%{{y}}, {part}: %{{x:,.0f}} kg<extra></extra>",
        )
    for row in rows:
        figure.add_annotation(
            y=escape(row.label),
            x=0,
            yshift=42,
            xanchor="left",
            showarrow=False,
            text=f"<b>{escape(row.label)}</b>: heat {figures.carbon(row.heat)}, "
            f"electricity {figures.carbon(row.electricity)}",
            font={"color": palette.ink},
        )
    figure.update_layout(barmode="stack")
    figure.update_xaxes(title="kg of CO₂ equivalent a year", nticks=5, rangemode="tozero", tickformat=",")
    figure.update_yaxes(autorange="reversed", showgrid=False, showticklabels=False)
    laid = laid_out(figure, palette, height=280)
    laid.update_layout(bargap=0.66, margin={"t": 20}, xaxis_zeroline=False)
    return laid


def payback(found: Payback, *, currency: str, palette: Palette) -> go.Figure:
    """Money that has come back since the fitting, with the life of the kit marked."""
    years = found.years.tolist()
    figure = go.Figure()
    figure.add_scatter(
        x=[*years, *reversed(years)],
        y=[*found.high.tolist(), *reversed(found.low.tolist())],
        fill="toself",
        fillcolor=palette.air,
        line={"width": 0},
        hoverinfo="skip",
    )
    figure.add_scatter(
        x=years,
        y=found.middle.tolist(),
        mode="lines",
        line={"color": palette.kept, "width": 3},
        hovertemplate=f"after %{{x:.0f}} years: {currency} %{{y:,.0f}}<extra></extra>",
    )
    figure.add_vline(x=found.life, line={"color": palette.ink, "width": 1.2, "dash": "dot"})
    figure.add_annotation(
        x=found.life,
        y=1,
        yref="paper",
        yanchor="top",
        xanchor="right",
        xshift=-6,
        showarrow=False,
        text=f"end of life, {figures.years(found.life)}",
        font={"color": palette.quiet},
    )
    at_life = float(np.interp(found.life, found.years, found.middle))
    figure.add_scatter(
        x=[found.life],
        y=[at_life],
        mode="markers",
        marker={"color": palette.kept, "size": 9, "line": {"color": palette.ground, "width": 2}},
        hoverinfo="skip",
    )
    figure.add_annotation(
        x=found.life,
        y=at_life,
        xanchor="right",
        yanchor="bottom",
        xshift=-10,
        yshift=4,
        showarrow=False,
        text=f"<b>{cash.money(at_life, currency)}</b>",
        font={"color": palette.kept},
    )
    every = [0.0, *found.low.tolist(), *found.high.tolist()]
    span = (max(every) - min(every)) or 1.0
    figure.update_xaxes(title="years after fitting", range=[0, years[-1]], showgrid=False, nticks=8)
    figure.update_yaxes(
        title=f"{currency}, since fitting",
        tickformat=",",
        nticks=6,
        range=[min(every) - 0.05 * span, max(every) + 0.14 * span],
    )
    return laid_out(figure, palette, height=280)


def months(found: MonthsSaved, *, palette: Palette) -> go.Figure:
    """Heat saved upwards, more electricity downwards, the heating season shaded."""
    names = list(MONTH_NAMES)
    figure = go.Figure()
    season = np.flatnonzero(found.demand > _SEASON * max(float(found.demand.sum()), 1e-9))
    shade = {"type": "rect", "yref": "paper", "y0": 0, "y1": 1, "fillcolor": palette.raised, "layer": "below"}
    figure.update_layout(
        shapes=[{**shade, "x0": month - 0.5, "x1": month + 0.5, "line": {"width": 0}} for month in season.tolist()]
    )
    for meaning, values, words in (
        ("kept", found.heat, "heat saved"),
        ("electricity", -found.electricity, "more electricity"),
    ):
        figure.add_bar(
            x=names,
            y=values.tolist(),
            marker=bar_style(palette, meaning),
            customdata=np.abs(values).tolist(),
            hovertemplate=f"%{{x}}, {words}: %{{customdata:,.0f}} kWh<extra></extra>",
        )
    for place, values, words, colour, anchor in (
        (int(np.argmax(found.heat)), found.heat, "heat saved", palette.kept, "bottom"),
        (6, -found.electricity, "more electricity", palette.electricity, "top"),
    ):
        figure.add_annotation(
            x=names[place],
            y=float(values[place]),
            yanchor=anchor,
            xanchor="left" if place == 0 else "right" if place == len(names) - 1 else "center",
            xshift=-12 if place == 0 else 12 if place == len(names) - 1 else 0,
            showarrow=False,
            text=f"<b>{words}</b>",
            font={"color": colour},
        )
    figure.update_layout(barmode="relative")
    top, bottom = float(max(found.heat.max(), 1.0)), float(min(found.heat.min(), -found.electricity.max(), 0.0))
    room = 0.15 * (top - bottom)
    figure.update_yaxes(title="kWh a month", nticks=6, range=[bottom - room, top + room])
    figure.update_xaxes(showgrid=False, tickangle=0)
    laid = laid_out(figure, palette, height=280)
    laid.update_layout(bargap=0.25)
    return laid
