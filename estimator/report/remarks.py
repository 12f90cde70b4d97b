"""What must be said of the air of each option, of the prices and of the heat before the money?"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from estimator.compare import Result
from estimator.estimate import Estimate, OptionYear
from estimator.inputs.case import Case
from estimator.inputs.catalogue import is_electric, option_fact
from estimator.inputs.prices import Prices
from estimator.report.figures import converted, energy, flow, number, quantity, share, temperature
from estimator.survey.fill import Origin
from estimator.units import to_m3h

# Below this share of a flow a difference is rounding or commissioning tolerance, not a finding.
_TOLERANCE = 0.01
# Air colder than this lets the exhaust freeze in the exchanger; common practice, no source.
_FROST = -3.0
_FROST_HOURS = 24
# A mean flow this far above the requirement is a surplus.
_CLEARLY_MORE = 1.1
# A share of hours that is worth a sentence.
_WORTH_SAYING = 0.02
# Duties for which the catalogue's costs of fitting are meant, a small flat to a large house; assumed.
_SMALLEST_DUTY, _LARGEST_DUTY = 60.0, 400.0  # m³/h
# Heat below which a home is hardly heated, a third of the 15 kWh/m² that the passive house asks for; assumed.
_HARDLY_HEATED = 5.0  # kWh/m² a year

_PRICES = {"prices.fuel": "price of the heating fuel", "prices.electricity": "price of electricity"}
_SUMS = {"kit": "unit", "ducts": "ducts", "day_rate": "work", "filter_price": "filters", "service": "service"}


def remarks(result: Result) -> tuple[str, ...]:
    """Sentences, worst first: foreign prices, no heat to save, fans too small, hours short of air, surplus air."""
    done = result.estimate
    required = float(done.home.required)
    found = [*prices_of_elsewhere(done.case, done.origins), *_hardly_heated(done)]
    for option in done.options.values():
        if option.name != done.case.today and _has_fans(done.case, option.name):
            found.extend(_too_small(option, required))
    for option in done.options.values():
        found.extend(_frost(option))
    for option in done.options.values():
        found.extend(_short(option, topped_up=done.home.top_up and option.name != done.case.today))
    found.extend(_surplus(list(done.options.values()), required))
    found.extend(_cost_of_another_size(done))
    return tuple(found)


def prices_of_elsewhere(case: Case, origins: Mapping[str, Origin]) -> list[str]:
    """Defaults are sums of one country; another currency changes their sign, not their size. case: filled."""
    currency, home = case.prices.currency, Prices().currency
    if currency == home:
        return []
    left = [words for path, words in _PRICES.items() if origins[path].source != "entered"]
    if is_electric(case.heating.fuel):
        left = [words for words in left if words != _PRICES["prices.fuel"]]
    fitted = [name for name in case.options if name != case.today]
    left.extend(
        words
        for part, words in _SUMS.items()
        if any(origins[f"options.{name}.cost.{part}"].source != "entered" for name in fitted)
    )
    if not left:
        return []
    return [
        f"Money is written in {currency}, but these sums are those of Great Britain in {home}, not converted: "
        f"{', '.join(left)}. Enter your own before trusting any money here."
    ]


def _hardly_heated(done: Estimate) -> list[str]:
    """Where the weather or the gains leave nothing to heat, nothing can be recovered."""
    baseline = done.options[done.case.baseline]
    if baseline.heating_demand >= _HARDLY_HEATED * float(done.case.home.floor_area):
        return []
    return [
        f"With {baseline.label} the home needs only {energy(baseline.heating_demand)} of heat a year here: there is "
        "hardly anything to recover. Cooling is not counted, nor what the unit does to it."
    ]


def _cost_of_another_size(done: Estimate) -> list[str]:
    """Costs from the catalogue do not grow with the house: said where the duty lies beyond those they are meant for."""
    beyond = []
    for option in done.options.values():
        duty = float(np.max([np.squeeze([state.supply, state.extract]) for state in option.numbers.states]))
        guessed = done.origins[f"options.{option.name}.cost.kit"].source != "entered"
        if option.capital > 0.0 and guessed and not _SMALLEST_DUTY <= to_m3h(duty) <= _LARGEST_DUTY:
            beyond.append(f"{option.label} moves {flow(duty)}")
    if not beyond:
        return []
    return [
        f"{'; '.join(beyond)}: the costs of fitting used here are meant for "
        f"{number(float(converted(_SMALLEST_DUTY, 'm³/h')))} to {quantity(_LARGEST_DUTY, 'm³/h')} and do not grow "
        "with the home. Enter a quotation."
    ]


def _has_fans(case: Case, name: str) -> bool:
    kind = case.options[name].kind
    return bool(option_fact(kind, "supplies") or option_fact(kind, "extracts"))


def _frost(option: OptionYear) -> list[str]:
    """An exchanger without frost protection in a climate that asks for it."""
    numbers = option.numbers
    bare = numbers.preheat_to is None and numbers.throttle_at is None
    if not bare or not np.any(np.asarray(numbers.effectiveness) > 0.0):
        return []
    cold = int(np.sum(option.air.entering < _FROST))
    if cold < _FROST_HOURS:
        return []
    return [
        f"{option.label} has no frost protection, and air below {temperature(_FROST)} enters its exchanger in "
        f"{cold:,} hours of the year: this climate asks for one, and its electricity is missing here."
    ]


def _too_small(option: OptionYear, required: float) -> list[str]:
    """The fans alone, in ordinary use, against the required rate."""
    ordinary = option.numbers.states[0]
    moved = float(np.max([np.squeeze(ordinary.supply), np.squeeze(ordinary.extract)]))
    needed = float(np.squeeze(ordinary.need))
    if not moved < required * needed * (1.0 - _TOLERANCE):
        return []
    return [
        f"{option.label} is set to {flow(moved)}, less than the {flow(required)} that the home needs: "
        "set it higher or choose a larger unit."
    ]


def _short(option: OptionYear, *, topped_up: bool) -> list[str]:
    hours = float(np.mean(option.air.short))
    if hours < _WORTH_SAYING:
        return []
    remedy = "windows make up for it in this estimate" if topped_up else "nothing makes up for it in this estimate"
    return [f"{option.label}: less air than the home needs in {share(hours)} of all hours; {remedy}."]


def _surplus(options: list[OptionYear], required: float) -> list[str]:
    """One sentence for every option that brings clearly more than is needed."""
    mean = {option.label: float(np.mean(option.air.delivered)) for option in options}
    more = [f"{label} {flow(air)}" for label, air in mean.items() if air > required * _CLEARLY_MORE]
    if not more:
        return []
    return [
        f"More air than the {flow(required)} needed, on average: {'; '.join(more)}. "
        "Warming the surplus is part of each one's own cost."
    ]
