"""How are the points of efficiency between certificate and house drawn, one bar below the other?"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import plotly.graph_objects as go

from estimator.points_lost import Step
from estimator.report import figures
from estimator.report.fit_words import step_change, step_name
from estimator.report.palette import SANS_STACK, Palette
from estimator.units import to_percent

_LABEL = 13
_ROW, _FRAME = 50, 76  # pixels
_ABOVE = 19  # pixels from a bar to its name
_THICK = 0.32  # of a row


def points(steps: Sequence[Step], *, palette: Palette) -> go.Figure:
    """What is kept after each thing is counted, and the points that it takes, dotted, or gives."""
    figure = go.Figure()
    kept = [to_percent(step.efficiency) for step in steps]
    before = [kept[0], *kept[:-1]]
    rows = list(range(len(steps)))
    figure.add_bar(y=rows, x=kept, marker=_marked(palette, "kept", ""), **_bar("kept %{x:.1f} %"))
    figure.add_bar(
        y=rows,
        x=[max(was - now, 0.0) for was, now in zip(before, kept, strict=True)],
        base=kept,
        marker=_marked(palette, "lost", "."),
        **_bar("taken %{x:.1f} points"),
    )
    for row, (step, was, now) in enumerate(zip(steps, before, kept, strict=True)):
        figure.add_annotation(
            x=0, xref="paper", y=row, yshift=_ABOVE, xanchor="left", xshift=4, showarrow=False,
            font={"color": palette.ink},
            text=f"<b>{figures.share(step.efficiency)}</b> {step_name(step)}",
        )  # fmt: skip
        if change := step_change(step):
            figure.add_annotation(
                x=max(was, now), y=row, xanchor="left", xshift=6, showarrow=False, text=change,
                font={"color": palette.ink},
            )  # fmt: skip
    figure.update_layout(
        barmode="overlay",
        height=_FRAME + _ROW * len(steps),
        margin={"l": 4, "r": 4, "t": 4, "b": 52},
        paper_bgcolor="rgba(0,0,0,0)",
        plot_bgcolor="rgba(0,0,0,0)",
        font={"family": SANS_STACK, "size": _LABEL, "color": palette.ink},
        showlegend=False,
        dragmode=False,
        hoverlabel={"bgcolor": palette.raised, "font": {"color": palette.ink, "family": SANS_STACK}},
    )
    figure.update_xaxes(
        range=[0, 122], tickvals=[0, 25, 50, 75, 100], title="heat of the air through the unit that comes back, %",
        fixedrange=True, gridcolor=palette.rule, zerolinecolor=palette.ink, zerolinewidth=1,
        tickfont={"size": _LABEL, "color": palette.quiet},
        title_font={"size": _LABEL, "color": palette.quiet}, title_standoff=8,
    )  # fmt: skip
    figure.update_yaxes(range=[len(steps) - 0.5, -0.75], visible=False, fixedrange=True)
    return figure


def _bar(hover: str) -> dict[str, Any]:
    return {"orientation": "h", "width": _THICK, "hovertemplate": f"{hover}<extra></extra>"}


def _marked(palette: Palette, meaning: str, shape: str) -> dict[str, Any]:
    return {
        "color": getattr(palette, meaning),
        "line": {"width": 0},
        "pattern": {"shape": shape, "fgcolor": palette.ground, "size": 6, "solidity": 0.25, "fillmode": "overlay"},
    }
