"""How does the first answer stand there at once, and its full range a moment later?

Figure and range change together, since they are one element. A first look gives the range of few cases and says so; all
cases are tried once the page has been drawn, and whatever is touched meanwhile ends the trying.
"""

from __future__ import annotations

from time import monotonic

import streamlit as st

from estimator.sample import MANY, Outcomes
from estimator.ui import first_words, live, sureness
from estimator.ui.overtaken import Overtaken, give_way
from estimator.ui.readers import reader
from estimator.ui.results import outcome

_PAUSE = 0.5  # s between two words on how far the trying is: each costs the browser a pass over the page


class FirstAnswer:
    """The answer of one option and what follows from it, drawn now and drawn again with the full range."""

    def __init__(self, option: str) -> None:
        self.option = option
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

        spoken = monotonic()

        def told(tried: int) -> None:
            nonlocal spoken
            if monotonic() - spoken > _PAUSE:
                self._waiting.caption(f"{tried:,} of {MANY:,} cases tried")
                spoken = monotonic()
            give_way()

        try:
            self._say(sureness.whole(told).cases)
        except Overtaken:
            return  # the next run stands ready, and says its own
        self._waiting.empty()

    def _say(self, outcomes: Outcomes) -> None:
        sentence, rest = first_words.answer(outcome(), self.option, outcomes, who=reader())
        self._sentence.html(sentence)
        self._rest.html(rest)
