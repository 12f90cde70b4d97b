"""How far is the estimate from the reference, as a table for people?"""

from __future__ import annotations

import numpy as np

from estimator.evidence.held import Held
from estimator.units import Array
from tests.accuracy.homes import Sample

MASSES = ("very light", "light", "medium", "heavy", "very heavy")
HEAD = (
    "| year | homes | heat saved: median | 95 % | worst | bias | demand: median | 95 % within |\n"
    "|---|---|---|---|---|---|---|---|"
)


def percent(value: float, *, signed: bool = False) -> str:
    return f"{100.0 * value:{'+' if signed else ''}.2f} %"


def row(name: str, result: Held) -> str:
    """One line of the table: absolute errors of the saving, signed bias, error of the demand itself."""
    error, demand = np.abs(result.saving_error), result.demand_error
    cells = (
        name,
        str(len(error)),
        percent(float(np.median(error))),
        percent(float(np.quantile(error, 0.95))),
        percent(float(np.max(error))),
        percent(float(np.median(result.saving_error)), signed=True),
        percent(float(np.median(demand)), signed=True),
        percent(float(np.quantile(np.abs(demand), 0.95))),
    )
    return f"| {' | '.join(cells)} |"


def worst(homes: Sample, result: Held) -> str:
    """The home with the largest error of the saving, in words."""
    place = int(np.argmax(np.abs(result.saving_error)))
    area = homes.reference.floor_area[place]

    def of(values: Array) -> float:
        return float(np.ravel(values)[place])

    return (
        f"worst: {area:.0f} m², {MASSES[homes.mass_class[place]]}, n50 {of(homes.n50):.1f}, "
        f"fabric {of(homes.home.fabric_loss) / area:.2f} W/(K m²), glazing {100.0 * of(homes.glazing):.1f} %, "
        f"saves {of(result.saved):.0f} kWh where the reference saves {of(result.saved_reference):.0f} "
        f"of {of(result.extract_reference):.0f} kWh"
    )
