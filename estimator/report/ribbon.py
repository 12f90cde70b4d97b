"""How is the way of the fresh air's heat drawn as one ribbon, to scale, on a desk and on a phone?

The signature picture, a pure function of numbers. On a desk the ribbon runs to the right and what leaves it falls; on a
phone it runs down and what leaves it turns aside. Every label has a column or row of its own, so that none can collide.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Literal

from estimator.report.drawing import Label, Look, document, fade, safe, surface, wrapped
from estimator.report.flow import Curve, Step, Stream, best_scale, reach, stream
from estimator.report.fresh_air import FreshAir, Stage, begin, foot, in_words, result, stages

TITLE = "Where the heat of the fresh air goes"

Form = Literal["desk", "phone"]

_BEND = 12.0
_DROP = 20.0
_GAP = 16.0
_DESK = (960.0, 132.0)  # width of the picture, depth of the ribbon at its beginning
_PHONE = (358.0, 96.0)  # a screen of 390 px without its margins
_CLOSE = 9.0  # between labels below each other on a phone, where the page is long
_LABEL_WIDTHS = (124.0, 116.0, 108.0, 100.0, 92.0, 84.0)
_RESULT_WIDTH = 170.0
_NOTE = 12.5
_VEIL = 15.0  # along, over which what leaves takes its own colour
_OVERLAP = 1.0  # hides the seam between two shapes of one colour

Place = Callable[[float, float], tuple[float, float]]


def ribbon(air: FreshAir, *, form: Form = "desk", look: Look = "auto", embed_font: bool = True) -> str:
    """The picture as one SVG document."""
    body, width, height = (_desk if form == "desk" else _phone)(air, stages(air))
    return document(
        body, width=width, height=height, title=TITLE, words=in_words(air), look=look, embed_font=embed_font
    )


def _states(parts: Sequence[Stage]) -> list[Label]:
    return [part.after for part in parts if part.after is not None]


def _desk(air: FreshAir, parts: Sequence[Stage]) -> tuple[str, float, float]:
    first, end = begin(air), result(air)
    page, depth = _DESK
    most = depth / max(reach(air.total, [part.size for part in parts]), 1e-9)

    def laid(width: float, scale: float, spare: float = 0.0) -> Stream:
        def room(index: int, size: float) -> float:
            labels = [parts[index].label, *_states(parts[index : index + 1])]
            widest = max(label.breadth(max(width, size)) for label in labels)
            return _BEND + max(size, widest) + _GAP + spare

        lead = first.breadth(width) + _GAP - _BEND + spare
        tail = _BEND + end.breadth(_RESULT_WIDTH)
        sizes = [part.size for part in parts]
        return stream(air.total, sizes, scale=scale, lead=lead, tail=tail, bend=_BEND, drop=_DROP, room=room)

    def fits(width: float) -> float:
        return best_scale(lambda scale: laid(width, scale).end <= page, most=most)

    tries = [(fits(width), width) for width in _LABEL_WIDTHS]
    scale, width = next((found for found in tries if found[0] >= 0.85 * most), max(tries))
    spare = max(0.0, page - laid(width, scale).end) / (len(parts) + 1)
    shape = laid(width, scale, spare)
    top = max(label.height(width) for label in [first, end, *_states(parts)]) + 10.0
    below = top + shape.depth + 4.0

    def place(along: float, across: float) -> tuple[float, float]:
        return along, top + across

    out = [_bands(shape, parts, place, mirrored=False, stub=end.breadth(_RESULT_WIDTH)), _above(first, 0.0, top, width)]
    foot_at = below
    for part, drawn in zip(parts, shape.parts, strict=True):
        set_in = max(width, drawn.far - drawn.near)
        out.append(part.label.drawn(drawn.near, below, width=set_in))
        foot_at = max(foot_at, below + part.label.height(set_in))
        if part.after is not None:
            out.append(_above(part.after, drawn.near, top, set_in))
    out.append(_above(end, shape.end - end.breadth(_RESULT_WIDTH), top, _RESULT_WIDTH))
    return "".join([*out, _note(foot(air), foot_at + 26.0)]), max(page, shape.end), foot_at + 34.0


def _above(label: Label, x: float, top: float, width: float) -> str:
    """A label whose last line stands just above the ribbon."""
    return label.drawn(x, top - 10.0 - label.height(width), width=width)


def _note(text: str, y: float) -> str:
    return f'<text class="quiet" x="0" y="{y:.1f}" font-size="{_NOTE}" font-weight="500">{safe(text)}</text>'


def _phone(air: FreshAir, parts: Sequence[Stage]) -> tuple[str, float, float]:
    first, end = begin(air), result(air)
    page, depth = _PHONE
    sizes = [part.size for part in parts]

    def laid(scale: float) -> Stream:
        column = page - _text_at(scale)

        def room(index: int, size: float) -> float:
            after = sum(label.height(column) + _CLOSE for label in _states(parts[index : index + 1]))
            return _BEND + max(size, parts[index].label.height(column)) + _CLOSE + after

        lead = first.height(column) + _CLOSE
        tail = end.height(column)
        return stream(air.total, sizes, scale=scale, lead=lead, tail=tail, bend=_BEND, drop=_DROP, room=room)

    def _text_at(scale: float) -> float:
        flat = stream(air.total, sizes, scale=scale, lead=0, tail=0, bend=_BEND, drop=_DROP, room=lambda _, size: size)
        return flat.depth + 10.0

    scale = depth / max(reach(air.total, sizes), 1e-9)
    x = _text_at(scale)
    column, shape = page - x, laid(scale)
    out = [
        _bands(shape, parts, lambda along, across: (across + 1.0, along + 4.0), mirrored=True, stub=end.height(column)),
        first.drawn(x, 0.0, width=column),
    ]
    for index, (part, drawn) in enumerate(zip(parts, shape.parts, strict=True)):
        size = drawn.far - drawn.near
        out.append(part.label.drawn(x, drawn.near + max(min(size, 20.0) / 2 - 7.0, -2.0), width=column))
        if part.after is not None:
            until = shape.parts[index + 1].begin if index + 1 < len(parts) else shape.end - end.height(column)
            out.append(part.after.drawn(x, until - part.after.height(column) - 8.0, width=column))
    out.append(end.drawn(x, shape.end - end.height(column), width=column))
    notes = wrapped(foot(air), width=page, size=_NOTE)
    under = shape.end + 34.0
    lines = [_note(line, under + number * _NOTE * 1.3) for number, line in enumerate(notes)]
    return "".join([*out, *lines]), page, under + len(notes) * _NOTE * 1.3


def _bands(shape: Stream, parts: Sequence[Stage], place: Place, *, mirrored: bool, stub: float) -> str:
    """The stream, what leaves and joins it, the exchanger, the line where money begins, and the end."""

    def path(steps: Sequence[Step]) -> str:
        said = []
        for number, step in enumerate(steps):
            if isinstance(step, Curve):
                x, y = place(*step.to)
                said.append(f"A{step.radius:.2f} {step.radius:.2f} 0 0 {int(step.left == mirrored)} {x:.2f} {y:.2f}")
            else:
                x, y = place(*step)
                said.append(f"{'L' if number else 'M'}{x:.2f} {y:.2f}")
        return f"{' '.join(said)}Z"

    def box(begin_at: float, end_at: float, low: float, high: float) -> str:
        return path([(begin_at, low), (end_at, low), (end_at, high), (begin_at, high)])

    def line(one: tuple[float, float], other: tuple[float, float], style: str) -> str:
        (x1, y1), (x2, y2) = place(*one), place(*other)
        return f'<line x1="{x1:.1f}" y1="{y1:.1f}" x2="{x2:.1f}" y2="{y2:.1f}" {style}/>'

    out = []
    bounds = [0.0, *(part.start for part in shape.parts), shape.end]
    levels = [shape.level, *(part.level for part in shape.parts)]
    colours = ["air" if parts and parts[0].heat_side else "kept", *(part.stream for part in parts)]
    for low, high, level, colour in zip(bounds, bounds[1:], levels, colours, strict=False):
        if level > 0:
            out.append(f'<path {surface(colour)} d="{box(low, high + _OVERLAP, 0.0, level)}"/>')
    for part, drawn in zip(parts, shape.parts, strict=True):
        if drawn.fed:
            out.append(f'<path {surface(part.meaning)} d="{path(drawn.fed)}"/>')
            if part.size > 0:
                veil, colour = f"veil-{len(out)}", "air" if part.heat_side and not part.exchanger else "kept"
                reach = place(drawn.start, 0.0), place(drawn.start + _VEIL, 0.0)
                out.append(f'{fade(veil, colour, *reach)}<path fill="url(#{veil})" d="{path(drawn.fed)}"/>')
        if drawn.unfed:
            out.append(_ghost(path(drawn.unfed), part.meaning))
    final = levels[-1]
    if min(levels) < 0:
        gone = next(at for at, level in zip(bounds, levels, strict=False) if level < 0)
        out.append(line((gone, 0.0), (shape.end, 0.0), 'class="ink-line" stroke-width="1.2"'))
    if final < 0:
        out.append(_ghost(box(shape.end - stub, shape.end, 0.0, -final), "electricity"))
    else:
        out.append(line((shape.end, -4.0), (shape.end, final + 4.0), 'class="ink-line" stroke-width="2.5"'))
    for part, drawn, before in zip(parts, shape.parts, levels, strict=False):
        if part.exchanger:
            out.append(_exchanger(drawn.start, max(before, 0.0), place))
    money = next((drawn.begin for part, drawn in zip(parts, shape.parts, strict=True) if part.money), None)
    if money is not None:
        style = 'class="ink-line" stroke-width="1.2" stroke-dasharray="2 4"'
        out.append(line((money - 2.0, -6.0), (money - 2.0, shape.depth), style))
    return "".join(out)


def _ghost(path: str, meaning: str) -> str:
    """A part that nothing feeds: outlined, its surface faint."""
    faint = f'<path {surface(meaning)} fill-opacity=".4" d="{path}"/>'
    return f'{faint}<path class="{meaning}-line" stroke-width="1.4" stroke-dasharray="4 3" d="{path}"/>'


def _exchanger(along: float, level: float, place: Place) -> str:
    """A row of crossed plates across the stream."""
    half, low, high = 6.0, -7.0, level + 7.0
    count = max(1, round((high - low) / (2 * half)))
    step = (high - low) / count
    corners = [place(along - half, low), place(along + half, high)]
    (x1, y1), (x2, y2) = (min(corners), max(corners))
    size = f'x="{x1:.1f}" y="{y1:.1f}" width="{x2 - x1:.1f}" height="{y2 - y1:.1f}"'
    out = [f'<rect class="ground" {size}/>', f'<rect class="ink-line" {size} stroke-width="1.3"/>']
    crosses = []
    for number in range(count):
        near, far = low + number * step, low + (number + 1) * step
        for a, b in (((along - half, near), (along + half, far)), ((along + half, near), (along - half, far))):
            (ax, ay), (bx, by) = place(*a), place(*b)
            crosses.append(f"M{ax:.1f} {ay:.1f}L{bx:.1f} {by:.1f}")
    return "".join([*out, f'<path class="ink-line" stroke-width="1" d="{"".join(crosses)}"/>'])
