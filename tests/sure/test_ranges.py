"""Is every range told with its reason, narrower the better an entry is known, and possible at both ends?"""

import dataclasses
from itertools import pairwise

import numpy as np
import pytest

from estimator import Case
from estimator.inputs.heating import Heating
from estimator.inputs.places import value_at, with_values
from estimator.inputs.quantity import TAGS
from estimator.survey.fill import filled
from estimator.survey.ranges import SCALES, WEATHER, Range, ranges, rows

ENDS = (0.6, 1.7)


def by_name(case: Case) -> dict[str, Range]:
    return {item.name: item for item in ranges(filled(case), leakage=ENDS)}


@pytest.mark.parametrize("name", [row.name for row in rows()])
def test_better_known_is_narrower_and_every_range_holds_the_best_guess(name: str) -> None:
    row = next(row for row in rows() if row.name == name)
    neutral = 0.0 if row.scale == "offset" else 1.0
    known = [row.ends[tag] for tag in TAGS if tag in row.ends]
    for low, high in known:
        assert low <= neutral <= high
        assert low < high
    for (low, high), (wider_low, wider_high) in pairwise(known):
        assert wider_low <= low
        assert wider_high > high
    assert len(known) == (0 if row.scale == "span" else 1 if row.tag else 3)
    assert row.scale in SCALES
    assert len(row.words) > 2
    assert len(row.reason) > 10
    assert "from memory" in row.source or "common practice, no source" in row.source


def test_an_entry_said_to_be_measured_gets_the_narrow_range() -> None:
    case = Case()
    warm = dataclasses.replace(case, home=dataclasses.replace(case.home, indoor_temperature=21.0))
    guessed = dataclasses.replace(warm, tags={"home.indoor_temperature": "assumed"})
    widths = []
    for each in (warm, case, guessed):
        low, high = by_name(each)["indoor_temperature"].ends["home.indoor_temperature"]
        widths.append(high - low)
    assert widths == sorted(widths)
    assert len(set(widths)) == 3


def test_leakage_takes_the_span_that_is_known_of_it() -> None:
    assert by_name(Case())["leakage"].ends == {"leakage.value": ENDS}


def test_electric_heating_has_one_price_and_one_factor() -> None:
    gas, heat_pump = by_name(Case()), by_name(Case(heating=Heating(fuel="heat pump")))
    assert set(gas["price_of_electricity"].ends) == {"prices.electricity"}
    assert set(heat_pump["price_of_electricity"].ends) == {"prices.electricity", "prices.fuel"}
    assert set(heat_pump["carbon_of_electricity"].ends) == {"prices.electricity_carbon", "prices.fuel_carbon"}
    assert "price_of_heat" in gas
    assert "price_of_heat" not in heat_pump


def test_a_tariff_of_several_prices_moves_as_one() -> None:
    several = {"prices.tariff.kind": "time of use", "prices.tariff.windows": "9 at 0:30-5:30"}
    for fuel in ("natural gas", "direct electric"):
        found = by_name(with_values(Case(), {**several, "heating.fuel": fuel}))
        assert set(found["price_of_electricity"].ends) == {"prices.tariff.level"}


def test_only_what_the_home_has_is_drawn() -> None:
    plain = by_name(Case())
    assert not {"heat_pump", "export"} & set(plain)
    assert set(plain["price_of_heat"].ends) == {"prices.fuel"}
    pump = by_name(with_values(Case(), {"heating.fuel": "heat pump", "roof.size": 4.0}))
    assert set(pump["heat_pump"].ends) == {"heating.efficiency"}
    assert set(pump["export"].ends) == {"prices.export"}
    assert "efficiency" not in pump
    hourly = by_name(with_values(Case(), {"heating.fuel": "heat pump", "heating.pump.mode": "hourly"}))
    assert set(hourly["heat_pump"].ends) == {"heating.pump.grade"}
    stove = by_name(with_values(Case(), {"heating.second.fuel": "wood pellets", "heating.second.share": 10.0}))
    assert set(stove["price_of_heat"].ends) == {"prices.fuel", "heating.second.price"}


def test_only_what_an_option_has_is_drawn() -> None:
    found = by_name(Case())
    assert set(found["effectiveness"].ends) == {"options.recovery.unit.effectiveness"}
    assert set(found["filters"].ends) == {"options.recovery.unit.fan_power"}
    assert "options.today.cost.kit" not in found["cost"].ends  # nothing is bought


@pytest.mark.parametrize("place", [-2.0, -1.0, 0.0, 1.0, 2.0])
def test_entries_stay_possible_even_where_ranges_are_doubled(place: float) -> None:
    whole = filled(Case()).case
    for item in by_name(Case()).values():
        for path in item.ends:
            if path.startswith(WEATHER):
                continue
            middle = value_at(whole, path)
            drawn = float(item.drawn(path, middle, np.array(place)))
            assert drawn == pytest.approx(middle) if place == 0.0 else np.isfinite(drawn)
            assert drawn >= 0.0 or path.endswith(("imbalance", "growth"))
            assert drawn < 100.0 or not path.endswith("effectiveness")
            assert drawn <= 100.0 or not path.endswith("running_share")


def test_the_exchanger_is_drawn_by_its_transfer_units() -> None:
    # 80 % is four transfer units in balanced counterflow, e = N/(1 + N); half of them are two, which give two thirds
    # (effectiveness-NTU method, any handbook of heat transfer).
    drawn = SCALES["transfer units"](80.0, 0.5, 1.0, np.array(-1.0))
    assert float(drawn) == pytest.approx(200.0 / 3.0)
