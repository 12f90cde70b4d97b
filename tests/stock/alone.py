"""How does a table of homes read, one home after the other, the way a person would have written each?"""

from __future__ import annotations

from typing import Any

from estimator import Case
from estimator.inputs.casefile import case_from_dict, case_to_dict


def cases_of(table: Any) -> list[Case]:
    """Every home of a sound table as a case by itself."""
    cases = []
    for row in table.to_pylist():
        tree = case_to_dict(Case())
        for head, value in row.items():
            if head != "id" and value is not None:
                section, key = head.split(" [")[0].split(".")
                tree[section][key] = value
        cases.append(case_from_dict(tree))
    return cases
