"""Does one choice of units turn figures and fields alike, there and back? Conversions: NIST SP 811, tables B.8."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from streamlit.testing.v1 import AppTest

import estimator.ui
from estimator.leak_span import LeakageSpan
from estimator.report import charts_stock, figures, leakage_said
from estimator.report.imperial import IMPERIAL
from estimator.report.palette import LIGHT
from estimator.report.tight import explained

PAGES = Path(estimator.ui.__file__).parent / "pages"
SCRIPT = PAGES.parent / "site" / "start.py"

# What a source printed, sizes of pipes and cables, and the conductivity of a data sheet stay as they are written; wind
# is that of the height at which stations measure it.
AS_PRINTED = (
    r"[\d.]+ W/\(l/s\)", r"W/\(m K\)", r"1\.2 m apart \(4 ft\)", r"180 mm inside \(7 in\)", r"[\d.]+ mm² cable",
    r"[\d.]+ mm overflow", r"21 °C usual", r"wind at 10 m",
)  # fmt: skip


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
@pytest.mark.parametrize("unit", [*IMPERIAL, "kWh"])
def test_what_is_typed_comes_back_as_it_was(unit: str) -> None:
    for value in (0.5, 19.5, 1234.0):
        stored = figures.to_metric(unit)(value)
        assert figures.entered(stored, unit) == pytest.approx(value, rel=1e-12)


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


@pytest.mark.usefixtures("imperial")
@pytest.mark.parametrize(
    ("stored", "unit", "shown"),
    [
        (3.0, "m³/(h m²)", 0.164),  # 3 / 18.288
        (110.0, "m²", 1180.0),
        (30.0, "m³/h", 17.7),
        (1184.0 * 0.3048**2, "m²", 1184.0),  # typed as 1184 ft²
        (0.15 * 18.288, "m³/(h m²)", 0.15),
        ((68.25 - 32.0) / 1.8, "°C", 68.25),
        (3.0, "%", 3.0),
    ],
)
def test_a_field_shows_what_was_typed_as_typed_and_all_else_no_finer_than_words(
    stored: float, unit: str, shown: float
) -> None:
    assert figures.entered(stored, unit) == pytest.approx(shown, rel=1e-12)


@pytest.mark.parametrize("chosen", ["imperial", "metric"])
@pytest.mark.parametrize("address", ["tight", "weather", "worked", "fit"])
def test_a_page_speaks_in_one_system_of_units(chosen: str, address: str) -> None:
    page = AppTest.from_file(str(SCRIPT), default_timeout=600)
    page.query_params["units"] = chosen
    page.switch_page(str(PAGES / f"{address}.py"))
    page.run()
    assert not page.exception
    labels = [box.label for box in (*page.number_input, *page.text_input)]
    said = " ".join(
        [
            *labels,
            *(str(getattr(each, "body", "")) for each in page.get("html")),
            *(each.value for each in page.markdown),
        ]
    )
    other = {
        "imperial": r"°C|\d\s(?:mm|m|K|m/s|l/s)\b|m²|m³|K h|m/s|\bmm",
        "metric": r"°F|\bft\b|\bcfm|\bin²|\bmph|\bmiles",
    }
    bare = re.sub("|".join(AS_PRINTED), "", re.sub(r"<style>.*?</style>|<[^>]*>", " ", said, flags=re.DOTALL))
    found = [bare[max(0, hit.start() - 60) : hit.end() + 30] for hit in re.finditer(other[chosen], bare)]
    assert found == []


def test_a_limit_rounded_for_the_screen_is_the_limit_itself_once_typed() -> None:
    page = AppTest.from_file(str(SCRIPT), default_timeout=600)
    page.query_params["units"] = "imperial"
    page.run()
    box = next(box for box in page.number_input if box.label == "Floor area, ft²")
    box.set_value(box.max).run()
    assert not page.exception
    assert not page.error
    box = next(box for box in page.number_input if box.label == "Floor area, ft²")
    assert box.value == box.max
