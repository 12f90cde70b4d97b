"""Shared by the checks of the leaky-house question."""

import pytest

from estimator import load_year
from estimator.climate.year import ClimateYear


@pytest.fixture(scope="session")
def year() -> ClimateYear:
    """A full hourly year."""
    return load_year("Inland vale")
