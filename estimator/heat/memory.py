"""How does a house remember the hours before?

It feels the load as y_t = a y_(t-1) + (1 − a) x_t, periodic over the year, with a = exp(−step/memory). A recurrence
goes row by row, but processors want many alike at once. So the year is cut into short strands that are worked out side
by side. What a strand begins with follows from how those before it end.

The rows of a year are *woven* where the first rows of all strands stand together, then all second rows, and so on.
Whatever takes each row by itself may be worked out on woven rows as well, and their sum is that of the year.
"""

from __future__ import annotations

import numpy as np

from estimator.units import Array, Numeric

# Rows of a strand at most: longer ones take more sums, shorter ones leave more ends to join. Found by trying.
_LONGEST = 15
_FORGETTING = 50.0  # rows go by per memory, and more, where nothing is remembered: e^-50 is far below the last digit
# What is far below the last digit, by precision.
_LEAST: dict[str, Array] = {
    np.dtype(kind).char: np.asarray(np.finfo(kind).eps / 8.0, dtype=kind) for kind in (np.float32, np.float64)
}


def _length(rows: int) -> int:
    """Rows of one strand: strands of one length fill the year."""
    return next(length for length in range(_LONGEST, 0, -1) if rows % length == 0)


def woven(values: Array) -> Array:
    """Values of the rows of a year in order, (…, rows), as woven rows."""
    return _turned(values, _length(values.shape[-1]))


def unwoven(values: Array) -> Array:
    """Values of woven rows, (…, rows), in order again."""
    return _turned(values, values.shape[-1] // _length(values.shape[-1]))


def _turned(values: Array, length: int) -> Array:
    strands = values.reshape(*values.shape[:-1], -1, length)
    return np.swapaxes(strands, -1, -2).reshape(values.shape)


def remembered(load: Array, *, memory: Numeric, step: float) -> Array:
    """The load as the house feels it, in order.

    load: any unit, (…, rows), float32 stays float32; memory [h]: a float or a column (n, 1), 0 for none; step: hours
    per row. The mean over the year is unchanged.
    """
    load = np.asarray(load, dtype=np.result_type(load, np.float32))
    shape = np.broadcast_shapes(load.shape, np.shape(memory))
    return unwoven(remembered_woven(woven(np.broadcast_to(load, shape)).copy(), memory=memory, step=step))


def remembered_woven(load: Array, *, memory: Numeric, step: float) -> Array:
    """The same for woven rows, which stay woven: as many homes as in `memory`. The load is used up."""
    memory = np.asarray(memory, dtype=load.dtype)
    remembers = memory > step / _FORGETTING
    keep = np.exp(np.divide(-step, memory, out=np.full_like(memory, -np.inf), where=remembers))
    keep, new = _without_next_to_nothing(keep), 1.0 - keep
    length = _length(load.shape[-1])
    turns = load.reshape(*load.shape[:-1], length, -1)  # rows of a strand, strands
    # By strands that each begin with nil: what is felt of a row after 0, 1, 2, … further rows.
    left = _without_next_to_nothing(keep ** np.arange(length, dtype=load.dtype)) * new
    ends = _joined(np.matmul(left[..., None, ::-1], turns)[..., 0, :], keep=keep**length)
    # The end of the one before is as much as some more load in the first row.
    ends *= keep / new
    turns[..., 0, 1:] += ends[..., :-1]
    turns[..., 0, 0] += ends[..., -1]
    felt: Array = np.matmul(_of_earlier_rows(left), turns)
    return felt.reshape(load.shape)


def _of_earlier_rows(left: Array) -> Array:
    """What is felt in each row of a strand of each row of it, (…, length, length): nil of the later ones."""
    length = left.shape[-1]
    padded = np.concatenate([np.zeros_like(left), left], axis=-1)
    later = np.arange(length)
    return np.asarray(padded[..., length + later[:, None] - later])


def _joined(ends: Array, *, keep: Array) -> Array:
    """Ends of strands that each began with nil, as they are where each begins with the end of the one before.

    The sum of a^k e_(s-k) over all k: with the first m terms known, those to 2m are the same ones m strands earlier
    times a^m.
    """
    strands, back = ends.shape[-1], 1
    keep = _without_next_to_nothing(keep)
    while keep.max() > 0.0:
        earlier = keep * ends
        turn = back % strands
        ends[..., turn:] += earlier[..., : strands - turn]
        ends[..., :turn] += earlier[..., strands - turn :]
        keep, back = _without_next_to_nothing(keep * keep), 2 * back
    return ends


def _without_next_to_nothing(share: Array) -> Array:
    """Shares, those far below the last digit as nil: processors take a hundred times as long over such numbers."""
    return np.asarray(share * (share > _LEAST[share.dtype.char]))
