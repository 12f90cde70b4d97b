"""Which figures does an installer get of the unit as fitted, with which unit and meaning?"""

from __future__ import annotations

import math
from collections.abc import Callable

from estimator.installed import Installed
from estimator.report.quantities import Reported
from estimator.units import to_m3h, to_percent


def _of(path: str) -> Callable[[Installed], float]:
    """A figure at a dotted path of the installer's figures; not a number where it is not known."""

    def read(found: Installed) -> float:
        value: object = found
        for key in path.split("."):
            value = getattr(value, key)
        return math.nan if value is None else float(value)  # type: ignore[arg-type]

    return read


INSTALLED: tuple[Reported, ...] = (
    Reported("certificate_efficiency", "%", "ratio as printed on the certificate", lambda i: _points(i, 0)),
    Reported("installed_efficiency", "%", "heat kept of the balanced air, as fitted here", lambda i: _points(i, -1)),
    Reported("outdoors_coldest_day", "°C", "outdoor air, mean of the coldest day", _of("supply_air.outdoors_day")),
    Reported("supply_coldest_day", "°C", "supply air, mean of the coldest day", _of("supply_air.supply_day")),
    Reported("outdoors_coldest_hour", "°C", "outdoor air in the coldest hour", _of("supply_air.outdoors_hour")),
    Reported("supply_coldest_hour", "°C", "supply air in the coldest hour", _of("supply_air.supply_hour")),
    Reported(
        "bedroom_wall_ventilator", "°C", "air entering a bedroom on the coldest night through a wall ventilator",
        _of("supply_air.outdoors_night"),
    ),
    Reported(
        "bedroom_unit", "°C", "air entering a bedroom on the coldest night through the unit",
        _of("supply_air.supply_night"),
    ),
    Reported("frost_hours", "h", "hours a year with unwarmed air below −3 °C at the exchanger", _of("frost.hours")),
    Reported("frost_entering", "°C", "unwarmed air at the exchanger in the coldest hour", _of("frost.entering")),
    Reported("frost_acting", "h", "hours a year in which the frost protection acts", _of("frost.chosen.hours")),
    Reported("frost_electricity", "kWh", "electricity of the pre-heater a year", _of("frost.chosen.electricity")),
    Reported("frost_coldest_hour", "kWh", "pre-heater in its worst hour", _of("frost.chosen.coldest")),
    Reported("condensate_peak", "l/h", "water from the exchanger in its wettest hour", _of("drain.peak")),
    Reported("condensate_year", "l", "water from the exchanger in a year", _of("drain.yearly")),
    Reported("condensate_bound", "l/h", "most water for the drain, moist rooms all winter", _of("drain.bound")),
    Reported("electrical_peak", "W", "highest electrical load, fans, controls and heaters", _of("electrical_peak")),
    Reported("current_peak", "A", "highest current at 230 V; 13 A is the rating often seen", _of("current_peak")),
    Reported("velocity", "m/s", "velocity in the main ducts in ordinary use", _of("velocity")),
    Reported("velocity_boost", "m/s", "velocity in the main ducts at the highest flow", _of("velocity_boost")),
    Reported("in_hand", "m³/h", "what the unit moves beyond the highest flow set", lambda i: float(to_m3h(i.in_hand))),
    Reported("bypass_hours", "h", "hours a year for the summer bypass: no heat, cooler outdoors", _of("bypass_hours")),
    Reported(
        "humidity_winter", "%", "mean relative humidity indoors in hours with heat", lambda i: to_percent(i.humidity)
    ),
    Reported(
        "humidity_winter_baseline", "%", "mean relative humidity indoors with the baseline instead",
        lambda i: to_percent(i.humidity_baseline),
    ),
    Reported("sound", "dB(A)", "sound power level from the casing, as declared", _of("sound")),
)  # fmt: skip


def _points(found: Installed, place: int) -> float:
    return float(to_percent(found.steps[place].efficiency))
