"""What can go wrong, said so that a person can mend it?"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass

# Characters that steer a terminal, turn the reading direction or cannot be shown; a file may hold any of them.
_UNSEEN = ("Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp")
_SEEN = "\n\t"
INSTEAD = "\ufffd"


def visible(text: str) -> str:
    """The text with a mark in place of every character that would steer what shows it."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(
        INSTEAD if letter not in _SEEN and unicodedata.category(letter) in _UNSEEN else letter for letter in text
    )


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that cannot be used, in plain words.

    where: path of the field or place in the file ("home.floor_area", "row 17, column wind").
    what: the sentence: what was given, what is allowed, what to do.
    """

    where: str
    what: str

    def __post_init__(self) -> None:
        object.__setattr__(self, "where", visible(self.where))
        object.__setattr__(self, "what", visible(self.what))

    def __str__(self) -> str:
        return f"{self.where}: {self.what}" if self.where else self.what


class InputFaults(ValueError):
    """All faults of an input at once, never only the first."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(faults)
        super().__init__("\n".join(str(fault) for fault in self.faults))


class ClimateFault(InputFaults):
    """A weather file or request that cannot be used."""

    def __init__(self, *faults: Fault) -> None:
        super().__init__(faults)


class ExtrapolationWarning(UserWarning):
    """A formula was used outside the range its source covers; the value is still returned."""
