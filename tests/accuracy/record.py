"""What does the package state of its own error, and is that what a run finds?

`python -m tests.accuracy --write FOLDER` writes estimator/data/method_error.toml, which the dashboard shows. FOLDER
holds the years of `real_years`; those that the package carries are not enough, for the method was fitted on them.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator
from pathlib import Path

import numpy as np

from estimator import load_year
from estimator.climate.sources import DEMO_CLIMATES
from estimator.climate.year import ClimateYear
from tests.accuracy.homes import Held, held, sample
from tests.accuracy.real_years import REAL_UNFITTED
from tests.sources import ROOT

FILE = ROOT / "estimator" / "data" / "method_error.toml"
REFERENCE = "simple hourly method of ISO 13790:2008 (clause 7.2.2, annex C), programmed apart from the estimator"
COMMAND = "python -m tests.accuracy --write FOLDER"
HOMES = 1000
DRAW = 13790
# The two constants of the memory were fitted on other homes, but on these two years.
FITTED = ("Greensboro", "Sand Point")
CLIMATES = (*REAL_UNFITTED, *DEMO_CLIMATES, *FITTED)
# A home is called out where it differs by more than both.
FAR, FAR_ENERGY = 0.06, 60.0  # share of the saving; kWh
BANDS = (0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 1.0)  # share of the loss met by heating, upper ends


def figures(result: Held) -> dict[str, float]:
    """Errors of one climate as shares, named as in the file."""
    error = np.abs(result.saving_error)
    away = np.abs(result.saved - result.saved_reference)
    return {
        "median": float(np.median(error)),
        "nineteen_in_twenty": float(np.quantile(error, 0.95)),
        "worst": float(np.max(error)),
        "beyond": int(np.sum((error > FAR) & (away > FAR_ENERGY))),
        "bias": float(np.median(result.saving_error)),
        "demand_bias": float(np.median(result.demand_error)),
    }


def bands(results: Iterable[Held]) -> Iterator[dict[str, float]]:
    """Errors of all climates together by the share of the loss that heating meets, named as in the file."""
    every = list(results)
    share = np.concatenate([result.met_by_heating for result in every])
    error = np.concatenate([result.saving_error for result in every])
    for low, high in zip((0.0, *BANDS), BANDS, strict=False):
        found = error[(share > low) & (share <= high)]
        least, few, many, most = np.quantile(found, (0.0, 0.025, 0.975, 1.0))
        yield {"up_to": high, "homes": found.size, "low": few, "high": many, "least": least, "most": most}


def years(folder: Path) -> Iterator[tuple[str, ClimateYear]]:
    """Every climate of the run."""
    for name in CLIMATES:
        yield name, REAL_UNFITTED[name](folder) if name in REAL_UNFITTED else load_year(name)


def write(folder: Path) -> None:
    """Run all homes on all climates and write down what came out."""
    homes = sample(HOMES, draw=DRAW)
    lines = [
        f'date = "{datetime.date.today().isoformat()}"',
        f'command = "{COMMAND}"',
        f'reference = "{REFERENCE}"',
        f"homes = {HOMES}",
    ]
    every = []
    for name, year in years(folder):
        every.append(result := held(homes, year))
        lines += ["", "[[climate]]", f'climate = "{name}"']
        lines += [f"invented = {str(year.invented).lower()}", f"fitted = {str(name in FITTED).lower()}"]
        lines += _written(figures(result))
    for band in bands(every):
        lines += ["", "[[band]]", *_written(band)]
    FILE.write_text("\n".join(lines) + "\n", encoding="utf-8", newline="\n")


def _written(row: dict[str, float]) -> list[str]:
    return [f"{key} = {value}" if isinstance(value, int) else f"{key} = {value:.5f}" for key, value in row.items()]
