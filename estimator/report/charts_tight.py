"""How are saving, payback, share of fresh air and heat saved drawn over leakage, with the house and the borders on it?

The house is a bar as long as its leakage is uncertain; a hatched one has not been tested. The leakage axis is
logarithmic and says each leakage three ways.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from types import MappingProxyType
from typing import Any

import numpy as np
import plotly.graph_objects as go

from estimator.at_leakage import Difference
from estimator.report import figures
from estimator.report.charts_frame import Drawing
from estimator.report.leakage_said import LEAKAGE_UNIT, bound, leakage, unit
from estimator.report.palette import Palette
from estimator.report.tight import Against, Tightness
from estimator.sweep import HIGHEST, LOWEST, Threshold
from estimator.units import Array

_TICKS = (0.5, 1.0, 2.0, 5.0, 10.0, 20.0)
_BAR = 0.045  # height of the house's bar, as a share of the drawing
_MARGIN = 0.01  # of a decade, so that the last tick is drawn
_ROW = 0.075  # height of a line of labels, as a share of the drawing
_HEIGHT = 430
_MARGINS = {"l": 76, "r": 8, "t": 8, "b": 124}  # pixels: figures up to −10,000, three lines of leakages, three of units
_BEYOND = 2.5  # lives; a payback further off is not drawn


def saving(found: Tightness, *, palette: Palette) -> go.Figure:
    """Net saving over leakage in both comparisons, the house, and the two borders against the baseline."""
    drawing = Drawing(palette, height=_HEIGHT)
    _house(drawing, found)
    every = [0.0]
    for against, look in _both(found, palette):
        values = against.sweep.figures.net_saving
        every += values.tolist()
        _curve(drawing, against, values, said=f"{found.currency} %{{y:,.0f}} a year", look=look)
    life = figures.years(found.case.worth.life)
    _border(drawing, found.baseline.sweep.saving, "a net saving", row=0, dash="dash")
    _border(drawing, found.baseline.sweep.payback, f"payback within {life}", row=1, dash="dot")
    span = (max(every) - min(every)) or 1.0
    reach = [min(every) - 0.2 * span, max(every) + 0.34 * span]
    drawing.upwards(title=f"{found.currency} a year", tickformat=",", nticks=6, range=reach, zeroline=True)
    return _figure(drawing, found)


def through_exchanger(found: Tightness, *, palette: Palette) -> go.Figure:
    """Share of the fresh air that passes the exchanger, over leakage."""
    drawing = Drawing(palette, height=_HEIGHT)
    _house(drawing, found)
    share = found.baseline.sweep.figures.through_exchanger
    _curve(drawing, found.baseline, share, said="%{y:.0%}", look=_firm(palette), named=False)
    drawing.upwards(title="of all fresh air", tickformat=".0%", range=[-0.2, 1.05], tickvals=[0, 0.25, 0.5, 0.75, 1])
    return _figure(drawing, found)


def heat(found: Tightness, *, palette: Palette) -> go.Figure:
    """Heat saved over leakage in both comparisons."""
    drawing = Drawing(palette, height=_HEIGHT)
    _house(drawing, found)
    every = [0.0]
    for against, look in _both(found, palette):
        values = against.sweep.figures.heat_saved
        every += values.tolist()
        _curve(drawing, against, values, said="%{y:,.0f} kWh a year", look=look)
    span = (max(every) - min(every)) or 1.0
    reach = [min(every) - 0.24 * span, max(every) + 0.14 * span]
    drawing.upwards(title="kWh a year", tickformat=",", nticks=6, range=reach, zeroline=True)
    return _figure(drawing, found)


def payback(found: Tightness, *, palette: Palette) -> go.Figure:
    """Years until the extra cost is back over leakage, as far as anybody would wait, with the life marked."""
    drawing = Drawing(palette, height=_HEIGHT)
    _house(drawing, found)
    life = found.case.worth.life
    for against, look in _both(found, palette):
        years = against.sweep.figures.payback
        seen = np.where(years <= _BEYOND * life, years, np.nan)
        if np.all(np.isnan(seen)):
            continue
        _curve(drawing, against, seen, said="%{y:,.0f} years", look=look)
    drawing.level(life, color=palette.ink, width=1.4, dash="dot")
    drawing.note(
        f"<b>its life, {figures.years(life)}</b>", colour=palette.ink, bgcolor=palette.ground,
        x=1, xref="paper", xanchor="right", y=life, yanchor="bottom",
    )  # fmt: skip
    drawing.upwards(title="years", nticks=6, range=[-0.24 * _BEYOND * life, _BEYOND * life])
    return _figure(drawing, found)


DRAWN: Mapping[str, Callable[..., go.Figure]] = MappingProxyType(
    {"net_saving": saving, "payback": payback, "heat_saved": heat, "through_exchanger": through_exchanger}
)
"""What is drawn over leakage, by the name of the figure in a sweep."""


def border_words(threshold: Threshold, what: str) -> tuple[tuple[float, str], ...]:
    """A border in the one form of four that it takes: where it is named on the axis, and its name there."""
    if threshold.form == "already":
        return ((LOWEST, f"{what}: not even at {bound(LOWEST)}"),)
    if threshold.form == "not before":
        return ((HIGHEST, f"{what}: even at {bound(HIGHEST)}"),)
    holds, named = threshold.holds_at_lowest, []
    for crossing in threshold.crossings:
        named.append((crossing, f"{what} {'up to' if holds else 'from'} {leakage(crossing)}"))
        holds = not holds
    return tuple(named)


def _firm(palette: Palette) -> dict[str, Any]:
    return {"color": palette.kept, "width": 3.0, "dash": "solid"}


def _both(found: Tightness, palette: Palette) -> Sequence[tuple[Against, dict[str, Any]]]:
    """The comparison behind, then the one in front."""
    quiet = {"color": palette.quiet, "width": 2.0, "dash": "dot"}
    return ((found.today, quiet), (found.baseline, _firm(palette)))


def _curve(
    drawing: Drawing, against: Against, values: Array, *, said: str, look: dict[str, Any], named: bool = True
) -> None:
    """One line, with its name on its tight end, above it."""
    curve: Difference = against.sweep.figures
    drawing.scatter(
        x=curve.q50.tolist(),
        y=[None if np.isnan(value) else value for value in values.tolist()],
        mode="lines",
        line=look,
        customdata=figures.converted(curve.q50, LEAKAGE_UNIT).tolist(),
        hovertemplate=f"%{{customdata:.2~g}} {unit()}: {said}<extra></extra>",
    )
    if named:
        first = int(np.flatnonzero(~np.isnan(values))[0])
        drawing.note(
            f"<b>against {against.words}</b>", colour=look["color"],
            x=np.log10(curve.q50[first]), y=float(values[first]), xanchor="left", yanchor="bottom", xshift=4, yshift=3,
        )  # fmt: skip


def _border(drawing: Drawing, threshold: Threshold, what: str, *, row: int, dash: str) -> None:
    top, palette = 0.985 - row * _ROW, drawing.palette
    for place, words in border_words(threshold, what):
        if threshold.crossings:
            line = {"color": palette.ink, "width": 1.4, "dash": dash}
            drawing.shape(type="line", x0=place, x1=place, y0=0, y1=top, yref="paper", line=line)
        leftwards = place > np.sqrt(LOWEST * HIGHEST)
        drawing.note(
            f"<b>{words}</b>", colour=palette.ink, bgcolor=palette.ground, x=np.log10(place), y=top, yref="paper",
            yanchor="top", xanchor="right" if leftwards else "left", xshift=-5 if leftwards else 5,
        )  # fmt: skip


def _house(drawing: Drawing, found: Tightness) -> None:
    """The bar of uncertainty along the foot, with its width shaded up the drawing."""
    span, palette = found.span, drawing.palette
    foot = {"type": "rect", "x0": span.low, "x1": span.high, "y0": 0, "yref": "paper"}
    drawing.shape(**foot, y1=1, line={"width": 0}, fillcolor=palette.raised, layer="below")
    drawing.shape(
        **foot,
        y1=_BAR,
        line={"color": palette.ink, "width": 1.4, "dash": "solid" if span.tested else "dot"},
        fillcolor=palette.ink if span.tested else palette.air,
        layer="above",
    )
    centre = np.log10(span.low * span.high) / 2.0
    leftwards = centre > np.log10(LOWEST * HIGHEST) / 2.0
    drawing.note(
        f"<b>this house, {'tested' if span.tested else 'not tested'}: {leakage(span.low)} to {leakage(span.high)}</b>",
        colour=palette.ink,
        x=np.log10(min(span.high, _last(found)) if leftwards else max(span.low, LOWEST)),
        y=_BAR,
        yref="paper",
        yanchor="bottom",
        xanchor="right" if leftwards else "left",
        bgcolor=palette.ground,
        yshift=2,
    )


def _last(found: Tightness) -> float:
    """Right end of the axis: a house may leak more than the sweep."""
    return max(HIGHEST, found.span.high)


def _figure(drawing: Drawing, found: Tightness) -> go.Figure:
    curve = found.baseline.sweep.figures
    n50, changes = (np.interp(_TICKS, curve.q50, values) for values in (curve.n50, curve.air_changes))  # straight lines
    drawing.across(
        type="log",
        range=[np.log10(LOWEST), np.log10(_last(found)) + _MARGIN],
        tickvals=list(_TICKS),
        ticktext=[f"{bound(tick)}<br>{n50[at]:.1f}<br>{changes[at]:.2f}" for at, tick in enumerate(_TICKS)],
        title=f"{unit()} at 50 Pa<br>air changes an hour at 50 Pa (n50)<br>air changes an hour, mean",
        zeroline=False,
    )
    return drawing.figure(margin=_MARGINS)
