"""Does this copy of the package reproduce what was published?"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from estimator.evidence.amounts import UNITS, inside, is_amount, number_and_unit, outside
from estimator.evidence.checks import Case, Check, Steps, checks, named, steps

# Rounding of the arithmetic itself, so that a value exactly half a digit off still counts as that digit.
_SLACK = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Result:
    """One published value beside ours. ours, difference and tolerance are in the printed unit.

    fault: why there is no value of ours, where the function failed; the check has then failed too.
    """

    check: Check
    case: Case
    ours: float
    tolerance: float
    fault: str = ""

    @property
    def printed(self) -> float:
        """The published number, or what the other method finds: nan where it failed."""
        return math.nan if self.case.printed in UNITS else float(number_and_unit(self.case.printed)[0])

    @property
    def unit(self) -> str:
        """Unit of the published number."""
        return self.case.printed if self.case.printed in UNITS else number_and_unit(self.case.printed)[1]

    @property
    def difference(self) -> float:
        """Ours less the published number."""
        return self.ours - self.printed

    @property
    def passed(self) -> bool:
        """Whether ours is the published number, as exactly as it was printed."""
        return abs(self.difference) <= self.tolerance + _SLACK * max(1.0, abs(self.printed))

    @property
    def inputs(self) -> Mapping[str, str]:
        """Every input as written, by its dotted name."""
        return dict(_told(self.case.inputs))


def run_all(which: Iterable[Check] | None = None) -> list[Result]:
    """Every case of every check, the package's own unless given; a failing function becomes a failed result."""
    return [result(check, case) for check in (checks() if which is None else which) for case in check.cases]


def result(check: Check, case: Case) -> Result:
    """One published value beside ours, or what another method finds, where the check names one."""
    ours, fault = math.nan, ""
    try:
        if check.reference:
            case = _by_reference(check, case)
        value = _returned(check.function, case.inputs, case.pick)
        ours = outside(float(np.squeeze(value)), number_and_unit(case.printed)[1])
    except Exception as error:  # whatever went wrong, the reader is told and the other checks still run
        fault = f"{type(error).__name__}: {error}"
    return Result(check=check, case=case, ours=ours, tolerance=case.tolerance, fault=fault)


def _by_reference(check: Check, case: Case) -> Case:
    unit = case.printed
    value = outside(float(np.squeeze(_returned(check.reference, case.inputs, case.pick))), unit)
    return replace(case, printed=f"{value:,.0f} {unit}")


def _returned(path: str, arguments: Mapping[str, Any], pick: Steps) -> Any:
    target = named(path)
    value = target(**{name: _argument(text) for name, text in arguments.items()}) if callable(target) else target
    for step in pick:
        if isinstance(step, str) and step.endswith("()"):
            value = getattr(value, step[:-2])()
        elif isinstance(step, str) and not isinstance(value, Mapping):
            value = getattr(value, step)
        else:
            value = value[step]
    return value


def _argument(written: Any) -> Any:
    if isinstance(written, str):
        return inside(written) if is_amount(written) else written
    if isinstance(written, list):
        return np.array([_argument(item) for item in written])
    if not isinstance(written, dict):
        return written
    if "repeat" in written:
        return np.full(written["times"], _argument(written["repeat"]))
    arguments = {name: value for name, value in written.items() if name not in ("from", "pick")}
    return _returned(written["from"], arguments, steps(written.get("pick", [])))


def _told(written: Any, name: str = "") -> Iterable[tuple[str, str]]:
    if isinstance(written, dict):
        for key, value in written.items():
            yield from _told(value, f"{name}.{key}" if name else key)
    elif isinstance(written, list):
        yield name, ", ".join(str(item) for item in written)
    else:
        yield name, str(written)
