"""Prints the errors against ISO 13790:2008 on every included climate with a winter: `python -m tests.accuracy`.

With `--write` it runs more homes on fewer climates and writes down what the package states of its own error.
"""

from __future__ import annotations

import sys

from estimator import load_year, names
from tests.accuracy import record
from tests.accuracy.homes import held, sample
from tests.accuracy.table import HEAD, row, worst

HOMES = 250
DRAW = 13790


def main() -> None:
    homes = sample(HOMES, draw=DRAW)
    print(HEAD)
    notes = []
    for name in names():
        if name == "Miami":  # no winter: some homes save nothing, and an error relative to nothing says nothing
            continue
        result = held(homes, load_year(name))
        print(row(name, result))
        notes.append(f"{name}: {worst(homes, result)}")
    print(*notes, sep="\n")


if __name__ == "__main__":
    if sys.argv[1:] == ["--write"]:
        record.write()
    else:
        main()
