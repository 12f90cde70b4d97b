"""How are the swings of the net saving drawn, each labelled with its input's own low and high?

One line an input, longest first: an open end where the input is low, a full one where it is high, so that a grey copy
tells them apart. The names stand above the lines, which leaves a phone its width.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import plotly.graph_objects as go

from estimator.report import cash
from estimator.report.charts_frame import Drawing
from estimator.report.palette import Palette
from estimator.report.sure_words import Line

_ROW, _FRAME = 50, 90  # pixels
_ABOVE = 17  # pixels from a line to its name
_BESIDE = 9  # pixels from an end to its label
_ROOM = 0.55  # beside the longest line for its labels, as a share of all of them


def swings(lines: Sequence[Line], *, best: float, currency: str, palette: Palette) -> go.Figure:
    """Net saving a year with one input alone at its low and at its high; best: with none moved."""
    drawing = Drawing(palette, height=_FRAME + _ROW * len(lines))
    values = [best, *(value for line in lines for value in (line.at_low, line.at_high))]
    low, high = min(values), max(values)
    room = _ROOM * ((high - low) or 1.0)
    drawing.upright(best, layer="below", color=palette.quiet, width=1.2, dash="dot")
    for row, line in enumerate(lines):
        _line(drawing, row, line, currency)
    drawing.note(
        f"best guess {cash.money(best, currency)}", colour=palette.quiet, x=best, y=1, yref="paper", yanchor="bottom"
    )
    reach = [low - room, high + room]
    drawing.across(title=f"net saving, {currency} a year", range=reach, nticks=5, tickformat=",")
    drawing.upwards(range=[len(lines) - 0.4, -0.7], visible=False)
    return drawing.figure(margin={"t": 26})


def _line(drawing: Drawing, row: int, line: Line, currency: str) -> None:
    palette = drawing.palette
    edge = {"color": palette.kept, "width": 2.5}
    drawing.scatter(
        x=[line.at_low, line.at_high], y=[row, row], mode="lines+markers",
        line={"color": palette.kept, "width": 4},
        marker={"size": 11, "color": [palette.ground, palette.kept], "line": edge, "opacity": 1},
        text=[f"{line.words}: {said}" for said in (line.low, line.high)],
        hover=f"%{{text}}<br>{currency} %{{x:,.0f}} a year",
    )  # fmt: skip
    left, right = sorted(((line.at_low, line.low), (line.at_high, line.high)), key=lambda end: end[0])
    # On ground of their own, so that the line of nil does not run through the words.
    words: dict[str, Any] = {"colour": palette.ink, "y": row, "bgcolor": palette.ground, "borderpad": 0}
    for (x, said), anchor, shift in ((left, "right", -_BESIDE), (right, "left", _BESIDE)):
        drawing.note(said, x=x, xanchor=anchor, xshift=shift, **words)
    drawing.note(f"<b>{line.words}</b>", x=0, xref="paper", xanchor="left", yshift=_ABOVE, **words)
