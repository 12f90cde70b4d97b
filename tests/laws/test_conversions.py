"""Does every conversion come back, and does it agree with the tables?"""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator import units
from tests.laws.settings import MANY

THERE_AND_BACK = sorted(
    name.removeprefix("from_") for name in vars(units) if name.startswith("from_") and hasattr(units, f"to_{name[5:]}")
)


def test_pairs_were_found() -> None:
    assert {"m3h", "lps", "cfm", "percent", "ft2", "kelvin"} <= set(THERE_AND_BACK)


@pytest.mark.parametrize("unit", THERE_AND_BACK)
@given(value=st.floats(-1e6, 1e6))
@MANY
def test_there_and_back(unit: str, value: float) -> None:
    there, back = getattr(units, f"to_{unit}"), getattr(units, f"from_{unit}")
    assert back(there(value)) == pytest.approx(value, rel=1e-12, abs=1e-9)
    assert there(back(value)) == pytest.approx(value, rel=1e-12, abs=1e-9)


@pytest.mark.parametrize("unit", THERE_AND_BACK)
def test_floats_stay_floats_and_columns_columns(unit: str) -> None:
    there = getattr(units, f"to_{unit}")
    column = np.array([[1.0], [2.5]])
    assert isinstance(there(1.0), float)
    assert there(column).shape == (2, 1)
    assert there(column)[1, 0] == there(2.5)


@pytest.mark.parametrize(
    ("converted", "printed"),
    [
        # NIST Special Publication 811 (2008), appendix B.8; from memory.
        (units.from_cfm(1.0), 4.719474e-4),  # m³/s
        (units.from_ft2(1.0), 9.290304e-2),  # m²
        (units.to_kelvin(20.0), 293.15),
        (units.to_fahrenheit(20.0), 68.0),
        # Plain arithmetic of the prefixes.
        (units.from_m3h(3600.0), 1.0),
        (units.from_lps(1000.0), 1.0),
        (units.watt_per_m3h(3.6), 1.0),
        (units.from_watt_per_lps(1.5), 1500.0),
        (units.from_mm2(1e6), 1.0),
        (units.from_cm2(1e4), 1.0),
        (units.from_mm(125.0), 0.125),
        (units.air_changes(0.05, 180.0), 1.0),
    ],
)
def test_tables_of_units(converted: float, printed: float) -> None:
    assert converted == pytest.approx(printed, rel=1e-7)
