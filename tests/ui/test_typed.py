"""Is a typed number read as its writer meant it? Marks by country: Unicode CLDR, en, de, fr, de-CH (from memory)."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.errors import InputFaults
from estimator.ui.typed import typed_number


def read(text: str, high: float = 1e7) -> float:
    return typed_number(text, where="price of gas", low=0, high=high, unit="p/kWh")


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("7.3", 7.3),
        ("7,3", 7.3),
        ("28", 28.0),
        (" 28,50 ", 28.5),
        (",5", 0.5),
        ("7.", 7.0),
        ("0,28", 0.28),
        ("0.28", 0.28),
        ("0,285", 0.285),
        ("0.285", 0.285),
        ("1.234", 1.234),
        ("1,234.5", 1234.5),
        ("1.234,5", 1234.5),
        ("1 234,5", 1234.5),
        ("1,234,567", 1234567.0),
        ("1.234.567", 1234567.0),
    ],
)
def test_both_decimal_marks_are_understood(text: str, value: float) -> None:
    assert read(text) == value


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("1,234", "as 1234 or as 1.234"),
        ("", "nothing is written"),
        ("abc", "not a number"),
        ("1e2", "not a number"),
        ("nan", "not a number"),
        ("∞", "not a number"),
        ("7.3.1", "not a number"),
        ("7,3,1", "not a number"),
        ("-1", "outside the limits"),
        ("285", "from 0 to 100 p/kWh"),
    ],
)
def test_what_cannot_be_read_is_refused_with_what_is_allowed(text: str, said: str) -> None:
    with pytest.raises(InputFaults) as refused:
        read(text, high=100)
    assert said in str(refused.value)
    assert "from 0 to 100 p/kWh" in str(refused.value)


@given(st.floats(0, 99, allow_nan=False).map(lambda value: round(value, 2)), st.sampled_from(".,"))
def test_every_price_of_two_decimals_reads_back(value: float, mark: str) -> None:
    assert read(f"{value:.2f}".replace(".", mark)) == value
