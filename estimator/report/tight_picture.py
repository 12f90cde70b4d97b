"""How are saving, payback, heat saved and share of fresh air drawn over leakage, with the house and the borders on it?

A pure function of numbers. The house is a bar as long as its leakage is uncertain; a hatched one has not been tested.
The leakage axis is logarithmic and says each leakage three ways. Lines are broken around words, curves never.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache
from types import MappingProxyType
from typing import Literal

import numpy as np

from estimator.report import figures
from estimator.report.drawing import Look, document
from estimator.report.findings_tight import NAMES, in_words
from estimator.report.placing import CURVE, RULE, Box, Room, broken, flags
from estimator.report.tight import Tightness
from estimator.report.tight_frame import BAR, TOP, Frame, Measures, flag, frame, leakage_axis, level_names, name, ticks
from estimator.report.tight_plan import Border, Curve, plan
from estimator.units import Array

Form = Literal["desk", "phone"]

MEASURES: Mapping[Form, Measures] = MappingProxyType(
    {
        "desk": Measures(width=660.0, zone=236.0, size=13.5, words=250.0, alone=420.0, names=140.0),
        # A screen of 390 px without its margins.
        "phone": Measures(width=358.0, zone=236.0, size=13.0, words=142.0, alone=275.0, names=0.0),
    }
)
"""Of each form in which the picture comes."""

_FAINT = 'class="rule-line" stroke-width="1"'
_AXIS = 'class="ink-line" stroke-width="1.2"'
_HATCHED = (
    '<defs><pattern id="untested" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">'
    '<rect class="ground" width="6" height="6"/><rect class="ink" width="2" height="6"/></pattern></defs>'
)


def picture(found: Tightness, what: str, *, form: Form = "desk", look: Look = "auto", embed_font: bool = True) -> str:
    """One figure of a sweep, by its name in `findings_tight.NAMES`, as one SVG document."""
    body, height = _body(found, frame(found, plan(found, what), MEASURES[form]))
    return document(
        body,
        width=MEASURES[form].width,
        height=height,
        title=f"{NAMES[what]} over leakage",
        words=in_words(found, what),
        look=look,
        embed_font=embed_font,
    )


def _body(found: Tightness, within: Frame) -> tuple[str, float]:
    """Words are laid before lines are drawn, so that lines can be broken around them; and the height of it all."""
    curves = [[within.points(piece) for piece in curve.pieces] for curve in within.plan.curves]
    flagged = _flagged(within)
    house = _house_words(found, within)
    life, *named = _named(within, curves)
    words = [house, *(box for _, _, box in flagged), *(box for box in (life, *named) if box is not None)]
    axis, height = leakage_axis(within, found)
    drawn = [
        _HATCHED,
        _shade(found, within),
        _grid(within, words),
        *_life(within, life),
        *(_path(piece, curve) for curve, pieces in zip(within.plan.curves, curves, strict=True) for piece in pieces),
        _bar(found, within),
        *(_border(within, border, begin, words) for border, begin, _ in flagged if border.drawn),
        *(within.bold(flag(within, border), box, "ink") for border, _, box in flagged),
        within.bold([within.plan.house], house, "ink"),
        *(
            within.bold(name(within, curve), box, curve.colour)
            for curve, box in zip(within.plan.curves, named, strict=True)
            if box is not None
        ),
        level_names(within),
        axis,
    ]
    return "".join(drawn), height


def _flagged(within: Frame) -> list[tuple[Border, float, Box]]:
    """Each border, where its line begins, and where its words stand."""
    borders = within.plan.borders
    widths = [within.wide(*flag(within, border)) for border in borders]
    places = [float(within.x(border.at)) for border in borders]
    out = []
    for border, width, (row, left) in zip(
        borders, widths, flags(places, widths, (within.left, within.right)), strict=True
    ):
        top = TOP + row * within.row
        box = Box(left, top, left + width, top + len(flag(within, border)) * within.line)
        out.append((border, top + 2.0, box))
    return out


def _house_words(found: Tightness, within: Frame) -> Box:
    """Above the middle of the bar, as far as the picture allows."""
    left, right = within.bar(found.span.low, found.span.high)
    width = within.wide(within.plan.house)
    start = min(max(0.5 * (left + right - width), within.left), within.right - width)
    return Box(start, within.zone[1] + 1.0, start + width, within.zone[1] + 1.0 + within.line)


def _named(within: Frame, curves: Sequence[Sequence[Array]]) -> tuple[Box | None, ...]:
    """Where the words of the life and of each curve stand."""
    level = within.plan.level
    words = [name(within, curve) for curve in within.plan.curves]
    return _arranged(
        within.left,
        within.right,
        within.zone,
        tuple(float(within.x(border.at)) for border in within.plan.borders if border.drawn),
        float(within.y(0.0)),
        None if level is None else (float(within.y(level)), within.wide(_life_words(level)), within.line),
        tuple((within.wide(*lines), len(lines) * within.line) if lines else None for lines in words),
        tuple(tuple(piece.tobytes() for piece in pieces) for pieces in curves),
    )


@lru_cache(maxsize=32)  # while only the house moves, the curves and their words stay
def _arranged(
    left: float,
    right: float,
    zone: tuple[float, float],
    borders: tuple[float, ...],
    nil: float,
    life: tuple[float, float, float] | None,
    sizes: tuple[tuple[float, float] | None, ...],
    packed: tuple[tuple[bytes, ...], ...],
) -> tuple[Box | None, ...]:
    """The same from numbers alone [px]; life: its height, width and height of words; packed: points (n, 2)."""
    curves = [[np.frombuffer(piece).reshape(-1, 2) for piece in pieces] for pieces in packed]
    top, bottom = zone
    room = Room(Box(left + 4.0, top + 1.0, right, bottom - 1.0))
    for piece in (piece for pieces in curves for piece in pieces):
        room.line(piece, cost=CURVE)
    for x in borders:
        room.line(np.array([[x, end] for end in zone]), cost=RULE)
    room.line(_across(left, right, nil), cost=RULE)
    boxes: list[Box | None] = [None] * (1 + len(sizes))
    if life is not None:
        level = _across(left, right, life[0])
        boxes[0] = room.beside(level, [], width=life[1], height=life[2], late=True)
        room.line(level, cost=CURVE)
    for number in sorted(range(len(curves)), key=lambda number: not curves[number]):  # those without a line come last
        size = sizes[number]
        if size is not None:
            width, height = size
            others = [piece for at, pieces in enumerate(curves) if at != number for piece in pieces]
            longest = max(curves[number], key=len, default=None)
            boxes[number + 1] = (
                room.anywhere(width=width, height=height)
                if longest is None
                else room.beside(longest, others, width=width, height=height)
            )
    return tuple(boxes)


def _across(left: float, right: float, y: float) -> Array:
    return np.array([[left, y], [right, y]])


def _life_words(life: float) -> str:
    return f"its life, {figures.years(life)}"


def _life(within: Frame, box: Box | None) -> list[str]:
    life = within.plan.level
    if box is None or life is None:
        return []
    y = float(within.y(life))
    line = _line(within.left, y, within.right, y, 'class="ink-line" stroke-width="1.3" stroke-dasharray="1.5 4"')
    return [line, within.bold([_life_words(life)], box, "ink")]


def _shade(found: Tightness, within: Frame) -> str:
    """The width of the bar up the whole picture."""
    left, right = within.bar(found.span.low, found.span.high)
    return (
        f'<rect class="raised" x="{left:.1f}" y="{TOP:g}" width="{right - left:.1f}" height="{within.axis - TOP:.1f}"/>'
    )


def _bar(found: Tightness, within: Frame) -> str:
    left, right = within.bar(found.span.low, found.span.high)
    place = f'x="{left:.1f}" y="{within.axis - BAR:.1f}" width="{right - left:.1f}" height="{BAR:g}"'
    fill = 'class="ink"' if found.span.tested else 'fill="url(#untested)"'
    return f'<rect {fill} {place}/><rect class="ink-line" stroke-width="1.4" {place}/>'


def _border(within: Frame, border: Border, begin: float, words: Sequence[Box]) -> str:
    """From its words through the bar and a little further, so that it is seen whether it meets the house."""
    x, end = float(within.x(border.at)), within.axis + 6.0
    style = f'class="ink-line" stroke-width="1.5" stroke-dasharray="{border.dash}"'
    clear = _line(x, within.axis - BAR, x, within.axis, 'class="ground-line" stroke-width="5"')
    through = _line(x, within.axis - BAR, x, end, 'class="ink-line" stroke-width="1.5"')
    pieces = broken(begin, within.axis - BAR, x, words, upright=True)
    return "".join((*(_line(x, start, x, stop, style) for start, stop in pieces), clear, through))


def _grid(within: Frame, words: Sequence[Box]) -> str:
    out = []
    for level in within.levels:
        y = float(within.y(level))
        pieces = broken(within.left, within.right, y, words, upright=False)
        out += [_line(start, y, end, y, _FAINT if level else _AXIS) for start, end in pieces]
    for x in map(float, within.x(np.array(ticks()))):
        out += [
            _line(x, start, x, end, _FAINT)
            for start, end in broken(within.zone[0], within.axis, x, words, upright=True)
        ]
    return "".join((*out, _line(within.left, within.axis, within.right, within.axis, _AXIS)))


def _line(x1: float, y1: float, x2: float, y2: float, style: str) -> str:
    return f'<line {style} x1="{x1:.1f}" y1="{y1:.1f}" x2="{x2:.1f}" y2="{y2:.1f}"/>'


def _path(points: Array, curve: Curve) -> str:
    steps = "L".join(f"{x:.2f} {y:.2f}" for x, y in points.tolist())
    return f'<path class="{curve.colour}-line" {curve.stroke} d="M{steps}"/>'
