"""What of a page follows a figure as it is changed, while all the rest stands as it is?

Drawing a page anew costs the browser most of the time, and one figure changes little of it. A page draws the words and
pictures that follow the figures as parts; of all else that depends on the case it says what that depends on. A field
that is drawn with the parts brings only them up to date, as long as nothing else would look different.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from functools import partial
from itertools import groupby
from typing import Any

import streamlit as st

_PAGE = "live:page"


@dataclass(frozen=True, slots=True, eq=False)
class _Part:
    """A place and what stands in it: worked out first, so that parts that stand together are shown together."""

    place: st.delta_generator.DeltaGenerator
    html: Callable[[], str]

    def show(self, said: str) -> None:
        self.place.html(said) if said else self.place.empty()

    def __call__(self) -> None:
        self.show(self.html())


@dataclass(slots=True, eq=False)
class _Page:
    """What one run of the whole page leaves to be followed."""

    fields: dict[str, Callable[[], Any]] = field(default_factory=dict)
    steps: list[Callable[[], Any]] = field(default_factory=list)
    last: list[Callable[[], Any]] = field(default_factory=list)
    standing: list[tuple[Callable[[], Any], Any]] = field(default_factory=list)
    drawing: bool = False
    done: set[Callable[[], Any]] = field(default_factory=set)


def begin() -> None:
    """At the start of every run of the whole page."""
    st.session_state[_PAGE] = _Page()


def around() -> Callable[[], None]:
    """Draw what stands around a page that could not be drawn: what was kept before this was called."""
    page = _page()
    steps, last, standing = list(page.steps), list(page.last), list(page.standing)

    def drawn() -> None:
        page.fields, page.steps, page.last, page.standing = {}, steps, last, standing
        finish()

    return drawn


def part(html: Callable[[], str], *, last: bool = False) -> None:
    """Keep a place for a piece of the page.

    html: takes the case from the session each time. last: after all that is not.
    """
    step(_Part(st.empty(), html), last=last)


def step(do: Callable[[], Any], *, last: bool = False) -> None:
    """Do something once the page stands, and again after every change; what it draws on must stand already."""
    (_page().last if last else _page().steps).append(do)


def alone(draw: Callable[[], Any], *, path: str) -> None:
    """Keep a place for a field that the parts follow. path: of its entry."""
    place = st.container()

    def drawn() -> None:
        with place:
            draw()

    _page().fields[path] = drawn


def standing(read: Callable[[], Any]) -> None:
    """Something that is no part shows what this reads."""
    if not _page().drawing:
        _page().standing.append((read, read()))


def whole() -> None:
    """Whatever changes, the whole page must be drawn."""
    _page().standing.append((object, None))


def finish() -> None:
    """At the end of every run of the whole page: draw fields and parts, and let those fields bring the parts."""
    page, faults = _page(), []
    with_page = True

    def each(*todo: Callable[[], Any]) -> None:
        for do in todo:
            if with_page and do in page.done:
                continue
            do()
            if with_page:
                page.done.add(do)

    def drawn() -> None:
        try:
            page.drawing = True
            each(*page.fields.values())  # before all that takes time to work out
            if not with_page and any(read() != shown for read, shown in page.standing):
                st.rerun()
            each(*_bursts((*page.steps, *page.last), alone=with_page))
        except Exception as fault:
            if not with_page:
                st.rerun()  # the whole page knows how to say it
            faults.append(fault)
        finally:
            page.drawing = False

    (st.fragment(drawn) if page.fields else drawn)()
    with_page = False
    if faults:
        raise faults[0]


def _bursts(todo: Iterable[Callable[[], Any]], *, alone: bool) -> Iterator[Callable[[], Any]]:
    """The same in the same order, parts that follow each other as one: the browser then lays the page out once."""
    for together, some in groupby(todo, lambda do: isinstance(do, _Part) and not alone):
        if together:
            yield partial(_burst, list(some))
        else:
            yield from some


def _burst(parts: Iterable[_Part]) -> None:
    for part_, said in [(each, each.html()) for each in parts]:
        part_.show(said)


def _page() -> _Page:
    return st.session_state.setdefault(_PAGE, _Page())
