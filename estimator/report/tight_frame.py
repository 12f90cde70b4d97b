"""Where does everything stand in a picture over leakage: rows, scales, the axis with its figures?

From top to bottom: unit, one row for each border, curves, the words of the house and its bar, the axis.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from estimator.report import figures
from estimator.report.drawing import Weight, safe, text_width, wrapped
from estimator.report.leakage_said import LEAKAGE_UNIT, bound, unit
from estimator.report.paper_charts import round_levels
from estimator.report.placing import Box
from estimator.report.tight import Tightness
from estimator.report.tight_plan import Border, Curve, Plan
from estimator.sweep import HIGHEST, LOWEST, TOLD
from estimator.units import Array

TOP = 22.0
"""Where the rows of the borders begin, below the unit [px]."""

BAR = 13.0
"""Height of the house's bar [px]."""

_LINE = 1.3  # sizes of a letter from line to line
_MIDDLE = 0.65  # of the size, from the top of a line to the middle of its letters
_GAP = 8.0
_EDGE = 16.0  # half of the last figure of the axis stands beyond the axis
_LEAST_BAR = 3.0
_MOST_LINES = 3
_CUT = "…"
_SMALLEST = 0.1  # m³/(h m²); the axis never begins below, so that the curves keep their width
_IMPERIAL_TICKS = (0.05, 0.1, 0.2, 0.5, 1.0)  # cfm/ft²


@dataclass(frozen=True, slots=True, kw_only=True)
class Measures:
    """Of one form [px]: width; height of the zone of the curves; letters; widest words beside a line and alone.

    names: room for the names of the axis beside its figures, nil where they stand below them.
    """

    width: float
    zone: float
    size: float
    words: float
    alone: float
    names: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Frame:
    """Places [px] of one picture.

    ends: of the leakage axis [m³/(h m²)]; nil: where a value of nil stands; scale: px for one of its unit.
    """

    plan: Plan
    form: Measures
    ends: tuple[float, float]
    row: float
    zone: tuple[float, float]
    left: float
    nil: float
    scale: float
    levels: tuple[float, ...]

    @property
    def right(self) -> float:
        """Where the axis ends."""
        return self.form.width - _EDGE

    @property
    def axis(self) -> float:
        """Height of the axis of leakages."""
        return self.zone[1] + self.line + BAR + 5.0

    @property
    def line(self) -> float:
        """Height of a line of words."""
        return self.form.size * _LINE

    def x(self, q50: Array | float) -> Array:
        """Of a leakage [m³/(h m²)]."""
        low, high = self.ends
        return np.asarray(self.left + np.log(np.asarray(q50) / low) / np.log(high / low) * (self.right - self.left))

    def y(self, value: Array | float) -> Array:
        """Of a value in the unit of the picture."""
        return np.asarray(self.nil - np.asarray(value) * self.scale)

    def points(self, piece: Array) -> Array:
        """Of a piece of a curve, (n, 2)."""
        return np.stack([self.x(piece[:, 0]), self.y(piece[:, 1])], axis=1)

    def set(self, words: str, *, alone: bool = False) -> list[str]:
        """Bold words in a few lines; what somebody called an option may be longer, and is told in full beside it."""
        width, out = self.form.alone if alone else self.form.words, []
        lines = wrapped(words, width=width, size=self.form.size, weight=700) if words else []
        for line in [*lines[: _MOST_LINES - 1], " ".join(lines[_MOST_LINES - 1 :])]:
            fits = line
            while self.wide(fits) > width:
                fits = f"{fits[:-2].rstrip()}{_CUT}"
            out.append(fits)
        return [line for line in out if line]

    def wide(self, *lines: str, weight: Weight = 700) -> float:
        """Width of the longest line."""
        return max(text_width(line, size=self.form.size, weight=weight) for line in lines)

    def bar(self, low: float, high: float) -> tuple[float, float]:
        """Ends of the bar of a house that leaks between these [m³/(h m²)]; never too short to be seen."""
        left, right = (float(self.x(max(end, self.ends[0]))) for end in (low, high))
        return min(left, self.right - _LEAST_BAR), max(right, left + _LEAST_BAR)

    def text(self, x: float, top: float, words: str, colour: str, *, weight: Weight = 500) -> str:
        """One line of words with the top of the line at `top`."""
        return (
            f'<text class="{colour}" x="{x:.1f}" y="{top + self.form.size:.1f}" font-size="{self.form.size:g}" '
            f'font-weight="{weight}">{safe(words)}</text>'
        )

    def bold(self, lines: list[str], box: Box, colour: str) -> str:
        """Bold lines in their box."""
        tops = (box.top + number * self.line for number in range(len(lines)))
        return "".join(
            self.text(box.left, top, line, colour, weight=700) for top, line in zip(tops, lines, strict=True)
        )


def frame(found: Tightness, plan: Plan, form: Measures) -> Frame:
    """Room for all words first, then scales from what is left."""
    line = form.size * _LINE
    rough = Frame(
        plan=plan, form=form, row=0.0, zone=(0.0, 0.0), left=0.0, nil=0.0, scale=1.0, levels=(),
        ends=(min(LOWEST, max(found.span.low, _SMALLEST)), max(HIGHEST, found.span.high)),
    )  # fmt: skip
    row = line * max((len(flag(rough, border)) for border in plan.borders), default=0) + 4.0
    top = TOP + row * len(plan.borders)
    bottom = top + form.zone
    names = max(len(name(rough, curve)) for curve in plan.curves) * line + _GAP if plan.padded else 0.0
    low, high = plan.reach
    scale = (form.zone - 2.0 * names - 10.0) / (high - low)
    nil = bottom - 4.0 - names + low * scale
    round_ones = round_levels((nil - bottom) / scale, (nil - top) / scale)
    levels = [level for level in round_ones if top <= nil - level * scale <= bottom]
    left = max(form.names, rough.wide(*map(plan.say, levels), weight=500)) + _GAP
    return Frame(
        plan=plan, form=form, ends=rough.ends, row=row, zone=(top, bottom), left=left, nil=nil, scale=scale,
        levels=tuple(levels),
    )  # fmt: skip


def flag(within: Frame, border: Border) -> list[str]:
    """The words of a border in lines."""
    return within.set(border.words, alone=not border.drawn)


def name(within: Frame, curve: Curve) -> list[str]:
    """The name of a curve in lines, and in one more what is to be said of it."""
    return [*within.set(curve.words), *within.set(curve.note)]


def level_names(within: Frame) -> str:
    """The unit of the values, and a figure at each level."""
    plan, end = within.plan, within.left - _GAP
    out = [within.text(max(0.0, end - within.wide(plan.unit, weight=500)), 0.0, plan.unit, "quiet")]
    for level in within.levels:
        said = plan.say(level)
        top = float(within.y(level)) - _MIDDLE * within.form.size
        out.append(within.text(end - within.wide(said, weight=500), top, said, "quiet"))
    return "".join(out)


def ticks() -> tuple[float, ...]:
    """Leakages with a figure on the axis [m³/(h m²)], round in the reader's unit."""
    if not figures.THINKS_IMPERIAL.get():
        return TOLD
    return tuple(map(figures.to_metric(LEAKAGE_UNIT), _IMPERIAL_TICKS))


def leakage_axis(within: Frame, found: Tightness) -> tuple[str, float]:
    """Each leakage said three ways, and where the picture ends."""
    curve, at = found.baseline.sweep.figures, ticks()
    n50, changes = (np.interp(at, curve.q50, values).tolist() for values in (curve.n50, curve.air_changes))
    rows = (
        (f"{unit()} at 50 Pa", [bound(tick) for tick in at]),
        ("air changes an hour at 50 Pa (n50)", [f"{value:.1f}" for value in n50]),
        (f"mean air changes an{figures.GAP}hour", [f"{value:.2f}" for value in changes]),
    )
    out, top = [], within.axis + _GAP
    for said, values in rows:
        starts = [
            float(within.x(tick)) - 0.5 * within.wide(value, weight=500) for tick, value in zip(at, values, strict=True)
        ]
        out += [within.text(start, top, value, "ink") for start, value in zip(starts, values, strict=True)]
        if within.form.names:
            lines = wrapped(said, width=within.form.names - 12.0, size=within.form.size)
            out += [within.text(0.0, top + number * within.line, line, "quiet") for number, line in enumerate(lines)]
        else:
            lines = ["", said]
            out.append(within.text(within.left - _GAP, top + within.line, said, "quiet"))
        top += len(lines) * within.line + 9.0
    return "".join(out), top
