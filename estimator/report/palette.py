"""Which colours and letters carry which meaning, on screen, in pictures and on paper?

Three meanings, the same everywhere: heat kept (petrol), heat lost (grey), electricity (burnt orange). Each also has a
surface of its own, so that a grey copy tells them apart: kept is plain, lost is dotted, electricity is hatched.
`.streamlit/config.toml` repeats the colours that the page itself needs; a test holds the two equal.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Surface = Literal["plain", "dotted", "hatched", "barred"]
Scheme = Literal["light", "dark"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Palette:
    """One scheme. Colours as #rrggbb."""

    scheme: Scheme
    ground: str  # the paper
    raised: str  # fields, sidebar
    ink: str  # text
    quiet: str  # secondary text
    rule: str  # lines that carry no meaning
    control: str  # what is pressed or chosen; bears white text
    air: str  # fresh air before its fate is known
    kept: str  # heat kept, money saved
    lost: str  # heat lost
    electricity: str  # fans, frost heater and what they cost
    upkeep: str  # filters and service


LIGHT = Palette(
    scheme="light",
    ground="#faf7f0",
    raised="#f0ebdf",
    ink="#15140f",
    quiet="#5b564b",
    rule="#d8d1c1",
    control="#0b5361",
    air="#c9dcdc",
    kept="#0b5361",
    lost="#8d887c",
    electricity="#ae4f10",
    upkeep="#6a6455",
)

DARK = Palette(
    scheme="dark",
    ground="#181714",
    raised="#24221d",
    ink="#f1ede4",
    quiet="#b9b2a4",
    rule="#3d3a33",
    control="#2a7e89",
    air="#2c464a",
    kept="#86ced6",
    lost="#7d786e",
    electricity="#dd8437",
    upkeep="#a39b8a",
)

PALETTES: dict[Scheme, Palette] = {"light": LIGHT, "dark": DARK}

SURFACES: dict[str, Surface] = {
    "air": "plain",
    "kept": "plain",
    "lost": "dotted",
    "electricity": "hatched",
    "upkeep": "barred",
}
"""How each meaning is told apart without colour."""

SERIF = "Newsreader"
SANS = "Hanken Grotesk"
"""Both under the SIL Open Font Licence 1.1, shipped with the estimator; the licences lie beside the files."""

SERIF_STACK = f"'{SERIF}', 'Iowan Old Style', Georgia, 'Liberation Serif', serif"
SANS_STACK = f"'{SANS}', system-ui, 'Segoe UI', 'Liberation Sans', sans-serif"

LEAST_TEXT_CONTRAST = 4.5  # WCAG 2.2, 1.4.3
LEAST_PART_CONTRAST = 3.0  # WCAG 2.2, 1.4.11


@dataclass(frozen=True, slots=True)
class Mark:
    """How one of several options is drawn: stroke and marker differ as well as colour."""

    colour: str  # a field of `Palette`
    dash: Literal["solid", "dash", "dot", "dashdot"]
    symbol: Literal["circle", "square", "diamond", "triangle-up", "cross", "x"]


BASELINE_MARK = Mark("lost", "dash", "square")
OPTION_MARKS = (
    Mark("kept", "solid", "circle"),
    Mark("electricity", "dashdot", "diamond"),
    Mark("ink", "dot", "triangle-up"),
    Mark("upkeep", "dash", "cross"),
    Mark("quiet", "solid", "x"),
)
"""Options in the order they were added; a sixth starts again, and its label on the line tells it apart."""


def _linear(channel: float) -> float:
    return channel / 12.92 if channel <= 0.04045 else ((channel + 0.055) / 1.055) ** 2.4


def luminance(colour: str) -> float:
    """Relative luminance of an sRGB colour, 0 to 1 (WCAG 2.2, definition of relative luminance)."""
    red, green, blue = (_linear(int(colour[start : start + 2], 16) / 255) for start in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours, 1 to 21 (WCAG 2.2, definition of contrast ratio)."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def mixed(colour: str, ground: str, *, opacity: float) -> str:
    """The colour that a half-transparent one gives on a ground."""
    parts = (
        round(opacity * int(colour[at : at + 2], 16) + (1 - opacity) * int(ground[at : at + 2], 16)) for at in (1, 3, 5)
    )
    return "#" + "".join(f"{part:02x}" for part in parts)
