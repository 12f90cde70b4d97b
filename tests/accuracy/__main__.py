"""Prints the errors against ISO 13790:2008 on every included climate with a winter: `python -m tests.accuracy`."""

from __future__ import annotations

from estimator import load_year, names
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
    main()
