"""Why should anybody trust this, and what has nobody verified?

Words about published values run just now by the reader's own copy, for the page and for the terminal alike.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from decimal import Decimal

from estimator.evidence.amounts import number_and_unit
from estimator.evidence.checks import SURENESS, Check, named
from estimator.evidence.method import MethodRun
from estimator.evidence.run import Result
from estimator.report.figures import GAP, MINUS, fixed, number
from estimator.report.method_words import band_table, method_answer, method_notes, method_table
from estimator.report.rows import Rows, as_text

QUESTION = "Why trust this?"
PRIMARY, SECONDARY, MEMORY, PRACTICE, PIN, METHOD = SURENESS

NOT_VERIFIED = (
    "No estimate has been held against a metered home. What is checked is the arithmetic of published methods, not "
    "what a household will find on its bill.",
    "Values from memory may have been written down wrongly: nobody had the text open. “By hand” means that the "
    "equation is published and its value was worked out on paper.",
    "The references for heat are calculations too, written for this package from a standard that has been replaced "
    "since. They are not measured heat.",
    "Infiltration models are held to their printed coefficients. How far such models miss in one real house is not "
    "checked; where a house is not tested, its leakage is the widest gap in the answer.",
    "Costs of equipment, fitting and upkeep are typical or assumed, not tendered. Prices are of their stated date.",
    "How bright a sky is in each direction is a model of the pvlib library, held to one mean of a whole state and to "
    "one printed year of a public model, not to a roof.",
    "Noise, draughts, moisture in the fabric and health are not estimated at all.",
)
"""What the reader must not take as shown."""

FEW = (
    "air-needed-england-bedrooms",
    "moist-example-volume",
    "infiltration-annual-example",
    "iso-13790-hourly-saved",
    "sun-printed-year",
    "label-number",
    "bills-price-cap",
    "worth-present-value",
)
"""Files of the checks that stand for the rest at first sight."""

_SEEN = {PRIMARY: "seen in the primary text", SECONDARY: "in a secondary one", MEMORY: "from memory"}
_BESIDE = {METHOD: "beside another method"}
_SMALL = 1e-5  # smaller limits are written with a power of ten
_EXTRA_DECIMALS = 2  # of our value, beyond the printed one


def answer(results: Sequence[Result]) -> str:
    """The first line: how many agree, what they were read from, and what they are not."""
    failed = sum(not result.passed for result in results)
    agree = (
        f"{failed} of {len(results)} checks {'does' if failed == 1 else 'do'} not agree"
        if failed
        else f"All {len(results)} checks agree"
    )
    counts = {words: sum(r.check.sureness == kind for r in results) for kind, words in _SEEN.items()}
    counts |= {words: sum(r.check.sureness == kind for r in results) for kind, words in _BESIDE.items()}
    counts["without a text"] = len(results) - sum(counts.values())
    first, *others = (f"{count} {words}" for words, count in counts.items())
    told = ", ".join([first.replace(" ", " values ", 1), *others])
    return f"{agree}: {told}. No metered home is among them."


def rule(results: Sequence[Result]) -> str:
    """What counts as agreeing, and which checks are worth less than their number."""
    wider = sum(result.case.within is not None for result in results)
    copied = sum(not callable(named(result.check.function)) for result in results)
    return (
        "Worked out just now by this copy. To agree, a value must come out within half of its last printed digit; "
        f"{wider} have a wider limit and say why. {copied} are constants out of printed tables: they show that a table "
        "was copied rightly, and nothing more."
    )


def failing(results: Iterable[Result]) -> tuple[str, ...]:
    """Every value that does not agree, in words."""
    return tuple(
        f"{r.check.group}: {r.check.title}, line {r.case.number}: printed {r.case.printed}, ours {_ours(r)}"
        + (f" ({r.fault})" if r.fault else "")
        for r in results
        if not r.passed
    )


def groups(results: Iterable[Result]) -> dict[str, tuple[Result, ...]]:
    """Results by what they support, in alphabetical order of groups."""
    found: dict[str, list[Result]] = {}
    for result in results:
        found.setdefault(result.check.group, []).append(result)
    return {name: tuple(found[name]) for name in sorted(found)}


def overview(results: Sequence[Result]) -> Rows:
    """One line for each group: how many agree, and what they were read from."""
    rows = []
    for name, members in groups(results).items():
        seen = [sum(r.check.sureness == kind for r in members) for kind in (*_SEEN, *_BESIDE)]
        agree = sum(r.passed for r in members)
        rows.append((name, f"{agree} of {len(members)}", *(f"{n}" for n in seen), f"{len(members) - sum(seen)}"))
    return Rows(
        caption="What the checks support",
        head=(
            "Part of the estimate",
            "Agree",
            "Primary text",
            "Secondary text",
            "From memory",
            "Other method",
            "No text",
        ),
        rows=tuple(rows),
    )


def few(results: Iterable[Result]) -> Rows:
    """A handful of values from far apart, for a reader with a minute to spare: each can be looked up."""
    first = {result.check.file.removesuffix(".toml"): result for result in reversed(list(results))}
    shown = [first[file] for file in FEW if file in first]
    return Rows(
        caption="A few of them, from far apart",
        note="Two methods may part by more than two printings of one value: every limit stands below, with its reason.",
        head=("Published, or found by another method, and where", "There", "Here"),
        rows=tuple((f"{one.check.title}; {one.check.source}", _spoken(one.case.printed), _ours(one)) for one in shown),
    )


def group_title(name: str, members: Sequence[Result]) -> str:
    """The line under which a group is folded: how many agree, and how many of them nobody could look up."""
    agree = f"{name}: {sum(r.passed for r in members)} of {len(members)} agree"
    remembered = sum(r.check.sureness == MEMORY for r in members)
    return f"{agree}, {remembered} from memory" if remembered else agree


def tables(members: Sequence[Result]) -> tuple[Rows, ...]:
    """One table for each check of a group."""
    by_check: dict[str, list[Result]] = {}
    for result in members:
        by_check.setdefault(result.check.file, []).append(result)
    return tuple(_table(found) for found in by_check.values())


def _table(results: Sequence[Result]) -> Rows:
    check = results[0].check
    reasons = dict.fromkeys(r.case.why for r in results if r.case.why)
    alike = len({inputs(r) for r in results}) < len(results)
    note = [source(check), f"Worked out by {check.function}.", check.note, *(f"Wider limit: {why}." for why in reasons)]
    return Rows(
        caption=check.title,
        note=" ".join(part for part in note if part),
        head=("Inputs", "By the other" if check.reference else "Printed", "Ours", "Agrees", "Difference", "Allowed"),
        rows=tuple(
            (
                inputs(r, entry=alike),
                _spoken(r.case.printed),
                _ours(r),
                _verdict(r),
                _difference(r),
                _allowed(r),
            )
            for r in results
        ),
    )


def source(check: Check) -> str:
    """Source, edition, place in it, and how sure that is, as one sentence."""
    edition = "" if check.edition == "none" else f", edition {check.edition}"
    edition = ", edition not noted" if check.edition == "not noted" else edition
    place = "" if check.locator == "none" else f"; {check.locator}"
    return f"{check.source}{edition}{place}. {check.sureness[:1].upper()}{check.sureness[1:]}."


def inputs(result: Result, *, entry: bool = False) -> str:
    """Every input of one line, readable; for a constant, or where asked, which entry of what came back it is."""
    told = [
        f"{name.removesuffix('.from').replace('.', ', ').replace('_', ' ')}: {_spoken(value)}"
        for name, value in result.inputs.items()
        if not name.endswith("pick")
    ]
    picked = ", ".join(f"{step}" for step in result.case.pick)
    if picked and (entry or not told):
        told.append(f"entry {picked}")
    return "; ".join(told) or "none, a constant"


def _verdict(result: Result) -> str:
    return "yes" if result.passed else "NO"


def _spoken(printed: str) -> str:
    return printed.replace("-", MINUS, 1) if printed.startswith("-") else printed


def _decimals(result: Result) -> int:
    exponent = Decimal(number_and_unit(result.case.printed)[0]).as_tuple().exponent
    return max(0, _EXTRA_DECIMALS - int(exponent))


def _ours(result: Result) -> str:
    return fixed(result.ours, decimals=_decimals(result))


def _allowed(result: Result) -> str:
    return f"±{GAP}{number(result.tolerance) if result.tolerance > _SMALL else f'{result.tolerance:.1g}'}"


def _difference(result: Result) -> str:
    text = fixed(result.difference, decimals=_decimals(result))
    return f"+{text}" if result.difference > 0 and text.strip("0.,") else text


def text(results: Sequence[Result], run: MethodRun) -> str:
    """All of it for a terminal."""
    lines = [
        answer(results),
        rule(results),
        "",
        *failing(results),
        "Not verified",
        *(f"- {said}" for said in NOT_VERIFIED),
        "",
    ]
    lines += [*as_text(overview(results)), "", method_answer(run) + ".", *method_notes(run), ""]
    lines += [*as_text(method_table(run)), "", *as_text(band_table(run)), ""]
    for name, members in groups(results).items():
        lines += [group_title(name, members).upper()]
        for table in tables(members):
            lines += ["", table.caption, table.note, *as_text(table)]
        lines += [""]
    return "\n".join(lines).rstrip()
