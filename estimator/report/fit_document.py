"""How are units as fitted, ways of the air, site list and commissioning written in the JSON document?"""

from __future__ import annotations

import dataclasses
import math
from typing import Any

from estimator.as_commissioned import AsCommissioned, Point, as_commissioned
from estimator.compare import Comparison, Result
from estimator.frost_ways import FrostWay
from estimator.line_costs import more_air
from estimator.report.fit_words import line_words
from estimator.report.fitting import Change, Fitting, Priced, fitting, with_exchanger
from estimator.report.installed_quantities import INSTALLED
from estimator.report.site_list import SOURCE, site_list


def fit_document(result: Result, ends: tuple[Result, Result]) -> dict[str, Any]:
    """Every option with an exchanger as fitted, what was measured on site, and what is looked at there.

    `ends` are the same case at the low and the high end of its leakage. What is not known is null.
    """
    found = {name: fitting(result, ends, name) for name in with_exchanger(result.estimate)}
    measured = as_commissioned(result)
    return {
        "fitted": {name: _fitted(each) for name, each in found.items()},
        "commissioned": None if measured is None else _commissioned(measured),
        "site_list": {"source": SOURCE, "rows": [dataclasses.asdict(look) for look in site_list()]},
    }


def _finite(value: float | None) -> float | None:
    return value if value is not None and math.isfinite(value) else None


def _figure(value: float | None, unit: str) -> dict[str, Any]:
    return {"value": _finite(value), "unit": unit}


def _fitted(found: Fitting) -> dict[str, Any]:
    sheet = found.sheet
    return {
        "figures": {item.key: _figure(item.read(sheet), item.unit) for item in INSTALLED},
        "spur_suffices": sheet.spur_suffices,
        "outside_certificate": list(sheet.outside_certificate),
        "points": [
            {
                "step": step.name,
                "words": step.words,
                "efficiency": _figure(100.0 * step.efficiency, "%"),
                "lost": _figure(100.0 * step.lost, "points"),
                "heating": _figure(step.heating, "kWh"),
                "heaters": _figure(step.heaters, "kWh"),
            }
            for step in sheet.steps
        ],
        "lines": {line.cost.path: _line(found, line) for line in found.lines},
        "changes": [_change(change) for change in found.changes],
        "frost": {
            "needed": sheet.frost.needed,
            "ways": {way.name: _way(way) for way in sheet.frost.ways},
        },
        "air_paths": _paths(found),
    }


def _line(found: Fitting, line: Priced) -> dict[str, Any]:
    """What a line costs a year; null money range where it costs nothing by itself."""
    cost = line.cost
    return {
        "question": cost.question,
        "against": cost.against,
        "heat": _figure(cost.heat, "kWh"),
        "electricity": _figure(cost.electricity, "kWh"),
        "money": {"low": line.low, "value": cost.money, "high": line.high, "unit": "money"},
        "fresh_air": _figure(more_air(cost), "m³/h"),
        "words": line_words(found, cost.path),
    }


def _change(change: Change) -> dict[str, Any]:
    worth = change.worth
    return {
        "change": worth.name,
        "words": worth.words,
        "heat": _figure(worth.heat, "kWh"),
        "electricity": _figure(worth.electricity, "kWh"),
        "money": {"low": change.low, "value": worth.money, "high": change.high, "unit": "money"},
    }


def _way(way: FrostWay) -> dict[str, Any]:
    return {
        "chosen": way.chosen,
        "set_point": _figure(way.set_point, "°C"),
        "hours": _figure(way.hours, "h"),
        "electricity": _figure(way.electricity, "kWh"),
        "coldest_hour": _figure(way.coldest, "kWh"),
        "heat": _figure(way.heat, "kWh"),
        "money": _figure(way.money, "money"),
    }


def _paths(found: Fitting) -> dict[str, Any] | None:
    """Flows m³/h, areas mm², pressures Pa; proposed says that nobody has entered the rooms yet."""
    paths = found.paths
    if paths is None:
        return None
    return {
        "proposed": found.proposed,
        "lines": [
            {"rooms": list(line.rooms), "flow": line.flow, "boost": line.flow * paths.boost} for line in paths.lines
        ],
        "doors": [dataclasses.asdict(door) for door in paths.doors],
        "rooms": [dataclasses.asdict(room) for room in paths.rooms],
        "fed": _figure(paths.fed, "m³/h"),
        "drawn": _figure(paths.drawn, "m³/h"),
        "boost": _figure(paths.boost, "of ordinary use"),
        "in_hand": _figure(paths.in_hand, "m³/h"),
        "branches": paths.branches,
        "words": list(paths.words),
    }


def _commissioned(found: AsCommissioned) -> dict[str, Any]:
    given = found.result.estimate.case.commissioned
    return {
        "option": found.option,
        "date": given.date,
        "instrument": given.instrument,
        "leakage_date": given.leakage_date,
        "points": [_point(point) for point in found.points],
        "whole": _point(found.whole),
        "rooms": [dataclasses.asdict(room) for room in found.rooms],
        "effective_efficiency": {
            "promised": 100.0 * found.efficiency[0], "measured": 100.0 * found.efficiency[1], "unit": "%",
        },
        "net_saving": {"promised": _net(found.promised), "measured": _net(found.measured), "unit": "money"},
    }  # fmt: skip


def _point(point: Point) -> dict[str, Any]:
    return {
        "name": point.name,
        "promised": _figure(point.promised, point.unit),
        "measured": _figure(point.measured, point.unit),
        "heat": _figure(point.heat, "kWh"),
        "electricity": _figure(point.electricity, "kWh"),
        "fresh_air": _figure(point.air, "m³/h"),
        "money": _figure(point.money, "money"),
    }


def _net(found: Comparison | None) -> float | None:
    return None if found is None else found.net_saving
