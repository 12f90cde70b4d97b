"""How does one entry of a case change, and what did it say before?

The session's case is a plain nested dict of the form of a case file that holds only what differs from the defaults.
Nothing here changes a dict in place: every change gives a new one, so that the one before can be kept for undoing.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from estimator.inputs.case import CASE_VERSION, Case
from estimator.inputs.casefile import case_to_dict

Tree = Mapping[str, Any]

EMPTY: Tree = {"version": CASE_VERSION}
"""The case with every default."""

MOST_STEPS = 50  # kept for undoing


def entry(tree: Tree, path: str) -> Any:
    """What stands at a dotted path, None where nothing does."""
    found: Any = tree
    for key in path.split("."):
        if not isinstance(found, Mapping) or key not in found:
            return None
        found = found[key]
    return found


def with_entry(tree: Tree, path: str, value: Any) -> Tree:
    """The case with one entry set; None takes it out, and with it a section that has become empty.

    Once an option is touched the case names all of them, since a file's options stand in place of the usual ones.
    """
    if path.startswith("options.") and "options" not in tree:
        tree = {**tree, "options": usual_options()}
    return _set(tree, path.split("."), value)


def _set(tree: Tree, keys: list[str], value: Any) -> Tree:
    head, *rest = keys
    if not rest:
        others = {key: old for key, old in tree.items() if key != head}
        return others if value is None else {**tree, head: value}
    inner = tree.get(head)
    changed = _set(inner if isinstance(inner, Mapping) else {}, rest, value)
    if not changed:
        return {key: old for key, old in tree.items() if key != head}
    return {**tree, head: changed}


def usual_options() -> dict[str, Any]:
    """The options of a case that names none, as a file would write them."""
    return {
        name: {"kind": option["kind"], "label": option["label"]}
        for name, option in case_to_dict(Case())["options"].items()
    }


def usual_label(name: str) -> str | None:
    """What an option is called where nobody has named it: one that came with the case, or a numbered variant of it."""
    stem, dash, number = name.rpartition("-")
    option = usual_options().get(stem if dash and number.isdigit() else name)
    return None if option is None else f"{option['label']} {number}" if dash and number.isdigit() else option["label"]


def entries(tree: Tree, before: str = "") -> Iterator[tuple[str, Any]]:
    """Every entry with its dotted path."""
    for key, value in tree.items():
        if isinstance(value, Mapping):
            yield from entries(value, f"{before}{key}.")
        else:
            yield f"{before}{key}", value


@dataclass(frozen=True, slots=True)
class Step:
    """A case as it was, and what was done to it then, in words."""

    tree: Tree
    done: str


@dataclass(frozen=True, slots=True)
class History:
    """The case now, and the steps that led to it, the latest last."""

    now: Tree
    steps: tuple[Step, ...] = ()

    def changed(self, tree: Tree, done: str) -> History:
        """After a change; the same history where nothing differs."""
        if tree == self.now:
            return self
        return History(tree, (*self.steps, Step(self.now, done))[-MOST_STEPS:])

    def undone(self) -> History:
        """Before the last change; the same history where there is none."""
        return History(self.steps[-1].tree, self.steps[:-1]) if self.steps else self
