"""How are several points of a certificate written in one line, and what is wrong with such a line?

A point is three numbers with blanks between: flow in m³/h, temperature ratio in %, specific fan power in W/(l/s).
A semicolon stands between points: ``100 88 0.6; 200 84 0.9; 300 79 1.4``.
"""

from __future__ import annotations

from itertools import pairwise
from typing import NamedTuple

from estimator.inputs.faults import shown

EXAMPLE = '"100 88 0.6; 200 84 0.9; 300 79 1.4"'
_FORM = f"Write flow in m³/h, ratio in %, power in W/(l/s), then a semicolon, such as {EXAMPLE}."
_LIMITS = (("flow", "m³/h", 5.0, 3000.0), ("ratio", "%", 1.0, 99.0), ("power", "W/(l/s)", 0.0, 5.0))
_FEWEST = 2


class CertificatePoint(NamedTuple):
    """One point as printed: m³/h, %, W/(l/s)."""

    flow: float
    ratio: float
    power: float


def certificate_points(line: str) -> tuple[CertificatePoint, ...]:
    """The points of a line, flows rising; none for an empty line. Raises ValueError, in words, for what cannot be."""
    if not line.strip():
        return ()
    points = tuple(_point(text.strip()) for text in line.strip().rstrip(";").split(";"))
    if len(points) < _FEWEST:
        raise ValueError("one point alone belongs in effectiveness, reference_flow and fan_power. Give two or more.")
    for before, after in pairwise(points):
        if after.flow <= before.flow:
            raise ValueError(f"{after.flow:g} m³/h does not follow {before.flow:g} m³/h. Put flows in rising order.")
    return points


def _point(text: str) -> CertificatePoint:
    try:
        numbers = [float(part) for part in text.split()]
    except ValueError:
        numbers = []
    if len(numbers) != len(_LIMITS):
        raise ValueError(f"{shown(text)} is no point of a certificate. {_FORM}")
    for number, (name, unit, low, high) in zip(numbers, _LIMITS, strict=True):
        if not low <= number <= high:
            raise ValueError(f"a {name} of {number:g} {unit} cannot be; {low:g} to {high:g} is allowed. Read it again.")
    return CertificatePoint(*numbers)
