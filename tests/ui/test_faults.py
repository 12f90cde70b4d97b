"""Does what was wrong begin like a sentence, and an entry as files spell it?"""

from __future__ import annotations

import pytest

from estimator.ui.faults import begun


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("link: it is damaged", "Link: it is damaged"),
        ("the file holds 5.2 MB. Take less", "The file holds 5.2 MB. Take less"),
        ("home.floor_area: -3 is too small", "home.floor_area: -3 is too small"),
        ("bad.json, line 1: a bracket is missing", "bad.json, line 1: a bracket is missing"),
        ("", ""),
    ],
)
def test_a_fault_begins_as_it_is_spelled(words: str, said: str) -> None:
    assert begun(words) == said
