"""Between which leakages does a home lie as far as anybody knows, and what does that rest on?"""

from __future__ import annotations

from dataclasses import dataclass

from estimator.inputs.quantity import Tag

# EN ISO 9972 puts the overall uncertainty of a test in calm weather below 10%; from memory.
TEST_UNCERTAINTY = 0.10


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
        return f"{self.low:.1f} to {self.high:.1f} m³/(h m²)"

    @property
    def stated(self) -> str:
        """The leakage as an entry: the figure of a test, or both ends of an estimate."""
        return f"{self.middle:.1f} m³/(h m²)" if self.tested else f"estimated {self.ends}"

    @property
    def rests_on(self) -> str:
        """What figures that hang on the leakage rest on, to stand beside a whole table of them."""
        if self.tested:
            return "leakage as tested"
        return f"estimated: leakage not tested, {self.ends} at 50 Pa"

    @property
    def words(self) -> str:
        """The span in one line, tested and guessed told apart."""
        said = {"measured": "tested", "typical": "not tested, an estimate", "assumed": "not tested, a guess"}
        return f"{self.middle:.1f} m³/(h m²) at 50 Pa, between {self.low:.1f} and {self.high:.1f}: {said[self.tag]}"
