"""What does the package state of its own error, and is that what a run finds?

`python -m tests.accuracy --write` writes estimator/data/method_error.toml, which the dashboard shows.
"""

from __future__ import annotations

import datetime

import numpy as np

from estimator import load_year
from estimator.climate.sources import DEMO_CLIMATES
from tests.accuracy.homes import Held, held, sample
from tests.sources import ROOT

FILE = ROOT / "estimator" / "data" / "method_error.toml"
REFERENCE = "simple hourly method of ISO 13790:2008 (clause 7.2.2, annex C), programmed apart from the estimator"
COMMAND = "python -m tests.accuracy --write"
HOMES = 1000
DRAW = 13790
# The two constants of the memory were fitted on other homes, but on these two years.
FITTED = ("Greensboro", "Sand Point")
CLIMATES = (*DEMO_CLIMATES, *FITTED)


def figures(result: Held) -> dict[str, float]:
    """Errors of one climate as shares, named as in the file."""
    error = np.abs(result.saving_error)
    return {
        "median": float(np.median(error)),
        "nineteen_in_twenty": float(np.quantile(error, 0.95)),
        "worst": float(np.max(error)),
        "bias": float(np.median(result.saving_error)),
        "demand_bias": float(np.median(result.demand_error)),
    }


def write() -> None:
    """Run all homes on all climates and write down what came out."""
    homes = sample(HOMES, draw=DRAW)
    lines = [
        f'date = "{datetime.date.today().isoformat()}"',
        f'command = "{COMMAND}"',
        f'reference = "{REFERENCE}"',
        f"homes = {HOMES}",
    ]
    for name in CLIMATES:
        year = load_year(name)
        found = figures(held(homes, year))
        lines += ["", "[[climate]]", f'climate = "{name}"']
        lines += [f"invented = {str(year.invented).lower()}", f"fitted = {str(name in FITTED).lower()}"]
        lines += [f"{key} = {value:.5f}" for key, value in found.items()]
    FILE.write_text("\n".join(lines) + "\n", encoding="utf-8", newline="\n")
