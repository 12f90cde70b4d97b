"""How are the points of efficiency between certificate and house drawn, one bar below the other?

The names stand above the bars, which leaves a phone its width.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import plotly.graph_objects as go

from estimator.points_lost import Step
from estimator.report import figures
from estimator.report.charts_frame import Drawing
from estimator.report.fit_words import step_change, step_name
from estimator.report.palette import Palette
from estimator.units import to_percent

_ROW, _FRAME = 52, 76  # pixels
_ABOVE = 19  # pixels from a bar to its name
_THICK = 0.32  # of a row
_WIDEST = 132.0  # %, with room for the words beside a full bar


def points(steps: Sequence[Step], *, palette: Palette) -> go.Figure:
    """What is kept after each thing is counted, and the points that it takes, dotted, or gives."""
    drawing = Drawing(palette, height=_FRAME + _ROW * len(steps))
    kept = [float(to_percent(step.efficiency)) for step in steps]
    before = [kept[0], *kept[:-1]]
    rows = list(range(len(steps)))
    taken = [max(was - now, 0.0) for was, now in zip(before, kept, strict=True)]
    bars: dict[str, Any] = {"y": rows, "orientation": "h", "width": _THICK}
    drawing.bar(x=kept, marker=drawing.surface("kept"), hover="%{x:.1f} % comes back", **bars)
    drawing.bar(x=taken, base=kept, marker=drawing.surface("lost"), hover="%{x:.1f} points taken", **bars)
    for row, (step, was, now) in enumerate(zip(steps, before, kept, strict=True)):
        drawing.note(
            f"<b>{figures.share(step.efficiency)}</b> {step_name(step)}", colour=palette.ink,
            x=0, y=row, yshift=_ABOVE, xanchor="left", xshift=3,
        )  # fmt: skip
        if change := step_change(step):
            drawing.note(change, colour=palette.ink, x=max(was, now), y=row, xanchor="left", xshift=6)
    drawing.across(range=[0, _WIDEST], tickvals=[0, 25, 50, 75, 100], title="heat of the air that comes back, %")
    drawing.upwards(range=[len(steps) - 0.5, -0.8], visible=False)
    return drawing.figure(barmode="overlay", margin={"b": 52})
