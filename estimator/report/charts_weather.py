"""How are temperature, cold, frost, wind and sun of two climates drawn beside each other?

This climate is drawn solid and dark, the other one grey: dashed lines, dotted bars. Months in which the home is heated
are shaded. Titles stand in the page as sentences (`estimator.report.weather_words`).
"""

from __future__ import annotations

from typing import Any

import numpy as np
import plotly.graph_objects as go

from estimator.report.figures import converted, unit_shown
from estimator.report.figures import temperature as temperature_said
from estimator.report.palette import SANS_STACK, Palette
from estimator.report.weather import BASES, Weather
from estimator.units import MONTH_NAMES, Array

_LABEL = 13
_TICK = 11  # twelve months stand side by side on a phone
_HEIGHT = 300
_NAMES = list(MONTH_NAMES)
_SUN = "kWh/m²"
_ROOM = 0.24  # above the highest mark for the labels, as a share of the drawing


def temperature(here: Weather, other: Weather, *, palette: Palette) -> go.Figure:
    """Monthly means of both, the span from coldest to warmest hour here, the base, the heating season."""
    figure = _seasoned(here, palette)
    figure.add_scatter(
        x=[*_NAMES, *reversed(_NAMES)],
        y=[*converted(here.warmest, "°C").tolist(), *reversed(converted(here.coldest, "°C").tolist())],
        fill="toself",
        fillcolor=palette.air,
        opacity=0.6,
        line={"width": 0},
        hoverinfo="skip",
    )
    _lines(figure, here, other, field="temp", unit="°C", palette=palette)
    summer = int(np.argmax(here.warmest))
    low, high = float(here.temp[summer]), float(here.warmest[summer])
    base = min(max(here.base, low), high)  # its line leaves one gap below it and one above
    low, high = max((low, base), (base, high), key=lambda gap: gap[1] - gap[0])
    figure.add_annotation(
        x=_NAMES[summer], y=converted((low + high) / 2.0, "°C"), showarrow=False,
        text="coldest to<br>warmest hour", font={"color": palette.quiet, "size": _TICK},
    )  # fmt: skip
    figure.add_hline(y=converted(here.base, "°C"), line={"color": palette.quiet, "width": 1, "dash": "dot"})
    figure.add_annotation(
        x=_NAMES[-1], y=converted(here.base, "°C"), yanchor="bottom", xanchor="right", xshift=24, showarrow=False,
        text=f"base {temperature_said(here.base)}", font={"color": palette.quiet},
    )  # fmt: skip
    return _laid_out(figure, palette, unit="°C", values=[here.warmest, here.coldest, other.temp])


def cold(here: Weather, other: Weather, *, palette: Palette) -> go.Figure:
    """Degree-hours below the base, month by month."""
    return _bars(here, other, here.degree_hours, other.degree_hours, unit="K h", palette=palette)


def bases(here: Weather, other: Weather, *, palette: Palette) -> go.Figure:
    """Degree-hours of the year over the base."""
    figure = go.Figure()
    over = converted(BASES, "°C").tolist()
    _lines(figure, here, other, field="over_bases", unit="K h", palette=palette, over=over, rising=True)
    figure.add_vline(x=converted(here.base, "°C"), line={"color": palette.quiet, "width": 1, "dash": "dot"})
    laid = _laid_out(figure, palette, unit="K h", per="year", values=[here.over_bases, other.over_bases, np.zeros(1)])
    laid.update_xaxes(title={"text": f"base, {unit_shown('°C')}", "font": {"size": _LABEL, "color": palette.quiet}})
    laid.update_xaxes(
        range=[converted(BASES[0] - 1.0, "°C"), converted(BASES[-1] + 0.5, "°C")]
    )  # so that its first mark keeps clear of the other axis
    return laid


def frost(here: Weather, other: Weather, *, palette: Palette) -> go.Figure:
    """Hours colder than the pre-heater's set point, month by month."""
    return _bars(here, other, here.frost, other.frost, unit="hours", palette=palette)


def wind(here: Weather, other: Weather, *, palette: Palette) -> go.Figure:
    """Mean wind at the station, month by month."""
    figure = _seasoned(here, palette)
    _lines(figure, here, other, field="wind", unit="m/s of wind", palette=palette)
    return _laid_out(figure, palette, unit="m/s of wind", values=[here.wind, other.wind, np.zeros(1)])


def sun(here: Weather, other: Weather, *, palette: Palette) -> go.Figure:
    """Sun of the year on walls, by the way they face."""
    figure = go.Figure()
    names = list(here.sunny)
    pair = ((here, _solid(palette)), (other, _dotted(palette)))
    for one, look in pair:
        figure.add_bar(
            x=names,
            y=converted(np.array(list(one.sunny.values())), _SUN).tolist(),
            marker=look,
            hovertemplate=f"{one.name}, %{{x}}: %{{y:,.0f}} {unit_shown(_SUN)}<extra></extra>",
        )
    _named(figure, here.name, other.name, palette)
    values = [np.array(list(one.sunny.values())) for one, _ in pair]
    return _laid_out(figure, palette, unit=_SUN, per="year", values=[*values, np.zeros(1)])


def _bars(here: Weather, other: Weather, ours: Array, theirs: Array, *, unit: str, palette: Palette) -> go.Figure:
    figure = _seasoned(here, palette)
    for name, values, look in ((here.name, ours, _solid(palette)), (other.name, theirs, _dotted(palette))):
        figure.add_bar(
            x=_NAMES,
            y=converted(values, unit).tolist(),
            marker=look,
            hovertemplate=f"{name}, %{{x}}: %{{y:,.0f}} {unit_shown(unit)}<extra></extra>",
        )
    _named(figure, here.name, other.name, palette)
    return _laid_out(figure, palette, unit=unit, per="month", values=[ours, theirs, np.zeros(1)])


def _lines(
    figure: go.Figure, here: Weather, other: Weather, *, field: str, unit: str, palette: Palette, over: Any = _NAMES,
    rising: bool = False,
) -> None:  # fmt: skip
    for one, colour, dash, width in ((other, palette.lost, "dash", 2.5), (here, palette.kept, "solid", 3.0)):
        figure.add_scatter(
            x=over,
            y=converted(getattr(one, field), unit).tolist(),
            mode="lines",
            line={"color": colour, "width": width, "dash": dash},
            hovertemplate=f"{one.name}, %{{x}}: %{{y:,.4~g}} {unit_shown(unit)}<extra></extra>",
        )
    _named(figure, here.name, other.name, palette, rising=rising)


def _named(figure: go.Figure, ours: str, theirs: str, palette: Palette, *, rising: bool = False) -> None:
    """Which look is which climate, on the drawing itself; where lines rise, to the left above them."""
    x, anchor = (0.02, "left") if rising else (0.5, "center")
    for row, (mark, name, colour) in enumerate((("■", ours, palette.kept), ("▨", theirs, palette.quiet))):
        figure.add_annotation(
            x=x, xanchor=anchor, xref="paper", y=1, yref="paper", yanchor="top", yshift=-18 * row, showarrow=False,
            text=f"{mark} <b>{name}</b>", font={"color": colour},
        )  # fmt: skip


def _solid(palette: Palette) -> dict[str, Any]:
    return {"color": palette.kept, "line": {"width": 0}}


def _dotted(palette: Palette) -> dict[str, Any]:
    pattern = {"shape": ".", "fgcolor": palette.ground, "size": 6, "solidity": 0.25, "fillmode": "overlay"}
    return {"color": palette.lost, "line": {"width": 0}, "pattern": pattern}


def _seasoned(here: Weather, palette: Palette) -> go.Figure:
    figure = go.Figure()
    for month in np.flatnonzero(here.season):
        figure.add_vrect(x0=month - 0.5, x1=month + 0.5, fillcolor=palette.raised, line_width=0, layer="below")
    if here.season.any():
        figure.add_annotation(
            x=0, xref="paper", y=1, yref="paper", xanchor="left", yanchor="top", align="left", showarrow=False,
            text="shaded:<br>heated", font={"color": palette.quiet, "size": _TICK},
        )  # fmt: skip
    return figure


def _laid_out(figure: go.Figure, palette: Palette, *, unit: str, values: list[Array], per: str = "") -> go.Figure:
    """unit: of the values, as declared; per: the span of time that each of them stands for."""
    every = np.asarray(converted(np.concatenate(values), unit))
    low, high = float(every.min()), float(every.max())
    span = (high - low) or 1.0
    lettered = {"size": _LABEL, "color": palette.quiet}
    figure.update_layout(
        height=_HEIGHT,
        margin={"l": 4, "r": 4, "t": 8, "b": 8},
        paper_bgcolor="rgba(0,0,0,0)",
        plot_bgcolor="rgba(0,0,0,0)",
        font={"family": SANS_STACK, "size": _LABEL, "color": palette.ink},
        showlegend=False,
        dragmode=False,
        hoverlabel={"bgcolor": palette.raised, "font": {"color": palette.ink, "family": SANS_STACK}},
        barmode="group",
        bargap=0.25,
    )
    small = {**lettered, "size": _TICK}
    figure.update_xaxes(automargin=True, fixedrange=True, showgrid=False, tickangle=0, tickfont=small)
    figure.update_yaxes(
        automargin=True,
        fixedrange=True,
        gridcolor=palette.rule,
        zerolinecolor=palette.ink,
        zerolinewidth=1,
        tickformat=",",
        nticks=6,
        tickfont=lettered,
        title={"text": f"{unit_shown(unit)}{f' a {per}' if per else ''}", "font": lettered, "standoff": 8},
        range=[low - (0.04 * span if low != 0.0 else 0.0), high + _ROOM * span],
    )
    return figure
