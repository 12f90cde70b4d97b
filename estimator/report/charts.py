"""How are yearly saving, carbon, payback and months drawn, readable on a phone and in a grey copy?

Every chart is a Plotly figure of plain numbers with labels on the marks instead of a legend; its title stands in the
page as a sentence (`estimator.report.findings`). Colours and surfaces come from the palette.
"""

from __future__ import annotations

from html import escape

import numpy as np
import plotly.graph_objects as go

from estimator.report import cash, figures
from estimator.report.charts_frame import Drawing
from estimator.report.ledger import Carbon, MonthsSaved, Payback, Sums
from estimator.report.palette import Palette
from estimator.units import MONTH_NAMES

_HEIGHT = 280  # pixels
_SEASON = 0.02  # of the year's heat: a month with more belongs to the heating season
_EDGE = 1.22  # room beside the longest bar for its label
_ABOVE = 42  # pixels from the middle of a pair of bars to its name
_INWARDS = 12  # pixels that words at the first or last month reach over its edge


def saving(found: Sums, *, currency: str, palette: Palette) -> go.Figure:
    """What the year's saving consists of, from the heat down to what is left."""
    rows = (
        ("saved on heat", found.heat, 0.0, "kept"),
        ("electricity", -found.electricity, found.heat, "electricity"),
        ("upkeep", -found.upkeep, found.heat - found.electricity, "upkeep"),
        ("left" if found.net >= 0 else "short", found.net, 0.0, "kept" if found.net >= 0 else "electricity"),
    )
    drawing = Drawing(palette, height=_HEIGHT)
    for words, size, base, meaning in rows:
        drawing.bar(
            y=[words], x=[size], base=[base], orientation="h", marker=drawing.surface(meaning),
            hover=f"{words}: {cash.exact_money(size, currency)}",
        )  # fmt: skip
        drawing.note(
            f"<b>{cash.money(size, currency)}</b>", colour=palette.ink,
            x=max(base, base + size), y=words, xanchor="left", xshift=6,
        )  # fmt: skip
    ends = [0.0, *(value for _, size, base, _ in rows for value in (base, base + size))]
    span = (max(ends) - min(ends)) or 1.0
    reach = [min(ends) - 0.03 * span, max(ends) + (_EDGE - 1) * span]
    drawing.across(title=f"{currency} a year", nticks=5, range=reach)
    drawing.upwards(autorange="reversed", showgrid=False)
    return drawing.figure(bargap=0.35)


def carbon(base: Carbon, option: Carbon, *, palette: Palette) -> go.Figure:
    """Carbon of heating and of ventilation's electricity, for baseline and option."""
    drawing = Drawing(palette, height=_HEIGHT)
    rows = (base, option)
    names = [escape(row.label) for row in rows]
    for meaning, part in (("lost", "heat"), ("electricity", "electricity")):
        drawing.bar(
            y=names, x=[getattr(row, part) for row in rows], orientation="h", marker=drawing.surface(meaning),
            hover=f"%{{y}}, {part}: %{{x:,.0f}} kg",
        )  # fmt: skip
    for name, row in zip(names, rows, strict=True):
        said = f"heat {figures.carbon(row.heat)}, electricity {figures.carbon(row.electricity)}"
        drawing.note(f"<b>{name}</b>: {said}", colour=palette.ink, x=0, y=name, yshift=_ABOVE, xanchor="left")
    title = "kg of CO₂ equivalent a year"
    drawing.across(title=title, nticks=5, rangemode="tozero", tickformat=",", zeroline=False)
    drawing.upwards(autorange="reversed", showgrid=False, showticklabels=False)
    return drawing.figure(barmode="stack", bargap=0.66, margin={"t": 20})


def payback(found: Payback, *, currency: str, palette: Palette) -> go.Figure:
    """Money that has come back since the fitting, with the life of the kit marked."""
    drawing = Drawing(palette, height=_HEIGHT)
    years, low, high = found.years.tolist(), found.low.tolist(), found.high.tolist()
    drawing.band(years, low, high)
    drawing.scatter(
        x=years, y=found.middle.tolist(), mode="lines", line={"color": palette.kept, "width": 3},
        hover=f"after %{{x:.0f}} years: {currency} %{{y:,.0f}}",
    )  # fmt: skip
    drawing.upright(found.life, color=palette.ink, width=1.2, dash="dot")
    drawing.note(
        f"end of life, {figures.years(found.life)}", colour=palette.quiet,
        x=found.life, y=1, yref="paper", yanchor="top", xanchor="right", xshift=-6,
    )  # fmt: skip
    at_life = float(np.interp(found.life, found.years, found.middle))
    drawing.dot(found.life, at_life)
    drawing.note(
        f"<b>{cash.money(at_life, currency)}</b>", colour=palette.kept,
        x=found.life, y=at_life, xanchor="right", yanchor="bottom", xshift=-10, yshift=4,
    )  # fmt: skip
    every = [0.0, *low, *high]
    span = (max(every) - min(every)) or 1.0
    reach = [min(every) - 0.05 * span, max(every) + 0.14 * span]
    drawing.across(title="years after fitting", range=[0, years[-1]], showgrid=False, nticks=8)
    drawing.upwards(title=f"{currency}, since fitting", tickformat=",", nticks=6, range=reach)
    return drawing.figure()


def months(found: MonthsSaved, *, palette: Palette) -> go.Figure:
    """Heat saved upwards, more electricity downwards, the heating season shaded."""
    drawing = Drawing(palette, height=_HEIGHT)
    names = list(MONTH_NAMES)
    drawing.shade(np.flatnonzero(found.demand > _SEASON * max(float(found.demand.sum()), 1e-9)).tolist())
    for meaning, values, words, place, anchor in (
        ("kept", found.heat, "heat saved", int(np.argmax(found.heat)), "bottom"),
        ("electricity", -found.electricity, "more electricity", 6, "top"),
    ):
        drawing.bar(
            x=names, y=values.tolist(), marker=drawing.surface(meaning), customdata=np.abs(values).tolist(),
            hover=f"%{{x}}, {words}: %{{customdata:,.0f}} kWh",
        )  # fmt: skip
        side, shift = {0: ("left", -_INWARDS), len(names) - 1: ("right", _INWARDS)}.get(place, ("center", 0))
        drawing.note(
            f"<b>{words}</b>", colour=getattr(palette, meaning),
            x=names[place], y=float(values[place]), yanchor=anchor, xanchor=side, xshift=shift,
        )  # fmt: skip
    top, bottom = float(max(found.heat.max(), 1.0)), float(min(found.heat.min(), -found.electricity.max(), 0.0))
    room = 0.15 * (top - bottom)
    drawing.upwards(title="kWh a month", nticks=6, range=[bottom - room, top + room])
    drawing.across(showgrid=False, tickangle=0)
    return drawing.figure(barmode="relative", bargap=0.25)
