"""What does the estimator say of one home with gas, with direct electric heating, and with a heat pump?

`python -m tests.three_homes` prints tables in Markdown: the default home, whose leakage is typical of its age, in the
offline weather of the United Kingdom's mean. Nothing is tuned towards a verdict; whatever comes out stands here. Not
part of the tests.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from typing import Any

from estimator import Case, OptionYear, Result, load_year, run
from estimator.draws import ground
from estimator.inputs.places import with_values
from estimator.report.cash import money, payback
from estimator.report.figures import number
from estimator.report.sure_words import paid_back
from estimator.sample import sample
from estimator.sure import Spread, Sure, sure_of
from estimator.units import to_hundredths, to_m3h, to_percent

CLIMATE = "UK average"
HOMES: dict[str, dict[str, str]] = {
    "gas boiler": {},
    "direct electric": {"heating.fuel": "direct electric"},
    "heat pump": {"heating.fuel": "heat pump", "heating.pump.mode": "hourly"},
}
CURRENCY = "£"


def main() -> None:
    year = load_year(CLIMATE)
    results, sures = {}, {}
    for name, values in HOMES.items():
        case = with_values(Case(), values)
        results[name] = run(case, year)
        drawn = sample(ground(case, year))
        sures[name] = {base: sure_of(drawn, option="recovery", baseline=base) for base in ("extract", "today")}
    first = next(iter(results.values())).estimate
    home, leak = first.case.home, first.case.leakage
    print(f"Home: {home.floor_area:g} m², {home.bedrooms} bedrooms, {home.form}, {home.age}, {home.construction}; ")
    print(f"q50 {leak.value:.3g} m³/(h m²) ({leak.basis}); fresh air needed {first.case.air.entered:.0f} m³/h; weather")
    print(f"{first.year.name}. Prices: {first.case.prices.dated}. 10 %, 50 % and 90 % of 2,000 cases beside each.\n")
    print("\n".join(_options(results)))
    for base in ("extract", "today"):
        print(f"\n**Heat recovery against {first.options[base].label}**\n")
        print("\n".join(_compared(results, sures, base)))


def _options(results: dict[str, Result]) -> Iterator[str]:
    yield "| a year | " + " | ".join(f"{home}: {name}" for home in results for name in ("extract", "recovery")) + " |"
    yield "| --- |" + " ---: |" * (2 * len(results))
    rows: dict[str, Callable[[OptionYear], Any]] = {
        "fresh air, m³/h": lambda option: to_m3h(option.air.delivered.mean()),
        "heat, kWh": lambda option: option.heating_demand,
        "fans and frost, kWh": lambda option: option.electricity,
        "bought for heat, kWh": lambda option: option.fuel_energy,
        "household bill, £": lambda option: option.household_bill,
        "household carbon, kg": lambda option: option.household_carbon,
        "fitting, £": lambda option: option.capital,
        "upkeep, £": lambda option: option.upkeep,
    }
    for words, read in rows.items():
        figures = [
            number(round(float(read(found.estimate.options[name]))))
            for found in results.values()
            for name in ("extract", "recovery")
        ]
        yield f"| {words} | " + " | ".join(figures) + " |"


def _compared(results: dict[str, Result], sures: dict[str, dict[str, Sure]], base: str) -> Iterator[str]:
    yield "| | " + " | ".join(results) + " |"
    yield "| --- |" + " ---: |" * len(results)
    columns = []
    for name, found in results.items():
        one = (found.against_baseline if base == "extract" else found.against_today)["recovery"]
        sure = sures[name][base]
        columns.append(
            {
                "heat saved, kWh a year": _with(number(round(one.heat_saved)), sure.heat_saved),
                "more electricity, kWh a year": number(round(one.extra_electricity)),
                "saved on bills a year": money(one.bill_saving, CURRENCY),
                "more upkeep a year": money(one.extra_upkeep, CURRENCY),
                "net saving a year": _with(money(one.net_saving, CURRENCY), sure.net_saving),
                "carbon saved, kg a year": _with(number(round(one.carbon_saving)), sure.carbon_saving),
                "efficiency as installed, %": _with("", sure.efficiency, times=float(to_percent(1.0))),
                "extra cost of fitting": money(one.net_capital, CURRENCY),
                "simple payback": payback(one.simple_payback, life=one.life),
                "payback, years: 10, 50, 90 %": _with("", sure.payback),
                "worth today, 20 years at 3.5 % real": _with(
                    money(float(one.plan.net_present_value), CURRENCY), sure.net_present_value
                ),
                "cost of a kWh of heat saved": _hundredths(float(one.plan.cost_per_kwh)),
                "heat per extra kWh of electricity": f"{one.heat_per_extra_electricity:.1f}",
                "needed to pay for itself": f"{one.break_even_heat_per_electricity:.1f}",
                "carbon over 20 years, kg": number(round(float(one.plan.carbon_lifetime))),
                "in words": paid_back(sure),
                "known, would change most verdicts": _most_changing(sure),
                "known, would narrow most": max(sure.knowing, key=lambda known: known.narrowing).input.words,
                "shortened year errs by at most, £": f"{sure.error.net_saving:.1f}",
            }
        )
    for words in columns[0]:
        yield f"| {words} | " + " | ".join(column[words] for column in columns) + " |"


def _most_changing(sure: Sure) -> str:
    most = max(sure.knowing, key=lambda known: known.changes)
    return f"{most.input.words}, {most.changes:.0f} of 100" if round(most.changes) else "none"


def _hundredths(price: float) -> str:
    return f"{to_hundredths(price):.0f}p" if math.isfinite(price) else "no heat is saved"


def _with(figure: str, spread: Spread, *, times: float = 1.0) -> str:
    ends = [
        "never" if math.isinf(value) else number(round(value * times))
        for value in (spread.low, spread.middle, spread.high)
    ]
    return f"{figure} ({', '.join(ends)})".strip()


if __name__ == "__main__":
    main()
