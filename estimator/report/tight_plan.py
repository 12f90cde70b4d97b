"""Which curves, borders and levels belong to each picture of tightness, and how far does it reach?"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

import numpy as np

from estimator.report import figures
from estimator.report.leakage_said import bound, leakage
from estimator.report.tight import Against, Tightness
from estimator.sweep import HIGHEST, LOWEST, Threshold
from estimator.units import Array

BEYOND = 2.5
"""Lives; a payback further off is not drawn."""

_DASHES = {"saving": "7 4", "payback": "2 4"}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Curve:
    """One comparison over leakage.

    words: its name, empty where the title says it; note: what is said of it where it cannot be seen;
    pieces: leakage [m³/(h m²)] and value, (n, 2) each, none where nothing can be drawn; front: whether it is the
    comparison that the page is about.
    """

    words: str
    pieces: tuple[Array, ...]
    front: bool
    note: str = ""

    @property
    def colour(self) -> str:
        """Class of line and name."""
        return "kept" if self.front else "quiet"

    @property
    def stroke(self) -> str:
        """How its line differs from the other without colour."""
        return 'stroke-width="3"' if self.front else 'stroke-width="2.2" stroke-dasharray="2.2 3.6"'


@dataclass(frozen=True, slots=True, kw_only=True)
class Border:
    """A border as named on the axis: where [m³/(h m²)], in which words, and whether there is a line at all."""

    at: float
    words: str
    drawn: bool
    dash: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Plan:
    """What one picture shows.

    unit: of its values, in words; say: a value on the axis; reach: lowest and highest value; padded: whether room for
    names is left above and below; level: a value marked from side to side [years]; house: the words on its bar.
    """

    unit: str
    say: Callable[[float], str]
    reach: tuple[float, float]
    curves: tuple[Curve, ...]
    house: str
    borders: tuple[Border, ...] = ()
    padded: bool = True
    level: float | None = None


def plan(found: Tightness, what: str) -> Plan:
    """The picture of one figure of a sweep, by its name there."""
    return _PLANS[what](found)


def border_words(threshold: Threshold, what: str) -> tuple[tuple[float, str], ...]:
    """A border in the one form of four that it takes: where it is named on the axis, and its name there."""
    if threshold.form == "already":
        return ((LOWEST, f"{what}: not even at {bound(LOWEST)}"),)
    if threshold.form == "not before":
        return ((HIGHEST, f"{what}: even at {bound(HIGHEST)}"),)
    holds, named = threshold.holds_at_lowest, []
    for crossing in threshold.crossings:
        named.append((crossing, f"{what} {'up to' if holds else 'from'} {leakage(crossing)}"))
        holds = not holds
    return tuple(named)


def _saving(found: Tightness) -> Plan:
    curves = _both(found, "net_saving")
    borders = (*_borders(found, "saving", "a net saving"), *_payback_border(found))
    return Plan(
        unit=f"{found.currency} a year", say=figures.number, reach=_reach(curves), curves=curves, borders=borders,
        house=_house(found),
    )  # fmt: skip


def _payback(found: Tightness) -> Plan:
    most = BEYOND * found.case.worth.life
    curves = []
    for against, front in _behind_and_before(found):
        pieces = _paid_back(against, most)
        never = "" if pieces else f"not within {figures.years(most)}"
        curves.append(Curve(words=f"against {against.words}", note=never, pieces=pieces, front=front))
    return Plan(
        unit="years", say=figures.number, reach=(0.0, most), curves=tuple(curves), borders=_payback_border(found),
        house=_house(found), padded=False, level=found.case.worth.life,
    )  # fmt: skip


def _heat(found: Tightness) -> Plan:
    curves = _both(found, "heat_saved")
    return Plan(unit="kWh a year", say=figures.number, reach=_reach(curves), curves=curves, house=_house(found))


def _share(found: Tightness) -> Plan:
    curve = found.baseline.sweep.figures
    piece = np.stack([curve.q50, curve.through_exchanger], axis=1)
    only = Curve(words="", pieces=(piece,), front=True)
    return Plan(
        unit="of all fresh air", say=figures.share, reach=(0.0, 1.0), curves=(only,), house=_house(found), padded=False
    )


_PLANS: Mapping[str, Callable[[Tightness], Plan]] = MappingProxyType(
    {"net_saving": _saving, "payback": _payback, "heat_saved": _heat, "through_exchanger": _share}
)


def _behind_and_before(found: Tightness) -> tuple[tuple[Against, bool], tuple[Against, bool]]:
    return (found.today, False), (found.baseline, True)


def _both(found: Tightness, what: str) -> tuple[Curve, ...]:
    return tuple(
        Curve(
            words=f"against {against.words}",
            pieces=(np.stack([against.sweep.figures.q50, getattr(against.sweep.figures, what)], axis=1),),
            front=front,
        )
        for against, front in _behind_and_before(found)
    )


def _reach(curves: tuple[Curve, ...]) -> tuple[float, float]:
    values = np.concatenate([[0.0], *(piece[:, 1] for curve in curves for piece in curve.pieces)])
    low, high = float(values.min()), float(values.max())
    return (low, high) if high > low else (0.0, 1.0)


def _paid_back(against: Against, most: float) -> tuple[Array, ...]:
    """Where the payback is at most so many years: pieces of the sweep, led on to where they reach that.

    The saving, not its inverse, runs evenly between two leakages of the sweep, so the end is where the saving is just
    enough.
    """
    curve = against.sweep.figures
    leaks, years = np.log(curve.q50), curve.payback
    spare = curve.net_saving - max(curve.net_capital, 0.0) / most
    pieces: list[list[tuple[float, float]]] = []
    for at, shown in enumerate((years <= most).tolist()):
        if at and shown != bool(years[at - 1] <= most):
            share = spare[at - 1] / (spare[at - 1] - spare[at])
            edge = (float(np.exp(leaks[at - 1] + share * (leaks[at] - leaks[at - 1]))), most)
            edge = edge if curve.net_capital > 0.0 else (edge[0], 0.0)
            pieces = [*pieces, [edge]] if shown else [*pieces[:-1], [*pieces[-1], edge]]
        if shown:
            pieces = pieces or [[]]
            pieces[-1].append((float(curve.q50[at]), float(years[at])))
    return tuple(np.array(piece) for piece in pieces)


def _borders(found: Tightness, name: str, words: str) -> tuple[Border, ...]:
    threshold: Threshold = getattr(found.baseline.sweep, name)
    drawn = bool(threshold.crossings)
    return tuple(
        Border(at=at, words=said, drawn=drawn, dash=_DASHES[name]) for at, said in border_words(threshold, words)
    )


def _payback_border(found: Tightness) -> tuple[Border, ...]:
    life = figures.years(found.case.worth.life).replace(" ", figures.GAP)  # stays on one line
    return _borders(found, "payback", f"payback within {life}")


def _house(found: Tightness) -> str:
    span = found.span
    return f"this house, {'tested' if span.tested else 'not tested'}: {leakage(span.low)} to {leakage(span.high)}"
