"""What is said of a unit as fitted: the answer, what each line costs, what frost asks for?"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from estimator.line_costs import more_air
from estimator.points_lost import METRE, MORE_INSULATION, Step
from estimator.report import cash, figures
from estimator.report.fitting import Change, Fitting, Priced
from estimator.units import to_m3h, to_percent

_LEAST_MONEY, _LEAST_ENERGY, _LEAST_AIR = 0.05, 0.5, 0.5  # money, kWh, m³/h: less is not worth a word
_LEAST_POINTS = 0.05  # %

_STEPS = {
    "unit": "what leaks inside the unit",
    "duty": "the flows it runs at",
    "ducts": "the ducts",
    "imbalance": "uneven flows",
    "frost": "frost protection",
    "post-heater": "the heater in the supply air",
}

_NAMES = {
    "certificate": "on the certificate",
    "unit": "without leakage inside the unit",
    "duty": "at the flows set here",
    "ducts": "with its ducts and its place",
    "imbalance": "with uneven flows",
    "frost": "with frost protection",
    "post-heater": "as estimated, all counted",
}


def answer(found: Fitting) -> str:
    """Certificate, house over its leakage, and what takes most of the difference."""
    low, high = (figures.share(end) for end in found.kept)
    here = f"{high} comes back here, whatever the leakage" if low == high else f"{low} to {high} comes back here"
    said = f"The certificate says {figures.share(found.sheet.steps[0].efficiency)}; {here}."
    worst = max(found.sheet.steps[1:], key=lambda step: step.lost)
    if to_percent(worst.lost) < _LEAST_POINTS:
        return f"{said} Nothing on site takes any of it."
    return f"{said} Most is taken by {_STEPS[worst.name]}: {points(worst)}."


def points(step: Step) -> str:
    """Points that a step takes, in words."""
    size = to_percent(abs(step.lost))
    text = figures.number(size, figures=2)
    return f"{text} point{'' if text == '1' else 's'}"


def ducts(found: Fitting) -> str:
    """What insulation saves, what more of it would, and what another metre costs."""
    by_name = {change.worth.name: change for change in found.changes}
    now, more, metre = (by_name[name] for name in ("insulation", "more insulation", "another metre"))
    thickness = float(found.case.options[found.option].ducts.insulation or 0.0)
    if thickness > 0.0:
        first = f"Insulating the ducts {_saves(now, found)} against bare ones ({_heat(now.worth.heat)})"
    else:
        first = "The ducts are bare"
    return (
        f"{first}; {figures.nominal(MORE_INSULATION)} more {_saves(more, found, would=True)}, and "
        f"another {'metre' if not figures.THINKS_IMPERIAL.get() else figures.quantity(METRE, 'm', figures=2)} of each "
        f"{_saves(metre, found, would=True)}."
    )


def _saves(change: Change, found: Fitting, *, would: bool = False) -> str:
    money = change.worth.money
    if abs(money) < _LEAST_MONEY:
        return "would change nothing" if would else "changes nothing"
    verb = ("save", "saves") if money > 0.0 else ("cost", "costs")
    low, high = sorted((abs(change.low), abs(change.high)))
    amount = f"{cash.money_range(low, high, found.currency)} a year"
    return f"would {verb[0]} {amount}" if would else f"{verb[1]} {amount}"


def _heat(kilowatt_hours: float) -> str:
    return f"{figures.energy(abs(kilowatt_hours))} of heat"


def line_words(found: Fitting, path: str) -> str:
    """What one answered line costs a year, against what, and what air it brings."""
    line = found.line(path)
    cost = line.cost
    if not cost.against:
        return _BY_THEMSELVES.get(path, _unused)(found)
    if path in _BOOST and not _boosts(found):
        return _NO_BOOST
    if abs(cost.money) < _LEAST_MONEY and max(abs(cost.heat), abs(cost.electricity)) < _LEAST_ENERGY:
        return f"Costs nothing here, against {figures.retold(cost.against)}."
    verb = "Costs" if cost.money > 0.0 else "Saves"
    energy = [
        f"{figures.quantity(abs(size), 'kWh', figures=2)} {'more' if size > 0.0 else 'less'} {what}"
        for size, what in ((cost.heat, "heat"), (cost.electricity, "electricity"))
        if abs(size) >= _LEAST_ENERGY
    ]
    air = more_air(cost)
    if abs(air) >= _LEAST_AIR:
        energy.append(f"{figures.quantity(abs(air), 'm³/h', figures=2)} {'more' if air > 0.0 else 'less'} fresh air")
    what = f" ({', '.join(energy)})" if energy else ""
    warmed = cost.heat > 0.0 > max(cost.electricity, cost.money) and path in _WARMED_ON_THE_WAY
    why = f" {_WARMED}" if warmed else ""
    return f"{verb} {_range(line, found.currency)} a year{what}, against {figures.retold(cost.against)}.{why}"


_WARMED_ON_THE_WAY = ("ducts.intake",)
_WARMED = (
    "Why it saves: the air takes heat of the rooms on its way, cheaper than the electricity that the heater against "
    "frost would put in. Insulate it all the same: a bare one drips."
)
_BOOST = ("flows.boost_flow", "flows.boost_share")
# How far boost lies above the ordinary flow: common practice, no source.
_NO_BOOST = (
    "Costs nothing: the ordinary flow already meets the boost rates of the wet rooms. Often boost is set about 30% "
    "higher; enter it to see."
)


def _boosts(found: Fitting) -> bool:
    """Whether boost moves more air than ordinary use."""
    flows = found.case.options[found.option].flows
    return float(flows.boost_flow or 0.0) > max(float(flows.supply or 0.0), float(flows.extract or 0.0))


def _range(line: Priced, currency: str) -> str:
    low, high = sorted((abs(line.low), abs(line.high)))
    return cash.money_range(low, high, currency) if line.low * line.high > 0.0 else cash.money(high, currency)


def _unused(found: Fitting) -> str:
    return "Not in use here: costs nothing."


def sound(found: Fitting) -> str:
    """Noise as declared, or what to do where it is not known."""
    declared = found.sheet.sound
    if declared is None:
        return "Not known: ask the maker for the sound power level at this flow. Never counted in money."
    return f"{figures.quantity(declared, 'dB(A)')} as declared. Never counted in money."


def _largest(found: Fitting) -> str:
    left = to_m3h(found.sheet.in_hand)
    if left < 0.0:
        return f"Too small: {figures.quantity(-left, 'm³/h')} less than the highest flow set."
    if left < _LEAST_AIR:
        return "Nothing in hand beyond the highest flow set: ask for more. Costs nothing by itself."
    return f"{figures.quantity(left, 'm³/h')} in hand beyond the highest flow set. Costs nothing by itself."


def _bore(found: Fitting) -> str:
    calm, boost = (figures.quantity(v, "m/s", figures=2) for v in (found.sheet.velocity, found.sheet.velocity_boost))
    return f"Air moves at {calm}, at most {boost}. Costs nothing by itself."


def _standing(found: Fitting) -> str:
    return "Inside the heated rooms: only its cold ducts cost heat."


_BY_THEMSELVES: Mapping[str, Callable[[Fitting], str]] = {
    "unit.points": lambda found: "Not given: one point stands for all flows.",
    "unit.effectiveness": lambda found: "Read from the several points below.",
    "unit.fan_power": lambda found: "Read from the several points below.",
    "unit.ratio_includes_fan_heat": lambda found: "Costs nothing by itself: fan heat is then counted once.",
    "unit.fan_pressure": lambda found: "Counts only where filters load.",
    "unit.largest_flow": _largest,
    "unit.sound": sound,
    "ducts.bore": _bore,
    "ducts.standing": _standing,
}
"""Lines that cost nothing by themselves, and what is said of them instead."""


def step_name(step: Step) -> str:
    """A step in a few words."""
    return _NAMES[step.name]


def step_change(step: Step) -> str:
    """Points that a step takes or gives, nothing where it does neither."""
    if to_percent(abs(step.lost)) < _LEAST_POINTS:
        return ""
    return f"{points(step)} {'taken' if step.lost > 0.0 else 'given'}"


def steps_note(found: Fitting) -> str:
    """Why uneven flows seem to help, where they do; nothing elsewhere."""
    uneven = next(step for step in found.sheet.steps if step.name == "imbalance")
    if to_percent(uneven.lost) > -_LEAST_POINTS:
        return ""
    return (
        "Uneven flows seem to help the exchanger because less cold air passes it; what it does not carry comes in "
        "through leaks, unwarmed. They are no gain for the house: have the unit balanced."
    )


def steps_drawn(found: Fitting) -> tuple[Step, ...]:
    """Certificate and house, and between them what takes or gives anything."""
    first, *between, last = found.sheet.steps
    return (first, *(step for step in between if step_change(step)), last)


def steps_in_words(found: Fitting) -> str:
    """The picture told to those who do not see it."""
    told = (
        f"{step_name(step)}: {figures.share(step.efficiency)}{f', {change}' if (change := step_change(step)) else ''}"
        for step in found.sheet.steps
    )
    steps = "; ".join(told)
    return f"Heat of the air through the unit that comes back. {steps[:1].upper()}{steps[1:]}."


def steps_title(found: Fitting) -> str:
    """What the picture shows."""
    first, last = found.sheet.steps[0], found.sheet.steps[-1]
    return f"From {figures.share(first.efficiency)} on paper to {figures.share(last.efficiency)} in this home"
