"""What are the entries of a case called, in which unit, and within which limits?

`python -m tests.nomenclature` prints the table, and writes it between its markers in DEVELOPERS.md with `--write`.
"""

from __future__ import annotations

from collections.abc import Iterator

from estimator.inputs.case import Case
from estimator.inputs.option import Option
from estimator.inputs.quantity import Declared, Quantity, declared
from tests.marked import Block

HEAD = ("| entry | unit | limits | meaning |", "| --- | --- | --- | --- |")


def block() -> Block:
    """Every entry of a case, then of an option, as a Markdown table."""
    return Block(document="DEVELOPERS.md", name="nomenclature", body="\n".join((*HEAD, *_rows())))


def _rows() -> Iterator[str]:
    for prefix, noun in (("", Case), ("options.NAME.", Option)):
        for item in declared(noun):
            yield f"| `{prefix}{item.path}` | {item.unit} | {_limits(item)} | {item.spec.meaning} |"


def _limits(item: Declared) -> str:
    if isinstance(item.spec, Quantity):
        return f"{item.spec.low:g} to {item.spec.high:g}"
    if item.choices:
        return " / ".join(str(choice) for choice in item.choices)
    return f"at most {item.spec.longest} characters"


if __name__ == "__main__":
    block().main()
