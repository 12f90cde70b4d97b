"""How does one declared entry of a case become a native widget, and its value a change of the case?

From the one declaration come label, unit, limits, help and choices. An entry that is worked out where nobody states it
shows the worked-out figure in an empty field; emptying the field goes back to it. Prices and sums are typed as text,
because the browser's number field drops a decimal comma in silence.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

import streamlit as st

from estimator.errors import InputFaults
from estimator.inputs.quantity import Declared, Quantity
from estimator.report.cash import joined_price, price_unit
from estimator.report.figures import converted, number, quantity, to_metric, unit_shown
from estimator.report.figures import entered as as_shown
from estimator.report.price_words import price_in_words
from estimator.survey.fill import Origin
from estimator.ui import again, live, state
from estimator.ui.style import small
from estimator.ui.tree import entry
from estimator.ui.typed import typed_number

_TYPED = ("p/", "money", "kg/kWh", "%/year")
"""Units in which a decimal comma that the browser drops would leave a number that may still be meant."""
_ONE_LINE = 40  # letters that a field on a phone shows whole
_STEPS = {
    "m²": 5.0, "m³": 10.0, "m": 0.1, "mm": 5.0, "mm²": 500.0, "m³/h": 5.0, "°C": 0.5, "%": 1.0, "W": 10.0,
    "ft²": 50.0, "ft³": 500.0, "ft": 0.5, "in": 0.5, "in²": 1.0, "cfm": 5.0, "°F": 1.0, "cfm/ft²": 0.01, "W/cfm": 0.05,
    "W/K": 5.0, "kWh": 100.0, "years": 1.0, "days": 0.5, "money": 50.0, "money/year": 5.0,
}  # fmt: skip


def field(
    item: Declared,
    *,
    path: str,
    origins: Mapping[str, Origin],
    currency: str,
    label: str = "",
    unit: str | None = None,
    choices: Mapping[str, Any] | None = None,
    clears: tuple[str, ...] = (),
    also: Mapping[str, Any] = MappingProxyType({}),
    echo: bool = False,
    alone: bool = False,
    place: str = "page",
) -> None:
    """Draw the widget of one entry.

    path: dotted, from the case. origins: of every entry as used now. label, unit: instead of the declared ones.
    choices: shown words and their values, for a text that is a row of a table. clears: entries that say nothing any
    more once this one changes. also: entries that change with it, and to what. echo: a price is said in words below
    its field. alone: what follows the entry follows it without the whole page. place: of the page, where an entry
    stands in two places.
    """
    if alone:

        def drawn() -> None:
            now, shared = state.survey().origins, {"echo": echo, "also": also, "place": place}
            field(item, path=path, origins=now, currency=currency, label=label, unit=unit, **shared)

        live.alone(drawn, path=path)
        return
    live.standing(lambda: _rests_on(path))
    unit = item.unit if unit is None else unit
    words = label or item.spec.plain or item.name.replace("_", " ").capitalize()
    shown = price_unit(unit_shown(unit), currency)
    label = words if words.endswith(shown) else f"{words}, {shown}"
    draw = _Draw(item, path, f"{place}:{path}", label, _help(item, origins[path], currency), clears, also)
    entered = entry(state.tree(), path)
    used = origins[path].value
    if choices is not None or item.choices:
        _choice(draw, choices or {_spoken(choice): choice for choice in item.choices}, entered, used)
    elif isinstance(item.spec, Quantity) and item.unit.startswith(_TYPED):
        if not (echo and item.unit.startswith("p/")):
            _price(draw, item.spec, entered, used, unit=shown, currency=currency)
            return
        with st.container(gap=None):
            _price(draw, item.spec, entered, used, unit=shown, currency=currency)
            small(price_in_words(used, currency, per=item.unit.partition("/")[2]))
    elif isinstance(item.spec, Quantity):
        _number(draw, item.spec, entered, used, unit)
    else:
        _text(draw, entered, used)


def _rests_on(path: str) -> tuple[Any, ...]:
    """What a field shows of its entry."""
    origin = state.survey().origins[path]
    return entry(state.tree(), path), origin.value, origin.tag, origin.source


class _Draw:
    """What every kind of widget needs of one entry."""

    def __init__(
        self, item: Declared, path: str, key: str, label: str, help_: str, clears: tuple[str, ...],
        also: Mapping[str, Any],
    ) -> None:  # fmt: skip
        self.item, self.path, self.key, self.label, self.help = item, path, key, label, help_
        self.changes = {**dict.fromkeys(clears), **also}

    def shows(self, value: Any) -> None:
        """The widget shows what the case says, not the other way round."""
        if again.asked() or st.session_state.get(self.key) != value or self.key not in st.session_state:
            st.session_state[self.key] = value

    def takes(self, read: Callable[[Any], Any] = lambda value: value) -> Callable[[], None]:
        """Called when the user has changed the widget."""

        def changed() -> None:
            given = st.session_state[self.key]
            try:
                value = read(given)
            except InputFaults as error:
                state.refuse(*error.faults)
                return
            put = {**self.changes, self.path: None if value == self.item.default else value}
            state.put(put, done=f"{self.label}: {_said(given)}")

        return changed


def _number(draw: _Draw, spec: Quantity, entered: Any, used: Any, unit: str) -> None:
    whole = draw.item.kind is int
    kind = int if whole else float
    shown = unit_shown(unit)
    least, most = (kind(as_shown(end, unit)) for end in (spec.low, spec.high))
    unset = used is None or (draw.item.optional and entered is None)
    draw.shows(None if unset else min(max(kind(as_shown(used, unit)), least), most))

    back = to_metric(unit)

    def read(typed: float | None) -> float | None:  # what a limit's own rounding lets through is that limit
        return None if typed is None else min(max(back(typed), spec.low), spec.high)

    st.number_input(
        draw.label,
        min_value=least,
        max_value=most,
        step=1 if whole else _STEPS.get(spec.unit if shown == unit else shown, _fine_step(spec)),
        format=None if whole else "%g",
        placeholder=f"worked out: {quantity(used, unit)}" if draw.item.optional and used is not None else None,
        help=draw.help,
        key=draw.key,
        on_change=draw.takes(read),
        **({"value": None} if draw.item.optional else {}),
    )


def _fine_step(spec: Quantity) -> float:
    return next((step for step in (1.0, 0.1, 0.05, 0.01) if spec.high - spec.low >= 20 * step), 0.01)


def _price(draw: _Draw, spec: Quantity, entered: Any, used: Any, *, unit: str, currency: str) -> None:
    declared = draw.item.unit
    draw.shows("" if draw.item.optional and entered is None else f"{as_shown(used, declared):g}")
    low, high, back = as_shown(spec.low, declared), as_shown(spec.high, declared), to_metric(declared)

    def read(text: str) -> float | None:
        if not text.strip() and draw.item.optional:
            return None
        typed = typed_number(text, where=draw.label, low=low, high=high, unit=unit)
        return min(max(back(typed), spec.low), spec.high)

    st.text_input(
        draw.label,
        placeholder=f"usual: {_priced(used, spec, currency)}",
        help=draw.help,
        key=draw.key,
        on_change=draw.takes(read),
    )


def _choice(draw: _Draw, choices: Mapping[str, Any], entered: Any, used: Any) -> None:
    worked_out = "not entered" if used is None else f"worked out: {_spoken(used)}"
    words = [*([worked_out] if draw.item.optional else []), *choices]
    chosen = next((word for word, value in choices.items() if value == used), words[0])
    draw.shows(worked_out if draw.item.optional and entered is None else chosen)
    st.selectbox(
        draw.label,
        words,
        help=draw.help,
        key=draw.key,
        filter_mode=None,
        on_change=draw.takes(lambda word: choices.get(word)),
    )


def _text(draw: _Draw, entered: Any, used: Any) -> None:
    draw.shows(str(used or ""))
    example = draw.item.spec.meaning.partition(" as in ")[2]
    drawn: dict[str, Any] = {
        "max_chars": draw.item.spec.longest,
        "placeholder": f"as in {example}" if example else None,
        "help": draw.help,
        "key": draw.key,
    }
    if isinstance(draw.item.default, str) and len(draw.item.default) > _ONE_LINE:
        takes = draw.takes(lambda text: " ".join(text.split()))
        st.text_area(draw.label, height="content", width=640, on_change=takes, **drawn)
    else:
        st.text_input(draw.label, on_change=draw.takes(), **drawn)


def _help(item: Declared, origin: Origin, currency: str) -> str:
    """Meaning, limits, default, and what the value in use rests on."""
    spec = item.spec
    lines = [f"{spec.meaning[:1].upper()}{spec.meaning[1:]}."]
    if isinstance(spec, Quantity):
        lines.append(f"From {_priced(spec.low, spec, currency)} to {_priced(spec.high, spec, currency)}.")
    if item.optional:
        lines.append(f"Left empty, it comes from {spec.derived}.")
    elif item.default not in (None, ""):
        usual = _priced(item.default, spec, currency) if isinstance(spec, Quantity) else _said(item.default)
        lines.append(f"Default: {usual}.")
    rests = f"Now {origin.tag}" + (f": {origin.source}" if origin.source else "")
    return escaped("\n\n".join([" ".join(lines), f"{rests}."]))


def _priced(value: float, spec: Quantity, currency: str) -> str:
    """A value of an entry with its unit, in words of money where that is what it counts."""
    return joined_price(number(converted(value, spec.unit)), unit_shown(spec.unit), currency)


def escaped(text: str) -> str:
    """Words that the page shows as they are, without reading them as markup."""
    for mark in "\\`*_{}[]<>#+-!|$~:":
        text = text.replace(mark, f"\\{mark}")
    return text


def _spoken(choice: Any) -> str:
    words = str(choice)
    return f"{words[:1].upper()}{words[1:]}"


def _said(value: Any) -> str:
    return number(value) if isinstance(value, int | float) else "worked out" if value in (None, "") else str(value)
