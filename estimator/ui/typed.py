"""What number did somebody type, whichever mark they use for decimals?

The browser's own number field drops a decimal comma in silence and turns 7,3 into 73. Prices are therefore typed as
text and read here: both marks are understood, and what could be read two ways is refused with both readings.
"""

from __future__ import annotations

import re

from estimator.errors import Fault, InputFaults

_PLAIN = re.compile(r"\d+(?:[.,]\d*)?|[.,]\d+")
_GROUPED = re.compile(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d{1,3}(?:\.\d{3})+(?:,\d+)?")


def typed_number(text: str, *, where: str, low: float, high: float, unit: str) -> float:
    """The number in the text; raises InputFaults with what is allowed where there is none or it is out of range."""
    cleaned = text.strip().replace("\u00a0", "").replace(" ", "").replace("\u2212", "-")
    allowed = f"Write a number from {low:g} to {high:g}{f' {unit}' if unit else ''}."
    if not cleaned:
        raise _fault(where, f"nothing is written. {allowed}")
    sign, digits = (-1.0, cleaned[1:]) if cleaned.startswith("-") else (1.0, cleaned)
    value = _read(digits, text.strip(), where, allowed)
    if not low <= sign * value <= high:
        raise _fault(where, f"{text.strip()} is outside the limits. {allowed}")
    return sign * value


def _read(digits: str, given: str, where: str, allowed: str) -> float:
    if re.fullmatch(r"[1-9]\d{0,2}[.,]\d{3}", digits):
        whole, decimal = re.sub(r"[.,]", "", digits), digits.replace(",", ".")
        if "," in digits:
            raise _fault(
                where, f"{given} can be read as {whole} or as {decimal}: write it without the comma. {allowed}"
            )
        return float(decimal)
    if _PLAIN.fullmatch(digits):
        return float(digits.replace(",", "."))
    if _GROUPED.fullmatch(digits):
        decimal_mark = max("., ", key=lambda mark: digits.rfind(mark))
        grouping = "," if decimal_mark == "." else "."
        if digits.count(decimal_mark) > 1:
            return float(digits.replace(decimal_mark, ""))
        return float(digits.replace(grouping, "").replace(",", "."))
    raise _fault(where, f"{given!r} is not a number. {allowed}")


def _fault(where: str, what: str) -> InputFaults:
    return InputFaults([Fault(where, what)])
