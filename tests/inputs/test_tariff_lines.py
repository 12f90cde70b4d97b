"""Are lines of prices by hour and by amount read as written, and every fault in them told at once?"""

from __future__ import annotations

import typing

import pytest

from estimator.inputs import check
from estimator.inputs.case import Case
from estimator.inputs.places import with_values
from estimator.inputs.prices import DaylightSaving, LoadShape, TariffKind, Weekday
from estimator.inputs.tariff_lines import DAYS, block_prices, hour_prices
from estimator.money.clock import DAYLIGHT_SAVING
from estimator.money.household import SHAPES
from estimator.money.tariffs import TARIFFS


def test_windows_as_written() -> None:
    every, evening, night = hour_prices(" 9 at 0:30-5:30 ;38.25 at 16:00-19:00 mon-fri; 15 at 22:00-2:00 Sat, Sun; ")
    assert every == (9.0, 0.5, 5.5, (0, 1, 2, 3, 4, 5, 6))
    assert evening == (38.25, 16.0, 19.0, (0, 1, 2, 3, 4))
    assert night == (15.0, 22.0, 2.0, (5, 6))
    assert hour_prices("7 at 0:00-24:00 Fri-Mon")[0].days == (0, 4, 5, 6)
    assert hour_prices("  ") == () == block_prices("")


def test_blocks_as_written() -> None:
    assert block_prices("31 beyond 150; 45.5 beyond 330;") == ((31.0, 150.0), (45.5, 330.0))


def test_every_fault_of_a_line_at_once() -> None:
    with pytest.raises(ValueError, match="no price") as found:
        hour_prices("9,5 at 0:30-5:30; 12 at 25:00-26:10 Mon-Fry; cheap at night; 8 at 3:00-3:00")
    said = str(found.value)
    for part in (
        '"9,5"',
        "decimal point",
        '"25:00"',
        '"26:10"',
        '"Mon-Fry"',
        '"cheap at night"',
        "begins when it ends",
    ):
        assert part in said
    with pytest.raises(ValueError, match="no price") as found:
        block_prices("31 beyond 150; 1e9 beyond 200; 45 beyond 0; 12 beyond 90; 400 above 3")
    said = str(found.value)
    for part in ('"1e9"', '"0" in "45 beyond 0"', "90 kWh does not follow 150", '"400 above 3"'):
        assert part in said


@pytest.mark.parametrize("line", ["inf at 0:00-1:00", "-3 at 0:00-1:00", "nan at 0:00-1:00", "301 at 0:00-1:00", ";;"])
def test_no_price_is_read_that_is_none(line: str) -> None:
    with pytest.raises(ValueError, match="no price"):
        hour_prices(line)


def test_choices_are_those_that_can_be_worked_out() -> None:
    assert typing.get_args(DaylightSaving) == tuple(DAYLIGHT_SAVING)
    assert typing.get_args(TariffKind) == tuple(TARIFFS)
    assert typing.get_args(LoadShape) == tuple(SHAPES)
    assert tuple(day[:3] for day in typing.get_args(Weekday)) == DAYS


KIND = "prices.tariff.kind"
PUMP = "heating.pump."


@pytest.mark.parametrize(
    ("values", "where", "part"),
    [
        ({KIND: "time of use"}, "prices.tariff.windows", "missing"),
        ({KIND: "block"}, "prices.tariff.blocks", "missing"),
        ({"prices.tariff.windows": "9 at 0:30-5:30"}, "prices.tariff.windows", 'the tariff is "flat"'),
        ({KIND: "block", "prices.tariff.blocks": "31 above 1"}, "prices.tariff.blocks", "31 beyond 150"),
        ({"heating.fuel": "direct electric", "prices.fuel": 9.0, "roof.size": 3.0}, "prices.fuel", "share its meter"),
        ({f"{PUMP}mode": "hourly"}, f"{PUMP}mode", "needs a heat pump"),
        ({f"{PUMP}capacity": 4.0}, f"{PUMP}capacity", "heats the home"),
        ({f"{PUMP}design_outdoors": 15.0}, f"{PUMP}design_outdoors", "must lie below"),
        ({f"{PUMP}mild_flow": 55.0}, f"{PUMP}mild_flow", "more than the 50"),
        ({"heating.second.fuel": "wud pellets"}, "heating.second.fuel", 'Did you mean "wood pellets"?'),
        ({"prices.carbon_path": "falling", "prices.carbon_year": 2040}, "prices.carbon_end_year", "not after 2040"),
    ],
)
def test_one_contradiction(values: dict[str, object], where: str, part: str) -> None:
    (fault,) = check.faults(with_values(Case(), values))
    assert fault.where == where
    assert part in fault.what


def test_what_belongs_together_is_no_fault() -> None:
    values = {
        KIND: "time of use", "prices.tariff.windows": "9 at 0:30-5:30",
        "heating.fuel": "heat pump", f"{PUMP}mode": "hourly",
        f"{PUMP}capacity": 6.0, "roof.size": 4.0, "prices.electricity": 25.0, "prices.fuel": 25.0,
    }  # fmt: skip
    assert check.faults(with_values(Case(), values)) == []
