"""Does one choice of units turn figures and fields alike, there and back? Conversions: NIST SP 811, tables B.8."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from estimator.report import figures


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


def test_nobody_who_has_not_asked_gets_them() -> None:
    assert figures.entered(110.0, "m²") == 110.0
    assert figures.quantity(20.0, "°C") == "20\u00a0°C"
