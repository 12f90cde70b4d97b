"""Which entries contradict each other?

Each rule yields what it finds, or nothing where an entry it weighs was left out. Values may be columns (n, 1)
of many homes.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import numpy as np

from estimator.inputs.case import Case
from estimator.inputs.faults import number_words, rows_at_fault, shown
from estimator.inputs.finding import Finding
from estimator.inputs.measured import anything, commissioning_faults
from estimator.inputs.month_lines import twelve
from estimator.inputs.months import MONTHLY, QUANTITIES
from estimator.inputs.option import Option
from estimator.inputs.points import certificate_points
from estimator.inputs.pressure_tests import pressure_log
from estimator.inputs.room_lines import air_lines, room_flows, special_doors

# Smallest sleeping room an English licence allows for a child under ten: The Licensing of Houses in Multiple
# Occupation (Mandatory Conditions of Licences) (England) Regulations 2018; from memory.
LEAST_ROOM = 4.64  # m²
LOWEST_ROOM, HIGHEST_ROOM = 1.9, 5.0  # m, limits of the ceiling height
SPHERE = 36.0 * np.pi  # no surface A encloses more volume V than a sphere: A³ ≥ 36 π V²

ONE_OF_TWO = "Correct one of the two."


def _leakage(case: Case) -> Iterator[Finding]:
    leak = case.leakage
    measure = np.asarray(leak.measure, dtype=object)
    estimated = measure == "estimate"
    about = ("leakage.measure",)
    if leak.value is None:
        said = 'missing: the measure is {given}; enter its figure, or set the measure to "estimate".'
        yield from _found("leakage.value", measure, ~estimated, said, about)
    else:
        said = "a figure is given but the measure is {given}; name the measure of the figure, or delete it."
        yield from _found("leakage.value", measure, estimated, said, about)
    tested = np.asarray(leak.basis, dtype=object) == "measured"
    said = '"measured" needs a pressure test; name its measure and value, or delete the line.'
    yield from _found("leakage.basis", measure, estimated & tested, said, about)


def _air(case: Case) -> Iterator[Finding]:
    rule = np.asarray(case.air.rule, dtype=object)
    by_hand = rule == "entered"
    if case.air.entered is None:
        said = "missing: the rule is {given}; enter a rate in m³/h, or name a rule set."
        yield from _found("air.entered", rule, by_hand, said, ("air.rule",))
    else:
        said = 'a rate is given but the rule is {given}; set the rule to "entered", or delete the rate.'
        yield from _found("air.entered", rule, ~by_hand, said, ("air.rule",))


def _fixed_base(case: Case) -> Iterator[Finding]:
    if case.heating.mode == "fixed base":
        said = "{given} °C lies above the indoor temperature of {other} °C; no gains do that. Lower the base."
        base, indoor = case.heating.base_temperature, case.home.indoor_temperature
        others = ("home.indoor_temperature", "heating.mode")
        yield from _above("heating.base_temperature", base, indoor, said, others)


def _rooms(case: Case) -> Iterator[Finding]:
    home = case.home
    most = np.asarray(home.floor_area) / LEAST_ROOM
    for path, count, one in (
        ("home.bedrooms", home.bedrooms, "bedroom"),
        ("home.people", home.people, "person"),
    ):
        need = f"each {one} needs at least {LEAST_ROOM} m²"
        said = f"{{given}} is too many for the floor area: {need}. {ONE_OF_TWO}"
        yield from _above(path, count, most, said, ("home.floor_area",))
    said = f"{{given}} is more than the {{other}} habitable rooms, which include bedrooms. {ONE_OF_TWO}"
    yield from _above("home.bedrooms", home.bedrooms, home.habitable_rooms, said, ("home.habitable_rooms",))


def _volume(case: Case) -> Iterator[Finding]:
    home = case.home
    if home.volume is None:
        return
    height = np.asarray(home.volume) / home.floor_area
    bad = (height < LOWEST_ROOM) | (height > HIGHEST_ROOM)
    span = f"{LOWEST_ROOM} to {HIGHEST_ROOM:g} m is allowed"
    said = f"over the floor area this makes rooms {{given}} m high; {span}. {ONE_OF_TWO}"
    yield from _found("home.volume", height, bad, said, ("home.floor_area",))


def _envelope(case: Case) -> Iterator[Finding]:
    home = case.home
    if home.envelope_area is None:
        return
    volume = np.asarray(home.floor_area * home.ceiling_height if home.volume is None else home.volume)
    area, least = np.asarray(home.envelope_area), np.cbrt(SPHERE * volume**2)
    said = "{given} m² cannot enclose the air: even a ball needs {other} m². Count walls, floor and roof."
    others = ("home.volume", "home.floor_area", "home.ceiling_height")
    yield from _found("home.envelope_area", area, area < least, said, others, other=least)


def _sealing_costs(case: Case) -> Iterator[Finding]:
    low, middling, high = case.sealing.step_low, case.sealing.step, case.sealing.step_high
    said = f"the {{}} cost of {{{{given}}}} is more than the {{}} cost of {{{{other}}}}. {ONE_OF_TWO}"
    words = said.format("low", "middling")
    yield from _above("sealing.step_low", low, middling, words, ("sealing.step",))
    words = said.format("middling", "high")
    yield from _above("sealing.step", middling, high, words, ("sealing.step_high",))


def _air_ways(case: Case) -> Iterator[Finding]:
    for name, read in (("fed", room_flows), ("drawn", room_flows), ("lines", air_lines), ("doors", special_doors)):
        try:
            read(getattr(case.rooms, name))
        except ValueError as unreadable:
            yield Finding(f"rooms.{name}", str(unreadable))
    if case.rooms.fed and case.rooms.option not in case.options:
        said = f"{shown(case.rooms.option)} is the name of no option; name the one that feeds these rooms."
        yield Finding("rooms.option", said, ("options",))


def _pressure_tests(case: Case) -> Iterator[Finding]:
    try:
        pressure_log(case.leakage.tests)
    except ValueError as unreadable:
        yield Finding("leakage.tests", str(unreadable))


def _commissioned(case: Case) -> Iterator[Finding]:
    for name, said in commissioning_faults(case.commissioned):
        yield Finding(f"commissioned.{name}", said)
    if anything(case.commissioned) and case.commissioned.option not in case.options:
        said = f"{shown(case.commissioned.option)} is the name of no option; name the one that was fitted."
        yield Finding("commissioned.option", said, ("options",))


def _each_option(case: Case) -> Iterator[Finding]:
    for name, option in case.options.items():
        yield from _flows(f"options.{name}.flows", option)
        yield from _points(f"options.{name}.unit.points", option)
        yield from _programme(f"options.{name}.flows", option)
        yield from _fan_heat(f"options.{name}.unit", option)
        yield from _in_use_factor(f"options.{name}", option)


def _flows(path: str, option: Option) -> Iterator[Finding]:
    flows = option.flows
    for name, flow in (("supply", flows.supply), ("extract", flows.extract)):
        said = f"{{given}} m³/h in ordinary use is more than the {{other}} m³/h on boost. {ONE_OF_TWO}"
        yield from _above(f"{path}.{name}", flow, flows.boost_flow, said, (f"{path}.boost_flow",))
    said = f"{{given}} % of hours on boost is more than the {{other}} % in which the fans run. {ONE_OF_TWO}"
    others = (f"{path}.running_share",)
    yield from _above(f"{path}.boost_share", flows.boost_share, flows.running_share, said, others)
    said = (
        "{given} m³/h on boost is more than the {other} m³/h that the unit moves: it is too small, or the flow wrong."
    )
    largest = option.unit.largest_flow
    others = (f"{path.removesuffix('.flows')}.unit.largest_flow",)
    yield from _above(f"{path}.boost_flow", flows.boost_flow, largest, said, others)
    if not any(flow is None for flow in (flows.supply, flows.extract, flows.imbalance)):
        said = "supply and extract are both given and make their own imbalance; delete one of the three."
        yield Finding(f"{path}.imbalance", said, (f"{path}.supply", f"{path}.extract"))


def _programme(path: str, option: Option) -> Iterator[Finding]:
    flows = option.flows
    shares = {"boost_share": flows.boost_share, "setback_share": flows.setback_share, "away_share": flows.away_share}
    given = {name: np.asarray(share, dtype=float) for name, share in shares.items() if share is not None}
    last = next((name for name in ("away_share", "setback_share") if name in given), None)
    if last is None:
        return
    running = 100.0 if flows.running_share is None else flows.running_share
    said = "boost, set-back and absence take {given} % of all hours together, more than the {other} % the fans run."
    others = tuple(f"{path}.{name}" for name in (*given, "running_share") if name != last)
    yield from _above(f"{path}.{last}", sum(given.values(), np.zeros(())), running, said, others)


def _points(path: str, option: Option) -> Iterator[Finding]:
    try:
        certificate_points(option.unit.points or "")
    except ValueError as impossible:
        yield Finding(path, str(impossible))


def _fan_heat(path: str, option: Option) -> Iterator[Finding]:
    counted = np.asarray(option.unit.ratio_includes_fan_heat, dtype=object) == "yes"
    if option.unit.fan_heat_useful is not None:
        useful = np.asarray(option.unit.fan_heat_useful)
        said = "{given} % counts the fans' heat twice: the certificate's ratio has it already. Write 0."
        bad = counted & (useful > 0.0)
        yield from _found(f"{path}.fan_heat_useful", useful, bad, said, (f"{path}.ratio_includes_fan_heat",))


def _in_use_factor(path: str, option: Option) -> Iterator[Finding]:
    ducts = option.ducts
    lengths = {
        "intake": ducts.intake,
        "exhaust": ducts.exhaust,
        "supply": ducts.supply,
        "extract": ducts.extract,
    }
    given = [name for name, length in lengths.items() if length is not None and np.any(np.asarray(length) > 0.0)]
    if option.unit.in_use_factor is not None and given:
        factor = np.asarray(option.unit.in_use_factor)
        said = "{given} stands in place of the duct calculation, but ducts are given. Write 1, or delete them."
        others = tuple(f"{path}.ducts.{name}" for name in given)
        yield from _found(f"{path}.unit.in_use_factor", factor, factor < 1.0, said, others)


def _above(path: str, value: Any, limit: Any, said: str, others: tuple[str, ...]) -> Iterator[Finding]:
    """A finding where a value lies above another; none where either is left out."""
    if value is not None and limit is not None:
        bad = np.asarray(value) > np.asarray(limit)
        yield from _found(path, value, bad, said, others, other=limit)


def _found(
    path: str, value: Any, bad: Any, said: str, others: tuple[str, ...], *, other: Any = None
) -> Iterator[Finding]:
    """A finding where any row is bad, its sentence filled with {given} and {other} of the first such row."""
    if not np.any(bad):
        return
    bad, value, other = np.broadcast_arrays(bad, np.asarray(value, dtype=object), np.asarray(other, dtype=object))
    first = int(np.argmax(bad))
    sentence = said.format(given=_words(value.ravel()[first]), other=_words(other.ravel()[first]))
    rows = rows_at_fault(bad)
    yield Finding(path, f"{sentence[:-1]}{rows}." if rows else sentence, others, bad)


def _words(value: Any) -> str:
    return number_words(round(value, 2)) if isinstance(value, int | float) else shown(value)


def _months(case: Case) -> Iterator[Finding]:
    for name in QUANTITIES:
        try:
            twelve(getattr(case.months, name))
        except ValueError as unreadable:
            yield Finding(f"months.{name}", str(unreadable))
    if case.place.climate == MONTHLY and not case.months.temperature.strip():
        said = f'missing: the climate is "{MONTHLY}"; write the twelve mean temperatures, or name another climate.'
        yield Finding("months.temperature", said, ("place.climate",))


RULES = (
    _leakage,
    _air,
    _fixed_base,
    _rooms,
    _volume,
    _envelope,
    _sealing_costs,
    _air_ways,
    _months,
    _commissioned,
    _pressure_tests,
    _each_option,
)
