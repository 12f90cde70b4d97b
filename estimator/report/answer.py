"""What is the answer, in one sentence with its range and its baseline?

Three forms, each as plain as the others: it saves, it costs more, or it cannot be told.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from estimator.compare import Comparison
from estimator.reach import Reach
from estimator.report import cash, figures

_TENTHS = 10.0
_TENTH_SAID = 0.05  # less rounds to none of ten, which would say too much

Verdict = Literal["saves", "costs", "open"]


@dataclass(frozen=True, slots=True)
class Answer:
    """The sentence, the one after it, and which of the three it is."""

    verdict: Verdict
    sentence: str
    then: str


TODAY = "the house as it is aired today"


def answer(
    comparison: Comparison, ends: Sequence[Comparison], currency: str, *, why: str, baseline: str | None = None
) -> Answer:
    """One comparison in words.

    baseline: what it is called in the sentence, where that is not its label.
    ends: the same comparison at the ends of the range. why: what makes the range, for the answer that is none.
    """
    savings = [found.net_saving for found in (comparison, *ends)]
    verdict, sentence = _sentence(comparison, min(savings), max(savings), currency, baseline)
    after = f" The range comes from {why}." if verdict == "open" else _reason(comparison, baseline)
    return Answer(verdict, sentence, f"{_paid(comparison, ends)}{after}")


def reached(comparison: Comparison, found: Reach, currency: str, *, baseline: str | None = None) -> Answer:
    """The same in words with the range between which eight of ten cases tried lie, and the best guess beside it."""
    verdict, sentence = _sentence(comparison, found.net_saving.low, found.net_saving.high, currency, baseline)
    # To the pound, as the picture beside it has it, whose parts add up.
    best = f"At the best guess it {cash.change(comparison.net_saving, currency)}"
    cases, life = often(found.paid_back, found.count), figures.years(found.years)
    paid = f"in {cases} tried it pays back within its life of {life}"
    return Answer(verdict, sentence, f"{best}; {paid}.{_reason(comparison, baseline)}")


def often(part: float, count: int) -> str:
    """A share of the cases tried, 0 to 1, as people say it; "none" and "all" with their number.

    >>> often(0.31, 2000), often(0.002, 2000), often(1.0, 128)
    ('3 of 10 cases', 'hardly any of the cases', 'all 128 cases')
    """
    if part in (0.0, 1.0):
        return f"{'all' if part else 'none of'} {count:,} cases"
    if part <= _TENTH_SAID:
        return "hardly any of the cases"
    if part >= 1.0 - _TENTH_SAID:
        return "almost all cases"
    return f"{_TENTHS * part:.0f} of 10 cases"


def carbon(comparison: Comparison, found: Reach, *, baseline: str | None = None) -> str:
    """The carbon of one comparison, with its range and its baseline.

    Kilograms of CO2 equivalent a year; what emits more says so in words.
    """
    name = comparison.baseline_label if baseline is None else baseline
    low, high = cash.rounded_range(found.carbon_saving.low, found.carbon_saving.high)
    if low >= 0.0 and high > 0.0:
        said = f"would fall by {_from_to(low, high)}"
    elif high <= 0.0 and low < 0.0:
        said = f"would rise by {_from_to(-high, -low)}"
    elif low == high == 0.0:
        said = "would stay the same"
    else:
        said = f"could rise by {figures.carbon(-low)} or fall by {figures.carbon(high)}"
    return f"Carbon {said} a year against {name}."


def rests_on(count: int, *, whole: int) -> str:
    """What the ranges beside an answer are, and whether they are a first look only."""
    if count < whole:
        return f"About: the range of a first {count:,} cases. {whole:,} are being tried."
    return f"Eight of ten of {count:,} cases tried lie within each range: everything uncertain was moved at once."


def _from_to(low: float, high: float) -> str:
    first, last = figures.carbon(low), figures.carbon(high)
    return f"about {first}" if first == last else f"about {figures.number(low)} to {last}"


def _sentence(
    comparison: Comparison, low: float, high: float, currency: str, baseline: str | None
) -> tuple[Verdict, str]:
    near_low, near_high = cash.rounded_range(low, high)
    verdict: Verdict = "saves" if near_low >= 0 < near_high else "costs" if near_high <= 0 else "open"
    said = cash.saving(low, high, currency)
    against = f"against {comparison.baseline_label if baseline is None else baseline}"
    if verdict == "open":
        return verdict, f"Whether {comparison.option_label} would save anything here {said}, {against}."
    option = f"{comparison.option_label[:1].upper()}{comparison.option_label[1:]}"
    return verdict, f"{option} here {said} after its fans and filters, {against}."


def _reason(comparison: Comparison, baseline: str | None) -> str:
    if comparison.extra_fresh_air <= 0 or comparison.heat_saved >= 0:
        return ""
    name = comparison.baseline_label if baseline is None else baseline
    return f" It brings more fresh air than {name}, and warming that costs money."


def _paid(comparison: Comparison, ends: Sequence[Comparison]) -> str:
    spans = sorted(found.simple_payback for found in (comparison, *ends))
    best, worst = (cash.payback(span, life=comparison.life) for span in (spans[0], spans[-1]))
    if best == worst:
        return f"It {best}."
    return f"At best it {best}; at worst it {worst}."
