"""Which cases does each visitor open, and what must the first page answer to each?

No two visitors share a case, so that a figure of another's is seen at once. What is expected comes from the package
itself, asked without any server.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from estimator import ClimateYear, load_year, run
from estimator.draws import ground
from estimator.inputs.casefile import case_from_dict
from estimator.reach import reach
from estimator.report.answer import reached
from estimator.sample import sample
from estimator.ui.link import to_link
from estimator.ui.tree import Tree

CLIMATES = ("Inland vale", "Upland", "Mild coast", "Cold plain", "Greensboro")
OF_EACH = 3
OPTION = "recovery"


@dataclass(frozen=True, kw_only=True)
class Asked:
    """One case as a link, and the sentence that must be read above its page once all cases have been tried."""

    link: str
    answer: str


@cache
def _year(name: str) -> ClimateYear:
    return load_year(name)


def asked(visitor: int, *, count: int = OF_EACH) -> list[Asked]:
    """The cases of one visitor."""
    return [_asked(visitor * OF_EACH + turn) for turn in range(count)]


def _asked(number: int) -> Asked:
    climate = CLIMATES[number % len(CLIMATES)]
    tree: Tree = {
        "version": 1,
        "place": {"climate": climate},
        "home": {"floor_area": 60.0 + number, "indoor_temperature": 18.0 + number % 30 / 10.0},
        "prices": {"fuel": 8.0 + number % 37},
    }
    case = case_from_dict(tree)
    found = run(case, _year(climate)).against_baseline[OPTION]
    tried = sample(ground(case, _year(climate)), names=(OPTION, case.baseline)).cases
    reaches = reach(tried, option=OPTION, baseline=case.baseline, years=found.life)
    said = reached(found, reaches, case.prices.currency)
    return Asked(link=to_link(tree), answer=said.sentence)
