"""How is a year of hours drawn, hours of the day by days?"""

from __future__ import annotations

import numpy as np
import plotly.graph_objects as go

from estimator.report.hours import YearMap
from estimator.report.palette import SANS_STACK, Palette
from estimator.units import HOURS_PER_DAY, MONTH_DAYS, MONTH_NAMES

_LABEL = 12
_HEIGHT = 300


def year_map(found: YearMap, *, palette: Palette) -> go.Figure:
    """One figure of every hour as a shade: the ground is nil, deeper is more; below nil it takes another colour."""
    least, most = float(np.min(found.values)), float(np.max(found.values))
    span = max(most - min(least, 0.0), 1e-9)
    nil = -min(least, 0.0) / span
    scale = [[0.0, palette.electricity], [nil, palette.ground]] if nil > 0.0 else [[0.0, palette.ground]]
    figure = go.Figure(
        go.Heatmap(
            # Two decimals are finer than a shade shows, and keep what is sent small.
            z=np.round(found.values, 2),
            zmin=min(least, 0.0),
            zmax=max(most, 1e-9),
            colorscale=[*scale, [1.0, palette.kept]],
            hovertemplate=f"day %{{x}} of the year, %{{y}}:00: %{{z:.2f}} {found.unit}<extra></extra>",
            colorbar={"title": {"text": found.unit}, "thickness": 10, "outlinewidth": 0, "len": 0.9},
        )
    )
    starts = np.concatenate([[0], np.cumsum(MONTH_DAYS)[:-1]])
    figure.update_layout(
        height=_HEIGHT,
        margin={"l": 4, "r": 4, "t": 8, "b": 8},
        paper_bgcolor="rgba(0,0,0,0)",
        plot_bgcolor="rgba(0,0,0,0)",
        font={"family": SANS_STACK, "size": _LABEL, "color": palette.quiet},
        dragmode=False,
        hoverlabel={"bgcolor": palette.raised, "font": {"color": palette.ink, "family": SANS_STACK}},
    )
    figure.update_xaxes(
        tickvals=(starts + np.asarray(MONTH_DAYS) / 2.0).tolist(), ticktext=[name[0] for name in MONTH_NAMES],
        fixedrange=True, showgrid=False, automargin=True,
    )  # fmt: skip
    figure.update_yaxes(
        title={"text": "hour of the day", "standoff": 6}, tickvals=list(range(0, int(HOURS_PER_DAY), 6)),
        fixedrange=True, showgrid=False, automargin=True,
    )  # fmt: skip
    return figure
