"""Do spoilt files of every kind end in something usable or in plain sentences? A short search, the same every time."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.fuzz.spoil import PIECES, Edit, spoilt
from tests.fuzz.targets import TARGETS

# Together about thirty seconds.
TRIES = {"case": 600, "link": 500, "weather": 40, "stock": 150, "months": 60}
EDITS: st.SearchStrategy[list[Edit]] = st.lists(
    st.tuples(st.floats(0.0, 1.0), st.integers(0, 60), st.sampled_from(PIECES) | st.binary(max_size=24)),
    min_size=1,
    max_size=6,
)


@pytest.mark.slow
@pytest.mark.parametrize("name", TARGETS)
def test_spoilt_bytes(name: str) -> None:
    target = TARGETS[name]

    @settings(
        max_examples=TRIES[name],
        deadline=None,
        derandomize=True,
        database=None,
        suppress_health_check=list(HealthCheck),
    )
    @given(st.sampled_from(range(len(target.sound()))), EDITS)
    def search(which: int, edits: list[Edit]) -> None:
        target.once(spoilt(target.sound()[which], edits))

    search()


@pytest.mark.parametrize("name", TARGETS)
@given(st.binary(max_size=200))
@settings(max_examples=60, deadline=None, derandomize=True, database=None)
def test_noise(name: str, data: bytes) -> None:
    TARGETS[name].once(data)


@pytest.mark.parametrize("name", TARGETS)
def test_what_is_spoilt_was_sound(name: str) -> None:
    """A search from files that are refused as they stand would prove nothing."""
    whole = TARGETS[name].sound()[0]
    TARGETS[name].once(whole)
