"""What does the address of the page say beside the case: who is reading, and in which units?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import streamlit as st


@dataclass(frozen=True, slots=True)
class Said:
    """One word of the address, kept by the session as well; the usual one is left out of the address."""

    parameter: str
    usual: str
    allowed: tuple[str, ...]

    def of(self, asked: Mapping[str, str]) -> str:
        """The word of an address whose page is not drawn yet."""
        return asked.get(self.parameter, "") if asked.get(self.parameter) in self.allowed else self.usual

    def now(self) -> str:
        """The word that holds."""
        return st.session_state.get(f"outside:{self.parameter}", self.usual)

    def say(self, word: str) -> None:
        """Let another word hold."""
        st.session_state[f"outside:{self.parameter}"] = word

    def begin(self) -> None:
        """At the start of every run: take the word of the address, if it is another than the one put there."""
        named = st.query_params.get(self.parameter)
        if named in self.allowed and named != st.session_state.get(f"outside:shown:{self.parameter}"):
            self.say(named)

    def show(self) -> None:
        """At the end of every run: put the word into the address."""
        named = None if self.now() == self.usual else self.now()
        st.session_state[f"outside:shown:{self.parameter}"] = named
        if named and st.query_params.get(self.parameter) != named:
            st.query_params[self.parameter] = named
        elif not named and self.parameter in st.query_params:
            del st.query_params[self.parameter]

    def carried(self) -> dict[str, str]:
        """What a link to another page carries of it."""
        return {} if self.now() == self.usual else {self.parameter: self.now()}
