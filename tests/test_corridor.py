"""Do five whole dwellings still come out as they did, and if not, does the file say why?

The figures are arithmetic pins: they guard against changes that nobody meant, and prove nothing by themselves (the
published checks, the laws and the reference method do that). Each dwelling is a file of `dwellings/`. Its newest
`change` carries a reason and the digest of the figures, so that no figure moves without a line that says why.

`python -m tests.test_corridor` prints the figures and digests as they would be now.
"""

from __future__ import annotations

import copy
import hashlib
import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from estimator import Result, case_from_dict, load_year, run
from estimator.units import to_m3h

FOLDER = Path(__file__).parent / "dwellings"
NAMES = sorted(path.stem for path in FOLDER.glob("*.toml"))
TOLERANCE = 1e-5  # relative; the pins have six digits

Figures = dict[str, dict[str, float]]


@cache
def dwelling(name: str) -> Mapping[str, Any]:
    """One file: what, climate, changes, case, and the figures expected."""
    return tomllib.loads((FOLDER / f"{name}.toml").read_text(encoding="utf-8"))


@cache
def result(name: str) -> Result:
    """The dwelling estimated now."""
    return run(case_from_dict({"version": 1, **dwelling(name)["case"]}), load_year(dwelling(name)["climate"]))


def figures(found: Result) -> Figures:
    """What is pinned of each option: air, heat, electricity, bill, carbon, and both comparisons."""
    pinned: Figures = {}
    for name, option in found.estimate.options.items():
        pinned[name] = {
            "air_delivered_m3h": to_m3h(float(np.mean(option.air.delivered))),
            "infiltration_m3h": to_m3h(float(np.mean(option.air.infiltration))),
            "effective_efficiency": option.heat.effective_efficiency.item(),
            "heat_loss_per_kelvin": option.heat.loss_coefficient.item(),
            "heating_demand": option.heating_demand,
            "fan_electricity": option.fan_electricity,
            "frost_electricity": option.frost_electricity,
            "household_bill": option.household_bill,
            "household_carbon": option.household_carbon,
            "capital": option.capital,
        }
    for against, comparisons in (("baseline", found.against_baseline), ("today", found.against_today)):
        for name, comparison in comparisons.items():
            pinned[f"{name} against {against}"] = {
                "heat_saved": comparison.heat_saved,
                "net_saving": comparison.net_saving,
                "carbon_saving": comparison.carbon_saving,
                "simple_payback": comparison.simple_payback,
            }
    return pinned


def written(found: Figures) -> str:
    """The figures as a dwelling's file has them, six digits each."""
    lines = []
    for group, values in found.items():
        lines.append(f'[expected."{group}"]')
        lines += [f"{name} = {float(f'{value:.6g}')}" for name, value in values.items()]
    return "\n".join(lines) + "\n"


def digest(expected: Figures) -> str:
    """Eight letters that change with any pinned figure."""
    return hashlib.sha256(written(expected).encode()).hexdigest()[:8]


def test_five_dwellings() -> None:
    assert len(NAMES) == 5


@pytest.mark.parametrize("name", NAMES)
def test_dwelling_is_as_pinned(name: str) -> None:
    expected, found = dwelling(name)["expected"], figures(result(name))
    assert found.keys() == expected.keys()
    for group, values in expected.items():
        assert found[group] == pytest.approx(values, rel=TOLERANCE, abs=1e-9), group


@pytest.mark.parametrize("name", NAMES)
def test_no_pin_moves_without_a_reason(name: str) -> None:
    """The newest change names the digest of the figures beside it; every change says why, each once."""
    changes = dwelling(name)["change"]
    assert changes[-1]["digest"] == digest(dwelling(name)["expected"])
    assert all(len(change["why"]) > 10 for change in changes)
    assert len({change["digest"] for change in changes}) == len(changes)


def test_the_dwellings_tell_what_anyone_would_expect() -> None:
    """A cubic metre saves most in the tight house in the cold; the better plate stays better; the old leaks most."""
    options = {name: result(name).estimate.options for name in NAMES}
    saved = {
        name: result(name).against_baseline["recovery"].heat_saved
        / float(np.mean(options[name]["recovery"].air.balanced))
        for name in NAMES
    }
    assert saved["2_leaky_terrace"] < saved["5_all_by_hand"] < saved["3_very_low_energy"]
    efficiency = {name: options[name]["recovery"].heat.effective_efficiency.item() for name in NAMES}
    assert efficiency["1_as_it_opens"] < efficiency["3_very_low_energy"] < 0.9
    area = {
        name: result(name).estimate.home.leakage_area / result(name).estimate.case.home.floor_area for name in NAMES
    }
    assert max(area, key=lambda name: float(area[name])) == "2_leaky_terrace"


def test_the_loft_loses_what_a_cupboard_keeps() -> None:
    """The same unit and ducts taken from the cold loft into the house recover more."""
    said = copy.deepcopy(dict(dwelling("5_all_by_hand")["case"]))
    said["options"]["recovery"]["ducts"] |= {"standing": "inside", "supply": 0.0, "extract": 0.0}
    indoors = run(case_from_dict({"version": 1, **said}), load_year(dwelling("5_all_by_hand")["climate"]))
    loft = result("5_all_by_hand").estimate.options["recovery"]
    assert indoors.estimate.options["recovery"].heat.effective_efficiency > loft.heat.effective_efficiency
    assert indoors.estimate.options["recovery"].heating_demand < loft.heating_demand


if __name__ == "__main__":
    for each in NAMES:
        now = figures(result(each))
        print(f"# {each}.toml: digest {digest(now)}", written(now), sep="\n")
