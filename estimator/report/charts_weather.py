"""How are temperature, cold, frost, wind and sun of two climates drawn beside each other?

This climate is drawn solid and dark, the other one grey: dashed lines, dotted bars. Months in which the home is heated
are shaded. Titles stand in the page as sentences (`estimator.report.weather_words`).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
import plotly.graph_objects as go

from estimator.report.charts_frame import Drawing
from estimator.report.figures import converted, unit_shown
from estimator.report.figures import temperature as temperature_said
from estimator.report.palette import Palette
from estimator.report.weather import BASES, Weather
from estimator.units import MONTH_NAMES, Array

_TICK = 11  # twelve months stand side by side on a phone
_HEIGHT = 300
_NAMES = list(MONTH_NAMES)
_SUN = "kWh/m²"
_ROOM = 0.24  # above the highest mark for the labels, as a share of the drawing


def temperature(here: Weather, other: Weather, *, palette: Palette) -> go.Figure:
    """Monthly means of both, the span from coldest to warmest hour here, the base, the heating season."""
    drawing = _seasoned(here, palette)
    drawing.band(_NAMES, converted(here.coldest, "°C").tolist(), converted(here.warmest, "°C").tolist(), opacity=0.6)
    _lines(drawing, here, other, field="temp", unit="°C")
    summer = int(np.argmax(here.warmest))
    low, high = float(here.temp[summer]), float(here.warmest[summer])
    base = min(max(here.base, low), high)  # its line leaves one gap below it and one above
    low, high = max((low, base), (base, high), key=lambda gap: gap[1] - gap[0])
    drawing.note(
        "coldest to<br>warmest hour", colour=palette.quiet, font={"size": _TICK},
        x=_NAMES[summer], y=converted((low + high) / 2.0, "°C"),
    )  # fmt: skip
    at = float(converted(here.base, "°C"))
    drawing.level(at, color=palette.quiet, width=1, dash="dot")
    drawing.note(
        f"base {temperature_said(here.base)}", colour=palette.quiet,
        x=_NAMES[-1], y=at, yanchor="bottom", xanchor="right", xshift=24,
    )  # fmt: skip
    return _drawn(drawing, unit="°C", values=[here.warmest, here.coldest, other.temp])


def cold(here: Weather, other: Weather, *, palette: Palette) -> go.Figure:
    """Degree-hours below the base, month by month."""
    drawing = _seasoned(here, palette)
    return _bars(drawing, here, other, values=(here.degree_hours, other.degree_hours), unit="K h", per="month")


def bases(here: Weather, other: Weather, *, palette: Palette) -> go.Figure:
    """Degree-hours of the year over the base."""
    drawing = Drawing(palette, height=_HEIGHT)
    over = converted(BASES, "°C").tolist()
    _lines(drawing, here, other, field="over_bases", unit="K h", over=over, rising=True)
    drawing.upright(float(converted(here.base, "°C")), color=palette.quiet, width=1, dash="dot")
    # A little wider than the bases, so that its first mark keeps clear of the other axis.
    reach = [converted(BASES[0] - 1.0, "°C"), converted(BASES[-1] + 0.5, "°C")]
    drawing.across(title=f"base, {unit_shown('°C')}", range=reach)
    return _drawn(drawing, unit="K h", per="year", values=[here.over_bases, other.over_bases, np.zeros(1)])


def frost(here: Weather, other: Weather, *, palette: Palette) -> go.Figure:
    """Hours colder than the pre-heater's set point, month by month."""
    drawing = _seasoned(here, palette)
    return _bars(drawing, here, other, values=(here.frost, other.frost), unit="hours", per="month")


def wind(here: Weather, other: Weather, *, palette: Palette) -> go.Figure:
    """Mean wind at the station, month by month."""
    drawing = _seasoned(here, palette)
    _lines(drawing, here, other, field="wind", unit="m/s of wind")
    return _drawn(drawing, unit="m/s of wind", values=[here.wind, other.wind, np.zeros(1)])


def sun(here: Weather, other: Weather, *, palette: Palette) -> go.Figure:
    """Sun of the year on walls, by the way they face."""
    drawing = Drawing(palette, height=_HEIGHT)
    ours, theirs = (np.array(list(one.sunny.values())) for one in (here, other))
    return _bars(drawing, here, other, values=(ours, theirs), unit=_SUN, per="year", over=list(here.sunny))


def _bars(
    drawing: Drawing, here: Weather, other: Weather, *, values: tuple[Array, Array], unit: str, per: str,
    over: Sequence[Any] = _NAMES,
) -> go.Figure:  # fmt: skip
    for one, found, meaning in zip((here, other), values, ("kept", "lost"), strict=True):
        drawing.bar(
            x=over, y=converted(found, unit).tolist(), marker=drawing.surface(meaning),
            hover=f"{one.name}, %{{x}}: %{{y:,.0f}} {unit_shown(unit)}",
        )  # fmt: skip
    _named(drawing, here.name, other.name)
    return _drawn(drawing, unit=unit, per=per, values=[*values, np.zeros(1)])


def _lines(
    drawing: Drawing, here: Weather, other: Weather, *, field: str, unit: str, over: Sequence[Any] = _NAMES,
    rising: bool = False,
) -> None:  # fmt: skip
    palette = drawing.palette
    for one, colour, dash, width in ((other, palette.lost, "dash", 2.5), (here, palette.kept, "solid", 3.0)):
        drawing.scatter(
            x=over, y=converted(getattr(one, field), unit).tolist(), mode="lines",
            line={"color": colour, "width": width, "dash": dash},
            hover=f"{one.name}, %{{x}}: %{{y:,.4~g}} {unit_shown(unit)}",
        )  # fmt: skip
    _named(drawing, here.name, other.name, rising=rising)


def _named(drawing: Drawing, ours: str, theirs: str, *, rising: bool = False) -> None:
    """Which look is which climate, on the drawing itself; where lines rise, to the left above them."""
    x, anchor = (0.02, "left") if rising else (0.5, "center")
    named = (("■", ours, drawing.palette.kept), ("▨", theirs, drawing.palette.quiet))
    for row, (mark, name, colour) in enumerate(named):
        drawing.note(
            f"{mark} <b>{name}</b>", colour=colour,
            x=x, xanchor=anchor, xref="paper", y=1, yref="paper", yanchor="top", yshift=-18 * row,
        )  # fmt: skip


def _seasoned(here: Weather, palette: Palette) -> Drawing:
    drawing = Drawing(palette, height=_HEIGHT)
    drawing.shade(np.flatnonzero(here.season).tolist())
    if here.season.any():
        drawing.note(
            "shaded:<br>heated", colour=palette.quiet, font={"size": _TICK},
            x=0, xref="paper", y=1, yref="paper", xanchor="left", yanchor="top", align="left",
        )  # fmt: skip
    return drawing


def _drawn(drawing: Drawing, *, unit: str, values: list[Array], per: str = "") -> go.Figure:
    """unit: of the values, as declared; per: the span of time that each of them stands for."""
    every = np.asarray(converted(np.concatenate(values), unit))
    low, high = float(every.min()), float(every.max())
    span = (high - low) or 1.0
    title = f"{unit_shown(unit)}{f' a {per}' if per else ''}"
    reach = [low - (0.04 * span if low != 0.0 else 0.0), high + _ROOM * span]
    drawing.across(showgrid=False, tickangle=0, tickfont={"size": _TICK, "color": drawing.palette.quiet})
    drawing.upwards(title=title, tickformat=",", nticks=6, range=reach)
    return drawing.figure(bargap=0.25)
