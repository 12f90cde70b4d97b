"""How is a variant saved, changed, named and thrown away?"""

from __future__ import annotations

import re

import streamlit as st

from estimator.estimate import Estimate
from estimator.inputs.catalogue import option_kinds
from estimator.inputs.option import Option
from estimator.inputs.quantity import declared
from estimator.ui import state, style
from estimator.ui.fields import field
from estimator.ui.tree import usual_label, usual_options

_OPTION = {item.path: item for item in declared(Option)}
_CHANGED = {
    "kind": "Kind",
    "unit.effectiveness": "Certified heat recovery",
    "unit.fan_power": "Fan power",
    "flows.supply": "Supply air",
    "flows.extract": "Extract air",
    "ducts.standing": "Unit stands",
    "ducts.insulation": "Insulation of ducts",
    "cost.kit": "Unit and valves",
    "cost.ducts": "Ducts",
    "cost.filter_price": "A set of filters",
    "cost.service": "Service",
}
_NUMBERED = re.compile(r"^(.*?)-(\d+)$")
_MOST = 12


def draw(done: Estimate) -> None:
    """The variants of the case: add one, change one, throw one away."""
    options = done.case.options
    labels = {name: done.options[name].label for name in options}
    with st.container(horizontal=True, vertical_alignment="bottom", gap="small"):
        asked = st.session_state.get("variant:now")
        if asked not in labels:
            st.session_state["variant:now"] = list(labels)[-1]
        name = st.selectbox(
            "A way to change or copy", list(labels), format_func=labels.__getitem__, key="variant:now",
            filter_mode=None, width=260,
        )  # fmt: skip
        st.button("Save a copy as a variant", on_click=_copy, args=(name,), disabled=len(options) >= _MOST)
        needed = name in (done.case.baseline, done.case.today) or len(options) < 3
        st.button("Remove this variant", on_click=_drop, args=(name, labels[name]), disabled=needed, type="tertiary")
    common = {"origins": done.origins, "currency": done.case.prices.currency, "place": "variant"}
    with st.grid(4, min_column_width=160, gap="small", vertical_alignment="bottom"):
        field(_OPTION["label"], path=f"options.{name}.label", label="Name", **common)
        for path, label in _CHANGED.items():
            words = {f"{kind[:1].upper()}{kind[1:]}": kind for kind in option_kinds()} if path == "kind" else None
            field(_OPTION[path], path=f"options.{name}.{path}", label=label, choices=words, **common)
    style.small("A name of your own stays in the case file: the address of the page never carries it.")


def counted_from(done: Estimate) -> str:
    """The choice of the baseline, which is an entry of the case."""
    labels = {name: done.options[name].label for name in done.case.options}
    st.session_state["variant:baseline"] = done.case.baseline
    return st.selectbox(
        "Counted from", list(labels), format_func=labels.__getitem__, key="variant:baseline", filter_mode=None,
        on_change=_counted_from,
    )  # fmt: skip


def _counted_from() -> None:
    name = st.session_state["variant:baseline"]
    state.put({"baseline": None if name == "extract" else name}, done=f"counted from {name}")


def _copy(name: str) -> None:
    options = state.tree().get("options", usual_options())
    stem = found[1] if (found := _NUMBERED.match(name)) else name
    number = next(n for n in range(2, len(options) + 3) if f"{stem}-{n}" not in options)
    copied = dict(options[name])
    label = usual_label(f"{stem}-{number}") or f"{copied['kind']} {number}"
    state.put({f"options.{stem}-{number}": {**copied, "label": label}}, done=f"saved {label}")
    st.session_state["variant:now"] = f"{stem}-{number}"


def _drop(name: str, label: str) -> None:
    state.put({f"options.{name}": None}, done=f"threw away {label}")
