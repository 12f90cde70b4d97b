"""How are the paybacks of a stock drawn, and its homes between leakage and saving with the border on the drawing?"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
import plotly.graph_objects as go
from numpy.typing import NDArray

from estimator.report.charts_frame import Drawing
from estimator.report.figures import converted
from estimator.report.leakage_said import LEAKAGE_UNIT, bound, unit
from estimator.report.palette import Palette
from estimator.report.stock_words import TIGHTNESS
from estimator.units import Array

MOST_DRAWN = 3000  # homes; more hide each other
_TICKS = (0.5, 1.0, 2.0, 5.0, 10.0, 20.0)
_MARKS: Mapping[str, tuple[str, str, str]] = {
    TIGHTNESS["tight enough"]: ("saves as it is", "kept", "circle"),
    TIGHTNESS["seal first"]: ("saves once sealed", "electricity", "diamond-open"),
    TIGHTNESS["neither"]: ("saves neither way", "lost", "x-thin-open"),
}


def paybacks(found: Sequence[tuple[str, int]], *, palette: Palette) -> go.Figure:
    """How many homes pay back within which years; the last bar never does."""
    names, counts = [name for name, _ in found], [many for _, many in found]
    drawing = Drawing(palette, height=300)
    drawing.bar(
        y=names, x=counts, orientation="h", hover="%{y}: %{x:,} homes",
        marker={"color": [palette.kept] * (len(names) - 1) + [palette.lost], "line": {"width": 0}},
        text=[f"{many:,}" for many in counts], textposition="outside", textfont={"color": palette.ink},
        cliponaxis=False,
    )  # fmt: skip
    drawing.across(title="homes", nticks=5, range=[0, 1.15 * max([1, *counts])], tickformat=",")
    drawing.upwards(autorange="reversed", showgrid=False)
    return drawing.figure(bargap=0.35)


def leakage_and_saving(
    q50: Array, saving: Array, tightness: NDArray[Any], *, names: Sequence[str], currency: str, palette: Palette
) -> go.Figure:
    """Every home at its leakage and its net saving; the border is where nothing is saved."""
    drawing = Drawing(palette, height=430)
    for words, (name, colour, symbol) in _MARKS.items():
        here = np.flatnonzero(tightness == words)
        drawing.scatter(
            x=converted(q50[here], LEAKAGE_UNIT).tolist(), y=saving[here].tolist(), mode="markers", name=name,
            marker={"color": getattr(palette, colour), "symbol": symbol, "size": 7, "line": {"width": 1.2}},
            text=[names[place] for place in here.tolist()],
            hover=f"%{{text}}<br>%{{x:.2~g}} {unit()}, {currency} %{{y:,.0f}} a year",
        )  # fmt: skip
    drawing.note(
        "<b>the border: nothing saved</b>", colour=palette.ink,
        x=0.0, xref="paper", xanchor="left", y=0.0, yanchor="bottom", bgcolor=palette.ground,
    )  # fmt: skip
    ticks = [tick for tick in _TICKS if not q50.size or 0.7 * q50.min() <= tick <= 1.4 * q50.max()]
    drawing.across(
        type="log", title=f"leakage, {unit()} at 50 Pa",
        tickvals=[converted(tick, LEAKAGE_UNIT) for tick in ticks], ticktext=[bound(tick) for tick in ticks],
    )  # fmt: skip
    drawing.upwards(title=f"net saving, {currency} a year", tickformat=",", nticks=6, zeroline=True, zerolinewidth=2)
    legend = {"orientation": "h", "y": 1.02, "yanchor": "bottom", "x": 0, "font": {"color": palette.ink}}
    return drawing.figure(showlegend=True, legend=legend, margin={"t": 40})


def drawn(count: int) -> NDArray[np.intp]:
    """Places of the homes that are drawn, evenly spread where there are too many."""
    return np.unique(np.linspace(0, count - 1, min(count, MOST_DRAWN)).round().astype(np.intp))
