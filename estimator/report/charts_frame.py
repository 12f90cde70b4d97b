"""Which frame do all charts share, and how is a chart put together without waiting for it?

Everything is gathered as plain data and handed to Plotly once: a figure changed piece by piece takes it seven times as
long. The frame is quiet: no legend, no mode bar, no background, letters of the page, axes that a thumb cannot move. It
stands on no template of Plotly's: whatever is drawn is said here or by the chart.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import plotly.graph_objects as go

from estimator.report.palette import SANS_STACK, SURFACES, Palette

LABEL = 13  # pixels, letters of a chart
CLEAR = "rgba(0,0,0,0)"
_SHAPES = {"plain": "", "dotted": ".", "hatched": "/", "barred": "-"}

CONFIG = {"displayModeBar": False, "responsive": True, "scrollZoom": False, "doubleClick": False}
"""For the page: a chart is to be read, and a thumb scrolls past it."""


class Drawing:
    """Marks, notes, shapes and axes of one chart, gathered; every keyword is a property of Plotly's own.

    hover: what a mark tells somebody who points at it; without it the mark tells nothing.
    """

    def __init__(self, palette: Palette, *, height: int) -> None:
        self.palette, self.height = palette, height
        self._marks: list[dict[str, Any]] = []
        self._notes: list[dict[str, Any]] = []
        self._shapes: list[dict[str, Any]] = []
        self._axes: dict[str, dict[str, Any]] = {"xaxis": {}, "yaxis": {}}

    def bar(self, *, hover: str = "", **look: Any) -> None:
        """Bars."""
        self._mark("bar", hover, look)

    def scatter(self, *, hover: str = "", **look: Any) -> None:
        """A line, points, or an area."""
        self._mark("scatter", hover, look)

    def shades(self, *, hover: str = "", **look: Any) -> None:
        """A field of shades, one for each number of a table."""
        self._mark("heatmap", hover, look)

    def band(self, x: Sequence[Any], low: Sequence[float], high: Sequence[float], **look: Any) -> None:
        """The ground between two lines over the same places."""
        look = {"mode": "lines", "line": {"width": 0}, "fill": "toself", "fillcolor": self.palette.air, **look}
        self.scatter(x=[*x, *reversed(x)], y=[*high, *reversed(low)], **look)

    def dot(self, x: float, y: float, **look: Any) -> None:
        """A place on a line of what is kept."""
        marker = {"color": self.palette.kept, "size": 9, "line": {"color": self.palette.ground, "width": 2}}
        self.scatter(x=[x], y=[y], mode="markers", marker=marker, **look)

    def surface(self, meaning: str) -> dict[str, Any]:
        """Colour and surface of a bar of one meaning, which is a colour of the palette."""
        shape, ground = _SHAPES[SURFACES[meaning]], self.palette.ground
        return {
            "color": getattr(self.palette, meaning),
            "line": {"width": 0},
            "pattern": {"shape": shape, "fgcolor": ground, "size": 6, "solidity": 0.25, "fillmode": "overlay"},
        }

    def note(self, text: str, *, colour: str, **look: Any) -> None:
        """Words on the drawing, without an arrow."""
        font = {"color": colour, **look.pop("font", {})}
        self._notes.append({"text": text, "showarrow": False, "font": font, **look})

    def pointer(self, text: str, *, colour: str, ax: float, ay: float, **look: Any) -> None:
        """Words so many pixels to the right of a place and below it, and a line from them to it."""
        line = {"showarrow": True, "arrowcolor": colour, "arrowwidth": 1, "arrowhead": 0, "ax": ax, "ay": ay}
        self._notes.append({"text": text, "font": {"color": colour}, **line, **look})

    def upright(self, at: float, *, layer: str = "above", **line: Any) -> None:
        """A line from bottom to top, above the marks or below them."""
        ends = {"x0": at, "x1": at, "y0": 0, "y1": 1, "yref": "paper"}
        self._shapes.append({"type": "line", **ends, "layer": layer, "line": line})

    def level(self, at: float, **line: Any) -> None:
        """A line from side to side."""
        self._shapes.append({"type": "line", "x0": 0, "x1": 1, "y0": at, "y1": at, "xref": "paper", "line": line})

    def shade(self, places: Sequence[float], *, width: float = 1.0) -> None:
        """Ground under the drawing, a strip of this width around each place."""
        for place in places:
            ends = {"x0": place - width / 2.0, "x1": place + width / 2.0, "y0": 0, "y1": 1, "yref": "paper"}
            look = {"line": {"width": 0}, "fillcolor": self.palette.raised, "layer": "below"}
            self._shapes.append({"type": "rect", **ends, **look})

    def across(self, **axis: Any) -> None:
        """What the axis from left to right has of its own."""
        self._axes["xaxis"].update(axis)

    def upwards(self, **axis: Any) -> None:
        """What the axis upwards has of its own."""
        self._axes["yaxis"].update(axis)

    def figure(self, *, margin: dict[str, int] | None = None, **layout: Any) -> go.Figure:
        """The chart, put together.

        margin: pixels on the sides l, r, t, b; on a side that is named the axis does not push the drawing inwards,
        which would draw everything twice.
        """
        sides = {"l": 4, "r": 4, "t": 8, "b": 8, **(margin or {})}
        pushed = {"xaxis": "b" not in (margin or {}), "yaxis": "l" not in (margin or {})}
        ink, sans = self.palette.ink, SANS_STACK
        frame = {
            "template": {},
            "height": self.height,
            "margin": sides,
            "paper_bgcolor": CLEAR,
            "plot_bgcolor": CLEAR,
            "font": {"family": sans, "size": LABEL, "color": ink},
            "showlegend": False,
            "dragmode": False,
            "hovermode": "closest",
            "hoverlabel": {"bgcolor": self.palette.raised, "font": {"color": ink, "family": sans}, "align": "left"},
            "autotypenumbers": "strict",
            "annotations": self._notes,
            "shapes": self._shapes,
            **{name: self._axis(own, pushed[name]) for name, own in self._axes.items()},
            **layout,
        }
        return go.Figure({"data": self._marks, "layout": frame})

    def _mark(self, kind: str, hover: str, look: dict[str, Any]) -> None:
        told = {"hovertemplate": f"{hover}<extra></extra>"} if hover else {"hoverinfo": "skip"}
        self._marks.append({"type": kind, **told, **look})

    def _axis(self, own: dict[str, Any], pushed: bool) -> dict[str, Any]:
        quiet = {"size": LABEL, "color": self.palette.quiet}
        # A title without words would be given room all the same.
        title = {"title": {"text": own["title"], "font": quiet, "standoff": 8}} if "title" in own else {}
        return {
            "automargin": pushed,
            "fixedrange": True,
            "ticks": "",
            "gridcolor": self.palette.rule,
            "zerolinecolor": self.palette.ink,
            "zerolinewidth": 1,
            "tickfont": quiet,
            **own,
            **title,
        }
