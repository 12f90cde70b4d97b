"""How does the first answer stand there at once, and its full range a moment later?

Figure and range change together, since they are one element. A first look gives the range of few cases and says so; all
cases are tried once the page has been drawn, and whatever is touched meanwhile ends the trying.
"""

from __future__ import annotations

from collections.abc import Callable
from html import escape

import streamlit as st

from estimator.reach import reach
from estimator.report.answer import TODAY, carbon, reached, rests_on
from estimator.sample import MANY, Outcomes
from estimator.ui import live, sureness
from estimator.ui.overtaken import Overtaken, give_way
from estimator.ui.results import Outcome, outcome


class FirstAnswer:
    """The answer of one option and what follows from it, drawn now and drawn again with the full range."""

    def __init__(self, option: str, *, lead: Callable[[Outcome], str]) -> None:
        """lead: what this reader hears first under the answer."""
        self.option, self.lead = option, lead
        with st.container(key="answer"):
            self._sentence = st.empty()
        self._rest = st.empty()
        live.step(self._at_once)

    def completed(self) -> None:
        """Try all cases, where that has not been done, and say what they say."""
        self._waiting = st.empty()
        live.step(self._whole, last=True)

    def _at_once(self) -> None:
        self._say(sureness.at_once())

    def _whole(self) -> None:
        if sureness.known():
            self._waiting.empty()  # only what a part wrote to when the page was drawn may it write to later
            return

        def told(tried: int) -> None:  # a word to the page, where a newer run ends this one
            self._waiting.caption(f"{tried:,} of {MANY:,} cases tried")
            give_way()

        try:
            self._say(sureness.whole(told).cases)
        except Overtaken:
            return  # the next run stands ready, and says its own
        self._waiting.empty()

    def _say(self, outcomes: Outcomes) -> None:
        sentence, rest = self._said(outcome(), outcomes)
        self._sentence.html(sentence)
        self._rest.html(rest)

    def _said(self, shown: Outcome, outcomes: Outcomes) -> tuple[str, str]:
        case, currency = shown.case, shown.case.prices.currency
        lines = []
        for against, name, words in (("baseline", case.baseline, None), ("today", case.today, TODAY)):
            if name == self.option:
                continue
            comparison = shown.comparison(self.option, against)
            found = reach(outcomes, option=self.option, baseline=name, years=comparison.life)
            said = reached(comparison, found, currency, baseline=words)
            lines += [[said.sentence, said.then, carbon(comparison, found, baseline=words)]]
            count = found.count
        (first, *others), *second = lines
        basis = rests_on(count, whole=MANY)
        rest = [*filter(None, [self.lead(shown)]), " ".join(others), *(" ".join(line) for line in second)]
        html = "".join(f'<p class="then spaced">{escape(words)}</p>' for words in rest)
        return f'<p class="answer">{escape(first)}</p>', f'{html}<p class="small basis">{escape(basis)}</p>'
