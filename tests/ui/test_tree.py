"""Do changes to a case leave everything else as it was, and can each be taken back?"""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from estimator.inputs.case import Case
from estimator.inputs.casefile import case_from_dict, case_to_dict
from estimator.ui.tree import EMPTY, MOST_STEPS, History, entries, entry, with_entry

PATHS = st.sampled_from(["home.floor_area", "home.people", "leakage.value", "options.recovery.unit.fan_power"])
VALUES = st.one_of(st.none(), st.floats(1, 3))


def test_the_empty_case_is_the_case_of_defaults() -> None:
    assert case_to_dict(case_from_dict(EMPTY)) == case_to_dict(Case())


def test_touching_one_option_keeps_the_others() -> None:
    tree = with_entry(EMPTY, "options.recovery.unit.effectiveness", 90.0)
    found, usual = case_from_dict(tree), Case()
    assert list(found.options) == list(usual.options)
    assert found.options["recovery"].unit.effectiveness == 90.0
    assert found.options["extract"].label == usual.options["extract"].label


def test_taking_an_entry_out_goes_back_to_the_default() -> None:
    tree = with_entry(with_entry(EMPTY, "home.floor_area", 90.0), "home.floor_area", None)
    assert tree == EMPTY
    assert entry(tree, "home.floor_area") is None
    assert with_entry(EMPTY, "home.people", None) == EMPTY


@given(st.lists(st.tuples(PATHS, VALUES), max_size=12))
def test_every_change_can_be_taken_back_in_turn(changes: list[tuple[str, float | None]]) -> None:
    seen = [History(EMPTY)]
    for path, value in changes:
        tree = with_entry(seen[-1].now, path, value)
        assert entry(tree, path) == value
        after = seen[-1].changed(tree, path)
        if after is not seen[-1]:
            seen.append(after)
    state = seen[-1]
    for expected in reversed(seen):
        assert state.now == expected.now
        state = state.undone()
    assert state.undone().now == EMPTY


def test_a_change_never_touches_the_case_before() -> None:
    before = with_entry(EMPTY, "home.floor_area", 90.0)
    copy = dict(entries(before))
    with_entry(before, "home.bedrooms", 2)
    assert dict(entries(before)) == copy


def test_history_has_an_end() -> None:
    state = History(EMPTY)
    for number in range(MOST_STEPS + 20):
        state = state.changed(with_entry(EMPTY, "home.floor_area", 50.0 + number), "floor area")
    assert len(state.steps) == MOST_STEPS
