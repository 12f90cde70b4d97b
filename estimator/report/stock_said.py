"""What does the page about many homes say, from the answer to each home in the list?"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from estimator.report.cash import money
from estimator.report.figures import quantity, years
from estimator.report.rows import Rows
from estimator.report.stock_words import ANSWERS, TIGHTNESS
from estimator.routes import LABELS
from estimator.units import to_percent

ALL, PAYS, SAVES, LOSES, SEAL, FAULTY = (
    "all homes",
    "those in which it pays back",
    "those in which it saves, but not its cost",
    "those in which it saves nothing",
    "those to seal first",
    "rows with faults",
)
FILTERS: Mapping[str, tuple[str, tuple[str, ...]]] = {
    ALL: ("answer", tuple(ANSWERS.values())),
    PAYS: ("answer", (ANSWERS["at once"], ANSWERS["pays"])),
    SAVES: ("answer", (ANSWERS["saves"],)),
    LOSES: ("answer", (ANSWERS["loses"],)),
    SEAL: ("tightness", (TIGHTNESS["seal first"],)),
    FAULTY: ("status", ("fault",)),
}
"""What the list can be narrowed to: a column of the results, and the words in it."""


def answer(counts: Mapping[str, int], *, option: str, baseline: str) -> str:
    """In how many homes it pays back, and how many must be sealed first."""
    sound = counts.get("rows", 0) - counts.get("faulty", 0)
    if not sound:
        return "No home in this table could be screened: every row has a fault."
    pays = sum(counts.get(f"answer: {ANSWERS[key]}", 0) for key in ("at once", "pays"))
    saves = counts.get(f"answer: {ANSWERS['saves']}", 0)
    return (
        f"Against {baseline}, {option} pays back within its life in {_of(pays, sound)}; "
        f"in {_of(saves, sound)} more it saves every year, but not what it costs."
    )


def sealing(counts: Mapping[str, int]) -> str:
    """In how many homes sealing comes first, and which way leaves most money."""
    sound = counts.get("rows", 0) - counts.get("faulty", 0)
    seal = counts.get(f"tightness: {TIGHTNESS['seal first']}", 0)
    ways = [(counts.get(f"route: {label}", 0), label) for label in LABELS.values()]
    most, label = max(ways)
    return (
        f"In {_of(seal, sound)} it saves only once the leaks are sealed. "
        f"The way that leaves most money over the life is most often “{label}”: in {_of(most, sound)}."
    )


def today(counts: Mapping[str, int], *, option: str) -> str:
    """The other comparison: with the ventilation in place, which mostly gives less air."""
    sound = counts.get("rows", 0) - counts.get("faulty", 0)
    saves = counts.get("saves against today", 0)
    return (
        f"Against the house as it is aired today, most often with less fresh air, {option} leaves a net saving in "
        f"{_of(saves, sound)}."
    )


def untested(counts: Mapping[str, int]) -> str:
    """How many homes are taken at a leakage nobody has measured; empty where all were tested."""
    sound = counts.get("rows", 0) - counts.get("faulty", 0)
    many = counts.get("not tested", 0)
    if not many:
        return ""
    return (
        f"{_of(many, sound)} are not tested: each is taken in the middle of what homes like it leak. For one home the "
        "answer may be another; a pressure test settles it."
    )


def faults(counts: Mapping[str, int]) -> str:
    """How many rows could not be used; empty where all could."""
    faulty = counts.get("faulty", 0)
    if not faulty:
        return ""
    rows = "1 row has" if faulty == 1 else f"{faulty:,} rows have"
    return f"{rows} faults and no figures; each is named in the list and in the file of results."


def homes(cells: Sequence[tuple[str, ...]], *, faulty: bool) -> Rows:
    """The homes of the list side by side, or rows with faults and what is wrong with each."""
    head: tuple[str, ...] = ("Home", "Leakage at 50 Pa", "Net saving a year", "Answer")
    if faulty:
        head = ("Home", "What is wrong with its row")
    return Rows(caption="Homes of the list", head=head, rows=tuple(cells), words=frozenset({0, len(head) - 1}))


def home(name: str, row: Mapping[str, float | str | None], *, currency: str) -> tuple[str, ...]:
    """One home of the list: name, leakage where it was tested, net saving, and answer."""
    tested = row["basis"] == "measured"
    leakage = f"{quantity(_number(row['q50']), 'm³/(h m²)', figures=2)}, tested" if tested else "not tested"
    saving = money(_number(row["net_saving"]), currency)
    payback = row["payback"]
    after = f", in {years(float(payback))}" if isinstance(payback, float) and row["answer"] == ANSWERS["pays"] else ""
    return name, leakage, saving, f"{row['answer']}{after}"


def _number(value: float | str | None) -> float:
    return float(value) if value is not None else float("nan")


def _of(many: int, whole: int) -> str:
    if not many:
        return f"none of {whole:,} homes"
    return f"{many:,} of {whole:,} homes ({to_percent(many / whole):.0f}%)"


def payback_title(found: Sequence[tuple[str, int]]) -> str:
    """What the picture of paybacks shows."""
    *some, (_, never) = found
    ever = sum(many for _, many in some)
    return f"{ever:,} homes save something every year, {never:,} nothing: years until it has paid back"


def paybacks_in_words(found: Sequence[tuple[str, int]]) -> str:
    """The picture of paybacks for those who do not see it."""
    return (
        "Homes by the years until they have paid back. " + "; ".join(f"{name}: {many:,}" for name, many in found) + "."
    )


def map_title(counts: Mapping[str, int]) -> str:
    """What the map of leakage and saving shows."""
    seal = counts.get(f"tightness: {TIGHTNESS['seal first']}", 0)
    return f"{seal:,} homes lie below the border and would rise above it once sealed"


def map_in_words(counts: Mapping[str, int]) -> str:
    """The map for those who do not see it."""
    found = [f"{words}: {counts.get(f'tightness: {words}', 0):,}" for words in TIGHTNESS.values()]
    return f"Every home at its leakage and its net saving a year; the border is a saving of nil. {'; '.join(found)}."
