"""Are numbers said with their units as style guides and handbooks write them?

Rules held here: UK Office for National Statistics style (comma over 999, no needless decimals, "500 to 900" in words);
ISO 80000-1:2022 (gap before a unit, none of it breaking). Conversions: NIST SP 811, appendix B.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.inputs.case import Case
from estimator.inputs.option import Option
from estimator.inputs.quantity import Quantity, declared
from estimator.report import cash, figures

FINITE = st.floats(min_value=-1e9, max_value=1e9)


@pytest.mark.parametrize(
    ("value", "said"),
    [
        (1_234_567.0, "1,230,000"),
        (999.6, "1,000"),
        (99.96, "100"),
        (0.1, "0.1"),
        (0.20449, "0.204"),
        (0.00001234, "0.0000123"),
        (1e-12, "0"),
        (-0.0, "0"),
        (-1500.0, "−1,500"),
        (math.nan, "not known"),
        (math.inf, "not known"),
        (None, "not known"),
    ],
)
def test_a_number_in_a_sentence(value: float | None, said: str) -> None:
    assert figures.number(value) == said


@given(FINITE)
def test_a_number_reads_back_within_half_of_its_third_digit(value: float) -> None:
    text = figures.number(value).replace(",", "").replace("−", "-")
    assert float(text) == pytest.approx(value, rel=5.01e-3, abs=1e-6)
    assert len(text.lstrip("-0.").replace(".", "").rstrip("0")) <= figures.SIGNIFICANT


@pytest.mark.parametrize(
    ("value", "unit", "said"),
    [
        (1.0, "m²", "10.8 ft²"),  # NIST SP 811: 1 ft² = 9.290 304e-2 m²
        (1.0, "m³", "35.3 ft³"),  # 1 ft³ = 2.831 685e-2 m³
        (1.0, "m", "3.28 ft"),  # 1 ft = 0.3048 m
        (25.4, "mm", "1 in"),  # 1 in = 25.4 mm
        (645.16, "mm²", "1 in²"),
        (1.699011, "m³/h", "1 cfm"),  # 1 ft³/min = 4.719 474e-4 m³/s
        (0.4719474, "l/s", "1 cfm"),
        (20.0, "°C", "68 °F"),
        (1240.0, "kWh", "1,240 kWh"),
    ],
)
def test_imperial_units(value: float, unit: str, said: str) -> None:
    assert figures.quantity(value, unit, imperial=True) == said.replace(" ", figures.GAP)


def test_a_gap_never_breaks_a_number_from_its_unit() -> None:
    said = [figures.energy(812.0), figures.flow(0.031), figures.temperature(-3.0), figures.carbon(1.5)]
    assert [text.replace("\u00a0", "_") for text in said] == ["812_kWh", "112_m³/h (31_l/s)", "−3_°C", "1.5_kg"]


def test_every_unit_that_an_entry_declares_can_be_said() -> None:
    """A unit that is not a plain word ("as named") would end in a sentence that nobody can read."""
    units = {field.unit for noun in (Case, Option) for field in declared(noun) if isinstance(field.spec, Quantity)}
    assert {"", "m²", "%", "°C", "m³/h", "p/kWh", "money"} <= units
    for unit in units:
        shown = cash.price_unit(figures.unit_shown(unit, imperial=True), "£")
        assert "money" not in shown
        assert figures.joined("7", shown).startswith("7")


@pytest.mark.parametrize(
    ("amount", "currency", "said"),
    [
        (1234.0, "£", "£1,230"),
        (0.4, "£", "£0.40"),
        (7.22, "£", "£7"),
        (-62.0, "€", "−€62"),
        (62.0, "CHF", "62_CHF"),
        (-0.2, "kr", "−0.20_kr"),
        (-0.001, "£", "£0"),
        (None, "£", "not known"),
    ],
)
def test_money_in_any_currency(amount: float | None, currency: str, said: str) -> None:
    assert cash.money(amount, currency).replace(figures.GAP, "_") == said


@given(st.floats(-5000, 5000), st.floats(0.5, 5000), st.floats(0, 1))
def test_a_figure_in_a_range_is_no_finer_than_two_figures_of_its_width(low: float, width: float, place: float) -> None:
    """GUM (JCGM 100:2008), 7.2.6: two figures of the uncertainty suffice, and the estimate is rounded to agree."""
    value = low + place * width
    near = figures.borne(value, low=low, high=low + width)
    step = 10.0 ** (math.floor(math.log10(low + width - low)) - 1)
    assert abs(near - value) <= 0.5001 * step
    assert near / step == pytest.approx(round(near / step), abs=1e-6)


@pytest.mark.parametrize(
    ("value", "low", "high", "said"),
    [
        (7.22, -58.0, 20.0, "£7"),
        (0.753, -58.0, 20.0, "£1"),
        (0.753, 0.6, 0.9, "£1"),
        (1234.0, 800.0, 1700.0, "£1,230"),
        (47.0, -300.0, 400.0, "£50"),
        (47.4, 47.4, 47.4, "£47"),
        (47.4, 3.0, math.inf, "£47"),
    ],
)
def test_a_sum_is_no_finer_than_its_range(value: float, low: float, high: float, said: str) -> None:
    assert cash.money(value, "£", within=(low, high)) == said
    assert cash.change(value, "£", within=(low, high)) == f"saves {said} a year"


def test_money_in_a_table_keeps_every_digit() -> None:
    assert [cash.exact_money(sum_, "£") for sum_ in (1234.4, -0.3, -61.6)] == ["£1,234", "£0", "−£62"]


@given(FINITE, st.floats(min_value=0.01, max_value=1e6))
def test_a_rounded_range_stays_close_to_the_range(low: float, width: float) -> None:
    near_low, near_high = cash.rounded_range(low, low + width)
    assert near_low <= near_high
    coarsest = max(width / 8, 0.025 * max(abs(low), abs(low + width)))
    assert abs(near_low - low) <= coarsest
    assert abs(near_high - (low + width)) <= coarsest


@given(st.floats(-5000, 5000), st.floats(0.5, 5000))
def test_a_range_of_savings_never_hides_a_possible_loss(low: float, width: float) -> None:
    said = cash.saving(low, low + width, "£")
    assert "−" not in said
    assert "-" not in said
    near_low, near_high = cash.rounded_range(low, low + width)
    assert (" more " in said) == (near_low < 0)
    assert ("sav" in said) == (near_high > 0 or near_low == near_high == 0)
    assert said.startswith("cannot be told") == (near_low < 0 < near_high)


@pytest.mark.parametrize(
    ("span", "said"),
    [
        (None, "cannot be worked out from these inputs"),
        (math.inf, "does not pay back"),
        (0.0, "pays at once"),
        (0.3, "pays back within a year"),
        (1.0, "pays back in about 1 year"),
        (11.6, "pays back in about 12 years"),
        (20.4, "would take a little longer than its life of 20 years"),
        (412.0, "would take more than 100 years, far beyond its life of 20 years"),
    ],
)
def test_payback_in_words(span: float | None, said: str) -> None:
    assert cash.payback(span, life=20.0) == said


def test_prices_stand_in_hundredths_where_the_currency_names_them() -> None:
    assert cash.unit_price(7.33, "£") == "7.33p/kWh"
    assert cash.unit_price(30.0, "€", per="day") == "30c/day"
    assert cash.unit_price(180.0, "kr").replace(figures.GAP, " ") == "1.80 kr/kWh"


def test_a_thickness_is_said_as_it_is_sold() -> None:
    # 25 mm sheets are sold as one inch, 100 mm as four; 21.5 mm is a pipe of no round inch. Common practice, no source.
    assert [figures.nominal(size) for size in (25.0, 21.5)] == ["25\u00a0mm", "21.5\u00a0mm"]
    kept = figures.THINKS_IMPERIAL.set(True)
    try:
        said = [figures.nominal(size) for size in (25.0, 100.0, 21.5, 0.0)]
        assert said == ["1\u00a0in", "4\u00a0in", "0.846\u00a0in", "0\u00a0in"]
        assert figures.retold("25 mm more round the ducts") == "1\u00a0in more round the ducts"
    finally:
        figures.THINKS_IMPERIAL.reset(kept)
