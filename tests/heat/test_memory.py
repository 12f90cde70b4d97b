"""Does a house forget as any first-order lag does, by the law of exponential decay?"""

from __future__ import annotations

import math

import numpy as np
import pytest

from estimator.heat.memory import remembered


@pytest.mark.parametrize("rows", [100, 101])
@pytest.mark.parametrize("memory", [0.5, 4.0, 300.0])
def test_one_hour_of_load_dies_away_as_any_first_order_lag(rows: int, memory: float) -> None:
    """After a time t what is felt has fallen to e^(-t/memory); of a year of r rows the tail of every earlier year
    counts as well, a geometric series: divide by 1 − e^(-r step/memory).
    """
    load = np.zeros((2, rows))
    load[0, 7] = load[1, 0] = 1000.0
    felt = remembered(load, memory=memory, step=2.0)
    fall = math.exp(-2.0 / memory)
    expected = 1000.0 * (1.0 - fall) * fall ** np.arange(rows) / (1.0 - fall**rows)
    np.testing.assert_allclose(felt, [np.roll(expected, 7), expected], rtol=1e-9, atol=1e-12)
    np.testing.assert_allclose(felt.sum(axis=-1), 1000.0, rtol=1e-12)


def test_without_memory_every_row_is_felt_as_it_is() -> None:
    """A house without mass and air, beside one that has them."""
    load = np.array([[300.0, -200.0, 500.0], [300.0, -200.0, 500.0]])
    felt = remembered(load, memory=np.array([[0.0], [1.0]]), step=1.0)
    np.testing.assert_array_equal(felt[0], load[0])
    fall = math.exp(-1.0)
    last = (1.0 - fall) * (500.0 - 200.0 * fall + 300.0 * fall**2) / (1.0 - fall**3)
    assert felt[1, 2] == pytest.approx(last)


@pytest.mark.parametrize("shape", [(), (3,), (2, 3)], ids=["one alone", "three", "two by three"])
def test_each_house_of_a_table_feels_what_it_feels_alone(shape: tuple[int, ...]) -> None:
    """The recurrence itself, y_t = a y_(t-1) + (1 − a) x_t, hour by hour, over and over until the year repeats."""
    draw = np.random.default_rng(3)
    load = draw.normal(500.0, 2000.0, (*shape, 90))
    memory = draw.uniform(1.0, 30.0, (*shape, 1))
    fall = np.exp(-1.0 / memory[..., 0])
    felt, last = np.empty_like(load), np.zeros(shape)
    for hour in range(20 * 90):
        last = fall * last + (1.0 - fall) * load[..., hour % 90]
        felt[..., hour % 90] = last
    np.testing.assert_allclose(remembered(load, memory=memory, step=1.0), felt, rtol=1e-9)


def test_half_as_many_digits_stay_so() -> None:
    """What is felt of a load of seven digits has seven as well, and the first six are those of fifteen."""
    load = np.random.default_rng(11).normal(500.0, 2000.0, (4, 8760))
    memory = np.array([[1.0], [10.0], [100.0], [1000.0]])
    with np.errstate(under="raise"):
        felt = remembered(load.astype(np.float32), memory=memory, step=1.0)
    assert felt.dtype == np.float32
    np.testing.assert_allclose(felt, remembered(load, memory=memory, step=1.0), atol=1e-6 * np.abs(load).max())


def test_nothing_is_worked_out_that_is_too_small_to_count() -> None:
    """Numbers at the lower end of what a processor knows cost it a hundred times as much: none ever comes up."""
    load = np.random.default_rng(11).normal(500.0, 2000.0, (6, 8760))
    memory = np.array([[0.001], [0.1], [1.0], [10.0], [100.0], [1000.0]])
    with np.errstate(under="raise"):
        felt = remembered(load, memory=memory, step=1.0)
    np.testing.assert_allclose(felt.mean(axis=-1), load.mean(axis=-1), rtol=1e-12)
