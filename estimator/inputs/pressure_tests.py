"""What does a list of pressure tests over the years say, which of them still count, and what cannot be read in it?

One line of text, entries with a semicolon between them, each a date and then a test or works on the house:
`2016-05 q50 9.2 (as bought); 2019 works (new windows); 2021-03 n50 4.1`. What stands in brackets is a note: it is kept
in the file, counts for nothing and never enters a link. A test before the latest works says nothing of the house today.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from typing import Literal, NamedTuple

from estimator.inputs.faults import shown

Measure = Literal["q50", "n50", "q4"]

_MEASURES: tuple[Measure, ...] = ("q50", "n50", "q4")
_WORKS = "works"
_NOTE = re.compile(r"\s*\(([^()]*)\)\s*$")
_DATE = re.compile(r"(\d{4})(?:-(\d{2}))?(?:-(\d{2}))?")
_MONTHS, _DAYS = 12, 31
_FIRST, _LAST = 1950, 2100
_MOST = 60.0  # of any measure
_FORM = "Write it as 2016-05 q50 9.2 (a note); 2019 works; with the measure q50, n50 or q4."


class Tested(NamedTuple):
    """One test: its date as written and as a year with its fraction, what was measured, and the note beside it."""

    date: str
    when: float
    measure: Measure
    value: float
    note: str


class Works(NamedTuple):
    """Works on the house that change how leaky it is."""

    date: str
    when: float
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PressureLog:
    """All tests and works, each oldest first."""

    tests: tuple[Tested, ...]
    works: tuple[Works, ...]

    @property
    def valid(self) -> tuple[Tested, ...]:
        """The tests after the latest works."""
        since = max((works.when for works in self.works), default=-math.inf)
        return tuple(test for test in self.tests if test.when > since)

    @property
    def newest(self) -> Tested | None:
        """The test that stands for the house, None where none is left after the works."""
        return self.valid[-1] if self.valid else None

    @property
    def source(self) -> str:
        """Where the leakage in use comes from, in words."""
        last = self.newest
        if last is None:
            return "no pressure test since the works"
        others = len(self.tests) - 1
        beside = f", the newest of {len(self.tests)}" if others else ""
        since = f", after the works of {self.works[-1].date}" if self.works else ""
        return f"pressure test of {last.date}{beside}{since}"


def pressure_log(text: str) -> PressureLog:
    """The tests and works in one line of text. Raises ValueError, in words."""
    tests: list[Tested] = []
    works: list[Works] = []
    for part in filter(None, (part.strip() for part in text.split(";"))):
        note = _NOTE.search(part)
        date, *words = _NOTE.sub("", part).split() or [""]
        when, remark = _when(date), note[1].strip() if note else ""
        if words == [_WORKS]:
            works.append(Works(date, when, remark))
        elif len(words) == 2 and words[0] in _MEASURES:
            measure = _MEASURES[_MEASURES.index(words[0])]
            tests.append(Tested(date, when, measure, _value(words[1]), remark))
        else:
            raise ValueError(f"{shown(part)} is neither a test nor works. {_FORM}")
    return PressureLog(
        tests=tuple(sorted(tests, key=lambda test: test.when)), works=tuple(sorted(works, key=lambda one: one.when))
    )


def without_notes(text: str) -> str:
    """The same line without what stands in brackets."""
    return re.sub(r"\s*\([^()]*\)", "", text)


def _when(date: str) -> float:
    """A date as a year with its fraction; one without a day or a month counts from its beginning."""
    found = _DATE.fullmatch(date)
    year, month, day = (int(number) if number else 1 for number in found.groups()) if found else (0, 1, 1)
    if not (_FIRST <= year <= _LAST and 1 <= month <= _MONTHS and 1 <= day <= _DAYS):
        raise ValueError(
            f"{shown(date)} is no date: a year, a month or a day, as in 2016, 2016-05 or 2016-05-21. {_FORM}"
        )
    return year + (month - 1 + (day - 1) / _DAYS) / _MONTHS


def _value(word: str) -> float:
    try:
        value = float(word)
    except ValueError:
        value = math.nan
    if not 0.0 < value <= _MOST:
        raise ValueError(f"{shown(word)} is no leakage; more than 0 and at most {_MOST:g} is allowed. {_FORM}")
    return value
