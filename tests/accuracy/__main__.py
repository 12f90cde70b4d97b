"""Prints the errors against ISO 13790:2008 on every included climate with a winter: `python -m tests.accuracy`.

With `--write FOLDER` it runs more homes, also on years of real places in that folder, and writes down what the package
states of its own error. `--real FOLDER` prints the same table for those years alone.
"""

from __future__ import annotations

import sys
from collections.abc import Iterable
from pathlib import Path

from estimator import load_year, names
from estimator.climate.year import ClimateYear
from estimator.evidence.held import held
from tests.accuracy import record
from tests.accuracy.homes import sample
from tests.accuracy.real_years import REAL_YEARS
from tests.accuracy.table import HEAD, row, worst

HOMES = 250
DRAW = 13790


def main(years: Iterable[tuple[str, ClimateYear]]) -> None:
    """One line for each year, and the worst home of each."""
    homes = sample(HOMES, draw=DRAW)
    print(HEAD)
    notes = []
    for name, year in years:
        result = held(homes, year)
        print(row(name, result))
        notes.append(f"{name}: {worst(homes, result)}")
    print(*notes, sep="\n")


if __name__ == "__main__":
    match sys.argv[1:]:
        case ["--write", folder]:
            record.write(Path(folder))
        case ["--real", folder]:
            main((name, read(Path(folder))) for name, read in REAL_YEARS.items())
        case []:
            # Miami has no winter: some homes save nothing, and an error relative to nothing says nothing.
            main((name, load_year(name)) for name in names() if name != "Miami")
        case _:
            sys.exit(__doc__)
