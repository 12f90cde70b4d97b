"""Does the package reproduce what was published, and would it say so if it did not?"""

from __future__ import annotations

import math
import subprocess
import sys
from pathlib import Path

import pytest

from estimator.errors import InputFaults
from estimator.evidence.amounts import UNITS, half_last_digit, inside, number_and_unit, outside
from estimator.evidence.checks import SURENESS, Case, Check, checks
from estimator.evidence.run import result, run_all
from tests.layers import RANKS

CHECKS = checks()
CASES = [
    pytest.param(check, case, id=f"{check.file.removesuffix('.toml')}-{case.number}")
    for check in CHECKS
    for case in check.cases
]
GOOD = """
group = "Moist air"
title = "Saturation pressure"
source = "A handbook"
edition = "2017"
locator = "table 3"
sureness = "from memory"
function = "air.moist.saturation_pressure"

[[case]]
inputs = { temp = "0.01 °C" }
printed = "611.7 Pa"
"""


@pytest.mark.parametrize(("check", "case"), CASES)
def test_published_value(check: Check, case: Case) -> None:
    outcome = result(check, case)
    assert outcome.passed, (
        f"{check.source}, {check.locator}: printed {case.printed}, ours {outcome.ours:.9g} {outcome.unit}, "
        f"{outcome.difference:.3g} off where {outcome.tolerance:.3g} is allowed. {outcome.fault}"
    )


def test_there_are_many_checks_of_every_sureness() -> None:
    assert len(CHECKS) >= 60
    assert {check.sureness for check in CHECKS} == set(SURENESS)


def test_run_all_tells_everything_a_reader_needs() -> None:
    results = run_all()
    assert len(results) == len(CASES)
    first = next(r for r in results if r.check.file == "moist-example-enthalpy.toml")
    assert first.unit == "J/kg"
    assert first.printed == 56_700.0
    assert first.inputs["humidity_ratio.wet_bulb"] == "20 °C"
    assert first.difference == first.ours - first.printed


def written(folder: Path, text: str) -> Path:
    (folder / "one.toml").write_text(text, encoding="utf-8")
    return folder


def only(folder: Path, text: str) -> Check:
    (check,) = checks(written(folder, text))
    return check


@pytest.mark.parametrize(
    ("printed", "passes"),
    [("611.7 Pa", True), ("611.6 Pa", False), ("611.8 Pa", False), ("612 Pa", True), ("6.1e2 Pa", True)],
)
def test_a_wrong_value_fails_by_its_last_digit(tmp_path: Path, printed: str, passes: bool) -> None:
    """611.657 Pa at the triple point of water (IAPWS, from memory)."""
    check = only(tmp_path, GOOD.replace("611.7 Pa", printed))
    assert [r.passed for r in run_all([check])] == [passes]


def test_a_function_that_fails_is_a_failed_check_and_not_the_end(tmp_path: Path) -> None:
    broken = only(tmp_path, GOOD.replace("temp =", "heat ="))
    outcomes = run_all([broken, CHECKS[0]])
    assert not outcomes[0].passed
    assert math.isnan(outcomes[0].ours)
    assert "heat" in outcomes[0].fault
    assert outcomes[1].passed


BESIDE = GOOD.replace("[[case]]", 'reference = "evidence.monthly.exponent"\n\n[[case]]').replace(
    'inputs = { temp = "0.01 °C" }\nprinted = "611.7 Pa"',
    'inputs = { time_constant = 30.0 }\nprinted = ""\nwithin = 0.5\nwhy = "two methods"',
)


def test_another_method_is_asked_with_the_same_inputs_for_the_value_to_compare_with(tmp_path: Path) -> None:
    """1 + 30/15 = 3 by the reference; another function must come within half of that, whatever it is."""
    own = BESIDE.replace("air.moist.saturation_pressure", "evidence.monthly.exponent")
    assert [r.passed for r in run_all([only(tmp_path, own)])] == [True]
    far = BESIDE.replace("air.moist.saturation_pressure", "money.energy.fuel_energy")
    (broken,) = run_all([only(tmp_path, far)])
    assert not broken.passed
    assert "time_constant" in broken.fault
    assert broken.printed == 3.0


def test_without_a_limit_and_a_reason_two_methods_are_not_compared(tmp_path: Path) -> None:
    with pytest.raises(InputFaults, match="must be a number above"):
        only(tmp_path, BESIDE.replace("within = 0.5\n", ""))
    with pytest.raises(InputFaults, match="must say why"):
        only(tmp_path, BESIDE.replace('\nwhy = "two methods"', ""))


def test_the_estimate_cannot_use_the_references() -> None:
    """Rooms that make an answer stand before the evidence, and imports run one way: tests/layers.py."""
    assert all(RANKS[room] < RANKS["evidence"] for room in ("heat", "corridor", "estimate", "compare"))


def test_many_numbers_for_one_printed_value_fail(tmp_path: Path) -> None:
    check = only(tmp_path, GOOD.replace('"0.01 °C"', '["0.01 °C", "5 °C"]'))
    assert not run_all([check])[0].passed


@pytest.mark.parametrize(
    ("old", "new", "complaint"),
    [
        ('sureness = "from memory"', 'sureness = "quite sure"', "is none of: seen in the primary text"),
        ('edition = "2017"', "", "edition: must be given in words"),
        ('edition = "2017"', 'edition = "2017"\nauthor = "me"', "author: no such field"),
        ("saturation_pressure", "saturation_presure", "nothing named 'air.moist.saturation_presure'"),
        ('"0.01 °C"', '"0.01 °R"', "'°R' in '0.01 °R' is not a unit known here"),
        ('"0.01 °C"', '{ from = "air.moist.nothing" }', "nothing named 'air.moist.nothing'"),
        ('"611.7 Pa"', "611.7", "must be text, the value as printed"),
        ('"611.7 Pa"', '"about 611 Pa"', "is not a number, a space and a unit"),
        ('"611.7 Pa"', '"611.7 Pa"\nwithin = 1.0', "a wider tolerance must say why"),
        ('"611.7 Pa"', '"611.7 Pa"\nwithin = 0.01\nwhy = "finer"', "must be a number above half of the last"),
        ('"611.7 Pa"', '"611.7 Pa"\ntolerance = 1', "tolerance: no such field"),
        ('"611.7 Pa"', '"611.7 Pa"\nwithin = 0', "must be a number above"),
        ("[[case]]", 'reference = "air.moist.nothing"\n[[case]]', "nothing named 'air.moist.nothing'"),
        ("[[case]]", 'reference = "air.moist.dew_point"\n[[case]]', "the unit alone, not '611.7 Pa'"),
        ("[[case]]", "[case]", "at least one [[case]]"),
        ("[[case]]", "[[case", "this is not TOML"),
    ],
)
def test_a_file_not_in_order_is_refused(tmp_path: Path, old: str, new: str, complaint: str) -> None:
    assert old in GOOD
    with pytest.raises(InputFaults) as refusal:
        checks(written(tmp_path, GOOD.replace(old, new)))
    assert complaint in str(refusal.value)
    assert "one.toml" in str(refusal.value)


def test_all_faults_are_told_at_once(tmp_path: Path) -> None:
    (tmp_path / "two.toml").write_text("nonsense", encoding="utf-8")
    with pytest.raises(InputFaults) as refusal:
        checks(written(tmp_path, GOOD.replace("Pa", "bar").replace('title = "Saturation pressure"', "")))
    assert len(refusal.value.faults) == 3


@pytest.mark.parametrize("unit", list(UNITS))
def test_every_unit_goes_in_and_out(unit: str) -> None:
    assert outside(inside(f"12.5 {unit}"), unit) == pytest.approx(12.5, rel=1e-12)


def test_how_exactly_a_number_was_printed() -> None:
    assert number_and_unit("1,758 GBP") == ("1758", "GBP")
    assert half_last_digit("0.0024863 kg/kg") == pytest.approx(5e-8)
    assert half_last_digit("-20.0 °C") == pytest.approx(0.05)


def test_evidence_loads_no_heavy_library() -> None:
    """Only running the checks may load what a check needs; listing the page must not cost a second."""
    code = (
        "import sys, estimator.evidence.run as run; run.checks();"
        "print([name for name in ('streamlit', 'plotly', 'pvlib', 'pandas') if name in sys.modules])"
    )
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert told.stdout.strip() == "[]"
