"""What do all published checks come to, worked out once for all tests of a process?"""

from __future__ import annotations

from functools import cache

from estimator.evidence.run import Result, run_all


@cache
def results() -> tuple[Result, ...]:
    """Every published value beside ours."""
    return tuple(run_all())
