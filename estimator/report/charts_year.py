"""How is a year of hours drawn, hours of the day by days?"""

from __future__ import annotations

import numpy as np
import plotly.graph_objects as go

from estimator.report.charts_frame import LABEL, Drawing
from estimator.report.hours import YearMap
from estimator.report.palette import Palette
from estimator.units import HOURS_PER_DAY, MONTH_DAYS, MONTH_NAMES


def year_map(found: YearMap, *, palette: Palette) -> go.Figure:
    """One figure of every hour as a shade: the ground is nil, deeper is more; below nil it takes another colour."""
    least, most = float(np.min(found.values)), float(np.max(found.values))
    span = max(most - min(least, 0.0), 1e-9)
    nil = -min(least, 0.0) / span
    scale = [[0.0, palette.electricity], [nil, palette.ground]] if nil > 0.0 else [[0.0, palette.ground]]
    drawing = Drawing(palette, height=300)
    quiet = {"size": LABEL, "color": palette.quiet}
    drawing.shades(
        # Two decimals are finer than a shade shows, and keep what is sent small.
        z=np.round(found.values, 2), zmin=min(least, 0.0), zmax=max(most, 1e-9),
        colorscale=[*scale, [1.0, palette.kept]],
        colorbar={"title": {"text": found.unit, "font": quiet}, "tickfont": quiet, "thickness": 10, "outlinewidth": 0,
                  "len": 0.9},
        hover=f"day %{{x}} of the year, %{{y}}:00: %{{z:.2f}} {found.unit}",
    )  # fmt: skip
    starts = np.concatenate([[0], np.cumsum(MONTH_DAYS)[:-1]])
    middles = (starts + np.asarray(MONTH_DAYS) / 2.0).tolist()
    plain = {"showgrid": False, "zeroline": False}  # lines would lie on the shades
    drawing.across(tickvals=middles, ticktext=[name[0] for name in MONTH_NAMES], **plain)
    drawing.upwards(title="hour of the day", tickvals=list(range(0, int(HOURS_PER_DAY), 6)), **plain)
    return drawing.figure()
