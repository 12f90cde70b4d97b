"""Which tables does the installer get: points, site figures, frost, ways of the air, and what was measured?"""

from __future__ import annotations

import math

from estimator.air_paths import AirPaths
from estimator.as_commissioned import AsCommissioned, Point, RoomMeasured
from estimator.report import cash, figures
from estimator.report.fit_words import step_change, step_name
from estimator.report.fitting import Fitting
from estimator.report.installed_quantities import INSTALLED
from estimator.report.rows import Rows

_DECIMALS = {
    "°C": 1, "%": 1, "h": 0, "kWh": 1, "l/h": 2, "l": 1, "W": 0, "A": 1, "m/s": 1, "m³/h": 0, "dB(A)": 0, "": 2,
    "ft/min": 0, "cfm": 0, "°F": 1, "mm²": 0, "in²": 1,
}  # fmt: skip
_NOT_KNOWN = "not known: ask"
_ROUNDING = 1e-9


def site_figures(found: Fitting) -> tuple[Rows, Rows]:
    """Every figure of the unit as fitted: heat, air and frost; then water, power, ducts and sound."""
    rows = tuple(
        (figures.retold(f"{item.meaning[:1].upper()}{item.meaning[1:]}"), _value(item.read(found.sheet), item.unit))
        for item in INSTALLED
    )
    first = next(place for place, item in enumerate(INSTALLED) if item.key == "condensate_peak")
    return (
        Rows(caption="Heat, air and frost", head=("Figure", "Value"), rows=rows[:first]),
        Rows(caption="Water, power, ducts and sound", head=("Figure", "Value"), rows=rows[first:]),
    )


def _value(value: float, unit: str) -> str:
    return figures.joined(_cell(value, unit), figures.unit_shown(unit)) if math.isfinite(value) else _NOT_KNOWN


def _cell(value: float, unit: str) -> str:
    """A declared figure in the reader's units, under a heading that says them."""
    return figures.fixed(float(figures.converted(value, unit)), decimals=_DECIMALS[figures.unit_shown(unit)])


def _head(words: str, unit: str) -> str:
    return f"{words}, {figures.unit_shown(unit)}"


def points(found: Fitting) -> Rows:
    """Where each point between certificate and house went."""
    return Rows(
        caption="Where each point went",
        head=("Counted", "Comes back", "Points", "Heating, kWh a year", "Heaters, kWh a year"),
        rows=tuple(
            (
                f"{step_name(step)[:1].upper()}{step_name(step)[1:]}",
                figures.joined(figures.fixed(100.0 * step.efficiency, decimals=1), "%"),
                step_change(step) or "none",
                "on the bench" if step.heating is None else figures.fixed(step.heating, decimals=0),
                "on the bench" if step.heaters is None else figures.fixed(step.heaters, decimals=0),
            )
            for step in found.sheet.steps
        ),
        note="Heat of the balanced air that comes back over the hours with heat, heaters taken off.",
    )


def changes(found: Fitting) -> Rows:
    """What a change to the ducts is worth."""
    return Rows(
        caption="What the ducts are worth a year",
        head=("Change", "Heat, kWh", "Money"),
        rows=tuple(
            (
                figures.retold(change.worth.words),
                figures.fixed(change.worth.heat, decimals=0),
                _money(change.low, change.high, found.currency),
            )
            for change in found.changes
        ),
        note="Saved, negative where it costs; the pre-heater's electricity is in the money. Each is the "
        "difference of two full estimates.",
    )


def _money(low: float, high: float, currency: str) -> str:
    least, most = (cash.money(value, currency) for value in cash.rounded_range(low, high))
    return least if least == most else f"{least} to {most}"


def frost_ways(found: Fitting) -> Rows:
    """Each way of frost protection in this home, against none."""
    return Rows(
        caption="Frost protection, each way against none",
        head=("Way", "Keeps", "Acts, hours a year", "Electricity, kWh", "Worst hour, kWh", "Heating, kWh", "Money"),
        rows=tuple(
            (
                f"{way.name[:1].upper()}{way.name[1:]}{', as set here' if way.chosen else ''}",
                "nothing" if way.set_point is None else figures.temperature(way.set_point),
                figures.fixed(way.hours, decimals=0),
                figures.fixed(way.electricity, decimals=1),
                figures.fixed(way.coldest, decimals=2),
                figures.fixed(way.heat, decimals=1),
                cash.money(way.money, found.currency),
            )
            for way in found.sheet.frost.ways
        ),
        note="More a year, at the home's own leakage. A pre-heater keeps the intake, throttling the exhaust. "
        "Throttling makes the flows uneven: never beside an open flue.",
    )


def ways(paths: AirPaths) -> Rows:
    """Each line from a fed room through its doors to a room drawn from."""
    return Rows(
        caption="Air transfer paths",
        head=("From", "Through", "To", *_flow_heads(paths)),
        rows=tuple(
            (
                line.rooms[0],
                ", ".join(line.rooms[1:-1]) or "one door",
                line.rooms[-1],
                *_flows(paths, line.flow, line.flow * paths.boost),
            )
            for line in paths.lines
        ),
        words=frozenset({0, 1, 2}),
    )


def doors(paths: AirPaths) -> Rows:
    """Each door on the way, with the free area under it."""
    return Rows(
        caption="Doors on the way",
        head=("Door between", *_flow_heads(paths), _head("Free area", "mm²"), _head("Needed", "mm²"), "Pressure, Pa"),
        rows=tuple(
            (
                " and ".join(door.between),
                *_flows(paths, door.flow, door.flow_boost),
                "fire door: none" if door.area is None else _cell(door.area, "mm²"),
                figures.number(float(figures.converted(door.area_needed, "mm²"))),
                "never cut it" if door.pressure is None else figures.fixed(door.pressure, decimals=1),
            )
            for door in paths.doors
        ),
        note="Free area under the door; needed to stay below 2 Pa on boost (common practice, no source).",
    )


def rooms(paths: AirPaths) -> Rows:
    """Each room with what is fed into it and drawn from it, and the sums."""
    every = [
        (room.name, (room.fed, room.drawn), (room.fed_boost, room.drawn_boost), room.branches) for room in paths.rooms
    ]
    sums = (paths.fed, paths.drawn)
    every.append(("All rooms", sums, (paths.fed * paths.boost, paths.drawn * paths.boost), paths.branches))
    return Rows(
        caption="Rooms",
        head=(
            "Room", _head("Fed", "m³/h"), _head("Drawn", "m³/h"),
            *(("Fed on boost", "Drawn on boost") if _boosts(paths) else ()),
            "Branches",
        ),
        rows=tuple(
            (
                name,
                *(_cell(flow, "m³/h") for flow in (*ordinary, *(boosted if _boosts(paths) else ()))),
                str(branches),
            )
            for name, ordinary, boosted, branches in every
        ),
    )  # fmt: skip


def _boosts(paths: AirPaths) -> bool:
    """Whether boost moves more than ordinary use, so that its flows are worth columns of their own."""
    return paths.boost > 1.0 + _ROUNDING


def _flow_heads(paths: AirPaths) -> tuple[str, ...]:
    return tuple(_head(words, "m³/h") for words in (("Ordinary", "Boost") if _boosts(paths) else ("Air",)))


def _flows(paths: AirPaths, ordinary: float, boosted: float) -> tuple[str, ...]:
    return tuple(_cell(flow, "m³/h") for flow in ((ordinary, boosted) if _boosts(paths) else (ordinary,)))


def measured(found: AsCommissioned, currency: str) -> Rows:
    """What was promised, what was measured, what the difference is worth a year."""
    return Rows(
        caption="Promised and measured",
        head=(
            "Point",
            "Promised",
            "Measured",
            "Heat, kWh",
            "Electricity, kWh",
            _head("Fresh air", "m³/h"),
            "Worth a year",
        ),
        rows=tuple(_measured_row(point, currency) for point in (*found.points, found.whole)),
        note="Saved against the promise, negative where more is needed; one measurement after the other, each a full "
        "estimate, so that they add up.",
    )


def _measured_row(point: Point, currency: str) -> tuple[str, ...]:
    unit = f", {figures.unit_shown(point.unit)}" if point.unit else ""
    values = (
        "" if math.isnan(value) else _measured_cell(value, point.unit) for value in (point.promised, point.measured)
    )
    return (
        f"{point.name[:1].upper()}{point.name[1:]}{unit}",
        *values,
        figures.fixed(point.heat, decimals=0),
        figures.fixed(point.electricity, decimals=0),
        figures.fixed(float(figures.converted(point.air, "m³/h")), decimals=1),
        cash.money(point.money, currency),
    )


def _measured_cell(value: float, unit: str) -> str:
    """As measured; small numbers of the reader's units keep three figures."""
    shown = float(figures.converted(value, unit))
    return figures.fixed(value, decimals=1) if shown == value else figures.number(shown)


def measured_rooms(found: AsCommissioned) -> Rows:
    """Each room as planned and as measured, the difference in words."""
    return Rows(
        caption="Room by room",
        head=("Room", "Side", _head("Planned", "m³/h"), _head("Measured", "m³/h"), "Difference"),
        rows=tuple(
            (
                room.name,
                room.side,
                "not planned" if room.planned is None else _cell(room.planned, "m³/h"),
                _cell(room.measured, "m³/h"),
                _difference(room),
            )
            for room in found.rooms
        ),
        words=frozenset({0, 1}),
    )


def _difference(room: RoomMeasured) -> str:
    if room.planned is None:
        return "no such room in the plan"
    more = room.measured - room.planned
    if abs(more) < 0.5:
        return "as planned"
    return f"{_value(abs(more), 'm³/h')} {'more' if more > 0.0 else 'less'} than planned"
