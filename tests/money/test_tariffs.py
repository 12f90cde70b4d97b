"""Do bills agree with the published ones, and with a meter read hour by hour?"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import numpy as np
import pytest

from estimator.errors import InputFaults
from estimator.money.clock import DAYLIGHT_SAVING, clock
from estimator.money.tariffs import (
    TARIFFS,
    WORKING_DAYS,
    Block,
    Flat,
    Tariff,
    TimeOfUse,
    Window,
    flat_bill,
    week_of_prices,
)
from estimator.units import MONTH_DAYS

DRAW = np.random.default_rng(20)
USE = DRAW.gamma(1.2, 0.4, 8760)
SALE = DRAW.gamma(0.3, 0.5, 8760)
# 2023 began on a Sunday.
LONDON = clock(first_weekday=6, daylight_saving=DAYLIGHT_SAVING["Europe"])
NIGHT = Window(price=0.09, start=0.5, stop=5.5)
EVENING = Window(price=0.41, start=16.0, stop=19.0, days=WORKING_DAYS)
# Runs past midnight at the weekend.
WEEKEND = Window(price=0.15, start=22.0, stop=2.0, days=(5, 6))


# Ofgem, typical household at the price cap, Great Britain, direct debit, VAT included: 2,700 kWh and 11,500 kWh.
@pytest.mark.parametrize(
    ("electricity", "day", "gas", "gas_day", "published"),
    [
        (0.2769, 0.5475, 0.0593, 0.3509, 1758),  # January to March 2026, secondary text
        (0.2467, 0.5721, 0.0574, 0.2909, 1641),  # April to June 2026, secondary text
    ],
)
def test_bill_at_the_price_cap(electricity: float, day: float, gas: float, gas_day: float, published: float) -> None:
    """To the pound; published unit rates are rounded to 0.01 p, which moves the bill by up to 0.7 pounds."""
    even = np.full(8760, 1 / 8760)
    bill = Flat(price=electricity, standing_per_day=day).bill(2700 * even)
    bill += Flat(price=gas, standing_per_day=gas_day).bill(11500 * even)
    assert bill == pytest.approx(published, abs=1.0)
    whole = flat_bill(2700.0, price=electricity, standing_per_day=day)
    assert whole + flat_bill(11500.0, price=gas, standing_per_day=gas_day) == pytest.approx(published, abs=1.0)


def test_time_of_use_by_brute_force() -> None:
    """Each hour of 2023 in London by the calendar of the standard library, in quarters, so that half hours count."""
    week = week_of_prices(0.28, windows=[NIGHT, EVENING, WEEKEND])
    ours = TimeOfUse(week=week, clock=LONDON, standing_per_day=0.5, export_price=0.12)
    cost = 365 * 0.5
    for h in range(8760):
        moment = (datetime(2023, 1, 1, tzinfo=UTC) + timedelta(hours=h)).astimezone(ZoneInfo("Europe/London"))
        for quarter in range(4):
            time = moment.hour + quarter / 4
            price = 0.28
            if 0.5 <= time < 5.5:
                price = 0.09
            if moment.weekday() < 5 and 16 <= time < 19:
                price = 0.41
            if moment.weekday() >= 5 and (time >= 22 or time < 2):
                price = 0.15
            cost += float(USE[h]) / 4 * price
        cost -= float(SALE[h]) * 0.12
    assert ours.bill(USE, exported=SALE) == pytest.approx(cost, rel=1e-12)


@pytest.mark.parametrize("monthly", [True, False])
def test_block_by_brute_force(monthly: bool) -> None:
    """A meter that turns 1 Wh at a time would be slow: each hour's use is laid into the blocks as it comes."""
    prices, limits = (0.20, 0.30, 0.45), (150.0, 330.0)
    period_days = MONTH_DAYS if monthly else (365,)
    ours = Block(prices=prices, limits=limits, period_days=period_days, standing_per_day=0.4, export_price=0.05)
    cost, meter, month = 365 * 0.4, 0.0, 1
    for h in range(8760):
        moment = datetime(2023, 1, 1) + timedelta(hours=h)
        if monthly and moment.month != month:
            month, meter = moment.month, 0.0
        left = float(USE[h])
        while left > 0.0:
            block = 0 if meter < 150.0 else 1 if meter < 330.0 else 2
            room = (150.0, 330.0, float("inf"))[block] - meter
            taken = min(left, room)
            cost += taken * prices[block]
            meter += taken
            left -= taken
        cost -= float(SALE[h]) * 0.05
    assert ours.bill(USE, exported=SALE) == pytest.approx(cost, rel=1e-9)


def kinds(price: Any) -> dict[str, Tariff]:
    return {
        "flat": Flat(price=price, standing_per_day=0.3, export_price=0.1),
        "time of use": TimeOfUse(
            week=np.ones((7, 24)) * np.asarray(price)[..., None, None],
            clock=LONDON,
            standing_per_day=0.3,
            export_price=0.1,
        ),
        "block": Block(
            prices=(price, price), limits=(100.0,), period_days=MONTH_DAYS, standing_per_day=0.3, export_price=0.1
        ),
    }


def test_every_kind_is_flat_at_one_price() -> None:
    assert set(kinds(0.2)) == set(TARIFFS)
    for name, tariff in kinds(0.2).items():
        assert isinstance(tariff, TARIFFS[name])
        assert tariff.bill(np.full(8760, 0.5), exported=np.full(8760, 0.1)) == pytest.approx(876 + 365 * 0.3 - 87.6)


def test_many_homes_at_their_own_prices() -> None:
    use, price = np.stack([USE, 2 * USE, SALE]), np.array([0.1, 0.2, 0.3])
    for name, tariff in kinds(price).items():
        alone = [kinds(float(p))[name].bill(row) for p, row in zip(price, use, strict=True)]
        np.testing.assert_allclose(tariff.bill(use), alone)


def test_shorter_year_of_even_rows_costs_the_same() -> None:
    """Where use is even within four hours, rows of four hours lose nothing."""
    rows = DRAW.gamma(1.0, 1.0, 2190)
    week = week_of_prices(0.28, windows=[NIGHT, EVENING])
    for tariff in (
        TimeOfUse(week=week, clock=LONDON),
        Block(prices=(0.2, 0.4), limits=(90.0,), period_days=MONTH_DAYS),
    ):
        assert tariff.bill(rows) == pytest.approx(tariff.bill(np.repeat(rows / 4, 4)))


def test_faults_are_told_all_at_once() -> None:
    with pytest.raises(InputFaults) as found:
        Block(prices=(0.1, 0.2), limits=(50.0, 20.0), period_days=(30,))
    assert len(found.value.faults) == 3
    with pytest.raises(InputFaults, match="24 prices"):
        TimeOfUse(week=np.zeros(24), clock=LONDON)
    with pytest.raises(InputFaults, match="0 to 24"):
        week_of_prices(0.2, windows=[Window(price=0.1, start=0.0, stop=25.0)])


def test_a_net_load_is_refused() -> None:
    with pytest.raises(ValueError, match="part a net load"):
        Flat(price=0.2).bill(USE - 1.0)
    with pytest.raises(ValueError, match="part a net load"):
        Flat(price=0.2).bill(np.full(8760, np.nan))


def test_periods_must_end_with_rows() -> None:
    with pytest.raises(ValueError, match="billing periods"):
        Block(prices=(0.1,), limits=(), period_days=MONTH_DAYS).bill(np.ones(24))
