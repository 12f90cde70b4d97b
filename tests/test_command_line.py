"""Does the command line say all, refuse plainly, and agree with the library?"""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from estimator import load_year, names, read_case, run
from estimator.__main__ import main
from estimator.inputs.template import example_text
from estimator.report.quantities import COMPARED, MONTHLY, YEARLY
from tests.climates import OF_EVERY_KIND

# What an outsider must be able to read for every option, whatever the keys are called here.
NAMED_QUANTITIES = {
    "air_delivered", "infiltration", "effective_efficiency", "balance_temperature", "degree_hours", "heating_demand",
    "fan_electricity", "frost_electricity", "electricity", "fuel_energy", "household_bill", "household_carbon",
}  # fmt: skip


@pytest.fixture
def example(tmp_path: Path) -> Path:
    file = tmp_path / "example.toml"
    file.write_text(example_text(), encoding="utf-8")
    return file


def output(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, str, str]:
    status = main(arguments)
    captured = capsys.readouterr()
    return status, captured.out, captured.err


@pytest.mark.parametrize("climate", OF_EVERY_KIND)
def test_example_is_estimated_on_every_kind_of_climate(
    climate: str, example: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status, out, err = output(capsys, "estimate", str(example), "--climate", climate, "--json")
    assert (status, err) == (0, "")
    made = json.loads(out)
    case, year = read_case(example), load_year(climate)
    result = run(case, year)
    for name, comparison in result.against_baseline.items():
        yearly = made["comparisons"]["against_baseline"][name]["yearly"]
        assert yearly["net_saving"]["value"] == pytest.approx(comparison.net_saving, rel=1e-12)
        low, high = made["comparisons"]["against_baseline"][name]["over_leakage"]["net_saving"]["values"]
        assert low <= comparison.net_saving <= high


def test_document_has_every_quantity_by_year_and_month(example: Path, capsys: pytest.CaptureFixture[str]) -> None:
    made: dict[str, Any] = json.loads(output(capsys, "estimate", str(example), "--json")[1])
    assert {item.key for item in YEARLY} >= NAMED_QUANTITIES
    for option in made["options"].values():
        assert set(option["yearly"]) == {item.key for item in YEARLY}
        assert set(option["monthly"]) == {key for key, _, _ in MONTHLY}
        assert all(len(row["values"]) == 12 for row in option["monthly"].values())
    for found in made["comparisons"]["against_baseline"].values():
        assert set(found["yearly"]) == {item.key for item in COMPARED}
        assert found["payback"]
    assert all(item["tag"] in {"measured", "typical", "assumed"} for item in made["inputs"])
    assert all(item["source"] for item in made["inputs"] if item["path"].startswith(("home.", "leakage.", "prices.")))
    assert made["cautions"]
    assert made["statement"]


def test_months_add_up_to_the_year(example: Path, capsys: pytest.CaptureFixture[str]) -> None:
    made: dict[str, Any] = json.loads(output(capsys, "estimate", str(example), "--json")[1])
    pairs = {
        "heating_demand": "heating_demand", "electricity": "electricity", "fuel_energy": "fuel_energy",
        "bill": "household_bill", "carbon": "household_carbon", "degree_hours": "degree_hours",
    }  # fmt: skip
    for option in made["options"].values():
        for month, year in pairs.items():
            total = sum(option["monthly"][month]["values"])
            assert total == pytest.approx(option["yearly"][year]["value"], rel=1e-9), month


def test_table_names_baselines_range_and_prices(example: Path, capsys: pytest.CaptureFixture[str]) -> None:
    status, out, err = output(capsys, "estimate", str(example))
    assert (status, err) == (0, "")
    first = out.splitlines()[0]
    assert first.startswith("Safety before money")
    assert "against new plain extract" in out
    for said in ("tested", "price cap", "licensed", "not an offer", "Method error: of the heat saved"):
        assert said in out


def test_all_faults_at_once_and_nothing_on_stdout(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "case.toml"
    file.write_text('version = 1\n[home]\nfloor_area = -1\nstoreys = "two"\n', encoding="utf-8")
    status, out, err = output(capsys, "estimate", str(file), "--climate", "Atlantis")
    assert (status, out) == (2, "")
    for said in ("home.floor_area", "home.storeys", "Atlantis"):
        assert said in err
    assert "Traceback" not in err


def test_form_example_schema_and_climates_print(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    form = output(capsys, "form")[1]
    file = tmp_path / "form.toml"
    file.write_text(form, encoding="utf-8")
    assert output(capsys, "estimate", str(file))[0] == 0
    assert output(capsys, "climates")[1].split("\n")[:-1] == names()
    assert json.loads(output(capsys, "schema")[1])["type"] == "object"
    assert output(capsys, "example")[1].strip() == example_text().strip()


def test_whole_process_answers_without_the_dashboard_or_a_library_of_statistics_loaded() -> None:
    code = (
        "import sys, estimator.__main__ as m; m.main(['estimate', 'example']); "
        "print(sorted({'streamlit', 'plotly', 'scipy.stats'} & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, encoding="utf-8", check=True)
    assert done.stdout.splitlines()[-1] == "[]"
