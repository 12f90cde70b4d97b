"""Between which leakages does a home lie as far as anybody knows, and what does that rest on?"""

from __future__ import annotations

from dataclasses import dataclass

from estimator.inputs.quantity import Tag

# EN ISO 9972 puts the overall uncertainty of a test in calm weather below 10%; from memory.
TEST_UNCERTAINTY = 0.10
_SMALL = 0.1  # m³/(h m²); below it a tenth would say nothing


def said(q50: float) -> str:
    """A leakage [m³/(h m²)] to a tenth, finer than any test; a very small one to two figures."""
    return f"{q50:.1f}" if q50 >= _SMALL else f"{q50:.2g}"


@dataclass(frozen=True, slots=True, kw_only=True)
class LeakageSpan:
    """Leakage of a home as far as it is known: q50 [m³/(h m²)], what that rests on, and why the span is so wide."""

    low: float
    middle: float
    high: float
    tag: Tag
    source: str

    @property
    def tested(self) -> bool:
        """Whether a pressure test stands behind it."""
        return self.tag == "measured"

    @property
    def ends(self) -> str:
        """Both ends with their unit, for a house whose leakage is an estimate: it never gets a bare number."""
        return f"{said(self.low)} to {said(self.high)} m³/(h m²)"

    @property
    def stated(self) -> str:
        """The leakage as an entry: the figure of a test, or both ends of an estimate."""
        return f"{said(self.middle)} m³/(h m²)" if self.tested else f"estimated {self.ends}"

    @property
    def rests_on(self) -> str:
        """What figures that hang on the leakage rest on, to stand beside a whole table of them."""
        if self.tested:
            return "leakage as tested"
        return f"estimated: leakage not tested, {self.ends} at 50 Pa"

    @property
    def known(self) -> str:
        """What it rests on, in a few words."""
        told = {"measured": "tested", "typical": "not tested, an estimate", "assumed": "entered, without a test said"}
        return told[self.tag]

    @property
    def words(self) -> str:
        """The span in one line, tested and guessed told apart."""
        ends = f"between {said(self.low)} and {said(self.high)}"
        return f"{said(self.middle)} m³/(h m²) at 50 Pa, {ends}: {self.known}"
