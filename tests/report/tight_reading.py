"""What can a person read off a picture over leakage: figures on its axes, the length of its bar, the words in it?"""

from __future__ import annotations

import re
from xml.etree import ElementTree

import numpy as np

from estimator.report.drawing import text_width
from estimator.units import Array

SVG = "{http://www.w3.org/2000/svg}"

Corners = tuple[float, float, float, float]


class Read:
    """What a person can read off a picture."""

    def __init__(self, svg: str) -> None:
        self.root = ElementTree.fromstring(svg)
        self.width, self.height = map(float, self.root.attrib["viewBox"].split()[2:])
        self.texts = [(text.text or "", _box(text), text.attrib) for text in self.root.iter(f"{SVG}text")]
        bars = [rect for rect in self.root.iter(f"{SVG}rect") if rect.get("class") == "raised"]
        self.shade = tuple(float(bars[0].attrib[name]) for name in ("x", "width"))
        self.axis = max(float(line.attrib["y1"]) for line in self.lines("ink-line") if level(line))

    def lines(self, colour: str) -> list[ElementTree.Element]:
        return [line for line in self.root.iter(f"{SVG}line") if line.get("class") == colour]

    def rows(self) -> list[list[tuple[float, float]]]:
        """Below the axis: place across and figure, one row after the other."""
        rows: dict[float, list[tuple[float, float]]] = {}
        for words, (left, top, right, _), look in self.texts:
            if top > self.axis and look["class"] == "ink":
                rows.setdefault(top, []).append((0.5 * (left + right), number(words)))
        return [sorted(rows[top]) for top in sorted(rows)]

    def levels(self) -> list[tuple[float, float]]:
        """Left of the curves: height and figure."""
        return [
            (float(look["y"]) - 0.35 * float(look["font-size"]), number(words))
            for words, (_, _, _, bottom), look in self.texts
            if look["class"] == "quiet" and bottom < self.axis and re.fullmatch(r"[−\d.,]+%?", words)
        ]

    def curve(self, colour: str) -> Array:
        """Leakage and value at every corner of the curves of one colour, by the figures of the axes."""
        across = np.array(self.rows()[-3])
        up = np.array(self.levels())
        places = np.array(
            [
                [float(part) for part in pair.split()]
                for path in self.root.iter(f"{SVG}path")
                if path.get("class") == f"{colour}-line"
                for pair in path.attrib["d"].lstrip("M").split("L")
            ]
        ).reshape(-1, 2)
        leaks = np.exp(np.polyval(np.polyfit(across[:, 0], np.log(across[:, 1]), 1), places[:, 0]))
        values = np.polyval(np.polyfit(up[:, 0], up[:, 1], 1), places[:, 1])
        return np.stack([leaks, values], axis=1)

    def pixel(self) -> tuple[float, float]:
        """By how much leakage (a share of it) and value change over a pixel."""
        (left, low), *_, (right, high) = self.rows()[-3]
        (top, most), *_, (bottom, least) = sorted(self.levels())
        return float(np.log(high / low) / (right - left)), abs((most - least) / (bottom - top))

    def said(self) -> str:
        return " ".join(words for words, _, look in self.texts if look["font-weight"] == "700").replace("\u00a0", " ")


def number(words: str) -> float:
    plain = words.replace("−", "-").replace(",", "")
    return float(plain.rstrip("%")) / (100.0 if plain.endswith("%") else 1.0)


def level(line: ElementTree.Element) -> bool:
    return line.attrib["y1"] == line.attrib["y2"]


def _box(text: ElementTree.Element) -> Corners:
    x, y, size = float(text.attrib["x"]), float(text.attrib["y"]), float(text.attrib["font-size"])
    width = text_width(text.text or "", size=size, weight=700 if text.attrib["font-weight"] == "700" else 500)
    return (x, y - 0.72 * size, x + width, y + 0.2 * size)


def _apart(one: Corners, other: Corners) -> bool:
    beside = one[2] <= other[0] + 0.1 or other[2] <= one[0] + 0.1
    return beside or one[3] <= other[1] + 0.1 or other[3] <= one[1] + 0.1


def assert_readable(svg: str) -> None:
    """All words inside, none on another, no straight line through any, no curve through a name of a curve."""
    read = Read(svg)
    for at, (words, box, _) in enumerate(read.texts):
        assert box[0] >= -0.1, words
        assert box[1] >= -0.1, words
        assert box[2] <= read.width + 0.1, words
        assert box[3] <= read.height + 0.1, words
        for others, other, _ in read.texts[at + 1 :]:
            assert _apart(box, other), (words, others)
        for line in read.root.iter(f"{SVG}line"):
            x1, y1, x2, y2 = (float(line.attrib[name]) for name in ("x1", "y1", "x2", "y2"))
            assert _apart(box, (x1, y1, x2, y2)), (words, line.attrib)
