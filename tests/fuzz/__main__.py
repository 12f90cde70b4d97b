"""Which bytes break a reader? A coverage-guided search, outside CI: `python -m tests.fuzz NAME MINUTES`.

Needs atheris (`pip install atheris`). A finding ends the run and lies as a file in the folder it was started from;
`python -m tests.fuzz NAME FILE` runs that file alone. Each finding becomes a line of tests/fuzz/test_findings.py.
"""

from __future__ import annotations

import random
import sys
from importlib import import_module
from pathlib import Path
from typing import Any

SECONDS_PER_INPUT = 30  # more is a hang
MEGABYTES = 2_500
EDITS = 6
LONGEST = 400  # bytes that steer the edits
FIRST = 60  # inputs to begin with


def main(name: str, minutes: str) -> None:
    """Search for so many minutes, or run one file."""
    atheris: Any = import_module("atheris")
    with atheris.instrument_imports(include=["estimator", "tomllib"]):
        targets = import_module("tests.fuzz.targets")
    spoil = import_module("tests.fuzz.spoil")
    if name not in targets.TARGETS:
        sys.exit(f"there is no reader named {name}; there are {', '.join(targets.TARGETS)}")
    target, sound = targets.TARGETS[name], targets.TARGETS[name].sound()
    target.once(sound[0])  # libraries that load at first use are loaded before the clock runs

    def one(data: bytes) -> None:
        provider = atheris.FuzzedDataProvider(data)
        choice = provider.ConsumeIntInRange(0, len(sound))
        if choice == len(sound):
            target.once(provider.ConsumeBytes(4_000))
            return
        edits = []
        for _ in range(provider.ConsumeIntInRange(1, EDITS)):
            where, gone = provider.ConsumeProbability(), provider.ConsumeIntInRange(0, 60)
            piece = provider.ConsumeIntInRange(0, len(spoil.PIECES))
            edits.append((where, gone, spoil.PIECES[piece] if piece < len(spoil.PIECES) else provider.ConsumeBytes(24)))
        target.once(spoil.spoilt(sound[choice], edits))

    limits = [f"-timeout={SECONDS_PER_INPUT}", f"-rss_limit_mb={MEGABYTES}", f"-max_len={LONGEST}", "-len_control=0"]
    options = [*limits, "-print_final_stats=1"]
    if Path(minutes).is_file():
        options.append(minutes)
    else:
        options += [f"-max_total_time={60 * float(minutes):.0f}", _corpus(Path(f"corpus_{name}"))]
    atheris.Setup(["fuzz", *options], one)
    atheris.Fuzz()


def _corpus(folder: Path) -> str:
    """A folder of random inputs to begin with, since a search from nothing spends its time on short ones."""
    folder.mkdir(exist_ok=True)
    chance = random.Random(0)
    for number in range(FIRST):
        (folder / f"first_{number}").write_bytes(chance.randbytes(LONGEST // 2))
    return str(folder)


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    main(*sys.argv[1:])
