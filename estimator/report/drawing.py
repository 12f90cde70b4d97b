"""How does a picture become SVG text that looks the same in a browser, in a document and on paper?

A picture is one self-contained SVG: colours from the palette as plain CSS classes, three surfaces as patterns, letters
from an embedded cut of the sans, whose widths are known here so that labels can be set without colliding.
"""

from __future__ import annotations

import base64
import json
import re
from dataclasses import dataclass
from functools import cache, lru_cache
from html import escape
from importlib.resources import files
from typing import Literal
from zlib import crc32

from estimator.report.palette import DARK, LIGHT, PALETTES, SANS_STACK, SURFACES, Palette, Scheme

Look = Scheme | Literal["auto"]
"""auto: light or dark as the page around the picture is."""

Weight = Literal[500, 700]

_PER_EM = 1000.0
_UNKNOWN_WIDTH = 640.0  # letters outside the embedded cut fall to a system font; most are narrower
_NOT_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_LINE_HEIGHT = 1.25
_FONTS = files("estimator.report") / "fonts"


@cache
def _widths(weight: Weight) -> dict[str, float]:
    table = json.loads((_FONTS / "label_widths.json").read_text(encoding="utf-8"))
    return dict(table[str(weight)])


@cache
def _font_face() -> str:
    data = base64.b64encode((_FONTS / "hanken-grotesk-labels.woff2").read_bytes()).decode()
    return f"@font-face{{font-family:'Hanken Grotesk';font-weight:400 700;src:url(data:font/woff2;base64,{data})}}"


def text_width(text: str, *, size: float, weight: Weight = 500) -> float:
    """Width of a line of text in the picture's sans [px]; kerning is left out, which errs on the wide side."""
    return _ems(text, weight) * size / _PER_EM


@lru_cache(maxsize=4096)  # the same words stand in a picture however its figures move
def _ems(text: str, weight: Weight) -> float:
    table = _widths(weight)
    return sum(table.get(letter, _UNKNOWN_WIDTH) for letter in text.replace("\u00a0", " "))


def wrapped(text: str, *, width: float, size: float, weight: Weight = 500) -> list[str]:
    """The text in lines no wider than `width` [px]; a single longer word stands alone."""
    lines: list[str] = []
    for word in text.split(" "):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, size=size, weight=weight) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


@dataclass(frozen=True, slots=True)
class Label:
    """A figure above its words: the bold line, then plain ones."""

    figure: str
    words: str
    size: float = 15.0
    colour: str = "ink"

    def lines(self, width: float) -> list[tuple[str, float, Weight, str]]:
        """Each line with its size, weight and colour class."""
        bold: Weight = 700
        plain: Weight = 500
        small = min(self.size, 14.0)
        head = wrapped(self.figure, width=width, size=self.size, weight=bold)
        body = wrapped(self.words, width=width, size=small) if self.words else []
        return [(line, self.size, bold, self.colour) for line in head] + [
            (line, small, plain, "quiet") for line in body
        ]

    def height(self, width: float) -> float:
        """Height when set in `width` [px]."""
        return sum(size * _LINE_HEIGHT for _, size, _, _ in self.lines(width))

    def breadth(self, width: float) -> float:
        """Width of the longest line when set in `width` [px]."""
        return max(text_width(line, size=size, weight=weight) for line, size, weight, _ in self.lines(width))

    def drawn(self, x: float, y: float, *, width: float) -> str:
        """SVG of the label with its upper left corner at x, y."""
        parts = []
        for line, size, weight, colour in self.lines(width):
            y += size * _LINE_HEIGHT
            parts.append(
                f'<text class="{colour}" x="{x:.1f}" y="{y - size * 0.28:.1f}" font-size="{size:g}" '
                f'font-weight="{weight}">{safe(line)}</text>'
            )
        return "".join(parts)


def safe(text: str) -> str:
    """Text that cannot become markup, without the characters XML forbids."""
    return escape(_NOT_XML.sub("", text), quote=True)


_PATTERNS = {
    "dotted": '<circle class="over" cx="3" cy="3" r="1"/>',
    "hatched": '<rect class="over" width="2.2" height="6"/>',
    "barred": '<rect class="over" width="6" height="1.6"/>',
}


def _pattern(meaning: str) -> str:
    surface = SURFACES[meaning]
    turn = ' patternTransform="rotate(45)"' if surface == "hatched" else ""
    return (
        f'<pattern id="{meaning}" width="6" height="6" patternUnits="userSpaceOnUse"{turn}>'
        f'<rect class="{meaning}" width="6" height="6"/>{_PATTERNS[surface]}</pattern>'
    )


def _rules(palette: Palette, within: str) -> str:
    names = ("ink", "quiet", "air", "kept", "lost", "electricity", "upkeep", "ground", "raised", "rule")
    rules = [f".{name}{{fill:{getattr(palette, name)}}}" for name in names]
    rules += [f".{name}-line{{stroke:{getattr(palette, name)};fill:none}}" for name in names]
    rules += [f".{name}-stop{{stop-color:{getattr(palette, name)}}}" for name in ("air", "kept")]
    rules += [f".over{{fill:{palette.ground};fill-opacity:.45}}"]
    return "".join(f"#{within} {rule}" for rule in rules)


def stylesheet(look: Look, *, within: str) -> str:
    """Colour classes for one scheme, or for the one of the page around the picture, in the element of that id."""
    if look != "auto":
        return _rules(PALETTES[look], within)
    return f"{_rules(LIGHT, within)}@media (prefers-color-scheme:dark){{{_rules(DARK, within)}}}"


def surface(meaning: str) -> str:
    """Attribute that fills a shape with a meaning's colour and surface."""
    return f'class="{meaning}"' if SURFACES[meaning] == "plain" else f'fill="url(#{meaning})"'


def fade(name: str, meaning: str, begin: tuple[float, float], end: tuple[float, float]) -> str:
    """A veil of one meaning's colour between two points, to be filled with as url(#name)."""
    (x1, y1), (x2, y2) = begin, end
    return (
        f'<linearGradient id="{name}" gradientUnits="userSpaceOnUse" '
        f'x1="{x1:.1f}" y1="{y1:.1f}" x2="{x2:.1f}" y2="{y2:.1f}">'
        f'<stop offset="0" class="{meaning}-stop"/><stop offset="1" class="{meaning}-stop" stop-opacity="0"/>'
        "</linearGradient>"
    )


def document(body: str, *, width: float, height: float, title: str, words: str, look: Look, embed_font: bool) -> str:
    """A whole SVG document, named and described for those who do not see it."""
    patterns = "".join(_pattern(meaning) for meaning, kind in SURFACES.items() if kind != "plain")
    key = f"p{crc32(f'{look}{words}{width}'.encode()):08x}"  # so that several pictures can stand in one page
    face = _font_face() if embed_font else ""
    inner = f'<title id="name">{safe(title)}</title><desc id="words">{safe(words)}</desc><defs>{patterns}</defs>{body}'
    inner = re.sub(r'( id="|url\(#)', rf"\g<1>{key}-", inner)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" id="{key}" viewBox="0 0 {width:.0f} {height:.0f}" '
        f'width="{width:.0f}" height="{height:.0f}" role="img" aria-labelledby="{key}-name {key}-words" '
        f'font-family="{escape(SANS_STACK)}"><style>{face}{stylesheet(look, within=key)}</style>{inner}</svg>'
    )
