"""What should be measured first, and what would it take for the verdict to be another one, in words?"""

from __future__ import annotations

from collections.abc import Iterable

from estimator.leak_range import leakage_span
from estimator.levers import Needed
from estimator.report import cash, leakage_said
from estimator.report.figures import converted, number, quantity, share, years
from estimator.report.rows import Rows
from estimator.report.sure_words import Against, Tried
from estimator.sure import Knowing, Sure
from estimator.units import from_percent

# Below this many of a hundred cases, knowing an input is said to change nothing.
_WORTH_SAYING = 1


def measure_first(against: Against) -> str:
    """What to measure first, against one baseline, in one line."""
    return f"Against {against.words}: {_first(against.sure)}."


def _first(sure: Sure) -> str:
    known = [each for each in sure.knowing if each.input.settle and set(each.input.tags.values()) != {"measured"}]
    if not known:
        return "everything that can be measured has been measured"
    telling = [each for each in known if round(each.changes) >= _WORTH_SAYING]
    if not telling:
        most = max(known, key=lambda each: each.narrowing)
        return (
            f"nothing that can be measured would change whether it pays back within {years(sure.years)}; "
            f"{most.input.settle} would narrow the range of the saving most, by {share(most.narrowing)}"
        )
    first, last = telling[0], min(known, key=lambda each: (each.changes, each.narrowing))
    begin = f"{first.input.settle} would settle most: it {_changes(first)} and narrows the range by "
    begin += share(first.narrowing)
    return begin if last is first else f"{begin}; {last.input.settle} would not: it {_changes(last)}"


def _changes(known: Knowing) -> str:
    cases = round(known.changes)
    if cases < _WORTH_SAYING:
        return "changes the verdict in none of 100 cases"
    return f"changes the verdict in {cases} of 100 cases"


def levers(found: Tried, *, within: float | None = None) -> Rows:
    """What each lever alone would have to be, one line each, against every baseline; those that never would left out.

    within: years in which it is to pay back, the life of the kit unless given. What was left out is said by `no_use`.
    """
    life = found.place.case.worth.life
    term, leakage = years(within or life), leakage_said.stated(leakage_span(found.place.case))
    return Rows(
        caption=f"Each alone, to pay back within {term}, all else at its best guess",
        head=("Lever", *(f"Against {against.words}" for against in found.against)),
        rows=tuple(
            (
                f"{row[0].words[:1].upper()}{row[0].words[1:]}",
                *(needed_said(one, found.currency, leakage=leakage) for one in row),
            )
            for row in _every(found, within)
            if not _never(row)
        ),
        words=frozenset(range(len(found.against) + 1)),
    )


def no_use(found: Tried, *, within: float | None = None) -> str:
    """Which levers would not do at any value, in one sentence; "" where each of them would. within: as in `levers`."""
    left = [row[0] for row in _every(found, within) if _never(row)]
    if not left:
        return ""
    told = "; ".join(f"{needed.words}, from {_whole(needed, found.currency)}" for needed in left)
    return (
        f"Alone, none of these would do at any value, against either: {told}."
        if len(found.against) > 1
        else (f"Alone, none of these would do at any value: {told}.")
    )


def _every(found: Tried, within: float | None) -> Iterable[tuple[Needed, ...]]:
    """Each lever against every baseline."""
    usual = within in (None, found.place.case.worth.life)
    return zip(*(one.needed if usual else one.needed_within(within or 0.0) for one in found.against), strict=True)


def _never(row: tuple[Needed, ...]) -> bool:
    return all(not needed.values and not needed.holds_now and needed.name != "cost" for needed in row)


def needed_said(needed: Needed, currency: str, *, leakage: str = "") -> str:
    """What one lever would have to be, and what it is now; leakage: what is known of the home's own, in words."""
    known = leakage if needed.name == "leakage" else ""
    now, whole = f"now {known or said(needed, needed.now, currency)}", _whole(needed, currency)
    if needed.values:
        at = values_said(needed, currency)
        return f"{'pays back already, just so at' if needed.holds_now else 'would have to be'} {at}; {now}"
    if needed.name == "cost":
        return f"no cost would do, since nothing is saved; {now}"
    if needed.holds_now:
        return f"pays back anywhere from {whole}; {now}"
    return f"alone, no value would do, from {whole}; {now}"


def values_said(needed: Needed, currency: str) -> str:
    """The value that would do, or each of them."""
    return " or ".join(said(needed, value, currency) for value in needed.values)


def said(needed: Needed, value: float, currency: str) -> str:
    """A value of a lever with its unit, as it is written everywhere."""
    if needed.unit == "p/kWh":
        return cash.unit_price(value, currency)
    if needed.unit == currency:
        return cash.money(value, currency)
    if needed.unit == "%":
        return share(from_percent(value))
    return years(value) if needed.unit == "years" else quantity(value, needed.unit)


def _whole(needed: Needed, currency: str) -> str:
    return f"{number(converted(needed.low, needed.unit))} to {said(needed, needed.high, currency)}"
