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
from estimator.evidence.held import Held, held
from estimator.units import Array
from tests.accuracy.homes import sample
from tests.accuracy.real_years import REAL_YEARS
from tests.sources import ROOT

FILE = ROOT / "estimator" / "data" / "method_error.toml"
REFERENCE = "simple hourly method of ISO 13790:2008 (clause 7.2.2, annex C), programmed apart from the estimator"
COMMAND = "python -m tests.accuracy --write FOLDER"
HOMES = 1000
DRAW = 13790
# The two constants of the memory were fitted on other homes, but on four years: these two, and two of Europe that the
# method does not name. Two of Europe are at hand and may be those.
FITTED = ("Greensboro", "Sand Point")
PERHAPS_FITTED = ("Amsterdam", "Piedmont")
CLIMATES = ("Burlington", "Northwest Colorado", *DEMO_CLIMATES, *PERHAPS_FITTED, *FITTED)
# A home is called out where it differs by more than both.
FAR, FAR_ENERGY = 0.06, 60.0  # share of the saving; kWh
NEAR = 0.025  # share of the saving that 19 of 20 homes should keep within
BANDS = (0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 1.0)  # share of the loss met by heating, upper ends
FEW = 20  # homes; of fewer the outermost are taken, for one in forty of them is none


def figures(result: Held) -> dict[str, float]:
    """Errors of one climate as shares, named as in the file."""
    error = np.abs(result.saving_error)
    away = np.abs(result.saved - result.saved_reference)
    return {
        "median": float(np.median(error)),
        "nineteen_in_twenty": float(np.quantile(error, 0.95)),
        "worst": float(np.max(error)),
        "wide": float(np.mean(error > NEAR)),
        "beyond": int(np.sum((error > FAR) & (away > FAR_ENERGY))),
        "bias": float(np.median(result.saving_error)),
        "demand_bias": float(np.median(result.demand_error)),
    }


def bands(results: Iterable[Held]) -> Iterator[dict[str, float]]:
    """Errors by the share of the loss that heating meets, named as in the file.

    low and high hold 19 of 20 homes in each climate by itself: they are those of the climate where they lie widest, so
    that a home under a strong winter sun is not comforted by homes under a grey one.
    """
    every = list(results)
    share = np.concatenate([result.met_by_heating for result in every])
    error = np.concatenate([result.saving_error for result in every])
    for low, high in zip((0.0, *BANDS), BANDS, strict=False):
        inside = [
            result.saving_error[(result.met_by_heating > low) & (result.met_by_heating <= high)] for result in every
        ]
        ends = np.array([_ends(errors) for errors in inside if errors.size])
        found = error[(share > low) & (share <= high)]
        if not found.size:
            continue
        yield {
            "up_to": high,
            "homes": found.size,
            "low": float(ends[:, 0].min()),
            "high": float(ends[:, 1].max()),
            "least": float(found.min()),
            "most": float(found.max()),
        }


def _ends(errors: Array) -> Array:
    """Ends that hold at least 19 of 20: never between two homes, but at the outer of them."""
    if errors.size < FEW:
        return np.array([errors.min(), errors.max()])
    return np.array([np.quantile(errors, 0.025, method="lower"), np.quantile(errors, 0.975, method="higher")])


def fitted(climate: str) -> str:
    """Whether the two constants were fitted on this climate: yes, perhaps, or no."""
    return "yes" if climate in FITTED else "perhaps" if climate in PERHAPS_FITTED else "no"


def years(folder: Path) -> Iterator[tuple[str, ClimateYear]]:
    """Every climate of the run."""
    for name in CLIMATES:
        yield name, REAL_YEARS[name](folder) if name in REAL_YEARS else load_year(name)


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
        lines += [f"invented = {str(year.invented).lower()}", f'fitted = "{fitted(name)}"']
        lines += _written(figures(result))
    for band in bands(every):
        lines += ["", "[[band]]", *_written(band)]
    FILE.write_text("\n".join(lines) + "\n", encoding="utf-8", newline="\n")


def _written(row: dict[str, float]) -> list[str]:
    return [f"{key} = {value}" if isinstance(value, int) else f"{key} = {value:.5f}" for key, value in row.items()]
