"""What can go wrong, said so that a person can mend it?"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that cannot be used, in plain words.

    where: path of the field or place in the file ("home.floor_area", "row 17, column wind").
    what: the sentence: what was given, what is allowed, what to do.
    """

    where: str
    what: str

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
