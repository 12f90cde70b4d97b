"""Are the UK regions and tables of one's own read as they stand, and refused in words?"""

from __future__ import annotations

import csv
import re
from importlib.resources import files
from pathlib import Path

import numpy as np
import pytest

import estimator.climate.monthly_tables as tables
from estimator.climate.sources import load_year, names
from estimator.errors import ClimateFault
from estimator.units import Array
from tests.accuracy.monthly import months_of

EXAMPLE = "\n".join(line[4:] for line in (tables.__doc__ or "").splitlines() if line.startswith("    "))
ROWS = list(csv.DictReader((files("estimator") / "data/uk_monthly_normals.csv").read_text("utf-8").splitlines()))


def figures(region: str, quantity: str) -> Array:
    (row,) = [row for row in ROWS if row["name"] == region and row["quantity"] == quantity]
    return np.array([float(value) for value in list(row.values())[-12:]])


def test_the_average_and_21_regions_are_there() -> None:
    assert len(tables.uk_regions()) == 22
    assert set(tables.uk_regions()) == {row["name"] for row in ROWS} <= set(names())


@pytest.mark.parametrize("region", ["UK average", "Thames valley", "Wales", "Shetland"])
@pytest.mark.parametrize("quantity", ["temp_air", "wind_speed", "ghi"])
def test_a_region_has_the_means_of_its_table(region: str, quantity: str) -> None:
    made = months_of(getattr(load_year(region), quantity))
    np.testing.assert_allclose(made, figures(region, quantity), atol=1e-9)


def test_thames_valley_and_shetland_as_printed() -> None:
    """SAP 2012 (v9.92), Appendix U, tables U1 and U2: Thames valley January 5.1 °C, Shetland January 9.5 m/s."""
    assert tables.uk_regions()["Thames valley"].temp_air[0] == 5.1
    assert (tables.uk_regions()["Shetland"].wind_speed or ())[0] == 9.5


@pytest.mark.parametrize(("region", "said"), [("South-west England", "Mar: .*111 or 110"), ("Borders", "Sep: .*11 W")])
def test_doubtful_figures_are_told_where_they_are_used(region: str, said: str) -> None:
    assert any(re.search(said, repair) for repair in load_year(region).repairs)
    assert not any("copies of the table" in repair for repair in load_year("Wales").repairs)


def test_what_is_assumed_is_told() -> None:
    year = load_year("thames-valley")
    assert "longitude, altitude" in year.source
    assert "assumed" in year.source
    assert not year.invented


def test_a_table_of_ones_own_is_a_climate(tmp_path: Path) -> None:
    file = tmp_path / "fernby.toml"
    file.write_text(EXAMPLE, encoding="utf-8")
    year = load_year(str(file))
    assert year.name == "Fernby"
    assert year.altitude == 120.0
    assert months_of(year.temp_air)[0] == pytest.approx(4.1)
    assert "monthly means" in year.source


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("latitude = 52.0", "latitude = true", "latitude: this must be a number"),
        ("latitude = 52.0", "", "latitude: this must be a number"),
        ("[4.1, ", "[", "temp_air: 11 values"),
        ("[4.1, ", '["4.1", ', "temp_air: this must be twelve numbers"),
        ("[4.1, ", "[39.4, 62.0, ", "13 values"),
        ("[4.8, ", "[480, ", "wind_speed, Jan: 480 m/s is not within"),
        ("temp_air", "temperature", "temperature: there is no such entry"),
        ("[4.1, ", "[4.1 ", "cannot be read"),
        ("utc_offset = 0.0 ", "utc_offset = nan ", "utc offset|utc_offset"),
    ],
)
def test_faults_of_a_table_name_the_entry(tmp_path: Path, old: str, new: str, said: str) -> None:
    file = tmp_path / "fernby.toml"
    assert old in EXAMPLE
    file.write_text(EXAMPLE.replace(old, new, 1), encoding="utf-8")
    with pytest.raises(ClimateFault, match=said):
        load_year(str(file))


def test_all_faults_come_at_once(tmp_path: Path) -> None:
    file = tmp_path / "fernby.toml"
    file.write_text('name = 3\ntemp_air = "cold"\n', encoding="utf-8")
    with pytest.raises(ClimateFault) as caught:
        load_year(str(file))
    assert len(caught.value.faults) == 8


def test_no_such_table_is_said_so(tmp_path: Path) -> None:
    with pytest.raises(ClimateFault, match="no such file"):
        load_year(str(tmp_path / "none.toml"))
