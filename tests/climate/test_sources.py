"""Is a climate found by its name, by a path, and by neither with a helpful word?"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

from estimator.climate.shorten import shortened
from estimator.climate.sources import demo_folder, load_year
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault

Included = Callable[[str], ClimateYear]


@pytest.mark.parametrize("reference", ["inland vale", "INLAND VALE", " Inland  vale ", "inland_vale", "inland-vale"])
def test_a_name_is_found_however_it_is_written(reference: str) -> None:
    assert load_year(reference).name == "Inland vale"


@pytest.mark.parametrize(("reference", "meant"), [("inland vail", "Inland vale"), ("Greensborough", "Greensboro")])
def test_an_unknown_name_is_answered_with_the_nearest(reference: str, meant: str) -> None:
    with pytest.raises(ClimateFault, match=f"Did you mean “{meant}”") as caught:
        load_year(reference)
    assert "Cold plain" in str(caught.value)


@pytest.mark.parametrize("reference", ["", "   ", "zzz", "a" * 5000, "nul\x00byte", "~nobody-here/x.epw"])
def test_nonsense_is_refused_in_words(reference: str) -> None:
    with pytest.raises(ClimateFault):
        load_year(reference)


def test_a_path_is_read_as_the_name_is(included: Included) -> None:
    by_path = load_year(str(demo_folder() / "upland.csv"))
    np.testing.assert_array_equal(by_path.temp_air, included("Upland").temp_air)


def test_a_path_that_does_not_exist_is_said_so(tmp_path: Path) -> None:
    with pytest.raises(ClimateFault, match="no such file"):
        load_year(str(tmp_path / "nowhere.epw"))


@pytest.mark.parametrize("hours", [2, 4, 6, 12, 24])
def test_a_shortened_year_keeps_its_means_and_its_hours(included: Included, hours: int) -> None:
    year = included("Upland")
    short = shortened(year, hours_per_block=hours)
    assert short.rows * short.weight == pytest.approx(8760.0)
    for column in ("temp_air", "wind_speed", "ghi", "relative_humidity", "pressure"):
        assert getattr(short, column).mean() == pytest.approx(getattr(year, column).mean())
    np.testing.assert_allclose(short.facades.mean(axis=1), year.facades.mean(axis=1))


def test_blocks_are_means_in_order(included: Included) -> None:
    year = included("Upland")
    short = shortened(year, hours_per_block=4)
    assert short.temp_air[1] == pytest.approx(sum(year.temp_air[4:8]) / 4.0)
    assert short.facades[2, 3] == pytest.approx(sum(year.facades[2, 12:16]) / 4.0)


@pytest.mark.parametrize("hours", [0, -4, 7, 9, 8761])
def test_blocks_that_do_not_fill_the_year_are_refused(included: Included, hours: int) -> None:
    with pytest.raises(ValueError, match="do not fill"):
        shortened(included("Upland"), hours_per_block=hours)
