"""Shared by the checks of how sure an answer is."""

import pytest

from estimator import load_year
from estimator.climate.year import ClimateYear
from estimator.draws import Ground, ground
from tests.sure.cases import SHIPPED


@pytest.fixture(scope="session")
def year() -> ClimateYear:
    """A full hourly year."""
    return load_year("Inland vale")


@pytest.fixture(scope="session")
def grounds(year: ClimateYear) -> dict[str, Ground]:
    """Cases that come with the package, surveyed."""
    return {name: ground(case, year) for name, case in SHIPPED.items()}
