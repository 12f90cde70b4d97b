"""Which quantities of a unit as fitted are there, and where must each of them stand?"""

from __future__ import annotations

from typing import NamedTuple


class Stands(NamedTuple):
    """A quantity: entries of the case that say or decide it, where it is in the document, words on the page."""

    quantity: str
    entries: tuple[str, ...]
    document: tuple[str, ...]
    page: tuple[str, ...]


def _line(quantity: str, path: str, label: str) -> Stands:
    """An entry of the option with its yearly cost: it stands in all three by its own path."""
    return Stands(quantity, (f"options.NAME.{path}",), (f"fitted.recovery.lines/{path}.money",), (label,))


def _figure(quantity: str, key: str, words: str, *entries: str) -> Stands:
    return Stands(quantity, entries, (f"fitted.recovery.figures.{key}.value",), (words,))


TABLE = (
    _line("ratio of the certificate", "unit.effectiveness", "Ratio on the certificate"),
    _line("its reference flow", "unit.reference_flow", "Read at a flow of"),
    _line("its several points", "unit.points", "Several points"),
    _line("fan heat in the ratio", "unit.ratio_includes_fan_heat", "Fan heat in the ratio"),
    _line("fan heat that helps", "unit.fan_heat_useful", "Fan heat that helps"),
    _line("specific fan power", "unit.fan_power", "Fan power, W/(l/s)"),
    _line("its growth with flow", "unit.fan_exponent", "Fan power grows by"),
    _line("standby", "unit.standby", "Standby"),
    _line("leakage inside the unit", "unit.internal_leakage", "Leaks inside the unit"),
    _line("in-use factor", "unit.in_use_factor", "In-use factor"),
    _line("largest flow", "unit.largest_flow", "Largest flow"),
    _line("fan noise", "unit.sound", "Declared sound"),
    _line("supply flow", "flows.supply", "Supply air"),
    _line("extract flow", "flows.extract", "Extract air"),
    _line("residual imbalance", "flows.imbalance", "Extract over supply"),
    _line("inside or outside", "ducts.standing", "Unit stands"),
    _line("warmth of its room", "ducts.zone_factor", "Warmth of its room"),
    _line("intake duct", "ducts.intake", "Intake duct"),
    _line("exhaust duct", "ducts.exhaust", "Exhaust duct"),
    _line("supply duct", "ducts.supply", "Supply duct in the cold"),
    _line("extract duct", "ducts.extract", "Extract duct in the cold"),
    _line("bore", "ducts.bore", "Main ducts inside"),
    _line("insulation", "ducts.insulation", "Duct insulation"),
    _line("conductivity", "ducts.conductivity", "Conductivity"),
    _line("frost protection", "unit.frost", "Frost protection"),
    _line("its set point", "unit.frost_set_point", "Kept against frost"),
    _line("post-heater", "unit.post_heater", "Heater in supply air"),
    _line("its set point", "unit.post_heat_to", "Supply kept at"),
    _line("boost hours", "flows.boost_share", "Hours on boost"),
    _line("boost flow", "flows.boost_flow", "Boost flow"),
    _line("night set-back hours", "flows.setback_share", "Hours set back"),
    _line("night set-back flow", "flows.setback_flow", "Flow set back"),
    _line("hours away", "flows.away_share", "Hours away"),
    _line("flow while away", "flows.away_flow", "Flow away"),
    _line("running hours", "flows.running_share", "Hours running"),
    _line("demand control", "flows.control", "Control"),
    _line("its factor by hand", "flows.demand_factor", "Factor by hand"),
    _line("its power", "flows.demand_exponent", "Power under control"),
    _line("filters: pressure rise", "unit.filter_pressure_rise", "Filters load by"),
    _line("filters: pressure of the fans", "unit.fan_pressure", "Pressure of each fan"),
    _line("filters: sets a year", "cost.filter_sets", "Filter sets a year"),
    _line("filters: price", "cost.filter_price", "Price of a set"),
    _line("service", "cost.service", "Service"),
    Stands(
        "where each point went",
        ("options.NAME.unit.effectiveness",),
        ("fitted.recovery.points.3.efficiency.value", "fitted.recovery.points.3.lost.value"),
        ("Where each point went", "With its ducts and its place"),
    ),
    Stands(
        "another metre, another 25 mm, insulating at all",
        ("options.NAME.ducts.insulation", "options.NAME.ducts.intake"),
        ("fitted.recovery.changes.0.money", "fitted.recovery.changes.1.heat", "fitted.recovery.changes.2.money"),
        (
            "25 mm round the ducts, against none",
            "25 mm more round the ducts",
            "1 m more of intake and exhaust duct each",
        ),
    ),
    Stands(
        "frost: hours, kWh, coldest hour, need",
        ("options.NAME.unit.frost", "place.climate"),
        (
            "fitted.recovery.frost.ways.pre-heater.hours.value",
            "fitted.recovery.frost.ways.throttle.hours.value",
            "fitted.recovery.frost.ways.pre-heater.electricity.value",
            "fitted.recovery.frost.ways.pre-heater.coldest_hour.value",
            "fitted.recovery.frost.needed",
        ),
        ("Frost protection, each way against none", "This climate hardly needs frost protection"),
    ),
    _figure(
        "effective efficiency",
        "installed_efficiency",
        "Heat kept of the balanced air",
        "options.NAME.unit.effectiveness",
    ),
    _figure(
        "supply air on the coldest day", "supply_coldest_day", "Supply air, mean of the coldest day", "place.climate"
    ),
    _figure("bedroom, wall ventilator", "bedroom_wall_ventilator", "a wall ventilator", "place.climate"),
    _figure("bedroom, unit", "bedroom_unit", "coldest night through the unit", "options.NAME.ducts.standing"),
    _figure("condensate at peak", "condensate_peak", "Water from the exchanger in its wettest hour", "home.moisture"),
    _figure("condensate a year", "condensate_year", "Water from the exchanger in a year", "home.moisture"),
    _figure("condensate at most", "condensate_bound", "Most water for the drain", "home.moist_air"),
    _figure("indoor humidity", "humidity_winter", "Mean relative humidity indoors", "home.moisture"),
    _figure(
        "indoor humidity of the baseline",
        "humidity_winter_baseline",
        "indoors with the baseline instead",
        "home.moisture",
    ),
    _figure("electrical peak", "electrical_peak", "Highest electrical load", "options.NAME.unit.frost_set_point"),
    _figure(
        "against its circuit", "current_peak", "13 A is the rating often seen", "options.NAME.unit.frost_set_point"
    ),
    _figure("velocity", "velocity", "Velocity in the main ducts in ordinary use", "options.NAME.ducts.bore"),
    _figure(
        "velocity on boost", "velocity_boost", "Velocity in the main ducts at the highest", "options.NAME.ducts.bore"
    ),
    _figure("reserve", "in_hand", "What the unit moves beyond the highest", "options.NAME.unit.largest_flow"),
    _figure("summer bypass", "bypass_hours", "summer bypass", "place.climate"),
    Stands(
        "lines, doors and rooms of the air",
        ("rooms.fed", "rooms.drawn", "rooms.lines", "rooms.doors", "rooms.door_area"),
        (
            "fitted.recovery.air_paths.lines.0.boost",
            "fitted.recovery.air_paths.doors.0.area_needed",
            "fitted.recovery.air_paths.rooms.0.fed_boost",
            "fitted.recovery.air_paths.words",
            "fitted.recovery.air_paths.fed.value",
            "fitted.recovery.air_paths.in_hand.value",
        ),
        (
            "Air transfer paths",
            "Doors on the way",
            "Free area, mm²",
            "All rooms",
            "Rooms fed",
            "Free area under a door",
        ),
    ),
    Stands(
        "branches",
        ("rooms.branch_flow",),
        ("fitted.recovery.air_paths.branches",),
        ("Branches", "Most through a branch"),
    ),
    Stands(
        "check-list",
        (),
        ("site_list.rows.0.words", "site_list.rows.0.cautions"),
        ("On site, one by one", "1.2 m apart"),
    ),
    Stands(
        "measured air, instrument, date",
        (
            "commissioned.fed",
            "commissioned.drawn",
            "commissioned.instrument",
            "commissioned.date",
            "commissioned.option",
        ),
        (
            "commissioned.rooms.0.measured",
            "commissioned.instrument",
            "commissioned.date",
            "commissioned.points.0.money",
        ),
        ("Room by room", "Measured into rooms", "Measured out of rooms", "Instrument", "Measured on"),
    ),
    Stands(
        "measured fan power", ("commissioned.power",), ("commissioned.points.2.money",), ("Power of fans and controls",)
    ),
    Stands(
        "leakage test after the works",
        ("commissioned.leakage_measure", "commissioned.leakage_value", "commissioned.leakage_date"),
        ("commissioned.points.3.measured", "commissioned.leakage_date"),
        ("Leakage of the home", "Leakage after the works", "Tested on"),
    ),
    Stands(
        "promised and measured",
        ("commissioned.fed",),
        ("commissioned.whole.money", "commissioned.net_saving.measured", "commissioned.effective_efficiency.measured"),
        ("Promised and measured", "All together", "As measured"),
    ),
)
