"""Where are all the entries that do not stand in the page, grouped, searchable, each with what it rests on?

Everything is read from the declarations: label, unit, limits, default, meaning; only what is looked for is drawn.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import streamlit as st

from estimator.climate.sources import names
from estimator.estimate import Estimate
from estimator.inputs.catalogue import fuels, option_kinds, table
from estimator.inputs.places import every_entry
from estimator.inputs.quantity import Declared, Quantity
from estimator.report.figures import quantity
from estimator.ui import live, style
from estimator.ui.fields import field

_GROUPS = {
    "home": "Home",
    "place": "Place",
    "leakage": "Leakage",
    "draughts": "Draughts",
    "sealing": "Sealing",
    "air": "Air",
    "rooms": "Rooms",
    "heating": "Heating",
    "prices": "Prices",
    "worth": "Worth",
}
_ELSEWHERE = ("version", "title", "baseline", "today", "place.climate")
_MOST_FOUND = 24


@dataclass(frozen=True, slots=True)
class _Row:
    path: str
    item: Declared
    group: str

    @property
    def name(self) -> str:
        """The entry in words."""
        words = self.item.spec.plain or self.item.name.replace("_", " ")
        return f"{words[:1].upper()}{words[1:]}"

    def answers(self, wanted: str) -> bool:
        """Whether every word looked for stands in name, meaning, unit or group."""
        text = f"{self.path} {self.name} {self.item.spec.meaning} {self.item.unit} {self.group}".lower()
        return all(word in text for word in _words(wanted))

    def misses(self, wanted: str) -> int:
        """How many of the words looked for are no whole word of the name: "age" is one of "Age", not of "Leakage"."""
        name = _words(f"{self.name} {self.group}")
        return sum(word not in name for word in _words(wanted))


def _words(text: str) -> list[str]:
    """The words of a text, so that a label may be typed as it is shown."""
    return [word for part in text.lower().split() if (word := part.strip(":,;."))]


def draw(done: Estimate) -> None:
    """The drawer, shut until somebody opens it."""
    rows = list(_rows(done))
    title = f"All details: {len(rows)} entries with unit, limits, source and default"
    with st.expander(title, on_change="rerun", key="details") as drawer:
        if drawer.open:
            live.whole()
            _inside(done, rows)


def _inside(done: Estimate, rows: list[_Row]) -> None:
    known = list(_GROUPS.values())
    groups = sorted(
        dict.fromkeys(row.group for row in rows), key=lambda name: known.index(name) if name in known else 99
    )
    find, group = st.columns([1, 1], gap="small", vertical_alignment="bottom")
    wanted = find.text_input("Find an entry", key="details:find", placeholder="such as filter, bore, standing charge")
    chosen = group.selectbox("Group", groups, key="details:group", filter_mode=None, disabled=bool(wanted.strip()))
    found = [row for row in rows if (row.answers(wanted) if wanted.strip() else row.group == chosen)]
    found.sort(key=lambda row: row.misses(wanted))
    if not found:
        style.small(f"No entry speaks of “{wanted.strip()}”. Try one word of it, or choose a group.")
        return
    if len(found) > _MOST_FOUND:
        style.small(f"{len(found)} entries; the first {_MOST_FOUND} stand here. Another word narrows them down.")
    with st.grid(3, min_column_width=240, gap="medium"):
        for row in found[:_MOST_FOUND]:
            with st.container(gap="xxsmall"):
                _entry(done, row, within=bool(wanted.strip()))


def _entry(done: Estimate, row: _Row, *, within: bool) -> None:
    origin = done.origins[row.path]
    label = f"{row.group}: {row.name[:1].lower()}{row.name[1:]}" if within else row.name
    field(
        row.item,
        path=row.path,
        label=label,
        origins=done.origins,
        currency=done.case.prices.currency,
        choices=_choices(row),
        place="details",
    )
    rests = f"{origin.tag}: {origin.source}" if origin.source else origin.tag
    style.small(f"{row.item.spec.meaning}. {_limits(row.item)}{_default(row.item)}Now {rests}.")


def _limits(item: Declared) -> str:
    spec = item.spec
    if not isinstance(spec, Quantity):
        return ""
    return f"{quantity(spec.low, spec.unit)} to {quantity(spec.high, spec.unit)}. "


def _default(item: Declared) -> str:
    if item.optional:
        return f"Left empty: {item.spec.derived}. "
    usual = quantity(item.default, item.unit) if isinstance(item.default, int | float) else item.default
    return f"Default {usual}. " if usual not in (None, "") else ""


def _choices(row: _Row) -> dict[str, Any] | None:
    """Words of a table, where an entry names one of its rows."""
    if row.path.endswith(".kind"):
        found = option_kinds()
    elif row.path == "heating.fuel":
        found = fuels()
    elif row.path == "home.age":
        found = tuple(table("homes")["age"])
    elif row.path == "place.climate":
        found = tuple(names())
    else:
        return None
    return {f"{word[:1].upper()}{word[1:]}": word for word in found}


def _rows(done: Estimate) -> Iterator[_Row]:
    for path, item in every_entry(done.case):
        head, _, rest = path.partition(".")
        if path in _ELSEWHERE or path not in done.origins:
            continue
        if head == "options":
            name, _, inner = rest.partition(".")
            label = done.case.options[name].label or done.case.options[name].kind
            part = inner.partition(".")[0] if "." in inner else "kind and name"
            yield _Row(path, item, f"{label[:1].upper()}{label[1:]}, {part}")
        else:
            yield _Row(path, item, _GROUPS.get(head, head.capitalize()))
