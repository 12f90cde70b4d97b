"""Is every caution shown wherever its trigger holds, only there, and always with whom to ask?

What must be covered, and which trade must be asked, stands here by hand, apart from the table. The hazards are those
that building codes and safety authorities name: common practice, no source, except where one is given.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, replace
from typing import Any

import numpy as np
import pytest

from estimator.cautions import TRIGGERS, Caution, cautions, every_caution, preface
from estimator.inputs.case import Case
from estimator.inputs.catalogue import table
from estimator.inputs.places import with_values
from estimator.survey.fill import filled
from tests.cautions_block import block

# The least dangerous home and option: nothing but the rows that are always shown may appear.
SAFE = {
    "home.open_flue": "no",
    "home.radon_area": "no",
    "home.age": "2011 or later",
    "home.form": "detached",
    "heating.fuel": "heat pump",
}
BALANCED = {
    "options.recovery.flows.imbalance": 0.0,
    "options.recovery.unit.frost": "pre-heater",
    "options.recovery.ducts.standing": "inside",
}
ALWAYS = {"fire", "electricity", "structure", "intake", "sealing", "hygiene"}

# Entries that turn each row on, from the safe case; the first is the plainest. Asbestos: the ban of all kinds in Great
# Britain came in November 1999 and the European Union's in 2005 (from memory), so that only the youngest age is free.
ON: Mapping[str, tuple[dict[str, Any], ...]] = {
    "carbon_monoxide": (
        {"home.open_flue": "yes", "options.recovery.flows.imbalance": 5.0},
        {"home.open_flue": "yes", "options.recovery.flows.imbalance": -5.0},
        {"home.open_flue": "unknown", "options.recovery.unit.frost": "throttle"},
        {"home.open_flue": "unknown", "options.recovery.flows.supply": 90.0, "options.recovery.flows.extract": 100.0},
        {"home.open_flue": "yes", "options.recovery.kind": "continuous extract"},
        {"home.open_flue": "yes", "options.recovery.kind": "intermittent fans"},
        {"heating.fuel": "wood pellets", "options.recovery.flows.imbalance": 5.0},
    ),
    "radon": ({"home.radon_area": "yes"}, {"home.radon_area": "unknown"}),
    "asbestos": tuple(
        {"home.age": age} for age in ("before 1920", "1920 to 1975", "1976 to 1995", "1996 to 2010", "very low energy")
    ),
    "lofts": ({"options.recovery.ducts.standing": "outside"}, {"options.recovery.ducts.supply": 4.0}),
    "loft_air": ({"options.recovery.ducts.standing": "outside"}, {"options.recovery.ducts.extract": 4.0}),
    "flats": ({"home.form": "flat"},),
}
# One condition of two does not make carbon monoxide a caution: it needs the flue and the uneven air.
OFF: tuple[dict[str, Any], ...] = (
    {},
    {"home.open_flue": "yes"},
    {"home.open_flue": "unknown"},
    {"heating.fuel": "wood pellets"},
    {"options.recovery.flows.imbalance": 5.0},
    {"options.recovery.unit.frost": "throttle"},
    {"options.recovery.kind": "continuous extract"},
)
ASK = {
    "carbon_monoxide": "licensed",
    "radon": "radon authority",
    "fire": "building authority",
    "electricity": "licensed electrician",
    "structure": "engineer",
    "asbestos": "licensed asbestos surveyor",
    "lofts": "roofer",
    "loft_air": "licensed",
    "intake": "local code",
    "sealing": "designer of the ventilation",
    "hygiene": "installer",
    "flats": "owner",
}
# The heart of each caution: words that must not be lost when it is rewritten.
HEART = {
    "carbon_monoxide": ("alarm", "flue tested", "frost protection"),
    "radon": ("measure", "lower pressure"),
    "fire": ("damper", "escape route", "undercut", "fire door", "garage"),
    "electricity": ("isolate", "circuit"),
    "structure": ("joist", "beam", "truss", "bearing wall", "notch"),
    "asbestos": ("boards", "flues", "loose fill", "survey first"),
    "lofts": ("access", "boards to stand on", "falls", "heat", "hidden cables"),
    "loft_air": ("insulation dust", "radon", "flue"),
    "intake": ("flues", "drain vents", "bins", "parking", "cooker hood", "dryer", "garage"),
    "sealing": ("without a plan", "moisture", "mould"),
    "hygiene": ("clean", "filters dry", "trap that cannot dry out", "frost", "no water may stand"),
    "flats": ("ask before planning",),
}


def case_with(**changes: Any) -> Case:
    """A filled case of one balanced option, safe but for the changes given by dotted path."""
    whole = Case()
    one = replace(whole, baseline="recovery", today="recovery", options={"recovery": whole.options["recovery"]})
    return filled(with_values(one, {**SAFE, **BALANCED, **changes})).case


def keys(case: Case) -> set[str]:
    """Keys of the cautions shown."""
    return {row.key for row in cautions(case)}


@pytest.mark.parametrize(("key", "changes"), [(key, change) for key, rows in ON.items() for change in rows])
def test_shown_where_the_trigger_holds(key: str, changes: dict[str, Any]) -> None:
    shown = keys(case_with(**changes))
    assert key in shown
    assert shown >= ALWAYS


@pytest.mark.parametrize("changes", OFF)
def test_nothing_but_the_constant_rows_without_a_trigger(changes: dict[str, Any]) -> None:
    assert keys(case_with(**changes)) == ALWAYS


@pytest.mark.parametrize("key", ["radon", "asbestos", "flats"])
def test_one_trigger_turns_on_one_row(key: str) -> None:
    assert keys(case_with(**ON[key][0])) == ALWAYS | {key}


def test_supply_without_extract_may_take_loft_air(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(table("options")["heat recovery"], "extracts", False)
    assert keys(case_with()) == ALWAYS | {"loft_air"}


def test_any_option_or_home_counts() -> None:
    """A caution about one option of many, or one home of a column, is shown."""
    safe = case_with()
    second = with_values(safe.options["recovery"], {"ducts.standing": "outside"})
    assert "lofts" in keys(replace(safe, options={**safe.options, "loft": second}))
    column = np.array([["no"], ["unknown"]])
    assert "radon" in keys(with_values(safe, {"home.radon_area": column}))


def test_what_is_not_known_is_shown() -> None:
    """A case whose gaps are still open shows the cautions of a unit that may stand anywhere."""
    shown = keys(Case())
    assert {"lofts", "loft_air", "carbon_monoxide", "radon"} <= shown


def test_the_list_is_complete() -> None:
    assert {row.key for row in every_caution()} == ALWAYS | set(ON) == set(ASK) == set(HEART)
    assert {row.trigger for row in every_caution()} == set(TRIGGERS)


@pytest.mark.parametrize("row", every_caution(), ids=lambda row: row.key)
def test_each_row_says_what_to_do_and_whom_to_ask(row: Caution) -> None:
    assert ASK[row.key] in row.ask
    words = f"{row.title} {row.words}".casefold()
    assert [part for part in HEART[row.key] if part not in words] == []
    assert all(getattr(row, item.name) for item in fields(row))
    assert row.words.endswith(".")
    assert not row.ask.endswith(".")


@pytest.mark.parametrize("row", every_caution(), ids=lambda row: row.key)
def test_each_row_stands_wherever_money_is_shown(row: Caution) -> None:
    assert set(row.places) >= {"worth", "ways", "cost", "homes", "command line", "report", "README"}
    assert len(set(row.places)) == len(row.places)


def test_a_place_shows_its_own_rows_and_a_misspelt_one_is_refused() -> None:
    danger = case_with(**ON["carbon_monoxide"][0])
    assert {row.key for row in cautions(danger, place="tight")} == {"carbon_monoxide", "sealing"}
    assert cautions(danger, place="worth") == cautions(danger)
    with pytest.raises(ValueError, match="places are"):
        cautions(danger, place="worht")


def test_what_kills_comes_first() -> None:
    order = [row.key for row in cautions(case_with(**ON["carbon_monoxide"][0], **ON["flats"][0]))]
    assert order[0] == "carbon_monoxide"
    assert order.index("fire") < order.index("hygiene") < order.index("flats")


def test_no_setting_hides_a_caution() -> None:
    """No entry of a case or argument speaks of cautions, and the preface puts trades and codes first."""
    from estimator.inputs.quantity import declared

    assert not [item.path for item in declared(Case) if "caution" in item.path]
    assert preface().startswith("Local codes and licensed trades come first")


def test_readme_has_them_all() -> None:
    written = block().written()
    assert written == block().text, "run `python -m tests.cautions_block --write`"
    assert [row.title for row in every_caution() if row.title not in written] == []
