"""How are saving, share of fresh air and heat saved drawn over leakage, with the house and the borders on the drawing?

The house is a bar as long as its leakage is uncertain; a hatched one has not been tested. The leakage axis is
logarithmic and says each leakage three ways.
"""

from __future__ import annotations

from typing import Any

import numpy as np
import plotly.graph_objects as go

from estimator.report import figures
from estimator.report.palette import SANS_STACK, Palette
from estimator.report.tight import LEAKAGE_UNIT, Tightness, leakage
from estimator.sweep import HIGHEST, LOWEST, Threshold
from estimator.units import Array

_LABEL = 13
_TICKS = (0.5, 1.0, 2.0, 5.0, 10.0, 20.0)
_BAR = 0.045  # height of the house's bar, as a share of the drawing
_MARGIN = 0.01  # of a decade, so that the last tick is drawn
_ROW = 0.075  # height of a line of labels, as a share of the drawing


def saving(found: Tightness, *, palette: Palette) -> go.Figure:
    """Net saving over leakage in both comparisons, the house, and the two borders against the baseline."""
    figure = go.Figure()
    first, other = found.baseline.sweep.figures, found.today.sweep.figures
    _house(figure, found, palette)
    for curve, words, colour, dash, width in (
        (other, found.today.words, palette.quiet, "dot", 2.0),
        (first, found.baseline.words, palette.kept, "solid", 3.0),
    ):
        figure.add_scatter(
            x=curve.q50.tolist(),
            y=curve.net_saving.tolist(),
            mode="lines",
            line={"color": colour, "width": width, "dash": dash},
            hovertemplate=f"%{{x:.1f}} {LEAKAGE_UNIT}: {found.currency} %{{y:,.0f}} a year<extra></extra>",
        )
        _beside(figure, curve.q50, curve.net_saving, words=f"against {words}", colour=colour)
    life = figures.years(first.life)
    _border(figure, found.baseline.sweep.saving, "a net saving", row=0, palette=palette, dash="dash")
    _border(figure, found.baseline.sweep.payback, f"payback within {life}", row=1, palette=palette, dash="dot")
    every = [0.0, *first.net_saving.tolist(), *other.net_saving.tolist()]
    span = (max(every) - min(every)) or 1.0
    figure.update_yaxes(
        title=f"{found.currency} a year",
        tickformat=",",
        nticks=6,
        range=[min(every) - 0.2 * span, max(every) + 0.34 * span],
        zeroline=True,
    )
    return _laid_out(figure, found, palette, height=430)


def through_exchanger(found: Tightness, *, palette: Palette) -> go.Figure:
    """Share of the fresh air that passes the exchanger, over leakage."""
    figure, curve = go.Figure(), found.baseline.sweep.figures
    _house(figure, found, palette)
    figure.add_scatter(
        x=curve.q50.tolist(),
        y=curve.through_exchanger.tolist(),
        mode="lines",
        line={"color": palette.kept, "width": 3},
        hovertemplate=f"%{{x:.1f}} {LEAKAGE_UNIT}: %{{y:.0%}}<extra></extra>",
    )
    figure.update_yaxes(
        title="of all fresh air", tickformat=".0%", range=[-0.3, 1.05], tick0=0.0, tickvals=[0, 0.25, 0.5, 0.75, 1]
    )
    return _laid_out(figure, found, palette, height=300)


def heat(found: Tightness, *, palette: Palette) -> go.Figure:
    """Heat saved over leakage in both comparisons."""
    figure = go.Figure()
    _house(figure, found, palette)
    every = [0.0]
    for against, colour, dash, width in (
        (found.today, palette.quiet, "dot", 2.0),
        (found.baseline, palette.kept, "solid", 3.0),
    ):
        curve = against.sweep.figures
        every += curve.heat_saved.tolist()
        figure.add_scatter(
            x=curve.q50.tolist(),
            y=curve.heat_saved.tolist(),
            mode="lines",
            line={"color": colour, "width": width, "dash": dash},
            hovertemplate=f"%{{x:.1f}} {LEAKAGE_UNIT}: %{{y:,.0f}} kWh a year<extra></extra>",
        )
        _beside(figure, curve.q50, curve.heat_saved, words=f"against {against.words}", colour=colour)
    span = (max(every) - min(every)) or 1.0
    figure.update_yaxes(
        title="kWh a year",
        tickformat=",",
        nticks=6,
        range=[min(every) - 0.32 * span, max(every) + 0.14 * span],
        zeroline=True,
    )
    return _laid_out(figure, found, palette, height=300)


def border_words(threshold: Threshold, what: str) -> tuple[tuple[float, str], ...]:
    """A border in the one form of four that it takes: where it is named on the axis, and its name there."""
    if threshold.form == "already":
        return ((LOWEST, f"{what}: lost already at {LOWEST:g}"),)
    if threshold.form == "not before":
        return ((HIGHEST, f"{what}: not lost before {HIGHEST:g}"),)
    holds, named = threshold.holds_at_lowest, []
    for crossing in threshold.crossings:
        named.append((crossing, f"{what} {'up to' if holds else 'from'} {leakage(crossing)}"))
        holds = not holds
    return tuple(named)


def _border(figure: go.Figure, threshold: Threshold, what: str, *, row: int, palette: Palette, dash: str) -> None:
    top = 0.985 - row * _ROW
    for place, words in border_words(threshold, what):
        if threshold.crossings:
            figure.add_shape(
                type="line",
                x0=place,
                x1=place,
                y0=0,
                y1=top,
                yref="paper",
                line={"color": palette.ink, "width": 1.4, "dash": dash},
            )
        leftwards = place > np.sqrt(LOWEST * HIGHEST)
        figure.add_annotation(
            x=np.log10(place),
            y=top,
            yref="paper",
            yanchor="top",
            xanchor="right" if leftwards else "left",
            xshift=-5 if leftwards else 5,
            showarrow=False,
            text=f"<b>{words}</b>",
            bgcolor=palette.ground,
            font={"color": palette.ink},
        )


def _house(figure: go.Figure, found: Tightness, palette: Palette) -> None:
    """The bar of uncertainty along the foot, with its width shaded up the drawing."""
    span = found.span
    figure.add_shape(
        type="rect",
        x0=span.low,
        x1=span.high,
        y0=0,
        y1=1,
        yref="paper",
        line={"width": 0},
        fillcolor=palette.raised,
        layer="below",
    )
    figure.add_shape(
        type="rect",
        x0=span.low,
        x1=span.high,
        y0=0,
        y1=_BAR,
        yref="paper",
        line={"color": palette.ink, "width": 1.4, "dash": "solid" if span.tested else "dot"},
        fillcolor=palette.ink if span.tested else palette.air,
        layer="above",
    )
    centre = np.log10(span.low * span.high) / 2.0
    leftwards = centre > np.log10(LOWEST * HIGHEST) / 2.0
    figure.add_annotation(
        x=np.log10(min(span.high, _last(found)) if leftwards else max(span.low, LOWEST)),
        y=_BAR,
        yref="paper",
        yanchor="bottom",
        xanchor="right" if leftwards else "left",
        showarrow=False,
        text=f"<b>this house, {'tested' if span.tested else 'not tested'}: "
        f"{leakage(span.low)} to {leakage(span.high)}</b>",
        bgcolor=palette.ground,
        yshift=2,
        font={"color": palette.ink},
    )


def _beside(figure: go.Figure, leakages: Array, values: Array, *, words: str, colour: str) -> None:
    """The name of a line on its tight end, above it."""
    figure.add_annotation(
        x=np.log10(leakages[0]),
        y=float(values[0]),
        xanchor="left",
        yanchor="bottom",
        xshift=4,
        yshift=3,
        showarrow=False,
        text=f"<b>{words}</b>",
        font={"color": colour},
    )


def _last(found: Tightness) -> float:
    """Right end of the axis: a house may leak more than the sweep."""
    return max(HIGHEST, found.span.high)


def _laid_out(figure: go.Figure, found: Tightness, palette: Palette, *, height: int) -> go.Figure:
    curve = found.baseline.sweep.figures
    n50, changes = (np.interp(_TICKS, curve.q50, values) for values in (curve.n50, curve.air_changes))  # straight lines
    ticks = [f"{tick:g}<br>{n50[at]:.1f}<br>{changes[at]:.2f}" for at, tick in enumerate(_TICKS)]
    axis: dict[str, Any] = {"automargin": True, "fixedrange": True, "gridcolor": palette.rule, "zeroline": False}
    lettered = {"size": _LABEL, "color": palette.quiet}
    figure.update_layout(
        height=height,
        margin={"l": 4, "r": 4, "t": 8, "b": 8},
        paper_bgcolor="rgba(0,0,0,0)",
        plot_bgcolor="rgba(0,0,0,0)",
        font={"family": SANS_STACK, "size": _LABEL, "color": palette.ink},
        showlegend=False,
        dragmode=False,
        hoverlabel={"bgcolor": palette.raised, "font": {"color": palette.ink, "family": SANS_STACK}},
        xaxis={
            **axis,
            "type": "log",
            "range": [np.log10(LOWEST), np.log10(_last(found)) + _MARGIN],
            "tickvals": list(_TICKS),
            "ticktext": ticks,
            "tickfont": lettered,
            "title": {
                "text": f"{LEAKAGE_UNIT} at 50 Pa<br>air changes an hour at 50 Pa (n50)<br>air changes an hour, mean",
                "font": lettered,
                "standoff": 6,
            },
        },
    )
    figure.update_yaxes(
        automargin=True,
        fixedrange=True,
        gridcolor=palette.rule,
        zerolinecolor=palette.ink,
        zerolinewidth=1,
        tickfont=lettered,
        title={"font": lettered, "standoff": 8},
    )
    return figure
