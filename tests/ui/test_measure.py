"""Does one choice of units turn figures and fields alike, there and back? Conversions: NIST SP 811, tables B.8."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import pytest
from streamlit.testing.v1 import AppTest

from estimator.leak_span import LeakageSpan
from estimator.report import charts_stock, figures, leakage_said
from estimator.report.palette import LIGHT
from estimator.report.tight import explained


@pytest.fixture
def imperial() -> Iterator[None]:
    before = figures.THINKS_IMPERIAL.set(True)
    yield
    figures.THINKS_IMPERIAL.reset(before)


@pytest.mark.usefixtures("imperial")
@pytest.mark.parametrize(
    ("value", "unit", "said"),
    [
        (110.0, "m²", "1,180 ft²"),
        (20.0, "°C", "68 °F"),
        (100.0, "m³/h", "58.9 cfm"),
        (150.0, "mm", "5.91 in"),
        (5.0, "m³/(h m²)", "0.273 cfm/ft²"),
        (1.0, "W/(l/s)", "0.472 W/cfm"),
        (1000.0, "kWh", "1,000 kWh"),
    ],
)
def test_a_figure_is_said_in_the_units_asked_for(value: float, unit: str, said: str) -> None:
    assert figures.quantity(value, unit).replace("\u00a0", " ") == said
    assert figures.quantity(value, unit, imperial=False).replace("\u00a0", " ").endswith(unit)


@pytest.mark.usefixtures("imperial")
@pytest.mark.parametrize("unit", [*figures.IMPERIAL, "kWh"])
def test_what_is_typed_comes_back_as_it_was(unit: str) -> None:
    for value in (0.5, 19.5, 1234.0):
        assert figures.to_metric(unit)(figures.entered(value, unit)) == pytest.approx(value, rel=1e-4, abs=1e-3)


@pytest.mark.usefixtures("imperial")
def test_axes_and_sentences_of_leakage_and_weather_follow_the_choice() -> None:
    span = LeakageSpan(low=5.0, middle=8.5, high=14.0, tag="typical", source="")
    assert leakage_said.words(span).replace("\u00a0", " ") == (
        "0.46 cfm/ft² at 50 Pa, between 0.27 and 0.77: not tested, an estimate"  # 1 cfm/ft² is 18.288 m³/(h m²)
    )
    assert explained().startswith("Leakage is said here in cfm/ft² at 50 Pa: cubic feet")
    drawn = charts_stock.leakage_and_saving(
        np.array([18.288]), np.array([10.0]), np.array([next(iter(charts_stock._MARKS))]), names=["a"], currency="£",
        palette=LIGHT,
    )  # fmt: skip
    assert "cfm/ft²" in drawn.layout.xaxis.title.text
    assert drawn.data[0].x == pytest.approx((1.0,), rel=1e-4)


@pytest.mark.usefixtures("imperial")
def test_the_page_of_the_weather_takes_its_base_in_the_units_asked_for() -> None:
    page = AppTest.from_string(
        "from estimator.report import figures\n"
        "from estimator.ui import two_climates\n"
        "figures.THINKS_IMPERIAL.set(True)\n"
        "two_climates._follow(figures.entered(16.5, '°C'), key='base')\n"
    ).run()
    assert page.session_state["base"] == pytest.approx(61.7)  # 16.5 * 1.8 + 32
    assert not page.exception


def test_nobody_who_has_not_asked_gets_them() -> None:
    assert figures.entered(110.0, "m²") == 110.0
    assert figures.quantity(20.0, "°C") == "20\u00a0°C"
