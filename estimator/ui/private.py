"""What of a case names people, homes or files, and what stands in its place in an address?

Room names and names of options that somebody made up are numbered, one number a name wherever it stands, so that every
figure stays; words that any home might use, such as bedroom 2 or landing, are kept.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from itertools import count
from typing import Any

from estimator.climate.chosen import can_travel
from estimator.inputs.pressure_tests import without_notes
from estimator.ui.tree import Tree, entry, usual_label, with_entry

IN_A_FILE = "as entered; their date stays in the case file"
UNNAMED = "as entered; its name stays in the case file"
ROOM_LINES = ("rooms.fed", "rooms.drawn", "rooms.lines", "rooms.doors", "commissioned.fed", "commissioned.drawn")
_OPTION_NAMED = ("baseline", "today", "rooms.option", "commissioned.option")
_WORDS = (
    "air and airing attic back basement bath bathroom bed bedroom bedrooms box boot boxroom cellar children's "
    "cloakroom closet conservatory corridor cupboard den dining double down downstairs drawing dressing east en "
    "ensuite entrance family first floor front ground guest gym hall hallway kitchen landing larder laundry left "
    "library living loft lounge lower main master middle north nursery office open out pantry passage plan play "
    "playroom plant porch rear reception right room second shower sitting south spare stair staircase stairs "
    "stairwell store storage studio study suite the toilet top twin under up upper upstairs utility vestibule wc "
    "west work workshop "
)
_ORDINARY = frozenset(_WORDS.split())


def without_private(tree: Tree) -> Tree:
    """The case without the words a person typed to name people, homes or files; every figure as it was."""
    public: Tree = {key: value for key, value in tree.items() if key != "title"}
    public = _rooms_numbered(_options_numbered(public))
    for path, words in (("prices.dated", IN_A_FILE), ("commissioned.instrument", UNNAMED)):
        if entry(public, path):
            public = with_entry(public, path, words)
    if isinstance(tests := entry(public, "leakage.tests"), str):
        public = with_entry(public, "leakage.tests", without_notes(tests))
    climate = entry(public, "place.climate")
    if climate is not None and not (isinstance(climate, str) and can_travel(climate)):
        public = with_entry(public, "place.climate", None)
    return public


def _options_numbered(tree: Tree) -> Tree:
    """Options under names of the package or a number, each labelled by its name in the package or its kind."""
    options = tree.get("options")
    if not isinstance(options, Mapping):
        return tree
    names = _numbered(options, known=_public, form="own-{}")
    public = {names[name]: _labelled(names[name], option) for name, option in options.items()}
    tree = {**tree, "options": public}
    for path in _OPTION_NAMED:
        if (name := entry(tree, path)) in names:
            tree = with_entry(tree, path, names[name])
    if isinstance(tags := tree.get("tags"), Mapping):
        tree = {**tree, "tags": {_renamed(path, names): tag for path, tag in tags.items()}}
    return tree


def _public(name: str) -> bool:
    """Whether an option's name is the package's or a number."""
    return usual_label(name) is not None or re.fullmatch(r"own-\d+", name) is not None


def _labelled(name: str, option: Any) -> Any:
    if not isinstance(option, Mapping):
        return option
    own = usual_label(name) or f"{option.get('kind', 'option')} {name.rpartition('-')[2]}"
    return option if "label" not in option and usual_label(name) is not None else {**option, "label": own}


def _renamed(path: str, names: Mapping[str, str]) -> str:
    for name, public in names.items():
        if path.startswith(f"options.{name}."):
            return f"options.{public}.{path.removeprefix(f'options.{name}.')}"
    return path


def _rooms_numbered(tree: Tree) -> Tree:
    """Lists of rooms and ways in which every name that is not an ordinary word of a home is a number."""
    lines = {path: line for path in ROOM_LINES if isinstance(line := entry(tree, path), str)}
    rooms = [room for line in lines.values() for names, _ in _parts(line) for room in names]
    names = _numbered(rooms, known=_ordinary, form="room {}")
    for path, line in lines.items():
        parts = (f"{' > '.join(names[room] for room in inner)} {word}" for inner, word in _parts(line))
        public = "; ".join(parts)
        if any(names[room] != room for inner, _ in _parts(line) for room in inner):
            tree = with_entry(tree, path, public)
    return tree


def _parts(line: str) -> Iterator[tuple[tuple[str, ...], str]]:
    """Rooms and last word of each entry of a line."""
    for part in filter(None, (part.strip() for part in line.split(";"))):
        names, _, word = part.rpartition(" ")
        yield tuple(room.strip() for room in names.split(">")), word


def _ordinary(room: str) -> bool:
    """Whether a room's name is made of words that any home might use, numbers and single letters."""
    words = re.findall(r"[^\s\-/,&]+", room.lower())
    return all(word in _ORDINARY or word.isdigit() or len(word) == 1 for word in words)


def _numbered(names: Any, *, known: Callable[[str], bool], form: str) -> dict[str, str]:
    """Each name and what stands for it: itself where it is known, else the next number that is free."""
    given = list(dict.fromkeys(names))
    free = (name for number in count(1) if (name := form.format(number)) not in given)
    return {name: name if known(name) else next(free) for name in given}
