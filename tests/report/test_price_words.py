"""Are prices, tariffs and their hours said and drawn as they are charged? Sentences written by hand."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.inputs.prices import Prices, Tariff
from estimator.inputs.tariff_lines import hour_prices
from estimator.money.tariffs import Window, week_of_prices
from estimator.report.clock_strip import clock_strip, stretches
from estimator.report.price_words import price_in_words, tariff_in_words

FLAT = Prices(electricity=28.0, electricity_standing=57.19)
WINDOWS = "9 at 0:30-5:30; 38.2 at 16:00-19:00 Mon-Fri"
HOURLY = Prices(electricity=28.0, electricity_standing=57.19, tariff=Tariff(kind="time of use", windows=WINDOWS))
BLOCK = Prices(electricity=28.0, electricity_standing=57.19, tariff=Tariff(kind="block", blocks="31 beyond 150"))


@pytest.mark.parametrize(
    ("hundredths", "currency", "said"),
    [(28.0, "£", "28 pence a kWh"), (0.28, "£", "0.28 pence a kWh"), (28.0, "EUR", "28 cents a kWh"),
     (28.5, "kr", "0.285 kr a kWh"), (1.0, "$", "1 cent a kWh")],
)  # fmt: skip
def test_a_slip_of_the_decimal_mark_is_seen(hundredths: float, currency: str, said: str) -> None:
    assert price_in_words(hundredths, currency) == said


@pytest.mark.parametrize(
    ("prices", "said"),
    [
        (FLAT, "Electricity costs 28 pence a kWh at every hour, and 57.2 pence a day for the connection."),
        (HOURLY, "Electricity costs 9 pence a kWh from 0:30 to 5:30 every day; 38.2 pence a kWh from 16:00 to 19:00 "
                 "from Monday to Friday; 28 pence a kWh at all other hours, and 57.2 pence a day for the connection."),
        (BLOCK, "Electricity costs 28 pence a kWh up to 150 kWh a month; 31 pence a kWh beyond 150 kWh, and 57.2 pence "
                "a day for the connection."),
    ],
)  # fmt: skip
def test_a_tariff_in_one_sentence(prices: Prices, said: str) -> None:
    assert tariff_in_words(prices) == said


@pytest.mark.parametrize("line", [WINDOWS, "12 at 22:00-2:00 Sat,Sun", "5 at 0:00-24:00; 50 at 17:15-18:45 Fri"])
def test_the_strip_draws_what_the_bill_charges(line: str) -> None:
    prices = Prices(electricity=28.0, tariff=Tariff(kind="time of use", windows=line))
    windows = [Window(price=w.price, start=w.start, stop=w.stop, days=w.days) for w in hour_prices(line)]
    week = week_of_prices(28.0, windows=windows)
    for day in range(7):
        drawn = np.array(
            [
                sum(p.price * max(min(hour + 1, p.stop) - max(hour, p.start), 0.0) for p in stretches(prices, day))
                for hour in range(24)
            ]
        )
        np.testing.assert_allclose(drawn, week[day], atol=1e-9)


@given(st.integers(0, 23), st.integers(1, 24), st.floats(1.0, 90.0))
def test_the_stretches_fill_the_day(start: int, stop: int, price: float) -> None:
    line = f"{price:.2f} at {start}:00-{stop}:00" if start != stop else ""
    found = stretches(Prices(electricity=28.0, tariff=Tariff(kind="time of use", windows=line)), 2)
    assert found[0].start == 0.0
    assert found[-1].stop == 24.0
    assert all(before.stop == after.start for before, after in pairwise(found))


def test_the_picture_is_whole_and_told() -> None:
    root = ET.fromstring(clock_strip(HOURLY))
    text = " ".join(part.text or "" for part in root.iter())
    assert "Mon to Fri" in text
    assert "Sat, Sun" in text
    assert "38.2p" in text
    assert tariff_in_words(HOURLY) in text
