"""How are the swings of the net saving drawn, each labelled with its input's own low and high?

One line an input, longest first: an open end where the input is low, a full one where it is high, so that a grey copy
tells them apart. The names stand above the lines, which leaves a phone its width.
"""

from __future__ import annotations

from collections.abc import Sequence

import plotly.graph_objects as go

from estimator.report import cash
from estimator.report.palette import SANS_STACK, Palette
from estimator.report.sure_words import Line

_LABEL = 13
_ROW, _FRAME = 50, 90  # pixels
_ABOVE = 17  # pixels from a line to its name
_BESIDE = 9  # pixels from an end to its label
_ROOM = 0.55  # beside the longest line for its labels, as a share of all of them


def swings(lines: Sequence[Line], *, best: float, currency: str, palette: Palette) -> go.Figure:
    """Net saving a year with one input alone at its low and at its high; best: with none moved."""
    figure = go.Figure()
    values = [best, *(value for line in lines for value in (line.at_low, line.at_high))]
    low, high = min(values), max(values)
    room = _ROOM * ((high - low) or 1.0)
    figure.add_vline(x=best, line={"color": palette.quiet, "width": 1.2, "dash": "dot"}, layer="below")
    for row, line in enumerate(lines):
        ends = (line.at_low, line.at_high)
        figure.add_scatter(
            x=list(ends),
            y=[row, row],
            mode="lines+markers",
            line={"color": palette.kept, "width": 4},
            marker={
                "size": 11,
                "color": [palette.ground, palette.kept],
                "line": {"color": palette.kept, "width": 2.5},
                "opacity": 1,
            },
            text=[f"{line.words}: {said}" for said in (line.low, line.high)],
            hovertemplate=f"%{{text}}<br>{currency} %{{x:,.0f}} a year<extra></extra>",
        )
        rising = line.at_low <= line.at_high
        left, right = (line.low, line.high) if rising else (line.high, line.low)
        for x, words, anchor, shift in ((min(ends), left, "right", -_BESIDE), (max(ends), right, "left", _BESIDE)):
            figure.add_annotation(
                x=x,
                y=row,
                text=words,
                xanchor=anchor,
                xshift=shift,
                showarrow=False,
                font={"color": palette.ink},
                bgcolor=palette.ground,  # so that the line of nil does not run through the words
                borderpad=0,
            )
        figure.add_annotation(
            x=0,
            xref="paper",
            y=row,
            yshift=_ABOVE,
            text=f"<b>{line.words}</b>",
            xanchor="left",
            showarrow=False,
            font={"color": palette.ink},
            bgcolor=palette.ground,
            borderpad=0,
        )
    figure.add_annotation(
        x=best,
        y=1,
        yref="paper",
        yanchor="bottom",
        text=f"best guess {cash.money(best, currency)}",
        showarrow=False,
        font={"color": palette.quiet},
    )
    figure.update_xaxes(title=f"net saving, {currency} a year", range=[low - room, high + room])
    figure.update_yaxes(range=[len(lines) - 0.4, -0.7], visible=False)
    return _laid_out(figure, palette, height=_FRAME + _ROW * len(lines))


def _laid_out(figure: go.Figure, palette: Palette, *, height: int) -> go.Figure:
    figure.update_layout(
        height=height,
        margin={"l": 4, "r": 4, "t": 26, "b": 8},
        paper_bgcolor="rgba(0,0,0,0)",
        plot_bgcolor="rgba(0,0,0,0)",
        font={"family": SANS_STACK, "size": _LABEL, "color": palette.ink},
        showlegend=False,
        dragmode=False,
        hoverlabel={"bgcolor": palette.raised, "font": {"color": palette.ink, "family": SANS_STACK}},
    )
    figure.update_xaxes(
        automargin=True,
        fixedrange=True,
        nticks=5,
        tickformat=",",
        gridcolor=palette.rule,
        zerolinecolor=palette.ink,
        zerolinewidth=1,
        tickfont={"size": _LABEL, "color": palette.quiet},
        title={"font": {"size": _LABEL, "color": palette.quiet}, "standoff": 8},
    )
    figure.update_yaxes(fixedrange=True)
    return figure
