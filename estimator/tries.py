"""Where does each uncertain input stand in every case tried?"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.units import Array


def places(inputs: int, *, count: int, start: int) -> Array:
    """Where each input stands in each case, (count, inputs), from -1 (lowest) over 0 (best guess) to 1 (highest).

    Latin hypercube: every input is spread evenly over its own likelihood; `start` sets the random numbers going, the
    same ones every time. Half of the cases lie on either side of the best guess, their density falling straight to nil
    at the end.
    """
    return place_of_rank(_hypercube(inputs, count=count, start=start))


def _hypercube(inputs: int, *, count: int, start: int) -> Array:
    """Ranks (count, inputs), 0 to 1: each of `count` equal shares of every input holds one case, somewhere in it.

    Number for number SciPy's Latin hypercube, whose import alone takes a third of the time of a printed estimate.
    """
    random = np.random.default_rng(start).spawn(1)[0]
    within = random.uniform(size=(count, inputs))
    shares = np.tile(np.arange(1, count + 1), (inputs, 1))
    for row in shares:
        random.shuffle(row)
    return np.asarray((shares.T - within) / count)


def place_of_rank(rank: Any) -> Array:
    """Place from -1 to 1 below which a share `rank` (0 to 1) of all cases lies; 0 at one half."""
    away = 2.0 * np.asarray(rank, dtype=float) - 1.0
    return np.asarray(np.sign(away) * (1.0 - np.sqrt(1.0 - np.abs(away))))
