"""What is said to the installer on site: frost, circuit, drain, ways of the air, and what was measured?"""

from __future__ import annotations

import math
from collections.abc import Iterator

from estimator.as_commissioned import AsCommissioned
from estimator.inputs.case import Case
from estimator.inputs.room_lines import room_flows
from estimator.installed import MAINS, SPUR
from estimator.report import cash, figures
from estimator.report.fit_words import sound
from estimator.report.fitting import Fitting

_EVEN = 0.5  # m³/h: less cannot be told on site

PROPOSED = (
    "No rooms are entered: these are proposed from bedrooms and wet rooms, all joined by one hall. Correct them to the "
    "house."
)
PATHS_IN_ORDER = "Fed and drawn air balance, every room gets its air, and every door lets it pass."
NOT_MEASURED = (
    "Nothing is measured yet. Once the unit is commissioned, enter the air of each room, the fan power and the leakage "
    "test made after the works: the estimate is redone and each point stands beside its promise."
)


def frost(found: Fitting) -> str:
    """Whether this climate needs frost protection, and what it does here."""
    cold = found.sheet.frost
    hours, entering = f"{cold.hours:,.0f} hours", _degrees(cold.entering)
    need = "This climate asks for frost protection" if cold.needed else "This climate hardly needs frost protection"
    below = f"in {hours} of the year air below {figures.temperature(-3.0)} would reach the exchanger"
    said = f"{need}: {below}, {entering} at worst."
    if cold.needed and cold.chosen.name == "none":
        return f"{said} None is set here: its cost is missing from every figure."
    return said


def sheet(found: Fitting) -> tuple[str, ...]:
    """What the installer must know beside the figures: bedroom, circuit, drain, sound, flows off the certificate."""
    return (
        bedroom(found),
        circuit(found),
        f"Drain: {drain(found)}",
        f"Sound of the unit: {sound(found)}",
        *found.sheet.outside_certificate,
    )


def _degrees(celsius: float) -> str:
    return figures.joined(figures.fixed(figures.converted(celsius, "°C"), decimals=1), figures.unit_shown("°C"))


def circuit(found: Fitting) -> str:
    """Highest load against the rating often seen."""
    watts, amps = found.sheet.electrical_peak, found.sheet.current_peak
    load = f"At most {figures.quantity(watts, 'W')}, {figures.quantity(amps, 'A', figures=2)} at {MAINS:g} V"
    if found.sheet.spur_suffices:
        return f"{load}: below the {SPUR:g} A often seen. The electrician sizes and tests the circuit."
    return f"{load}: more than the {SPUR:g} A of the fused spur often seen. Ask the electrician before ordering."


def bedroom(found: Fitting) -> str:
    """What enters a bedroom on the coldest night by either way; never in money."""
    air = found.sheet.supply_air
    return (
        f"On the coldest night a bedroom gets air of {_degrees(air.outdoors_night)} through a wall "
        f"ventilator, of {_degrees(air.supply_night)} through the unit."
    )


def drain(found: Fitting) -> str:
    """Water for the drain."""
    water = found.sheet.drain
    if math.isclose(water.yearly, 0.0, abs_tol=0.05):
        most = figures.quantity(water.bound, "l/h", figures=2)
        return f"The exchanger stays dry at this moisture; with moist rooms all winter it would drip up to {most}."
    return (
        f"Up to {figures.quantity(water.peak, 'l/h', figures=2)}, {figures.quantity(water.yearly, 'l', figures=2)} "
        f"in a year; at most {figures.quantity(water.bound, 'l/h', figures=2)} with moist rooms all winter."
    )


def commissioned(found: AsCommissioned, case: Case) -> Iterator[str]:
    """What the measurements change, how well they are founded, and what they leave open."""
    given = case.commissioned
    change = found.whole.money
    label = case.options[found.option].label or found.option
    yield (
        f"As measured, {label} {cash.change(change, case.prices.currency)} than promised: "
        f"{figures.share(found.efficiency[1])} of the heat comes back, {figures.share(found.efficiency[0])} was "
        "promised."
    )
    if found.promised is not None and found.measured is not None:
        was, now = (cash.money(each.net_saving, case.prices.currency) for each in (found.promised, found.measured))
        yield f"Net saving a year against {found.measured.baseline_label}: {now}, promised {was}."
    if given.fed and given.drawn:
        fed, drawn = (sum(room_flows(text).values()) for text in (given.fed, given.drawn))
        yield _balance(drawn - fed)
    missing = [words for words, text in (("date", given.date), ("instrument", given.instrument)) if not text]
    if missing:
        yield f"No {' and no '.join(missing)} of these measurements is entered."


def _balance(more: float) -> str:
    if abs(more) < _EVEN:
        return "As much air is drawn as is fed."
    side, other, way = ("drawn", "fed", "in") if more > 0.0 else ("fed", "drawn", "out")
    air = figures.quantity(abs(more), "m³/h")
    return f"{air} more is {side} than {other}: it passes {way} through leaks, and its heat is not recovered."


def sheet_title(found: Fitting) -> str:
    """The installer's sheet in one line, above its fold."""
    air, watts = found.sheet.supply_air, found.sheet.electrical_peak
    return (
        f"Installer's sheet: supply air {_degrees(air.supply_day)} on the coldest day, at most "
        f"{figures.quantity(watts, 'W')}, up to {figures.quantity(found.sheet.drain.bound, 'l/h', figures=2)} to drain"
    )


def ways_title(found: Fitting) -> str:
    """The air paths in one line, above their fold."""
    paths = found.paths
    if paths is None:
        return "Air from room to room: no rooms yet"
    plan = "proposed, " if found.proposed else ""
    left = len(paths.words)
    state = "in order" if not left else f"{left} thing{'s' if left > 1 else ''} to mend"
    fed, drawn = (figures.quantity(flow, "m³/h") for flow in (paths.fed, paths.drawn))
    return f"Air from room to room: {plan}{fed} fed, {drawn} drawn, {state}"


def measured_title(found: AsCommissioned | None, currency: str) -> str:
    """What was measured in one line, above its fold."""
    if found is None:
        return "As commissioned: nothing measured yet"
    return f"As commissioned: {cash.change(found.whole.money, currency)} than promised"
