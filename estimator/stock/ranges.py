"""Between which ends do saving, carbon and payback of each home lie, if the uncertain inputs lie elsewhere?"""

from __future__ import annotations

import numpy as np

from estimator.climate.year import ClimateYear
from estimator.drawn import difference
from estimator.draws import ground, outcomes
from estimator.inputs.case import Case
from estimator.stock.pick import home_of, homes_in
from estimator.tries import places
from estimator.units import Array, to_percent

DRAWS = 64  # few: rough ends for every home, where a single home gets thousands
_TENTH, _NINE_TENTHS = 0.1, 0.9
_START = 1


def spread(case: Case, year: ClimateYear, *, recovery: str) -> dict[str, Array]:
    """Ends below and above which a tenth of `DRAWS` cases lies, and in how many [%] it pays back, for each home.

    Every end is the value of a case, as for a single home; homes go one by one, so that this takes its time.
    """
    count = homes_in(case)
    found: dict[str, Array] = {}
    for place in range(count):
        for name, value in _one(home_of(case, place), year, recovery=recovery).items():
            found.setdefault(name, np.full(count, np.nan))[place] = value
    return found


def _one(case: Case, year: ClimateYear, *, recovery: str) -> dict[str, float]:
    place = ground(case, year)
    where = places(len(place.inputs), count=DRAWS, start=_START)
    drawn = outcomes(place, where, names=(case.baseline, recovery))
    found = difference(drawn[recovery], baseline=drawn[case.baseline])
    ends = {"net_saving": found.net_saving, "carbon": found.carbon_saving, "payback": found.payback}
    return {
        **{f"{name}_low": _end(values, _TENTH) for name, values in ends.items()},
        **{f"{name}_high": _end(values, _NINE_TENTHS) for name, values in ends.items()},
        "paid_back": float(to_percent(float(np.mean(found.payback <= case.worth.life)))),
    }


def _end(values: Array, share: float) -> float:
    return float(np.quantile(values, share, method="inverted_cdf"))
