"""What is the answer, in one sentence with its range and its baseline?

Three forms, each as plain as the others: it saves, it costs more, or it cannot be told.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from estimator.compare import Comparison
from estimator.report import cash

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
    low, high = min(savings), max(savings)
    near_low, near_high = cash.rounded_range(low, high)
    verdict: Verdict = "saves" if near_low >= 0 < near_high else "costs" if near_high <= 0 else "open"
    option = f"{comparison.option_label[:1].upper()}{comparison.option_label[1:]}"
    said = cash.saving(low, high, currency)
    against = f"against {comparison.baseline_label if baseline is None else baseline}"
    if verdict == "open":
        sentence = f"Whether {comparison.option_label} would save anything here {said}, {against}."
        return Answer(verdict, sentence, f"{_paid(comparison, ends)} The range comes from {why}.")
    sentence = f"{option} here {said} after its fans and filters, {against}."
    more_air = comparison.extra_fresh_air > 0 and comparison.heat_saved < 0
    name = comparison.baseline_label if baseline is None else baseline
    reason = f" It brings more fresh air than {name}, and warming that costs money." if more_air else ""
    return Answer(verdict, sentence, f"{_paid(comparison, ends)}{reason}")


def _paid(comparison: Comparison, ends: Sequence[Comparison]) -> str:
    spans = sorted(found.simple_payback for found in (comparison, *ends))
    best, worst = (cash.payback(span, life=comparison.life) for span in (spans[0], spans[-1]))
    if best == worst:
        return f"It {best}."
    return f"At best it {best}; at worst it {worst}."
